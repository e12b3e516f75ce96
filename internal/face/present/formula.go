package present

import (
	"strings"

	"sley/internal/engine/reckon"
	"sley/internal/trade/qty"
)

// Formula writes a node's formula with its figures in it. Figures that come
// from other nodes are shown with as many digits as make the formula come to
// the value shown, at least as many as the figure itself shows.
func (u Units) Formula(n reckon.Node) string {
	if n.Formula == nil {
		return ""
	}
	more := u.enough(n)
	return write(n.Formula, 0, func(leaf *reckon.Expr) string {
		return u.digits(leaf.Leaf, u.places(leaf.Leaf)+more)
	})
}

// mostDigits is where Formula stops adding digits.
const mostDigits = 12

// enough finds how many more digits than usual the figures of n's formula need
// for it to come to n's value to the digits shown.
func (u Units) enough(n reckon.Node) int {
	digits := u.places(n.Figure)
	want := u.cut(n.Figure, digits)
	for more := 0; more < mostDigits; more++ {
		f := n.Figure
		f.Is = n.Formula.Eval(func(leaf reckon.Figure) qty.Rat { return u.cut(leaf, u.places(leaf)+more) })
		if u.cut(f, digits).Equal(want) {
			return more
		}
	}
	return mostDigits
}

// cut gives a figure as it reads with that many digits after the point.
func (u Units) cut(f reckon.Figure, digits int) qty.Rat {
	value, _ := u.unitOf(f)
	if value.IsZero() {
		return qty.Rat{}
	}
	scale := qty.Int(1)
	for range digits {
		scale = scale.Mul(qty.Int(10))
	}
	return f.Is.Div(value).Mul(value.Mul(scale).Whole(qty.Nearest).Div(scale))
}

var signs = map[reckon.Op]string{
	reckon.Plus: " + ", reckon.Minus: " − ", reckon.Times: " × ", reckon.Over: " ÷ ",
}

var names = map[reckon.Op]string{
	reckon.ToUp: "up", reckon.ToDown: "down", reckon.ToNearest: "nearest",
	reckon.Larger: "larger of ", reckon.Smaller: "smaller of ", reckon.Root: "√",
}

// rank is how tightly an operation binds.
func rank(op reckon.Op) int {
	switch op {
	case reckon.Plus, reckon.Minus:
		return 1
	case reckon.Times, reckon.Over:
		return 2
	}
	return 3
}

// speller writes a leaf of a formula.
type speller func(leaf *reckon.Expr) string

// write writes e inside an operation of rank outer.
func write(e *reckon.Expr, outer int, say speller) string {
	if e.Op == reckon.Leaf {
		return say(e)
	}
	if _, named := names[e.Op]; named {
		return call(e, say)
	}
	parts := make([]string, len(e.Args))
	for i, arg := range e.Args {
		inner := rank(e.Op)
		if i > 0 && e.Op != reckon.Plus {
			inner++
		}
		parts[i] = write(arg, inner, say)
	}
	text := strings.Join(parts, signs[e.Op])
	if rank(e.Op) < outer {
		return "(" + text + ")"
	}
	return text
}

// call writes up(x), up(x to step), larger of(a, b), √(x).
func call(e *reckon.Expr, say speller) string {
	first := write(e.Args[0], 0, say)
	switch e.Op {
	case reckon.Root:
		return names[e.Op] + "(" + first + ")"
	case reckon.Larger, reckon.Smaller:
		for _, arg := range e.Args[1:] {
			first += ", " + write(arg, 0, say)
		}
		return strings.TrimSpace(names[e.Op]) + "(" + first + ")"
	}
	step := e.Args[1].Leaf
	if step.Kind.Dimension() == (reckon.Dimension{}) && step.Is.Equal(qty.Int(1)) {
		return names[e.Op] + "(" + first + ")"
	}
	return names[e.Op] + "(" + first + " to " + write(e.Args[1], 0, say) + ")"
}
