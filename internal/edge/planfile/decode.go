// Package planfile reads and writes plans as weavers type them: as a plan file, a
// small TOML text, or as a JSON document, both of version 1 as docs/planfile.md
// describes it. Either is first taken apart into a tree, which is a Document, then
// read key by key, so that every fault in it is found in one reading. The tree of
// a file knows the place of every value.
package planfile

import (
	"bytes"

	"sley/internal/trade/problem"
	"sley/internal/trade/warp"
)

// decoder reads the tree of one file into a plan.
type decoder struct {
	src   *source
	list  *problem.List
	top   *node
	plan  *warp.Plan
	yarns []string        // the names of the yarns, in the order of the file
	find  string          // what is to be found, in the place of the file's own find.what
	said  map[string]bool // faults of named groups that were reported
}

// Decode reads the text of a plan file; file is its name for messages. The
// plan is whole only when the list holds no Error: a value that could not be
// read is left unsaid. Places knows where each value stands, for the problems
// that later reckoning finds. Decode never fails in another way.
func Decode(file string, text []byte) (*warp.Plan, Places, *problem.List) {
	return DecodeFor(file, text, "")
}

// DecodeFor decodes a plan in which find is to be found, in the place of what
// the file itself looks for: what is to be found need not be written.
func DecodeFor(file string, text []byte, find string) (*warp.Plan, Places, *problem.List) {
	src, top, list := readTree(file, text)
	if top == nil {
		return &warp.Plan{}, Places{src, &node{kind: tableKind}}, list
	}
	d := newDecoder(src, top, list)
	d.find = find
	d.read()
	return d.plan, Places{src, top}, list
}

// readTree reads the text of a file into a tree; nil, with the problem, when
// that cannot be done.
func readTree(file string, text []byte) (*source, *node, *problem.List) {
	src, list := newSource(file, bytes.TrimPrefix(text, []byte("\ufeff"))), &problem.List{}
	if bad := readable(src); bad != nil {
		list.Add(*bad)
		return src, nil, list
	}
	return src, build(src, list), list
}

// newDecoder makes a decoder of a tree; src is nil when it came from no file.
func newDecoder(src *source, top *node, list *problem.List) *decoder {
	return &decoder{src: src, list: list, top: top, plan: &warp.Plan{}, said: map[string]bool{}}
}

// read reads every table of the file and then looks at the plan as a whole.
func (d *decoder) read() {
	if d.newer() {
		return
	}
	t := d.open(topTable, d.top)
	d.format(t)
	d.head(t)
	d.readYarns(t.at("yarns"))
	d.readGroups(t.at("groups"))
	d.readPieces(t.at("pieces"))
	d.plan.Allowances = d.allowances(linksTable, t.at("allowances"))
	d.readExtras(t.at("extras"))
	d.readWarp(t.at("warp"))
	d.readDraft(t.at("draft"))
	d.readWeft(t.at("weft"))
	d.readSampling(t.at("sampling"))
	d.readWinding(t.at("winding"))
	d.readLoom(t.at("loom"))
	d.readRounding(t.at("rounding"))
	d.readWork(t.at("work"))
	d.readClass(t.at("class"))
	d.readBuilt(t.at("built"))
	d.readFind(t.at("find"))
	d.check(t)
}

// newer reports a file of a later version and stops there: what its keys mean
// cannot be known.
func (d *decoder) newer() bool {
	n := d.top.child("sley")
	if n == nil || n.kind != wholeKind {
		return false
	}
	version, ok := wholeNumber(n.text)
	if ok && version <= warp.Format {
		return false
	}
	d.fail("format.newer", n, problem.Args{"most": warp.Format})
	return true
}

// format reads the version, which stands before everything else.
func (d *decoder) format(t table) {
	n := t.at("sley")
	switch {
	case n == nil:
		d.failAt("format.first", "sley", d.src.place(span{}), nil)
		return
	case d.src != nil && d.top.items[0] != n: // only a file is read from its top
		d.failAt("format.first", "sley", d.src.place(n.keyAt), nil)
	}
	d.plan.Format = t.whole("sley", 1, warp.Format).Is
}
