package planfile

import (
	"sley/internal/trade/loom"
	"sley/internal/trade/order"
	"sley/internal/trade/problem"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

// Part gives a copy of the table at a path as a document of its own: a yarn, the
// loom, how the warp is wound. It is false when no table stands there.
func (d *Document) Part(path string) (*Document, bool) {
	n := d.top.follow(path)
	if n == nil || n.kind != tableKind {
		return nil, false
	}
	table := d.tableOf(n)
	part := n.copy().settled()
	part.index = 0
	return &Document{top: part, table: table, size: d.size}, true
}

// Graft writes a copy of a part as the table at a path, as Set writes a value.
func (d *Document) Graft(path string, part *Document) error {
	return d.Set(path, Value{part.top.copy().settled()})
}

// ReadYarn reads a part that holds what stands under [yarns.NAME] in a plan
// file. Paths of problems begin at the part, as count; a name that cannot be the
// name of a yarn is a problem without a path.
func ReadYarn(name string, part *Document) (yarn.Yarn, *problem.List) {
	d := newDecoder(nil, part.top, &problem.List{})
	if !order.ValidName(name) || name == "none" {
		d.list.Fail("name.form", "", "", problem.Args{"name": name, "what": "yarn"})
	}
	y := d.yarn(part.top)
	y.Name = name
	return y, d.list
}

// ReadLoom reads a part that holds what stands under [loom] in a plan file.
// Paths of problems begin at the part, as shafts.
func ReadLoom(part *Document) (loom.Loom, *problem.List) {
	d := newDecoder(nil, part.top, &problem.List{})
	d.readLoom(part.top)
	return d.plan.Loom, d.list
}

// ReadWinding reads a part that holds what stands under [winding] in a plan
// file. Paths of problems begin at the part, as pegs[0].
func ReadWinding(part *Document) (warp.Winding, *problem.List) {
	d := newDecoder(nil, part.top, &problem.List{})
	d.readWinding(part.top)
	return d.plan.Winding, d.list
}
