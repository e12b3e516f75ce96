package present

import (
	"strings"

	"sley/internal/engine/reckon"
	"sley/internal/trade/qty"
)

// step says one figure.
func (c *courser) step(s *spot) Step {
	n := s.node
	out := Step{
		ID: n.ID, Line: s.line, Number: c.numberOf(s), Label: c.labelIn(s, s), Form: c.formLabel(s, s), Value: c.u.Bench(n),
		State: n.State.String(), How: c.how(n), Derived: n.Formula != nil, Unit: c.unitWanted(n), Place: s.place,
	}
	if strings.Contains(out.Label, out.State) {
		out.State = "" // the label says it
	}
	if of := c.owners(s.kind); of > 1 && s.owner > 0 {
		out.Owner, out.Of = s.owner, of
	}
	if strings.HasPrefix(n.Says(), "pieces[].marks[]") {
		out.Way = strings.ReplaceAll(markText(n), "{yarn}", "a colour")
	}
	if n.Origin == reckon.Default {
		out.Usual = c.u.span(n)
	}
	if cited(n) {
		out.Source = c.sourceOf(n.Source)
	}
	if n.Formula != nil {
		out.Words, out.Ask, out.Figures = c.inWords(s, false), c.inWords(s, true), c.inFigures(n)
	}
	return out
}

// sourceOf numbers the sources in the order in which they are met.
func (c *courser) sourceOf(id string) int {
	if c.sources[id] == 0 {
		c.sources[id] = len(c.sources) + 1
	}
	return c.sources[id]
}

// how says how a figure is known that was not worked out.
func (c *courser) how(n reckon.Node) string {
	switch n.Origin {
	case reckon.Default:
		return "usual: " + c.u.span(n)
	case reckon.AsBuilt:
		return "as built"
	case reckon.Found:
		return "found backwards"
	case reckon.Reckoned:
		if n.About.Order != "" && !strings.HasPrefix(n.ID, "sley.") {
			return "reed " + n.About.Reed + ", " + inDents(n.About.Order)
		}
		return ""
	}
	if n.Typed == "" || bare(n.Typed) == bare(c.u.Bench(n)) {
		return ""
	}
	return "written " + short(n.Typed)
}

// bare is a text without spaces, to see whether two say the same.
func bare(text string) string { return strings.Join(strings.Fields(text), "") }

// inFigures is the formula with figures and what it comes to. A figure that is
// another's says no more than its words.
func (c *courser) inFigures(n reckon.Node) string {
	switch {
	case n.Formula.Op != reckon.Leaf:
		n.Formula = c.folded(n.Formula)
		return c.u.Formula(n) + " = " + c.u.Exact(n.Figure)
	case n.Formula.Node != "":
		return ""
	}
	return c.u.Exact(n.Figure)
}

// mostTerms is how many terms of a sum are written out one by one.
const mostTerms = 24

// folded writes the equal terms of a long sum as so many times the term: a warp of
// hundreds of stripes has hundreds.
func (c *courser) folded(e *reckon.Expr) *reckon.Expr {
	if e.Op != reckon.Plus || len(e.Args) <= mostTerms {
		return e
	}
	var order []string
	equal := map[string][]*reckon.Expr{}
	for _, term := range e.Args {
		text := write(term, 0, func(leaf *reckon.Expr) string { return leaf.Leaf.Is.String() + c.u.Exact(leaf.Leaf) })
		if equal[text] == nil {
			order = append(order, text)
		}
		equal[text] = append(equal[text], term)
	}
	out := &reckon.Expr{Op: reckon.Plus}
	for _, text := range order {
		out.Args = append(out.Args, timesOver(equal[text][0], len(equal[text])))
	}
	if len(out.Args) == 1 {
		return out.Args[0]
	}
	return out
}

// timesOver is n × a term; the term itself where n is 1.
func timesOver(term *reckon.Expr, n int) *reckon.Expr {
	if n == 1 {
		return term
	}
	times := &reckon.Expr{Leaf: reckon.Figure{Is: qty.Int(int64(n))}}
	return &reckon.Expr{Op: reckon.Times, Args: []*reckon.Expr{times, term}}
}

// unitWanted is what a figure of the node's kind is written in by hand.
func (c *courser) unitWanted(n reckon.Node) string {
	_, unit := c.u.unitOf(n.Figure)
	return strings.TrimSpace(unit)
}
