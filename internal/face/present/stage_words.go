package present

import (
	"strings"

	"sley/internal/engine/reckon"
)

// inWords writes a formula for people to follow: other figures by number and
// name, and the numbers that no figure has in words where they are the plan's own.
// For any plan, the names of this one are left out.
func (c *courser) inWords(s *spot, form bool) string {
	w := &worder{courser: c, spot: s, form: form, said: map[*reckon.Expr]string{}}
	e := w.told(s.node.Formula, slot{op: -1})
	text := write(e, 0, w.leaf)
	if e.Op == reckon.Leaf && e.Node != "" {
		return "the same as " + text
	}
	return text
}

// worder writes the formula of one step.
type worder struct {
	*courser
	spot *spot
	form bool
	said map[*reckon.Expr]string // leaves that have words of their own
}

// slot is where a leaf stands in its formula, and what it counts.
type slot struct {
	op   reckon.Op
	arg  int
	kind reckon.Kind
}

// told gives a formula whose plain numbers have their words, and where the terms
// of a sum that are alike are told once.
func (w *worder) told(e *reckon.Expr, at slot) *reckon.Expr {
	if e.Op == reckon.Leaf {
		if _, ok := w.at[e.Node]; ok {
			return e
		}
		at.kind = e.Leaf.Kind
		if text := plainWords(w.spot.node, at); text != "" {
			out := &reckon.Expr{Leaf: e.Leaf}
			w.said[out] = text
			return out
		}
		return e
	}
	out := &reckon.Expr{Op: e.Op}
	for i, arg := range e.Args {
		out.Args = append(out.Args, w.told(arg, slot{op: e.Op, arg: i}))
	}
	if e.Op == reckon.Plus {
		out.Args = w.once(out.Args)
		if len(out.Args) == 1 {
			return out.Args[0]
		}
	}
	return out
}

// once tells the first of the terms that are alike and says of the others whose
// they are; terms of a sum may stand in any order.
func (w *worder) once(terms []*reckon.Expr) []*reckon.Expr {
	var order []string
	alike := map[string][]*reckon.Expr{}
	for _, e := range terms {
		pattern := w.pattern(e)
		if alike[pattern] == nil {
			order = append(order, pattern)
		}
		alike[pattern] = append(alike[pattern], e)
	}
	var out []*reckon.Expr
	for _, pattern := range order {
		group := alike[pattern]
		out = append(out, group[0])
		if text := w.others(group[1:]); text != "" {
			more := &reckon.Expr{}
			w.said[more] = text
			out = append(out, more)
		}
	}
	return out
}

// pattern is a term with the lines of its figures in place of them.
func (w *worder) pattern(e *reckon.Expr) string {
	return write(e, 0, func(leaf *reckon.Expr) string {
		if text, ok := w.said[leaf]; ok {
			return text
		}
		if s, ok := w.at[leaf.Node]; ok {
			return "[" + number(s.line) + "]"
		}
		return w.u.Exact(leaf.Leaf)
	})
}

// others says of terms that are alike whose they are: the same for B to D. Terms
// without figures of their own are in the words of the first.
func (w *worder) others(terms []*reckon.Expr) string {
	var whose []*spot
	for _, e := range terms {
		if s := w.owned(e); s != nil {
			whose = append(whose, s)
		}
	}
	switch {
	case len(terms) == 0 || !w.reads(terms[0]):
		return ""
	case w.form:
		return "the same for each other"
	case len(whose) == 0:
		return "the same for the others"
	}
	return "the same for " + w.runs(whose)
}

// runs names those that figures are of, runs of three and more by their ends.
func (w *worder) runs(whose []*spot) string {
	var parts []string
	for len(whose) > 0 {
		n := 1
		for n < len(whose) && whose[n].follows(whose[n-1]) {
			n++
		}
		run := whose[:n]
		whose = whose[n:]
		if n > 2 {
			parts = append(parts, w.mark(run[0])+" to "+w.mark(run[n-1]))
			continue
		}
		for _, s := range run {
			parts = append(parts, w.mark(s))
		}
	}
	return strings.Join(parts, ", ")
}

// reads reports whether a term has a figure of its own.
func (w *worder) reads(e *reckon.Expr) bool {
	found := false
	e.Leaves(func(leaf *reckon.Expr) {
		_, ok := w.at[leaf.Node]
		found = found || ok
	})
	return found
}

// follows reports whether a figure is the next one's along a list, or of the next
// piece or yarn.
func (s *spot) follows(t *spot) bool {
	if s.place > 0 {
		return s.owner == t.owner && s.place == t.place+1
	}
	return s.owner == t.owner+1
}

// owned is the first figure of a term that is one of several.
func (w *worder) owned(e *reckon.Expr) *spot {
	var out *spot
	e.Leaves(func(leaf *reckon.Expr) {
		if s, ok := w.at[leaf.Node]; ok && out == nil && (s.place > 0 || w.letter(s) != "") {
			out = s
		}
	})
	return out
}

// mark is the letter of a figure, or in a list its number.
func (w *worder) mark(s *spot) string {
	if s.place > 0 {
		return w.numberOf(s)
	}
	return w.letter(s)
}

// leaf writes one figure of a formula.
func (w *worder) leaf(e *reckon.Expr) string {
	if text, ok := w.said[e]; ok {
		return text
	}
	s, ok := w.at[e.Node]
	if !ok {
		return w.u.digits(e.Leaf, w.u.places(e.Leaf))
	}
	if w.form {
		return "[" + w.numberFor(s) + " " + w.formLabel(s, w.spot) + "]"
	}
	return "[" + w.numberOf(s) + " " + w.labelIn(s, w.spot) + "]"
}

// numberFor is the number of another figure on a form, which has a line for all
// pieces or yarns: the letter stands where it is another's.
func (w *worder) numberFor(s *spot) string {
	text := number(s.line)
	if s.owner != w.spot.owner || s.kind != w.spot.kind {
		text += w.letter(s)
	}
	return text
}
