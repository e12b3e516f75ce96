package warp

import "sley/internal/trade/qty"

// Weave is a class of weave as far as the reckoning needs it: how often an end
// interlaces decides its sett.
type Weave struct {
	Name string
	// Ends and Interlacings of one repeat of an average thread: plain 2 and 2,
	// 2/2 twill 4 and 2 (Ashenhurst's way of counting).
	Ends, Interlacings int
	Class              string // key into the table of defaults
	Shafts             int    // the fewest that weave it
}

// Weaves lists the classes of weave a plan may name. The counts follow from
// the weave's own interlacing.
func Weaves() []Weave {
	return []Weave{
		{"plain", 2, 2, "plain", 2},
		{"basket", 4, 2, "basket", 2},
		{"rib", 4, 2, "basket", 2},
		{"2/1 twill", 3, 2, "twill", 3},
		{"2/2 twill", 4, 2, "twill", 4},
		{"3/1 twill", 4, 2, "twill", 4},
		{"point twill", 4, 2, "twill", 3},
		{"satin", 5, 2, "satin", 5},
		{"huck", 5, 4, "lace", 4},
		{"lace", 6, 4, "lace", 3},
		{"waffle", 8, 4, "waffle", 3},
		{"overshot", 2, 2, "plain", 4},
		{"summer and winter", 4, 3, "plain", 3},
		{"crackle", 4, 3, "twill", 4},
		{"monk's belt", 2, 2, "plain", 4},
		{"double cloth", 4, 2, "plain", 4},
		{"weft-faced", 2, 2, "weft-faced", 2},
		{"warp-faced", 2, 2, "warp-faced", 2},
	}
}

// WeaveNamed gives the weave of that name.
func WeaveNamed(name string) (Weave, bool) {
	for _, w := range Weaves() {
		if w.Name == name {
			return w, true
		}
	}
	return Weave{}, false
}

// Factor gives ends ÷ (ends + interlacings), the share of the yarn's diameters
// that the weave's ends can fill.
func (w Weave) Factor() qty.Rat {
	return qty.Frac(int64(w.Ends), int64(w.Ends+w.Interlacings))
}

// WashNames lists how cloth is finished wet.
func WashNames() []string { return []string{"washed", "fulled", "unwashed"} }
