package loom

import "sley/internal/trade/qty"

// ReedSystem is a way of numbering reeds: number × Dents dents lie in Over of
// the reed.
type ReedSystem struct {
	Name    string   // as written after the number
	Aliases []string // other names for it
	Dents   int64    // dents that a number of 1 stands for
	Over    qty.Length
	Says    string // what the number counts
	Source  string
}

const (
	taylor  = "J. T. Taylor, Cotton Weaving and Designing, 6th ed. (1909), pp. 243-244"
	setts   = "Dictionary of English textile terms, \"Sett systems\""
	quarter = qty.Inch / 4
)

// reedSystems is the table of ReedSystems. A beer or porter is 20 dents, two
// ends to the dent, but of 38 ends in Dewsbury.
var reedSystems = []ReedSystem{
	{"Stockport", []string{"Manchester"}, 1, 2 * qty.Inch, "dents in 2 in", taylor},
	{"Bolton", nil, 20, 97 * quarter, "beers of 20 dents in 24 1/4 in", taylor + "; C. P. Brooks, Cotton Manufacturing, 3rd ed. (1892), p. 92"},
	{"Blackburn", nil, 20, 45 * qty.Inch, "beers of 20 dents in 45 in", taylor + "; " + setts},
	{"Bradford", nil, 20, 36 * qty.Inch, "beers of 20 dents in 36 in", taylor + "; " + setts},
	{"Scotch tweed", []string{"tweed"}, 20, 37 * qty.Inch, "porters of 20 dents in 37 in", setts},
	{"Scotch", []string{"Glasgow"}, 1, 37 * qty.Inch, "dents in 37 in", taylor},
	{"Dewsbury", nil, 19, 90 * qty.Inch, "beers of 19 dents in 90 in", setts},
	{"Huddersfield", nil, 1, qty.Inch, "dents in 1 in", setts},
	{"Irish", []string{"Irish linen"}, 1, 40 * qty.Inch, "dents in 40 in", setts},
	{"silk", nil, 1, 36 * qty.Inch, "dents in 36 in", setts},
	{"6-4", nil, 20, 58 * qty.Inch, "beers of 20 dents in 58 in", taylor},
	{"9-8", nil, 20, 44 * qty.Inch, "beers of 20 dents in 44 in", taylor},
	{"4-4", nil, 20, 39 * qty.Inch, "beers of 20 dents in 39 in", taylor},
	{"7-8", nil, 20, 34 * qty.Inch, "beers of 20 dents in 34 in", taylor},
}
