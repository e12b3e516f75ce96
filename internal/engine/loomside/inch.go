package loomside

import (
	"sley/internal/engine/dress"
	"sley/internal/engine/tieup"
	"sley/internal/trade/draft"
)

// longestRead is the longest pattern that a reading across is written short by.
const longestRead = 64

// inch is what shows errors while they are quickly mended: lifts that tell all shafts
// apart, each read across all ends, then one whole repeat looked at on both faces, the
// dents, the crossed ends; then the knots are tied tight.
func (d dressing) inch() []Part {
	times, ok := d.r.Threadings()
	if !ok {
		return nil
	}
	whole := d.tied()
	whole.Threading = draft.ShaftsOf(d.r.Plan.Warp.Threading.Runs(times))
	var out []Part
	for _, lift := range tieup.FirstInch(whole) {
		p := Part{Thing: "read-lift", Up: lift.Up, Pressed: lift.Pressed}
		p.Reads = dress.RunsOf(tieup.Across(whole.Threading, lift.Up), longestRead)
		out = append(out, p)
	}
	if !d.r.Plan.Drafting.Picked().IsZero() {
		out = append(out, Part{Thing: "one-repeat"})
	}
	out = append(out, Part{Thing: "dents-even"}, Part{Thing: "ends-crossed"}, Part{Thing: "tie-tight"})
	for i := range out {
		out[i].From, out[i].To = i, i+1
	}
	return out
}

// tied is the plan's loom as it is tied, without ends and picks.
func (d dressing) tied() *draft.Draft {
	p := d.r.Plan
	return &draft.Draft{Shafts: p.Shafts(), Treadles: len(p.Drafting.Ups), Shed: p.Loom.Shed, Ties: p.Ties()}
}

// opens is how the shed of a treadle opens on this loom; Evenly of one that is pressed
// with others alone.
func (d dressing) opens() map[int]tieup.Shed {
	whole := d.tied()
	p := d.r.Plan
	if times, ok := d.r.Threadings(); ok {
		whole.Threading = draft.ShaftsOf(p.Warp.Threading.Runs(times))
	}
	whole.Treadling = draft.SetsOf(p.Drafting.Treadling.Runs(1))
	out := map[int]tieup.Shed{}
	for _, s := range tieup.Sheds(whole) {
		if s.Pressed.Len() == 1 {
			out[s.Pressed.Most()] = s
		}
	}
	return out
}

// feet says whether the feet can take turns; nil where no treadles are pressed.
func (d dressing) feet() *tieup.Feet {
	o := d.r.Plan.Drafting.Treadling
	if o.IsZero() || len(d.r.Plan.Drafting.Ups) == 0 {
		return nil
	}
	feet := tieup.FeetOf(tieup.WalkOf(o))
	return &feet
}
