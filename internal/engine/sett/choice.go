package sett

import (
	"cmp"
	"slices"

	"sley/internal/trade/qty"
)

// Wanted is what an order is looked for.
type Wanted struct {
	Density qty.Rat // ends per nanometre
	Longest int     // longest order in dents; 0 stands for 8
	Equal   qty.Rat // differences up to this share count as equal; 0 stands for 1 %
	Unit    int     // ends of the weave's unit that should not be split; 0: none
}

// Choice is one order in one reed.
type Choice struct {
	Reed    int // index into the reeds given
	Dents   qty.Rat
	Order   Order
	Density qty.Rat // exact, ends per nanometre
	Off     qty.Rat // (exact - wanted) ÷ wanted
}

// Standard limits of a search.
const (
	longestOrder = 8  // dents in an order: design, a setting
	mostPerDent  = 16 // more ends in one dent make no cloth
	mostOfReed   = 6  // choices kept of each reed
)

func (w Wanted) limits() (longest int, equal qty.Rat) {
	longest, equal = w.Longest, w.Equal
	if longest == 0 {
		longest = longestOrder
	}
	if equal.IsZero() {
		equal = qty.Frac(1, 100)
	}
	return longest, equal
}

// Choose ranks the orders of every reed for the density wanted, best first:
// nearest density (differences within w.Equal count as equal), then the same
// number in every dent, then one or two ends to a dent rather than more, then
// the shorter order, then the more even one, then one that does not split the
// weave's units, then the smaller difference, then the reed named first.
// reeds are dents per nanometre. Each reed gives one choice at least and six at
// most.
func Choose(reeds []qty.Rat, w Wanted) []Choice {
	longest, equal := w.limits()
	var all []ranked
	for i, dents := range reeds {
		for _, order := range orders(dents, w.Density, longest) {
			all = append(all, rank(Choice{Reed: i, Dents: dents, Order: order}, w, equal))
		}
	}
	slices.SortStableFunc(all, compare)
	out := make([]Choice, 0, len(reeds)*mostOfReed)
	kept := make([]int, len(reeds))
	for _, r := range all {
		if kept[r.Reed]++; kept[r.Reed] <= mostOfReed {
			r.Order = turn(r.Order, w.Unit)
			out = append(out, r.Choice)
		}
	}
	return out
}

// orders lists the even orders of a reed whose density is just below and just
// above the one wanted, for every length, each order in its shortest form.
func orders(dents, density qty.Rat, longest int) []Order {
	var out []Order
	perDent := density.Div(dents)
	for n := 1; n <= longest; n++ {
		low := perDent.Mul(qty.Int(int64(n))).Floor().Count(qty.Down)
		for ends := low; ends <= low+1; ends++ {
			if ends >= 1 && ends <= n*mostPerDent && gcd(ends, n) == 1 {
				out = append(out, spread(ends, n))
			}
		}
	}
	if len(out) == 0 { // closer than any dent can hold: as close as it goes
		out = append(out, Order{mostPerDent})
	}
	return out
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

type ranked struct {
	Choice
	off  qty.Rat // 0 when it counts as equal
	keys [5]int
}

func rank(c Choice, w Wanted, equal qty.Rat) ranked {
	if w.Unit > 1 {
		c.Order = turn(c.Order, w.Unit) // where it begins decides whether it splits a unit
	}
	c.Density = c.Order.Density(c.Dents)
	c.Off = c.Density.Sub(w.Density).Div(w.Density)
	r := ranked{Choice: c, off: c.Off.Abs()}
	if r.off.Cmp(equal) <= 0 {
		r.off = qty.Rat{}
	}
	r.keys = [5]int{
		flag(!c.Order.IsConstant()),
		flag(c.Order.Most() > 2),
		len(c.Order),
		slices.Max(c.Order) - slices.Min(c.Order),
		flag(c.Order.Splits(w.Unit)),
	}
	return r
}

func flag(b bool) int {
	if b {
		return 1
	}
	return 0
}

func compare(a, b ranked) int {
	return cmp.Or(
		a.off.Cmp(b.off),
		slices.Compare(a.keys[:], b.keys[:]),
		a.Off.Abs().Cmp(b.Off.Abs()),
		cmp.Compare(a.Reed, b.Reed),
	)
}
