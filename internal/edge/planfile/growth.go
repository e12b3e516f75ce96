package planfile

import (
	"fmt"

	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// mostGrowth is how many times the later length the earlier one may be by one
// allowance. No cloth loses nine tenths.
const mostGrowth = 10

// sound reports whether the terms of each step leave something over, and whether
// the allowance as a whole is believable.
func (r *allowanceReader) sound(a warp.Allowance) bool {
	growth := qty.Int(1)
	for _, step := range a.Steps {
		g, ok := stepGrowth(step)
		if !ok {
			r.d.fail("allowance.all-lost", r.n, nil)
			return false
		}
		growth = growth.Mul(g)
	}
	if qty.Int(mostGrowth).Less(growth) || growth.Less(qty.Frac(1, mostGrowth)) {
		r.d.fail("allowance.large", r.n, problem.Args{"most": mostGrowth})
		return false
	}
	return true
}

// stepGrowth gives how many times longer a long cloth is before the step than
// after it, and false when all of it would be lost. Lengths that are added
// once are left out.
func stepGrowth(terms []warp.Term) (qty.Rat, bool) {
	one := qty.Int(1)
	left, growth := one, one
	for _, t := range terms {
		switch t.Form {
		case warp.Lose:
			left = left.Sub(t.Share)
		case warp.Gain:
			left = left.Add(t.Share)
		case warp.Add:
			growth = growth.Add(t.Share)
		case warp.PerLength:
			growth = growth.Add(t.Length.In(t.Per))
		case warp.Measured:
			growth = growth.Mul(t.Before.In(t.After))
		case warp.Plain:
		default:
			panic(fmt.Sprintf("internal error: no growth for form %d", t.Form))
		}
	}
	if left.Sign() <= 0 {
		return one, false
	}
	return growth.Div(left), true
}
