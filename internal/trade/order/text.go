package order

import (
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
		case w.tree.nodes[parts[i-1]].form == ends && w.tree.nodes[id].form == ends:
			w.WriteString(" ")
		default:
			w.WriteString(", ")
		}
		w.part(id)
	}
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
	w.WriteString(run.Name + " " + strconv.Itoa(count))
	if run.Density.Given() {
		w.WriteString(" at " + run.Density.Typed)
	}
	if run.Beam != 0 {
		w.WriteString(" on beam " + strconv.Itoa(run.Beam))
	}
}

func (w *writing) ends(a, b int) {
	w.WriteString(strconv.Itoa(a))
	if a != b {
		w.WriteString("-" + strconv.Itoa(b))
	}
}
