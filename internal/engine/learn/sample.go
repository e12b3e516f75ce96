package learn

import (
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

// OfSample gives what a sample of a yarn says, of its length and of its width.
func OfSample(s yarn.Sample) []Learnt {
	return append(Of(sizes([]stateOf{
		{warp.Straight, s.Warp}, {warp.OnLoom, s.OnLoom}, {warp.Relaxed, s.Relaxed}, {warp.Finished, s.Washed},
	}), false), Of(sizes([]stateOf{
		{warp.InReed, s.Reed}, {warp.AtFell, s.Fell}, {warp.Relaxed, s.WidthRelaxed}, {warp.Finished, s.WidthWashed},
	}), true)...)
}

// stateOf is a size as it was typed, and the state it was measured in.
type stateOf struct {
	state warp.State
	size  qty.Typed[qty.Length]
}

func sizes(all []stateOf) []warp.Size {
	var out []warp.Size
	for _, s := range all {
		if s.size.Given() {
			out = append(out, warp.Size{Is: s.size.Is, State: s.state, Typed: s.size.Typed})
		}
	}
	return out
}
