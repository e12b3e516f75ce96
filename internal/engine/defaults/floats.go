package defaults

import "sley/internal/trade/qty"

// FloatLimit is how long a float may be before it is worth a word: longer ones catch on
// rings, hooks and toes.
type FloatLimit struct {
	Use     string     // what the cloth is for; "" any
	Length  qty.Length // on the cloth
	Threads int        // passed over, where the threads of the cloth are not known over a length
	Source  string     // id of a Source
}

// floatLimits are common practice, no source: what is long depends on yarn and use, and
// lace and overshot have floats of this length on purpose.
var floatLimits = []FloatLimit{
	{"", 15 * qty.Millimetre, 15, "practice"},
	{"towel", 10 * qty.Millimetre, 9, "practice"},
	{"scarf", 12 * qty.Millimetre, 11, "practice"},
	{"blanket", 12 * qty.Millimetre, 7, "practice"},
	{"rug", 20 * qty.Millimetre, 5, "practice"},
}

// FloatLimits lists them, that of any use first.
func FloatLimits() []FloatLimit { return floatLimits }

// LongFloat gives the limit for a use, and that of any where it is not in the table.
func LongFloat(use string) FloatLimit {
	for _, l := range floatLimits {
		if l.Use == use {
			return l
		}
	}
	return floatLimits[0]
}
