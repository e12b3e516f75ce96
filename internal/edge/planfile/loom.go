package planfile

import (
	"slices"

	"sley/internal/trade/loom"
	"sley/internal/trade/problem"
)

// readLoom reads the [loom] table.
func (d *decoder) readLoom(n *node) {
	t := d.open(loomTable, n)
	l := &d.plan.Loom
	l.Name = t.text("name")
	l.Shafts = t.whole("shafts", 1, mostShafts).Is
	l.Treadles = t.whole("treadles", 1, mostShafts).Is
	l.Shed, _ = loom.ParseShed(t.choice("shed", loom.ShedNames()))
	l.Width = t.length("width", pieceWidth)
	l.Reeds = d.reeds(t.at("reeds"))
	l.Heddles = t.heddles("heddles")
	l.Waste = d.waste(t.at("waste"))
	l.BeamHolds = t.length("beam-holds", wholeWarp)
	l.Beams = t.whole("beams", 1, 2).Is
}

// reeds reads the list of reeds.
func (d *decoder) reeds(n *node) []loom.Reed {
	if n == nil {
		return nil
	}
	if !d.is(n, listKind, `a list of reeds, as ["12 dpi", "50/10 cm"]`) {
		return nil
	}
	var out []loom.Reed
	for _, c := range n.items {
		if reed := typedNode(d, c, wantReed, loom.ParseReed); reed.Given() {
			out = append(out, reed.Is)
		}
	}
	return out
}

// heddles reads the heddles on each shaft, or one number for every shaft.
func (t table) heddles(key string) []int {
	n := t.at(key)
	shafts := t.d.plan.Loom.Shafts
	switch {
	case n == nil:
		return nil
	case n.kind == listKind:
		return t.d.heddleList(n, shafts)
	case n.kind == wholeKind && shafts == 0:
		if !t.has("shafts") {
			t.failKey("heddles.shafts", key, nil)
		}
		return nil
	}
	count := t.d.wholeOf(n, 0, mostHeddles)
	if !count.Given() {
		return nil
	}
	return slices.Repeat([]int{count.Is}, shafts)
}

func (d *decoder) heddleList(n *node, shafts int) []int {
	var out []int
	for _, c := range n.items {
		out = append(out, d.wholeOf(c, 0, mostHeddles).Is)
	}
	if shafts > 0 && len(out) != shafts {
		d.fail("heddles.count", n, problem.Args{"found": len(out), "shafts": shafts})
		return nil
	}
	return out
}

// givesFringe reports whether fringes are cut out of the waste. They can be cut
// only from what ties on or cannot be reached.
func (t table) givesFringe() bool {
	gives := t.truth("gives-fringe")
	if gives && !t.has("tie-on") && !t.has("unreachable") {
		t.failKey("waste.fringe", "gives-fringe", nil)
	}
	return gives
}

// waste reads the loom waste, in all or by the three places where it is lost.
func (d *decoder) waste(n *node) loom.Waste {
	if n == nil {
		return loom.Waste{}
	}
	if n.kind == tableKind {
		t := d.open(wasteTable, n)
		return loom.Waste{
			TieOn:       t.length("tie-on", detail),
			Unreachable: t.length("unreachable", detail),
			Back:        t.length("back", detail),
			GivesFringe: t.givesFringe(),
		}
	}
	return loom.Waste{Lump: d.lengthOf(n, detail)}
}
