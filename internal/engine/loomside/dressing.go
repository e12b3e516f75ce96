package loomside

import (
	"sley/internal/engine/reckon"
	"sley/internal/engine/tieup"
	"sley/internal/trade/loom"
	"sley/internal/trade/qty"
)

// Dressing gives the steps of a warp in the order of the weaver's way. Steps that the
// plan has nothing for are left out: no threading is said, the loom has no treadles.
func Dressing(r *reckon.Result, asked Asked) []Step {
	d := dressing{r: r, asked: asked}
	var out []Step
	for _, id := range d.order() {
		if s := d.step(id); s.Total > 0 {
			out = append(out, s)
		}
	}
	return out
}

type dressing struct {
	r     *reckon.Result
	asked Asked
}

// order is the steps of a way; tying up comes when nothing hangs in the way of it.
func (d dressing) order() []string {
	first := Winding
	if d.r.Plan.Winding.Section.Given() {
		first = Sections
	}
	switch d.asked.Way {
	case FrontToBack:
		return []string{first, Sleying, Threading, Beaming, TyingFront, TyingUp, FirstInch}
	case TyingOn:
		return []string{first, Knotting, Beaming, TyingFront, FirstInch}
	}
	if first == Sections {
		return []string{first, Threading, Sleying, TyingFront, TyingUp, FirstInch}
	}
	return []string{first, Spreading, Beaming, Threading, Sleying, TyingFront, TyingUp, FirstInch}
}

// side is where a step begins: as asked, or as usual.
func (d dressing) side(step string) Side {
	if s := d.asked.Sides[step]; s != "" {
		return s
	}
	if all := Sides(step); len(all) > 0 {
		return all[0]
	}
	return ""
}

func (d dressing) step(id string) Step {
	s := Step{ID: id, Side: d.side(id)}
	switch id {
	case Winding:
		s.Parts = d.bouts()
	case Sections:
		s.Parts = d.sections()
	case Spreading:
		s.Parts = d.spaces(s.Side)
	case Threading:
		s.Parts = d.threading(s.Side)
	case Sleying:
		s.Parts = d.sleying(s.Side)
	case Knotting:
		s.Parts = d.knots(s.Side)
	case TyingUp:
		s.Parts, s.Feet, s.ByShaft = d.ties(), d.feet(), tieup.ByShaft(d.tied())
	case FirstInch:
		s.Parts = d.inch()
	default:
		s.Parts = things(d.things(id))
	}
	if n := len(s.Parts); n > 0 {
		s.Total = s.Parts[n-1].To
	}
	return s
}

// things are parts that are only done, each one thing.
func things(names []string) []Part {
	var out []Part
	for i, name := range names {
		out = append(out, Part{From: i, To: i + 1, Thing: name})
	}
	return out
}

// The things to do at the steps that count nothing, by way. Common practice, no source.
func (d dressing) things(step string) []string {
	switch step {
	case Beaming:
		return d.beaming()
	case TyingFront:
		return d.tyingOn()
	}
	return nil
}

func (d dressing) tyingOn() []string {
	if d.r.Plan.Warp.Floats == 0 {
		return []string{"tie-bundles", "tie-even", "spread-header"}
	}
	return []string{"tie-bundles", "tie-even", "tie-floats", "spread-header"}
}

func (d dressing) beaming() []string {
	switch d.asked.Way {
	case FrontToBack:
		return []string{"tie-behind", "lease-out", "ratchet", "wind-on", "pack", "stop-short"}
	case TyingOn:
		return []string{"pull-through", "lease-out", "ratchet", "wind-on", "pack", "stop-short"}
	}
	return []string{"rod-in", "lease-in", "raddle-shut", "chokes-off", "ratchet", "wind-on", "pack", "stop-short"}
}

// ties is what is tied to each treadle; a table loom has none to tie.
func (d dressing) ties() []Part {
	plan := d.r.Plan
	if plan.Loom.Shed == loom.Table {
		return nil
	}
	var out []Part
	opens := d.opens()
	for i, cords := range tieup.ByTreadle(d.tied()) {
		out = append(out, Part{From: i, To: i + 1, Number: i + 1, Cords: cords, Up: plan.Drafting.Ups[i], Opens: opens[i+1]})
	}
	return out
}

// whole is a count of the reckoning; 0 where it has none, or no whole one.
func whole(r *reckon.Result, id string) int {
	n, ok := r.Node(id)
	if !ok || !n.Is.IsInt() {
		return 0
	}
	return n.Is.Count(qty.Nearest)
}
