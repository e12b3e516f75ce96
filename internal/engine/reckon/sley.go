package reckon

import (
	"slices"

	"sley/internal/engine/sett"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// setSett finds the density wanted in the reed: as built, as written, or as
// the yarn and weave advise.
func (r *run) setSett() {
	switch b := &r.plan.Built.Sett; {
	case b.Given():
		r.cloth.density = r.given("sett.wanted", settOf(*b), given{path: "built.sett", typed: b.Typed, state: warp.InReed, built: true})
	case r.plan.Warp.Sett.Given():
		r.cloth.density = r.writtenSett()
	case r.ownOrder():
		r.cloth.density = r.settOfOrder()
	default:
		r.cloth.density = r.advisedSett()
	}
}

// ownOrder reports whether the weaver settled on an order in a reed without
// saying a sett: then that is her sett.
func (r *run) ownOrder() bool {
	return sett.Order(r.plan.Warp.Sleying).Ends() > 0 && (r.plan.Warp.Reed.Given() || len(r.plan.Loom.Reeds) > 0)
}

// sleyed is dents × ends in the order ÷ dents in the order.
func (r *run) sleyed(dents term, o sett.Order) term {
	ends, length := r.plain(count(o.Ends(), Ends)), r.plain(count(len(o), Dents))
	return r.div(Density, r.mul(Density, dents, ends), length)
}

// settOfOrder is the density of the order settled on, in the reed settled on or
// the first of the loom.
func (r *run) settOfOrder() term {
	reed := r.plan.Warp.Reed
	if !reed.Given() {
		reed = r.plan.Loom.Reeds[0].Dents
	}
	d := r.sleyed(r.plain(density(reed.Is.PerNM())), r.plan.Warp.Sleying)
	t := r.put("sett.wanted", d, warp.InReed, About{})
	r.shown["sett.wanted"] = t
	return t
}

// writtenSett carries a sett that was written in another state to the reed:
// the same ends stand over the width of that state.
func (r *run) writtenSett() term {
	s := &r.plan.Warp.Sett
	d := r.given("sett.wanted", settOf(*s), given{path: "warp.sett", typed: s.Typed, state: s.State})
	if s.State == warp.InReed || s.State == warp.Unsaid || !r.cloth.hasWant {
		return d
	}
	there := r.carry(&r.width, r.cloth.wanted, warp.InReed, s.State, "sett.over-", About{})
	return r.put("sett.in-reed", r.div(Density, r.mul(Density, d, there), r.cloth.wanted), warp.InReed, About{})
}

// sley chooses the reed and the order of ends in its dents, and so the exact
// density.
func (r *run) sley() {
	r.listReeds()
	if len(r.out.Reeds) == 0 {
		return
	}
	wanted := sett.Wanted{Density: r.cloth.density.Is, Unit: r.plan.Warp.Unit}
	dents := r.dentsOfReeds()
	if r.proposed() {
		wanted.Equal = aboutSett
	}
	all := sett.Choose(dents, wanted)
	if r.proposed() {
		all = r.roomyFirst(all)
	}
	r.out.Sleying = r.withOwnOrder(dents, best(all), wanted.Density)
	r.useOrder(r.out.Sleying[0])
	r.listAlternatives()
}

func (r *run) dentsOfReeds() []qty.Rat {
	dents := make([]qty.Rat, len(r.out.Reeds))
	for i, reed := range r.out.Reeds {
		dents[i] = reed.Dents
	}
	return dents
}

// proposed reports whether the sett is ours, not the weaver's.
func (r *run) proposed() bool {
	return !r.plan.Warp.Sett.Given() && !r.plan.Built.Sett.Given() && !r.ownOrder()
}

// roomyFirst puts the orders that leave air in every dent before the others:
// sley proposes nothing that it would warn of.
func (r *run) roomyFirst(all []sett.Choice) []sett.Choice {
	crowds := func(c sett.Choice) bool {
		fill, known := r.crowding(c)
		return known && reedFull.Less(fill)
	}
	slices.SortStableFunc(all, func(a, b sett.Choice) int {
		switch x, y := crowds(a), crowds(b); {
		case x == y:
			return 0
		case y:
			return -1
		}
		return 1
	})
	return all
}

// crowding is how much of the room in the fullest dent the ends take.
func (r *run) crowding(c sett.Choice) (qty.Rat, bool) {
	y, ok := r.warpYarn()
	if !ok || y.Grist().IsZero() {
		return qty.Rat{}, false
	}
	perDent := sideBySide(y).Mul(reedAir).Div(c.Dents)
	return qty.Int(int64(c.Order.Most())).Div(perDent), true
}

// mostRanked is how many orders a ranking lists.
const mostRanked = 12

// RankReeds ranks the orders of the plan's reeds for its sett, best first, as
// the nodes sley.other[]; nothing else of the plan is reckoned.
func RankReeds(plan *warp.Plan) *Result {
	r := &run{calc: calc{show: true}, plan: plan, out: &Result{Plan: plan}, shown: map[string]term{}}
	r.prepare()
	r.setSett()
	r.listReeds()
	all := sett.Choose(r.dentsOfReeds(), sett.Wanted{Density: r.cloth.density.Is, Unit: plan.Warp.Unit})
	r.out.Sleying = append([]sett.Choice{{}}, all[:min(len(all), mostRanked)]...)
	r.listAlternatives()
	r.out.Sleying = r.out.Sleying[1:]
	return r.out
}

// listReeds gives the reeds to choose from: the one settled on, or all that
// the loom has.
func (r *run) listReeds() {
	if one := r.plan.Warp.Reed; one.Given() {
		r.out.Reeds = []ReedUsed{{Name: one.Typed, Dents: one.Is.PerNM(), Width: r.widthOfReed(one.Is)}}
		return
	}
	for _, reed := range r.plan.Loom.Reeds {
		r.out.Reeds = append(r.out.Reeds, ReedUsed{reed.Dents.Typed, reed.Dents.Is.PerNM(), reed.Width.Is})
	}
}

// widthOfReed finds the width of a reed of the loom with that density.
func (r *run) widthOfReed(d qty.Density) qty.Length {
	for _, reed := range r.plan.Loom.Reeds {
		if reed.Dents.Is.Cmp(d) == 0 {
			return reed.Width.Is
		}
	}
	return 0
}

// aboutSett is how far an order may be from a sett that we propose: a proposal is
// no nicer than that, and a simple order is worth more.
var aboutSett = qty.Frac(12, 100)

// nearSett is how near a second order of the reed chosen must come to be shown.
var nearSett = qty.Frac(5, 100)

// best keeps the first choice of each reed, and the second of the reed that
// came first.
func best(all []sett.Choice) []sett.Choice {
	var out []sett.Choice
	seen := map[int]int{}
	for _, c := range all {
		limit := 1
		if c.Reed == all[0].Reed && c.Off.Abs().Less(nearSett) {
			limit = 2
		}
		if seen[c.Reed] < limit {
			seen[c.Reed]++
			out = append(out, c)
		}
	}
	return out
}

// withOwnOrder puts the order the weaver settled on first, in her reed or in
// the reed that brings it nearest to her sett.
func (r *run) withOwnOrder(dents []qty.Rat, choices []sett.Choice, wanted qty.Rat) []sett.Choice {
	own := sett.Order(r.plan.Warp.Sleying)
	if len(own) == 0 || own.Ends() == 0 {
		return choices
	}
	var mine sett.Choice
	for i := range dents {
		d := own.Density(dents[i])
		c := sett.Choice{Reed: i, Dents: dents[i], Order: own, Density: d, Off: d.Sub(wanted).Div(wanted)}
		if i == 0 || c.Off.Abs().Less(mine.Off.Abs()) {
			mine = c
		}
	}
	return append([]sett.Choice{mine}, choices...)
}

// useOrder makes the nodes of the order chosen.
func (r *run) useOrder(c sett.Choice) {
	wanted := r.cloth.density
	about := About{Reed: r.out.Reeds[c.Reed].Name, Order: c.Order.String()}
	r.cloth.dents = r.given("reed", density(c.Dents), given{path: "loom.reeds", typed: about.Reed, about: About{Reed: about.Reed}})
	r.cloth.hasReed, r.cloth.order = true, c.Order
	r.cloth.density = r.put("sett.exact", r.sleyed(r.cloth.dents, c.Order), warp.InReed, about)
	off := r.div(Share, r.sub(r.cloth.density, wanted), wanted)
	r.put("sett.off", off, warp.Unsaid, About{})
}

// listAlternatives makes the nodes of the other orders.
func (r *run) listAlternatives() {
	for i, c := range r.out.Sleying[1:] {
		id := "sley.other[" + itoa(i+1) + "]."
		about := About{Reed: r.out.Reeds[c.Reed].Name, Order: c.Order.String(), Index: i + 1}
		exact := r.put(id+"exact", r.sleyed(r.plain(density(c.Dents)), c.Order), warp.InReed, about)
		wanted := r.shown["sett.wanted"]
		r.put(id+"off", r.div(Share, r.sub(exact, wanted), wanted), warp.Unsaid, about)
	}
}

// listCrammed makes a node of each density of the stripes beside the warp's own,
// with its order.
func (r *run) listCrammed() {
	var seen []qty.Rat
	for _, s := range r.out.Stripes {
		known := s.Density.Equal(r.cloth.density.Is) || slices.ContainsFunc(seen, s.Density.Equal)
		if known {
			continue
		}
		seen = append(seen, s.Density)
		id := "sett.stripes[" + itoa(len(seen)) + "]"
		about := About{Yarn: s.Yarn, Reed: r.out.Reeds[r.out.Sleying[0].Reed].Name, Order: s.Order.String(), Index: len(seen)}
		r.put(id, r.sleyed(r.cloth.dents, s.Order), warp.InReed, about)
	}
}

// countDents gives the dents that the ends and the floating selvedges fill,
// and the width the weft crosses.
func (r *run) countDents() {
	c := &r.cloth
	if !c.hasReed || r.exact() {
		r.widthWithoutDents()
		return
	}
	r.listCrammed()
	all := r.dentsOfCloth()
	if c.floats.Is.Sign() > 0 {
		all = r.add(all, r.plain(count(2, Dents))) // one at each edge, doubled or not
	}
	c.allDents = r.put("dents", all, warp.Unsaid, About{})
	c.occupied = r.put("width.occupied", r.div(Length, c.allDents, c.dents), warp.InReed, About{})
	r.from("taylor-weft")
	r.centre()
}

// widthWithoutDents is the occupied width where no reed is known or rounding
// is off: each floating selvedge stands as far from its neighbour as a dent, or
// as one end where no reed is known.
func (r *run) widthWithoutDents() {
	c := &r.cloth
	w := c.inReed
	if c.floats.Is.Sign() > 0 {
		per := c.density
		if c.hasReed {
			per = c.dents
		}
		w = r.add(w, r.div(Length, c.floats, per))
	}
	c.occupied = r.put("width.occupied", w, warp.InReed, About{})
	r.from("taylor-weft")
}

// dentsOfCloth counts dents over the stripes: a stretch of one order goes on in
// the order, a new order begins in a new dent.
func (r *run) dentsOfCloth() term {
	var parts []term
	list := r.out.Stripes
	for i := 0; i < len(list); {
		n, j := qty.Rat{}, i
		for ; j < len(list) && slices.Equal(list[j].Order, list[i].Order); j++ {
			n = n.Add(list[j].Ends)
		}
		parts = append(parts, r.dentsOf(list[i].Order, n, j == len(list)))
		i = j
	}
	return r.put("dents.cloth", r.sum(Dents, parts), warp.Unsaid, About{})
}

// dentsOf is dents in the order × whole orders + the dents that the rest fills;
// the last order is always the rest, so that no empty dent is counted after it.
// What stands in the last dent of all, when it is not full, is a node.
func (r *run) dentsOf(o sett.Order, n qty.Rat, last bool) term {
	_, odd := o.Dents(n.Count(qty.Nearest))
	ends, each := r.plain(figure(n, Ends)), r.plain(count(o.Ends(), Ends))
	orders := r.whole(r.div(Repeats, r.sub(ends, r.plain(count(1, Ends))), each), qty.Down)
	rest := n.Sub(each.Is.Mul(orders.Is))
	if odd > 0 && last {
		left := r.sub(ends, r.mul(Ends, each, orders))
		if inFull := rest.Sub(qty.Int(int64(odd))); !inFull.IsZero() {
			left = r.sub(left, r.plain(figure(inFull, Ends)))
		}
		r.put("dents.odd", left, warp.Unsaid, About{})
	}
	out := orders
	if len(o) > 1 {
		out = r.mul(Dents, r.plain(count(len(o), Dents)), orders)
	}
	if more, _ := o.Dents(rest.Count(qty.Nearest)); more > 0 {
		out = r.add(out, r.plain(count(more, Dents)))
	}
	out.Kind = Dents
	return out
}

// centre gives the dents on each side of the reed's centre and, where the width
// of the reed or of the loom is known, the first and the last dent used, counted from
// the left end of the reed: as many stand on each side of its middle as was said.
func (r *run) centre() {
	half := r.put("dents.left", r.whole(r.div(Dents, r.cloth.allDents, r.plain(number(2))), qty.Down), warp.Unsaid, About{})
	r.put("dents.right", r.sub(r.cloth.allDents, half), warp.Unsaid, About{})
	w, ok := r.reedWidth()
	if !ok {
		return
	}
	in := r.put("dents.in-reed", r.whole(r.mul(Dents, w, r.cloth.dents), qty.Down), warp.Unsaid, About{Reed: r.out.Reeds[r.out.Sleying[0].Reed].Name})
	one, middle := r.plain(count(1, Dents)), r.whole(r.div(Dents, in, r.plain(number(2))), qty.Down)
	first := r.put("dents.first", r.add(r.sub(middle, half), one), warp.Unsaid, About{})
	r.put("dents.last", r.sub(r.add(first, r.cloth.allDents), one), warp.Unsaid, About{})
}

// reedWidth is the reed's own width, or the width of the loom it is cut for.
func (r *run) reedWidth() (term, bool) {
	if width := r.out.Reeds[r.out.Sleying[0].Reed].Width; width > 0 {
		return r.plain(length(width)), true
	}
	if w := r.plan.Loom.Width; w.Given() {
		return r.givenLength("loom.width", "loom.width", w), true
	}
	return term{}, false
}
