package reckon

import "sley/internal/trade/qty"

// Op is one operation of a formula.
type Op int

// The operations. ToUp, ToDown and ToNearest make the first argument a
// multiple of the second.
const (
	Leaf Op = iota
	Plus
	Minus
	Times
	Over
	ToUp
	ToDown
	ToNearest
	Larger
	Smaller
	Root
)

// Expr is a formula: an operation on parts, or a leaf with a figure. A leaf
// that stands for another node carries its id.
type Expr struct {
	Op   Op
	Args []*Expr
	Leaf Figure
	Node string
}

// Eval works the formula out, with see deciding what each leaf is read as: the
// exact figure, or the figure as printed.
func (e *Expr) Eval(see func(Figure) qty.Rat) qty.Rat {
	if e.Op == Leaf {
		return see(e.Leaf)
	}
	value := e.Args[0].Eval(see)
	if e.Op == Root {
		return root(value)
	}
	for _, arg := range e.Args[1:] {
		value = apply(e.Op, value, arg.Eval(see))
	}
	return value
}

func apply(op Op, a, b qty.Rat) qty.Rat {
	switch op {
	case Plus:
		return a.Add(b)
	case Minus:
		return a.Sub(b)
	case Times:
		return a.Mul(b)
	case Over:
		return a.Div(b)
	case ToUp:
		return a.To(b, qty.Up)
	case ToDown:
		return a.To(b, qty.Down)
	case ToNearest:
		return a.To(b, qty.Nearest)
	case Larger:
		return qty.Max(a, b)
	}
	return qty.Min(a, b)
}

// Leaves calls visit for every leaf, left to right.
func (e *Expr) Leaves(visit func(*Expr)) {
	if e.Op == Leaf {
		visit(e)
		return
	}
	for _, arg := range e.Args {
		arg.Leaves(visit)
	}
}

// term is a figure on its way into a node, with the formula that gave it when
// workings are wanted.
type term struct {
	Figure
	expr *Expr
}

// calc does the arithmetic of a reckoning; with show off no formula is kept.
type calc struct{ show bool }

func (c calc) leaf(f Figure, node string) term {
	if !c.show {
		return term{Figure: f}
	}
	return term{f, &Expr{Leaf: f, Node: node}}
}

// plain is a leaf that no node stands for: a number of the formula itself.
func (c calc) plain(f Figure) term { return c.leaf(f, "") }

func (c calc) do(op Op, kind Kind, a term, rest ...term) term {
	value := a.Is
	for _, b := range rest {
		value = apply(op, value, b.Is)
	}
	out := term{Figure: Figure{Is: value, Kind: kind, Currency: a.Currency}}
	if c.show {
		out.expr = join(op, a, rest)
	}
	return out
}

// join builds the formula of op over the parts; a sum of sums and a product of
// products is written flat.
func join(op Op, a term, rest []term) *Expr {
	e := &Expr{Op: op}
	if a.expr.Op == op && (op == Plus || op == Times) {
		e.Args = append(e.Args, a.expr.Args...)
	} else {
		e.Args = append(e.Args, a.expr)
	}
	for _, b := range rest {
		e.Args = append(e.Args, b.expr)
	}
	return e
}

func (c calc) add(a term, rest ...term) term { return c.do(Plus, a.Kind, a, rest...) }
func (c calc) sub(a term, rest ...term) term { return c.do(Minus, a.Kind, a, rest...) }

// mul and div give a figure of the kind named.
func (c calc) mul(kind Kind, a term, rest ...term) term { return c.do(Times, kind, a, rest...) }
func (c calc) div(kind Kind, a term, rest ...term) term { return c.do(Over, kind, a, rest...) }

// to makes a a multiple of step; a step of 0 leaves it exact.
func (c calc) to(a, step term, r qty.Rounding) term {
	if step.Is.IsZero() {
		return a
	}
	return c.do(rounded(r), a.Kind, a, step)
}

func rounded(r qty.Rounding) Op {
	switch r {
	case qty.Up:
		return ToUp
	case qty.Down:
		return ToDown
	}
	return ToNearest
}

// whole makes a a whole number of things.
func (c calc) whole(a term, r qty.Rounding) term {
	return c.to(a, c.plain(count(1, a.Kind)), r)
}

func (c calc) sum(kind Kind, terms []term) term {
	if len(terms) == 0 {
		return c.plain(figure(qty.Rat{}, kind))
	}
	out := terms[0]
	if len(terms) > 1 {
		out = c.add(out, terms[1:]...)
	}
	out.Kind = kind
	return out
}

// root gives the square root to within 1e-12 of itself; square roots are the
// only figures of a reckoning that are not exact.
func root(r qty.Rat) qty.Rat { return qty.FromFloat(sqrt(r.Float())) }
