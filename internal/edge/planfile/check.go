package planfile

import (
	"slices"

	"sley/internal/trade/problem"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

// check looks at the plan as a whole, once every key has been read. A key that
// was given wrongly is not missing as well.
func (d *decoder) check(top table) {
	switch {
	case !top.has("pieces"):
		d.missing("pieces.none", "pieces")
	case top.at("pieces").kind == listKind && len(top.at("pieces").items) == 0:
		d.fail("pieces.none", top.at("pieces"), nil)
	default:
		d.checkSizes(top.at("pieces"))
	}
	d.checkSett(top)
	d.checkLinks(top)
	d.list.Locate(Places{d.src, d.top}.Find)
}

// missing reports what ought to stand at a path, at the nearest place there is.
func (d *decoder) missing(code, path string) {
	place, _ := Places{d.src, d.top}.Find(path)
	d.failAt(code, path, place, nil)
}

// checkSizes reports pieces without a length, and a first piece without a
// width. Later kinds may have the width of the warp.
func (d *decoder) checkSizes(pieces *node) {
	for i, n := range pieces.items {
		if n.kind != tableKind || i >= len(d.plan.Pieces) {
			continue
		}
		t := table{d: d, name: piecesTable, n: n}
		if !t.has("length") && !d.sought(t.path("length")) {
			t.failKey("length.missing", "length", nil)
		}
		if i == 0 && !t.has("width") && !d.sought(t.path("width")) && !d.fixedWidth() {
			t.failKey("width.missing", "width", nil)
		}
	}
}

// sought reports whether the file asks for what is at the path.
func (d *decoder) sought(path string) bool {
	what := d.top.child("find").child("what")
	return what != nil && what.text == path
}

// fixedWidth reports whether the number of ends says how wide the warp is.
func (d *decoder) fixedWidth() bool {
	w := d.top.child("warp")
	if w.child("ends") != nil {
		return true
	}
	stripes := d.plan.Warp.Stripes
	wrong := w.child("stripes") != nil && stripes.IsZero()
	return wrong || !stripes.IsZero() && stripes.Filler() == 0
}

// checkSett reports a plan from which no sett can be had: none is given, no
// reed with its sleying order, and no yarn of the warp has a grist to propose
// one from.
func (d *decoder) checkSett(top table) {
	w := top.at("warp")
	if w != nil && w.kind != tableKind {
		return
	}
	given := w.child("sett") != nil || w.child("reed") != nil && w.child("sleying") != nil ||
		top.at("built").child("sett") != nil || d.sought("warp.sett")
	if !given && !slices.ContainsFunc(d.warpYarns(), d.hasGrist) {
		d.missing("sett.none", "warp.sett")
	}
}

// warpYarns gives the names of the yarns of the warp as far as the file says
// them, else of all yarns.
func (d *decoder) warpYarns() []string {
	names := d.plan.Warp.Stripes.Names()
	if d.plan.Warp.Yarn != "" {
		names = append(names, d.plan.Warp.Yarn)
	}
	if len(names) == 0 {
		return d.yarns
	}
	return names
}

// hasGrist reports whether a yarn's thickness is known, or was meant to be
// said.
func (d *decoder) hasGrist(name string) bool {
	i := slices.IndexFunc(d.plan.Yarns, func(y yarn.Yarn) bool { return y.Name == name })
	if i < 0 {
		return true // an unknown yarn has its own problem
	}
	t := d.top.child("yarns").child(name)
	y := d.plan.Yarns[i]
	wrong := t.child("count") != nil && !y.Count.Given() || t.child("skein") != nil && y.Skein.IsZero() ||
		t.child("wraps") != nil
	return wrong || !y.Grist().IsZero()
}

// checkLinks reports allowances that say the same loss twice.
func (d *decoder) checkLinks(top table) {
	n := top.at("allowances")
	slack := d.plan.Tape == warp.Slackened
	relaxation, given := d.plan.Allowances["relaxation"]
	if slack && given && !relaxation.None {
		t := table{d: d, name: linksTable, n: n}
		t.failKey("relaxation.slackened", "relaxation", nil)
	}
	d.checkCircles(linksTable, n, d.plan.Allowances, nil)
	for i, p := range d.plan.Pieces {
		if len(p.Allowances) > 0 {
			own := top.at("pieces").items[i].child("allowances")
			d.checkCircles(pieceLinks, own, p.Allowances, d.plan.Allowances)
		}
	}
}

// checkCircles reports each allowance of a table that closes a circle with
// those before it: then one loss is said in two ways. Those of a piece stand
// in for the warp's of the same key and join the others.
func (d *decoder) checkCircles(name string, n *node, own, others warp.Allowances) {
	t := table{d: d, name: name, n: n}
	for _, lengths := range []bool{true, false} {
		links := linksOf(lengths, own, others)
		if d.plan.Tape == warp.Slackened && lengths {
			links = slackened(links)
		}
		if circle := circleIn(links); circle != nil {
			t.failKey("allowance.twice", firstOwn(circle, own), problem.Args{"keys": circle})
		}
	}
}

// firstOwn gives the last key of a circle that the table itself holds.
func firstOwn(circle []string, own warp.Allowances) string {
	for _, key := range slices.Backward(circle) {
		if _, ok := own[key]; ok {
			return key
		}
	}
	return circle[0]
}
