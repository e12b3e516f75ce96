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
}

// Weaves lists the classes of weave a plan may name. The counts follow from
// the weave's own interlacing.
func Weaves() []Weave {
	return []Weave{
		{"plain", 2, 2, "plain"},
		{"basket", 4, 2, "basket"},
		{"rib", 4, 2, "basket"},
		{"2/1 twill", 3, 2, "twill"},
		{"2/2 twill", 4, 2, "twill"},
		{"3/1 twill", 4, 2, "twill"},
		{"point twill", 4, 2, "twill"},
		{"satin", 5, 2, "satin"},
		{"huck", 5, 4, "lace"},
		{"lace", 6, 4, "lace"},
		{"waffle", 8, 4, "waffle"},
		{"overshot", 2, 2, "plain"},
		{"summer and winter", 4, 3, "plain"},
		{"crackle", 4, 3, "twill"},
		{"monk's belt", 2, 2, "plain"},
		{"double cloth", 4, 2, "plain"},
		{"weft-faced", 2, 2, "weft-faced"},
		{"warp-faced", 2, 2, "warp-faced"},
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
