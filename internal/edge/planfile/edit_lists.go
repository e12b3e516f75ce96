package planfile

import (
	"fmt"
	"slices"
	"strconv"

	"sley/internal/trade/problem"
)

// Remove takes the value at a path out, with its key; items behind it move up.
// It reports whether there was one. The whole document is not removed. What
// find.what and built.woven say of the pieces behind it keeps meaning the same
// ones; what they say of the piece itself then points beyond the last, which is a
// problem of the plan.
func (d *Document) Remove(path string) bool {
	n := d.top.follow(path)
	if n == nil || n.parent == nil {
		return false
	}
	list, at := n.parent, n.index
	if steps, _ := problem.ParsePath(path); list.kind == listKind {
		d.renumber(steps, func(i int) int {
			if i == at {
				return len(list.items) - 1
			}
			return i - one(i > at)
		})
	}
	list.items = slices.Delete(list.items, at, at+1)
	delete(list.byKey, n.key)
	list.count(at)
	d.src = nil
	return true
}

// Move gives the item of a list at a path another index; the others close up.
// What find.what and built.woven say of pieces keeps meaning the same ones. The
// error is a *Fault, and then nothing was changed.
func (d *Document) Move(path string, to int) error {
	steps, err := problem.ParsePath(path)
	if err != nil {
		return syntaxFault(path, err)
	}
	n := d.top.follow(path)
	switch {
	case n == nil:
		return faultOf("path.nothing", steps.String(), path, nil)
	case n.parent == nil || n.parent.kind != listKind:
		return faultOf("path.item", steps.String(), path, nil)
	case to < 0 || to >= len(n.parent.items):
		return faultOf("path.index", steps.String(), strconv.Itoa(to), problem.Args{"length": len(n.parent.items)})
	}
	list, from := n.parent, n.index
	d.renumber(steps, func(i int) int {
		if i == from {
			return to
		}
		return i - one(i > from && i <= to) + one(i < from && i >= to)
	})
	list.items = slices.Insert(slices.Delete(list.items, from, from+1), to, n)
	list.count(0)
	d.src = nil
	return nil
}

// renumber gives what is said of pieces by their index the index that they will
// have, when the path is that of an item of pieces.
func (d *Document) renumber(steps problem.Path, next func(int) int) {
	if len(steps) != 2 || steps[0].Key != piecesTable || d.table != topTable {
		return
	}
	count := len(d.top.child(piecesTable).items)
	if what := d.top.child("find").child("what"); what != nil && what.kind == textKind {
		if m := sought.FindStringSubmatch(what.text); m != nil {
			if i, _ := strconv.Atoi(m[1]); i < count {
				what.text = fmt.Sprintf("%s[%d].%s", piecesTable, next(i), m[2])
			}
		}
	}
	woven := d.top.child("built").child("woven")
	if woven == nil {
		return
	}
	for _, c := range woven.items {
		piece := c.child("piece")
		if piece == nil || piece.kind != wholeKind {
			continue
		}
		if i, ok := wholeNumber(piece.text); ok && i >= 0 && i < count {
			piece.text = strconv.Itoa(next(i))
		}
	}
}
