package app

import (
	"strconv"

	"sley/internal/engine/reckon"
	"sley/internal/engine/structure"
	"sley/internal/trade/order"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// LaidOrder is an order of a plan as it is written and as it comes out.
type LaidOrder struct {
	Path, Typed string
	Kind        order.Kind
	Total       int          // threads, as often as it fills
	Fills       bool         // a group of it fills
	Leaves      []order.Leaf // nil where the text cannot be read
	Whole       []order.Run  // written out, at most MostLaid
	Cut         bool         // there are more
}

// MostLaid is how many runs an order is written out to.
const MostLaid = 2000

// laidOrders lists the orders that the plan has.
func (p *Preview) laidOrders() []LaidOrder {
	var out []LaidOrder
	add := func(path string, kind order.Kind, o order.Order, total int) {
		typed := p.Typed(path)
		if typed == "" {
			return
		}
		l := LaidOrder{Path: path, Typed: typed, Kind: kind, Fills: o.Filler() > 0, Total: total}
		l.Leaves = order.Leaves(typed, order.Context{Kind: kind, Groups: p.Plan.Groups})
		if total == 0 {
			l.Total = o.Total(1)
		}
		var all bool
		l.Whole, all = o.Laid(l.Total, MostLaid)
		l.Cut = !all
		out = append(out, l)
	}
	plan := p.Plan
	ends, picks := p.whole("ends"), p.whole("pieces[0].picks")
	add("warp.stripes", order.Stripes, plan.Warp.Stripes, ends)
	add("warp.threading", order.Shafts, plan.Warp.Threading, ends)
	add("draft.treadling", order.Treadles, plan.Drafting.Treadling, picks)
	add("draft.lift-plan", order.Treadles, plan.Drafting.LiftPlan, picks)
	add("weft.order", order.Stripes, plan.Weft.Order, p.bodyOf(plan.MainPiece()))
	for i := range plan.Pieces {
		at := "pieces[" + strconv.Itoa(i) + "]."
		add(at+"border", order.Stripes, plan.Pieces[i].Border, 0)
		add(at+"order", order.Stripes, plan.Pieces[i].Order, p.bodyOf(i))
	}
	return p.stripesAsLaid(out)
}

// whole is a count of the reckoning; 0 where it has none.
func (p *Preview) whole(id string) int {
	if p.Result == nil {
		return 0
	}
	return wholeOf(p.Result, id)
}

// bodyOf is the picks of a piece between its borders.
func (p *Preview) bodyOf(i int) int {
	if i >= len(p.Plan.Pieces) {
		return 0
	}
	near, far := p.Plan.Pieces[i].Borders()
	return max(0, p.whole("pieces["+strconv.Itoa(i)+"].picks")-near-far)
}

// stripesAsLaid takes the stripes from the reckoning, which mends what does not come to
// the ends.
func (p *Preview) stripesAsLaid(list []LaidOrder) []LaidOrder {
	if p.Result == nil || p.Plan.Rounding.Off || len(list) == 0 || list[0].Path != "warp.stripes" {
		return list
	}
	l := &list[0]
	l.Whole, l.Cut = nil, len(p.Result.Stripes) > MostLaid
	for _, s := range p.Result.Stripes[:min(MostLaid, len(p.Result.Stripes))] {
		run := order.Run{Name: s.Yarn, Count: s.Ends.Count(qty.Nearest)}
		if s.Beam > 1 {
			run.Beam = s.Beam
		}
		l.Whole = append(l.Whole, run)
	}
	return list
}

// mostNamed is how many crossings a repeat may have for its weave to be named while the
// weaver types.
const mostNamed = 1 << 14

// draftFactsOf says what draft a plan has; nil where it has none.
func draftFactsOf(plan *warp.Plan) *DraftFacts {
	d, woven := plan.Cycle(-1)
	if plan.Warp.Threading.IsZero() && plan.Drafting.IsZero() {
		return nil
	}
	f := &DraftFacts{Shafts: d.Shafts, Treadles: d.Treadles, Ends: d.Ends(), Picks: d.Picks()}
	if woven && f.Ends*f.Picks <= mostNamed && !d.Check().Failed() {
		f.Weave = weaveSlugs[structure.OfDraft(d).Name.Kind]
	}
	return f
}

// Findable lists what of a preview can be found backwards, and what of its plan may
// limit that.
func (p *Preview) Findable() (what, within []string) {
	return reckon.FindPaths(p.Plan), reckon.LimitPaths(p.Plan)
}
