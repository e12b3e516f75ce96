package planfile

import (
	"slices"

	"sley/internal/trade/near"
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
		if !t.meant("length") && !d.sought(t.path("length")) {
			t.failKey("length.missing", "length", nil)
		}
		if i == 0 && !t.meant("width") && !d.sought(t.path("width")) && !d.fixedWidth() {
			t.failKey("width.missing", "width", nil)
		}
	}
}

// meant reports whether the table has the key, or one that is a slip for it and
// has its own problem.
func (t table) meant(key string) bool {
	return t.has(key) || slices.ContainsFunc(t.n.items, func(c *node) bool {
		return near.To(c.key, keys[t.name]) == key
	})
}

// sought reports whether what is at the path is to be found.
func (d *decoder) sought(path string) bool {
	if d.find != "" {
		return d.find == path
	}
	what := d.top.child("find").child("what")
	return what != nil && what.text == path
}

// fixedWidth reports whether the number of ends says how wide the warp is.
func (d *decoder) fixedWidth() bool {
	w := d.top.child("warp")
	if w.child("ends") != nil {
		return true
	}
	stripes, threading := d.plan.Warp.Stripes, d.plan.Warp.Threading
	wrong := w.child("stripes") != nil && stripes.IsZero()
	if stripes.IsZero() && !threading.IsZero() && threading.Filler() == 0 {
		return true
	}
	return wrong || !stripes.IsZero() && stripes.Filler() == 0
}

// checkSett reports a plan from which no sett can be had: none is given, nor a
// reed with its sleying order, and the yarn of the warp has no grist to propose
// one from.
func (d *decoder) checkSett(top table) {
	w := top.at("warp")
	if w != nil && w.kind != tableKind {
		return
	}
	given := w.child("sett") != nil || w.child("sleying") != nil && (w.child("reed") != nil || top.at("loom").child("reeds") != nil) || top.at("built").child("sett") != nil || d.sought("warp.sett")
	if !given && !d.hasGrist(d.warpYarn()) {
		d.missing("sett.none", "warp.sett")
	}
}

// warpYarn gives the name of the yarn that decides the sett: the yarn of the
// warp, else the first of its stripes, else the first of the file.
func (d *decoder) warpYarn() string {
	names := slices.Concat([]string{d.plan.Warp.Yarn}, d.plan.Warp.Stripes.Names(), d.yarns, []string{""})
	if names[0] == "" {
		return names[1]
	}
	return names[0]
}

// hasGrist reports whether the thickness of a yarn is known, by its grist or by
// wraps that touch. A yarn that is
// unknown, or of which something was said wrongly, has its own problem.
func (d *decoder) hasGrist(name string) bool {
	i := slices.IndexFunc(d.plan.Yarns, func(y yarn.Yarn) bool { return y.Name == name })
	if i < 0 {
		return name != ""
	}
	n, y := d.top.child("yarns").child(name), d.plan.Yarns[i]
	wrong := n.child("count") != nil && !y.Count.Given() || n.child("wraps") != nil && !y.Wraps.Given() ||
		n.child("skein") != nil && y.Skein.Grist().IsZero()
	_, _, touching := y.Wraps.Is.Diameters()
	return wrong || touching || !y.Grist().IsZero()
}

// checkLinks reports allowances that say the same loss twice.
func (d *decoder) checkLinks(top table) {
	t := table{d: d, name: linksTable, n: top.at("allowances")}
	t.checkLinks(d.plan.Allowances, nil)
	for i, p := range d.plan.Pieces {
		if len(p.Allowances) > 0 {
			own := top.at("pieces").items[i].child("allowances")
			table{d: d, name: pieceLinks, n: own}.checkLinks(p.Allowances, d.plan.Allowances)
		}
	}
}

// checkLinks looks at the allowances of a table, which stand in for others of
// the same key and join the rest of them.
func (t table) checkLinks(own, others warp.Allowances) {
	slack := t.d.plan.Tape == warp.Slackened
	if relaxation, given := own["relaxation"]; slack && given && !relaxation.None {
		t.failKey("relaxation.slackened", "relaxation", nil)
	}
	for _, lengths := range []bool{true, false} {
		links := linksOf(lengths, own, others)
		if slack && lengths {
			links = slackened(links)
		}
		if circle := circleIn(links); circle != nil {
			t.failKey("allowance.twice", lastOwn(circle, own), problem.Args{"keys": circle})
		}
	}
}

// lastOwn gives the last key of a circle that the table itself holds.
func lastOwn(circle []string, own warp.Allowances) string {
	for _, key := range slices.Backward(circle) {
		if _, ok := own[key]; ok {
			return key
		}
	}
	return circle[0]
}
