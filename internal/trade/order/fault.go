package order

import (
	"cmp"
	"slices"

	"sley/internal/trade/qty"
)

// The codes of the faults Parse finds; they are stable. Args are named beside
// them. A fault inside a named group stands where the order calls the group,
// and has besides: group, the group's name; inside, the characters into the
// group's text.
const (
	codeEmpty        = "order.empty"          // nothing written, in all or in brackets
	codeUnexpected   = "order.unexpected"     // near when a word was likely meant
	codeUnclosed     = "order.unclosed"       // a bracket never closed
	codeTooDeep      = "order.too-deep"       // most
	codeTooLong      = "order.too-long"       // most
	codeCountMissing = "order.count-missing"  // a name or an x without a number; near
	codeCountZero    = "order.count-zero"     //
	codeCountLarge   = "order.count-large"    // most
	codeGrouped      = "order.digits-grouped" // such as 1,200: one number or two parts
	codeNameMissing  = "order.name-missing"   // a number without a name; before: the group that follows it
	codeNameUnknown  = "order.name-unknown"   // near, valid
	codeNameTwice    = "order.name-twice"     // both a yarn and a group; once for each name
	codeShaft        = "order.shaft-range"    // least, most
	codeTreadle      = "order.treadle-range"  // least, most
	codeBeam         = "order.beam"           // least, most
	codeDensity      = "order.density"        // why: the code of the density's own fault, and its args
	codeFillTwice    = "order.fill-twice"     // first: where the first stands
	codeFillNested   = "order.fill-nested"    // in a group, or with a suffix after it
	codeGroupCircle  = "order.group-circle"   // circle: the names of the groups
	codeGroupEmpty   = "order.group-empty"    // a named group with no text
)

type args = map[string]any

// fail notes a fault at t.
func (p *parser) fail(code string, t token, a args) {
	f := &qty.Fault{Code: code, Read: t.text, At: t.at, Args: a}
	if p.call != nil {
		f.Args = args{"group": p.call.name, "inside": t.at}
		for key, value := range a {
			if _, taken := f.Args[key]; !taken {
				f.Args[key] = value
			}
		}
		f.At = p.call.at
	}
	p.faults = append(p.faults, f)
}

// byPlace sorts faults by where they stand, first come first.
func byPlace(faults []*qty.Fault) []*qty.Fault {
	slices.SortStableFunc(faults, func(a, b *qty.Fault) int { return cmp.Compare(a.At, b.At) })
	return faults
}
