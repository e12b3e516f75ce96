// Package sett chooses how close the ends stand: which order of ends in the
// dents of which reed comes nearest to the sett wanted, and which setts the
// rules of the trade advise for a yarn and a weave.
package sett

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"sley/internal/trade/qty"
)

// Order is a sleying order: how many ends go into each successive dent,
// repeated across the reed. 0 leaves a dent empty.
type Order []int

// String writes the order with hyphens, 2-3-2-3-2.
func (o Order) String() string {
	parts := make([]string, len(o))
	for i, n := range o {
		parts[i] = strconv.Itoa(n)
	}
	return strings.Join(parts, "-")
}

// Ends gives the ends in one run of the order.
func (o Order) Ends() int {
	sum := 0
	for _, n := range o {
		sum += n
	}
	return sum
}

// Most gives the most ends in any dent.
func (o Order) Most() int { return slices.Max(o) }

// IsConstant reports whether every dent takes the same number of ends.
func (o Order) IsConstant() bool { return slices.Max(o) == slices.Min(o) }

// Density gives the ends per nanometre that the order makes in a reed of that
// many dents per nanometre: dents × ends in the order ÷ dents in the order.
func (o Order) Density(dents qty.Rat) qty.Rat {
	return dents.Mul(qty.Frac(int64(o.Ends()), int64(len(o))))
}

// Dents gives the dents that n ends fill, the first at the start of the order,
// and how many ends are alone in the last dent when it is not full (0 when it
// is full).
func (o Order) Dents(n int) (dents, odd int) {
	if n <= 0 || o.Ends() == 0 {
		return 0, 0
	}
	whole := (n - 1) / o.Ends()
	dents, left := whole*len(o), n-whole*o.Ends()
	for _, in := range o {
		if left <= 0 {
			break
		}
		dents++
		if left < in {
			return dents, left
		}
		left -= in
	}
	return dents, 0
}

// Splits reports whether a dent holds ends of two neighbouring units of the
// weave, each of unit ends. A unit of 0 or 1 is never split.
func (o Order) Splits(unit int) bool {
	if unit <= 1 || o.Ends() == 0 {
		return false
	}
	at, ends := 0, o.Ends()
	for cycle := 0; cycle < unit; cycle++ {
		for _, in := range o {
			if splitsAt(at, in, unit) {
				return true
			}
			at += in
		}
		if at%(ends*unit) == 0 {
			break
		}
	}
	return false
}

// splitsAt reports whether a dent that takes in ends from end at holds a
// boundary between units inside it, and does not hold whole units only.
func splitsAt(at, in, unit int) bool {
	if in <= 1 || in%unit == 0 && at%unit == 0 {
		return false
	}
	return at/unit != (at+in-1)/unit
}

// spread gives ends spread over dents as evenly as whole ends allow.
func spread(ends, dents int) Order {
	o := make(Order, dents)
	for i := range o {
		o[i] = (i+1)*ends/dents - i*ends/dents
	}
	return o
}

// turn starts an order where it reads best: where it splits no unit of the
// weave, if there is such a place; shorter orders begin with their smallest
// counts, orders of five dents and more are symmetrical where they can be, so
// that both edges and the centre look alike.
func turn(o Order, unit int) Order {
	return slices.MinFunc(turns(o), func(a, b Order) int {
		return cmp.Or(
			cmp.Compare(flag(a.Splits(unit)), flag(b.Splits(unit))),
			cmp.Compare(flag(a[0] == 0), flag(b[0] == 0)), // the first dent used holds an end
			cmp.Compare(lopsided(a), lopsided(b)),
			slices.Compare(a, b),
		)
	})
}

func turns(o Order) []Order {
	all := make([]Order, len(o))
	for i := range o {
		all[i] = append(slices.Clone(o[i:]), o[:i]...)
	}
	return all
}

// lopsided is 1 for a long order that does not read the same both ways.
func lopsided(o Order) int {
	back := slices.Clone(o)
	slices.Reverse(back)
	if len(o) >= 5 && !slices.Equal(o, back) {
		return 1
	}
	return 0
}
