package warp

import (
	"sley/internal/trade/draft"
	"sley/internal/trade/order"
)

// Drafting is how the cloth of a plan is treadled; its threading is that of the
// warp. Either Ups and Treadling are given, or LiftPlan, or neither.
type Drafting struct {
	File string // the interchange text it comes from, as written; empty: none
	// Colours are the yarns of the file's colours, by their numbers there, from 1: where
	// the plan itself says no stripes or no order of picks, they are the draft's.
	Colours   map[int]string
	Ups       []draft.Set  // the shafts that each treadle alone puts up, treadle 1 first
	Treadling order.Order  // the treadles of each pick
	LiftPlan  order.Order  // the shafts that are up at each pick
	Source    *draft.Draft // what File held: the plan's own copy; nil where there is none
}

// Picked gives the order of picks by treadles or lifts, the zero Order where none
// was given.
func (d *Drafting) Picked() order.Order {
	if d.LiftPlan.IsZero() {
		return d.Treadling
	}
	return d.LiftPlan
}

// IsZero reports whether nothing was said of the treadling.
func (d *Drafting) IsZero() bool {
	return d.File == "" && len(d.Ups) == 0 && d.Picked().IsZero()
}

// Shafts gives the shafts that the plan needs: the highest that is threaded, tied
// or lifted.
func (p *Plan) Shafts() int {
	n := max(p.Warp.Threading.MaxShaft(), p.Drafting.LiftPlan.MaxTreadle())
	for _, up := range p.Drafting.Ups {
		n = max(n, up.Most())
	}
	return n
}

// Ties gives what each treadle is tied to on the plan's loom.
func (p *Plan) Ties() []draft.Tie {
	var out []draft.Tie
	for _, up := range p.Drafting.Ups {
		out = append(out, draft.TieFor(p.Loom.Shed, up, p.Shafts()))
	}
	return out
}

// Drawn gives the draft of the plan, its threading with the filling group repeated
// ends times and its treadling repeated picks times, tied for the plan's loom. It
// reports false where there is no threading, or neither treadling nor lift plan.
// Colours are not in it.
func (p *Plan) Drawn(ends, picks int) (*draft.Draft, bool) {
	return p.drawn(p.Warp.Threading.Runs(ends), func(o order.Order) []order.Run { return o.Runs(picks) })
}

// Cycle gives the draft that is woven over and over: of the treadling only what
// fills, and of the threading too where ends is below 0, else all with the filling
// group repeated ends times. An order of which nothing fills is taken whole.
func (p *Plan) Cycle(ends int) (*draft.Draft, bool) {
	threading := p.Warp.Threading.Runs(max(ends, 0))
	if ends < 0 {
		threading = cycle(p.Warp.Threading)
	}
	return p.drawn(threading, cycle)
}

// cycle is what of an order comes again.
func cycle(o order.Order) []order.Run {
	if o.Filler() == 0 {
		return o.Runs(0)
	}
	return o.FillRuns()
}

func (p *Plan) drawn(threading []order.Run, picks func(order.Order) []order.Run) (*draft.Draft, bool) {
	d := &draft.Draft{
		Name: p.Name, Shafts: p.Shafts(), Treadles: len(p.Drafting.Ups), Shed: p.Loom.Shed,
		Origin: p.Drafting.File, Threading: draft.ShaftsOf(threading), Ties: p.Ties(),
	}
	d.Treadling, d.Lifts = draft.SetsOf(picks(p.Drafting.Treadling)), draft.SetsOf(picks(p.Drafting.LiftPlan))
	return d, d.Ends() > 0 && d.Picks() > 0
}
