package app

import (
	"io/fs"

	"sley/internal/edge/planfile"
	"sley/internal/edge/wif"
	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

// ErrNoDraft is what a warp without a draft has beside it: no such file.
var ErrNoDraft = fs.ErrNotExist

// unread is the problem of a tree that cannot be read, which only damage makes.
func unread(path string, err error) *problem.List {
	list := &problem.List{}
	list.Fail("document.unreadable", path, "", problem.Args{"error": err.Error()})
	return list
}

// yarn reads a yarn of the shelf.
func (b *body) yarn() (yarn.Yarn, *problem.List) {
	tree, err := part{at: &b.Yarn}.tree()
	if err != nil {
		return yarn.Yarn{}, unread("", err)
	}
	y, list := planfile.ReadYarn(yarnKey, tree)
	y.Name = b.Name
	return y, list
}

// yarnKey stands for the name of a yarn on the shelf, which may be called anything.
const yarnKey = "yarn"

// loom reads a loom with the board or mill its warps are wound on.
func (b *body) loom() (loom.Loom, warp.Winding, *problem.List) {
	var trees [2]*planfile.Document
	for i, p := range b.parts(record.Loom) {
		tree, err := p.tree()
		if err != nil {
			return loom.Loom{}, warp.Winding{}, unread(p.before, err)
		}
		trees[i] = tree
	}
	winding, found := planfile.ReadWinding(trees[0])
	list := &problem.List{}
	list.Append(below("winding", found))
	l, found := planfile.ReadLoom(trees[1])
	list.Append(found)
	return l, winding, list
}

// below puts a part's name before the paths of its problems.
func below(name string, found *problem.List) *problem.List {
	list := &problem.List{}
	for _, p := range found.All() {
		if p.Path != "" {
			p.Path = name + "." + p.Path
		}
		list.Add(p)
	}
	return list
}

// draft reads a draft of the shelf, once for each text: one action asks for it several
// times. What it gives is only read.
func (b *body) draft() (*draft.Draft, *problem.List) {
	if b.WIF == nil {
		return nil, unread("wif", ErrNoDraft)
	}
	if b.drawn == nil || b.drawn.of != *b.WIF {
		file, list := wif.Decode(b.WIF.Name, []byte(b.WIF.Text))
		b.drawn = &decoded{of: *b.WIF, list: list}
		if !list.Failed() {
			b.drawn.draft = file.Draft
		}
	}
	return b.drawn.draft, b.drawn.list
}

// decoded is an interchange text that was read.
type decoded struct {
	of    text
	draft *draft.Draft // nil when the text has errors
	list  *problem.List
}
