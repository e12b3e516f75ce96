package reckon

import (
	"slices"

	"sley/internal/engine/sett"
	"sley/internal/trade/order"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// stripes is the warp as it repeats: the stripes before, in and after the
// group that fills the width.
type stripes struct{ before, fill, after []Stripe }

func endsIn(list []Stripe) qty.Rat {
	sum := qty.Rat{}
	for _, s := range list {
		sum = sum.Add(s.Ends)
	}
	return sum
}

func widthIn(list []Stripe) qty.Rat {
	sum := qty.Rat{}
	for _, s := range list {
		sum = sum.Add(s.Ends.Div(s.Density))
	}
	return sum
}

func (s stripes) fixed() []Stripe { return append(append([]Stripe{}, s.before...), s.after...) }

// mixed reports whether any stripe is crammed or spaced.
func (s stripes) mixed(usual qty.Rat) bool {
	for _, list := range [][]Stripe{s.before, s.fill, s.after} {
		for _, stripe := range list {
			if !stripe.Density.Equal(usual) {
				return true
			}
		}
	}
	return false
}

// setStripes reads the stripes of the plan; without any, one end that fills,
// or one repeat of the threading.
func (r *run) setStripes() {
	w := &r.plan.Warp
	if w.Stripes.IsZero() {
		r.cloth.repeat = r.plainStripes()
		return
	}
	r.cloth.repeat = stripes{
		before: r.stripesOf(w.Stripes.Before()),
		fill:   r.stripesOf(w.Stripes.FillRuns()),
		after:  r.stripesOf(w.Stripes.After()),
	}
}

func (r *run) plainStripes() stripes {
	of := func(n int) []Stripe {
		if n == 0 {
			return nil
		}
		return []Stripe{r.stripe(r.warpName(), n)}
	}
	t := r.plan.Warp.Threading
	switch {
	case t.IsZero():
		return stripes{fill: of(1)}
	case t.Filler() == 0:
		return stripes{before: of(t.Fixed())}
	}
	return stripes{before: of(t.Fixed()), fill: of(t.Filler())}
}

func (r *run) stripe(yarn string, n int) Stripe {
	return Stripe{
		Yarn: yarn, Ends: qty.Int(int64(n)), Density: r.cloth.density.Is, Order: r.cloth.order, Beam: 1,
	}
}

func (r *run) stripesOf(runs []order.Run) []Stripe {
	out := make([]Stripe, 0, len(runs))
	for _, run := range runs {
		s := r.stripe(run.Name, run.Count)
		if run.Beam > 1 {
			s.Beam = run.Beam
		}
		if run.Density.Given() {
			s.Density, s.Order = r.cram(run.Density.Is.PerNM())
		}
		out = append(out, s)
	}
	return out
}

// cram gives the density and order nearest to a stripe's own density in the
// reed that was chosen; without a reed the density as it is.
func (r *run) cram(wanted qty.Rat) (qty.Rat, sett.Order) {
	if !r.cloth.hasReed {
		return wanted, nil
	}
	best := sett.Choose([]qty.Rat{r.cloth.dents.Is}, sett.Wanted{Density: wanted})[0]
	return best.Density, best.Order
}

// countEnds settles the working ends: as built, as written, as the stripes
// come to, or as many whole repeats as come nearest to the width wanted.
func (r *run) countEnds() {
	r.setStripes()
	w, c := &r.plan.Warp, &r.cloth
	switch {
	case r.plan.Built.Ends.Given():
		r.fixEnds(r.plan.Built.Ends, "built.ends", true)
	case w.Ends.Given():
		r.fixEnds(w.Ends, "warp.ends", false)
	case len(c.repeat.fill) == 0:
		c.ends = r.given("ends", figure(endsIn(c.repeat.before), Ends), given{path: r.orderPath(), typed: r.orderText()})
	default:
		r.fillWidth()
	}
	r.addEdges()
	r.layStripes()
}

func (r *run) orderPath() string {
	if r.plan.Warp.Stripes.IsZero() {
		return "warp.threading"
	}
	return "warp.stripes"
}

func (r *run) orderText() string {
	if r.plan.Warp.Stripes.IsZero() {
		return r.plan.Warp.Threading.Text
	}
	return r.plan.Warp.Stripes.Text
}

func (r *run) fixEnds(n qty.Typed[int], path string, built bool) {
	r.cloth.ends = r.given("ends", count(n.Is, Ends), given{path: path, typed: n.Typed, built: built})
	fill := endsIn(r.cloth.repeat.fill)
	if !fill.IsZero() {
		left := r.cloth.ends.Is.Sub(endsIn(r.cloth.repeat.fixed()))
		r.cloth.times = qty.Max(left.Div(fill), qty.Rat{})
	}
}

// grid is the numbers of ends that fill whole repeats: fixed + group × k.
type grid struct{ fixed, group int64 }

// fillWidth finds both neighbours of the exact ends that fill whole repeats
// and takes the one the plan wants, the nearest unless said.
func (r *run) fillWidth() {
	g := r.grid()
	r.cloth.fitted = true
	exact := r.exactTimes(g)
	if r.exact() {
		r.cloth.ends = r.put("ends", r.endsAt(g, exact), warp.Unsaid, About{})
		r.cloth.times = r.timesOf(r.cloth.ends.Is)
		return
	}
	below := r.neighbour("ends.below", g, exact, qty.Down)
	above := r.neighbour("ends.above", g, exact, qty.Up)
	r.cloth.ends = r.put("ends", r.chosen(g, exact, below, above), warp.Unsaid, About{})
	r.cloth.times = r.timesOf(r.cloth.ends.Is)
}

func (r *run) timesOf(ends qty.Rat) qty.Rat {
	return ends.Sub(endsIn(r.cloth.repeat.fixed())).Div(endsIn(r.cloth.repeat.fill))
}

// grid joins the repeats of stripes and threading: ends that fill both.
func (r *run) grid() grid {
	s := grid{endsIn(r.cloth.repeat.fixed()).Whole64(), endsIn(r.cloth.repeat.fill).Whole64()}
	t := r.plan.Warp.Threading
	if t.IsZero() || t.Filler() == 0 {
		return s
	}
	return s.meet(grid{int64(t.Fixed()), int64(t.Filler())})
}

// meet gives the ends on both grids, or g when they never meet (a check says
// so). The first meeting is searched: repeats are short.
func (g grid) meet(h grid) grid {
	for k := int64(0); k < h.group; k++ {
		n := g.fixed + g.group*k
		if n >= h.fixed && (n-h.fixed)%h.group == 0 {
			return grid{n, lcm(g.group, h.group)}
		}
	}
	if n := g.fixed + g.group*h.group; h.fixed > n {
		return g.meetAbove(h)
	}
	return g
}

// meetAbove meets a grid that starts above the first h.group steps of g.
func (g grid) meetAbove(h grid) grid {
	skip := (h.fixed - g.fixed + g.group - 1) / g.group
	up := grid{g.fixed + skip*g.group, g.group}
	for k := int64(0); k < h.group; k++ {
		if n := up.fixed + up.group*k; (n-h.fixed)%h.group == 0 {
			return grid{n, lcm(g.group, h.group)}
		}
	}
	return g
}

func lcm(a, b int64) int64 {
	g, m := a, b
	for m != 0 {
		g, m = m, g%m
	}
	return a / g * b
}

// exactTimes gives the repeats that make the width wanted, as a fraction.
func (r *run) exactTimes(g grid) term {
	c := &r.cloth
	fixed, group := r.plain(figure(qty.Int(g.fixed), Ends)), r.plain(figure(qty.Int(g.group), Ends))
	if c.repeat.mixed(c.density.Is) {
		fixedWidth := r.plain(figure(r.widthAt(qty.Int(g.fixed)), Length))
		groupWidth := r.plain(figure(r.widthAt(qty.Int(g.fixed+g.group)).Sub(fixedWidth.Is), Length))
		return r.put("repeats.exact", r.div(Repeats, r.sub(c.wanted, fixedWidth), groupWidth), warp.Unsaid, About{})
	}
	exact := r.put("ends.exact", r.mul(Ends, c.wanted, c.density), warp.Unsaid, About{})
	if g.fixed == 0 && g.group == 1 {
		return exact
	}
	room := exact
	if g.fixed != 0 {
		room = r.sub(exact, fixed)
	}
	return r.put("repeats.exact", r.div(Repeats, room, group), warp.Unsaid, About{})
}

// endsAt is fixed + group × times.
func (r *run) endsAt(g grid, times term) term {
	out := times
	if g.group != 1 {
		out = r.mul(Ends, r.plain(figure(qty.Int(g.group), Ends)), times)
	}
	if g.fixed != 0 {
		out = r.add(r.plain(figure(qty.Int(g.fixed), Ends)), out)
	}
	out.Kind = Ends
	return out
}

// neighbour makes the nodes of one neighbour: its ends and the finished width
// it gives.
func (r *run) neighbour(id string, g grid, exact term, way qty.Rounding) term {
	whole := r.whole(exact, way)
	if least := g.least(); whole.Is.Less(least) {
		whole = r.do(Larger, whole.Kind, whole, r.plain(figure(least, whole.Kind)))
	}
	n := r.put(id, r.endsAt(g, whole), warp.Unsaid, About{})
	in := r.put(id+".in-reed", r.widthFor(r.timesOf(n.Is), n), warp.InReed, About{})
	r.carry(&r.width, in, warp.InReed, warp.Finished, id+".", About{})
	return n
}

// least is the fewest repeats a warp can have: one end at least.
func (g grid) least() qty.Rat {
	if g.fixed > 0 {
		return qty.Rat{}
	}
	return qty.Int(1)
}

// chosen gives the ends of the neighbour the plan wants.
func (r *run) chosen(g grid, exact, below, above term) term {
	switch r.plan.Warp.Choose {
	case qty.Up:
		return above
	case qty.Down:
		return below
	}
	near := r.whole(exact, qty.Nearest)
	if near.Is.Less(g.least()) {
		return above
	}
	return r.endsAt(g, near)
}

// widthFor gives the reed width of n ends with the group repeated times.
func (r *run) widthFor(times qty.Rat, n term) term {
	if !r.cloth.repeat.mixed(r.cloth.density.Is) {
		return r.div(Length, n, r.cloth.density)
	}
	return r.sumOfStripes(times)
}

// sumOfStripes adds ends ÷ density over the sorts of stripe.
func (r *run) sumOfStripes(times qty.Rat) term {
	var parts []term
	for _, s := range r.cloth.sorts(times) {
		parts = append(parts, r.div(Length, r.plain(figure(s.Ends, Ends)), r.plain(density(s.Density))))
	}
	return r.sum(Length, parts)
}

// sorts gives the ends of each density, in order of first appearance.
func (c *cloth) sorts(times qty.Rat) []Stripe {
	var out []Stripe
	for _, s := range c.repeat.times(times) {
		i := slices.IndexFunc(out, func(o Stripe) bool { return o.Density.Equal(s.Density) })
		if i < 0 {
			out = append(out, s)
			continue
		}
		out[i].Ends = out[i].Ends.Add(s.Ends)
	}
	return out
}

// widthAt gives the reed width of that many ends of the stripes as they repeat.
func (r *run) widthAt(ends qty.Rat) qty.Rat {
	times := r.timesOf(ends)
	return widthIn(r.cloth.repeat.fixed()).Add(widthIn(r.cloth.repeat.fill).Mul(times))
}
