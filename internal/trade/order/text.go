package order

import (
	"math/bits"
	"strconv"
	"strings"
)

// String gives the order in its shortest usual spelling: no brackets and no
// suffixes that change nothing, names before counts, densities as typed, named
// groups by name. Read against the same names and groups it is the same order.
// An order that could not be read gives its text.
func (o Order) String() string {
	if o.tree == nil {
		return o.Text
	}
	w := writing{tree: o.tree}
	w.row(o.tree.parts)
	return w.String()
}

type writing struct {
	strings.Builder
	tree *tree
}

// row writes parts one after another: a comma between them, a space between
// shafts.
func (w *writing) row(parts []int) {
	for i, id := range parts {
		switch {
		case i == 0:
		case w.number(parts[i-1]) && w.number(id):
			w.WriteString(" ")
		default:
			w.WriteString(", ")
		}
		w.part(id)
	}
}

// number reports whether a part is written as numbers alone.
func (w *writing) number(id int) bool {
	form := w.tree.nodes[id].form
	return form == ends || form == stripe && w.tree.kind == Treadles
}

func (w *writing) part(id int) {
	n := &w.tree.nodes[id]
	switch n.form {
	case stripe:
		w.stripe(w.tree.sorts[n.sort], n.count)
	case ends:
		w.ends(n.a, n.b)
	case group:
		w.WriteString(n.name)
	case row:
		w.WriteString("(")
		w.row(n.kids)
		w.WriteString(")")
	default:
		w.part(n.kids[0])
		w.WriteString(n.suffix())
	}
}

func (n *node) suffix() string {
	switch n.form {
	case times:
		return " x " + strconv.Itoa(n.count)
	case filled:
		return " x fill"
	}
	return " mirrored" + [...]string{once: "", joined: " open", doubled: " doubled"}[n.turn]
}

func (w *writing) stripe(run Run, count int) {
	if w.tree.kind == Treadles {
		w.set(run.Set)
		return
	}
	w.WriteString(run.Name + " " + strconv.Itoa(count))
	if run.Density.Given() {
		w.WriteString(" at " + run.Density.Typed)
	}
	if run.Beam != 0 {
		w.WriteString(" on beam " + strconv.Itoa(run.Beam))
	}
}

// set writes treadles that are pressed at once, 1+3.
func (w *writing) set(set uint64) {
	for mark := ""; set != 0; set &= set - 1 {
		w.WriteString(mark + strconv.Itoa(bits.TrailingZeros64(set)+1))
		mark = "+"
	}
}

func (w *writing) ends(a, b int) {
	w.WriteString(strconv.Itoa(a))
	if a != b {
		w.WriteString("-" + strconv.Itoa(b))
	}
}
