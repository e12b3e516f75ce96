package reckon

import (
	"sley/internal/engine/dress"
	"sley/internal/trade/order"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// Laid is a kind of piece as it is woven, pick by pick.
type Laid struct {
	Count int   // how many are woven as planned: of all panels, for the whole class in turn
	Picks int   // of one of them, in every layer
	Woven []int // picks of each that came off the loom otherwise, in the order of [built]
	kind  pieceRun
	plan  *warp.Plan
}

// Laid gives the kinds of pieces of the plan as they are woven. It reports false where
// their picks are unknown or not whole.
func (r *Result) Laid() ([]Laid, bool) {
	var out []Laid
	for _, pr := range r.pieces {
		if !pr.hasPicks || !pr.picks.Is.IsInt() || !pr.remaining().Is.IsInt() {
			return nil, false
		}
		layers := max(r.Plan.Warp.Layers, 1)
		one := Laid{Count: pr.remaining().Is.Count(qty.Nearest), Picks: layers * pr.picks.Is.Count(qty.Nearest), kind: pr, plan: r.Plan}
		for _, n := range pr.woven {
			one.Woven = append(one.Woven, layers*n.Is.Count(qty.Nearest))
		}
		out = append(out, one)
	}
	return out, len(out) > 0
}

// Yarns gives the weft of one piece of the kind that has so many picks, in the order in
// which they are woven; in cloth of several layers each pick of the order comes once in
// each.
func (l Laid) Yarns(picks int) []order.Run {
	layers := max(l.plan.Warp.Layers, 1)
	one := l.kind
	one.order, one.picks.Is = nil, qty.Frac(int64(picks), int64(layers))
	r := &run{plan: l.plan}
	var out []order.Run
	left := picks
	for _, p := range r.pickOrder(&one) {
		n := min(p.n.Mul(qty.Int(int64(layers))).Count(qty.Nearest), left)
		if n > 0 {
			out = append(out, order.Run{Name: p.yarn, Count: n})
		}
		left -= n
	}
	return out
}

// Stretches gives the working ends as they are wound and beamed, from left to right: the
// ends of a second beam take their width, doubled ends share the place of their
// neighbours, floating selvedges are left out. Nil where the ends are not whole.
func (r *Result) Stretches() []dress.Stretch {
	n, ok := r.Node("ends")
	if !ok || !n.Is.IsInt() {
		return nil
	}
	return (&run{plan: r.Plan, out: r, cloth: cloth{ends: term{Figure: n.Figure}}}).stretches()
}
