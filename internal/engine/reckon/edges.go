package reckon

import (
	"strconv"

	"sley/internal/engine/sett"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

func itoa(n int) string { return strconv.Itoa(n) }

// addEdges adds doubled ends and floating selvedges to the working ends.
func (r *run) addEdges() {
	c, w := &r.cloth, &r.plan.Warp
	c.doubled = r.plain(count(0, Ends))
	c.floats = r.plain(count(0, Ends))
	parts := []term{c.ends}
	if w.DoubledEnds > 0 {
		each := r.given("ends.doubled-each", count(w.DoubledEnds, Ends), given{path: "warp.doubled-edges", typed: itoa(w.DoubledEnds)})
		c.doubled = r.put("ends.doubled", r.mul(Ends, r.plain(number(2)), each), warp.Unsaid, About{})
		parts = append(parts, c.doubled)
	}
	if w.Floats > 0 {
		c.floats = r.given("ends.floats", count(w.Floats, Ends), given{path: "warp.floating-selvedges", typed: itoa(w.Floats)})
		parts = append(parts, c.floats)
	}
	c.wound = r.put("ends.wound", r.sum(Ends, parts), warp.Unsaid, About{})
	r.bundles()
}

// bundles counts the bundles of fringe that all ends make, the last maybe
// smaller.
func (r *run) bundles() {
	n := r.plan.Warp.Bundle
	if n == 0 || r.exact() {
		return
	}
	each := r.plain(count(n, Ends))
	r.put("ends.bundles", r.whole(r.div(Bundles, r.cloth.wound, each), qty.Up), warp.Unsaid, About{})
}

// layStripes lays the stripes across the warp as it will stand: whole repeats,
// or cut at the right, or filled up with the last yarn, when a number of ends
// was fixed that they do not come to.
func (r *run) layStripes() {
	c := &r.cloth
	if r.exact() {
		r.out.Stripes = c.repeat.times(c.times)
		return
	}
	var list []Stripe
	list = append(list, c.repeat.before...)
	if len(c.repeat.fill) == 1 {
		s := c.repeat.fill[0]
		s.Ends = s.Ends.Mul(c.times.Whole(qty.Up))
		list = append(list, s)
	} else {
		for range c.times.Count(qty.Up) {
			list = append(list, c.repeat.fill...)
		}
	}
	list = append(list, c.repeat.after...)
	r.out.Stripes = r.trim(merge(list))
}

// times gives the stripes with the group that fills repeated times, a fraction
// too: its stripes each so much wider.
func (s stripes) times(times qty.Rat) []Stripe {
	out := append([]Stripe{}, s.before...)
	for _, stripe := range s.fill {
		stripe.Ends = stripe.Ends.Mul(times)
		out = append(out, stripe)
	}
	return append(out, s.after...)
}

// merge joins neighbouring stripes that are alike.
func merge(list []Stripe) []Stripe {
	var out []Stripe
	for _, s := range list {
		if s.Ends.IsZero() {
			continue
		}
		if n := len(out); n > 0 && alike(out[n-1], s) {
			out[n-1].Ends = out[n-1].Ends.Add(s.Ends)
			continue
		}
		out = append(out, s)
	}
	return out
}

func alike(a, b Stripe) bool {
	return a.Yarn == b.Yarn && a.Beam == b.Beam && a.Density.Equal(b.Density)
}

// trim makes the stripes come to the ends that were settled.
func (r *run) trim(list []Stripe) []Stripe {
	left := r.cloth.ends.Is
	for i := range list {
		if left.Cmp(list[i].Ends) <= 0 {
			list[i].Ends = left
			return list[:i+1]
		}
		left = left.Sub(list[i].Ends)
	}
	if n := len(list); n > 0 {
		list[n-1].Ends = list[n-1].Ends.Add(left)
		return list
	}
	return []Stripe{{
		Yarn: r.warpName(), Ends: left, Density: r.cloth.density.Is,
		Order: sett.Order{1}, Beam: 1,
	}}
}
