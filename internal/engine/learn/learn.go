// Package learn makes allowances of what was measured: of the sizes that one stretch of
// cloth had in several states, the loss between each two of them that an allowance may
// run between. Same input, same answer; what was not measured gives nothing.
package learn

import (
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// Learnt is an allowance that two sizes of one stretch of cloth say: From in the earlier
// state, To in the later, nearer the finished cloth.
type Learnt struct {
	Key      string // of warp.LinkNames
	From, To warp.Size
}

// mostTimes is how many times the one size of an allowance may be the other; the plan
// file has the same bound. Beyond it a size was misread, and nothing is learnt of it.
const mostTimes = 10

// Of gives what sizes of one stretch of cloth say, lengths or widths as width tells, in
// the order of warp.LinkNames. Where a state was measured twice the last size counts; a
// size of nothing, or in no state of its kind, counts for nothing.
func Of(sizes []warp.Size, width bool) []Learnt {
	by := map[warp.State]warp.Size{}
	for _, s := range sizes {
		if s.Is > 0 {
			by[s.State] = s
		}
	}
	var out []Learnt
	for _, name := range warp.LinkNames() {
		from, measured := by[name.Link.Earlier]
		to, also := by[name.Link.Later]
		if name.Width == width && measured && also && believable(from, to) {
			out = append(out, Learnt{name.Key, from, to})
		}
	}
	return out
}

// believable reports whether one size can have become the other.
func believable(from, to warp.Size) bool {
	times := from.Is.In(to.Is)
	return !qty.Int(mostTimes).Less(times) && !times.Less(qty.Frac(1, mostTimes))
}

// Lost is the share of the earlier size that is lost, negative where the cloth grew:
// (before - after) / before, as take-up is defined in ASTM D3883, and as shrinkage is
// measured on the size before washing.
func (l Learnt) Lost() qty.Rat { return qty.Int(1).Sub(l.To.Is.In(l.From.Is)) }

// Typed is the allowance as a plan file has it, with the sizes as they were typed:
// 10 in -> 8 1/2 in.
func (l Learnt) Typed() string { return l.From.Typed + " -> " + l.To.Typed }
