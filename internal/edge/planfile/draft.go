package planfile

import (
	"strconv"

	"sley/internal/trade/draft"
	"sley/internal/trade/order"
	"sley/internal/trade/problem"
	"sley/internal/trade/warp"
)

// readDraft reads the [draft] table. A draft in a file of its own is read later, by
// whoever may open files: only its name is kept here.
func (d *decoder) readDraft(n *node) {
	t := d.open(draftTable, n)
	d.plan.Drafting = warp.Drafting{
		File:      t.text("wif"),
		Colours:   d.draftColours(t.at("colours")),
		Ups:       d.ties(t.at("tie-up")),
		Treadling: t.order("treadling", order.Treadles),
		LiftPlan:  t.order("lift-plan", order.Treadles),
	}
	t.exclude("treadling", "lift-plan")
	t.exclude("tie-up", "lift-plan")
	for _, key := range []string{"tie-up", "treadling", "lift-plan"} {
		t.exclude("wif", key)
	}
	if t.has("colours") && !t.has("wif") {
		t.failKey("draft.colours-alone", "colours", nil)
	}
	t.fitsTies(&d.plan.Drafting)
	if t.has("wif") && d.top.child("warp").child("threading") != nil {
		t.failKey("draft.threaded", "wif", nil)
	}
}

// mostPalette is the highest number of a colour of a draft.
const mostPalette = 10_000

// draftColours reads which yarn each colour of the draft's palette is, by its number.
func (d *decoder) draftColours(n *node) map[int]string {
	const wanted = `the yarn of each colour of the draft by its number, as { 1 = "white", 2 = "blue" }`
	if n == nil || !d.is(n, tableKind, wanted) {
		return nil
	}
	out := map[int]string{}
	for _, c := range n.items {
		number, ok := wholeNumber(c.key)
		if !ok || number < 1 || number > mostPalette {
			d.fail("draft.colour-number", c, problem.Args{"number": c.key, "most": mostPalette})
			continue
		}
		if d.is(c, textKind, "the name of a yarn") {
			d.knows(c, c.text)
			out[number] = c.text
		}
	}
	return out
}

// fitsTies reports a treadling by treadles that are not tied.
func (t table) fitsTies(w *warp.Drafting) {
	if !t.has("treadling") || w.Treadling.IsZero() {
		return
	}
	switch most := w.Treadling.MaxTreadle(); {
	case !t.has("tie-up"):
		t.failKey("treadling.no-ties", "treadling", nil)
	case t.at("tie-up").kind == listKind && most > len(t.at("tie-up").items):
		t.failKey("treadling.beyond", "treadling", problem.Args{"treadle": most, "treadles": len(t.at("tie-up").items)})
	}
}

// ties reads the shafts that each treadle puts up.
func (d *decoder) ties(n *node) []draft.Set {
	const wanted = `a list with the shafts of each treadle, as ["1 3", "2 4"]`
	if n == nil || !d.is(n, listKind, wanted) {
		return nil
	}
	if len(n.items) == 0 || len(n.items) > draft.MostTreadles {
		d.fail("tie-up.count", n, problem.Args{"found": len(n.items), "most": draft.MostTreadles})
		return nil
	}
	out := make([]draft.Set, len(n.items))
	for i, c := range n.items {
		out[i] = d.tie(c, wanted)
	}
	return out
}

// tie reads the shafts of one treadle; one that is named twice is a fault.
func (d *decoder) tie(n *node, wanted string) draft.Set {
	if !d.is(n, textKind, wanted) {
		return 0
	}
	o, faults := order.Parse(n.text, order.Context{Kind: order.Shafts, Groups: d.plan.Groups})
	for _, f := range faults[:min(len(faults), mostFaults)] {
		d.orderFault(n, f)
	}
	if len(faults) == 0 && o.Filler() > 0 {
		d.fail("tie-up.fill", n, nil)
	}
	var set draft.Set
	for _, run := range o.Runs(0) {
		if set.Has(run.Shaft) || run.Count > 1 {
			d.fail("tie-up.twice", n, problem.Args{"shaft": strconv.Itoa(run.Shaft)})
			return set
		}
		set = set.With(run.Shaft)
	}
	return set
}
