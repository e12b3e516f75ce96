package planfile

import (
	"slices"
	"strings"

	"sley/internal/trade/problem"
)

// Difference is one value in which two documents differ: as people read it, or
// empty where a document has none there. Where both read alike and only one is a
// text, A and B are spelled as in a plan file.
type Difference struct {
	Path     string
	A, B     string
	InA, InB bool
	// Order says that not a value differs but the order of the names in a table
	// of the weaver's own: A and B list those that both have.
	Order bool
}

// Differences compares two documents value by value, lists by the index, in the
// order of the first and then of the second. It is empty when they are equal.
func Differences(a, b *Document) []Difference {
	c := &comparison{}
	c.both("", a.top, b.top)
	return c.found
}

type comparison struct{ found []Difference }

// both compares two values at a path; either may be nil.
func (c *comparison) both(path string, a, b *node) {
	switch {
	case a.is(tableKind) && b.is(tableKind):
		c.tables(path, a, b)
	case a.is(listKind) && b.is(listKind):
		for i := range max(len(a.items), len(b.items)) {
			step := problem.Step{Index: i, Item: true}
			c.both(itemPath(path, i), a.step(step), b.step(step))
		}
	case a.holds() || b.holds():
		c.only(path, a, true)
		c.only(path, b, false)
	default:
		c.single(path, a, b)
	}
}

func itemPath(path string, i int) string {
	return path + problem.Path{{Index: i, Item: true}}.String()
}

func (n *node) is(k kind) bool { return n != nil && n.kind == k }

// holds reports whether n is a table or list with something in it.
func (n *node) holds() bool { return n != nil && len(n.items) > 0 }

func (c *comparison) tables(path string, a, b *node) {
	if slices.Contains(ownNames, path) {
		c.order(path, a, b)
	}
	for _, in := range a.items {
		c.both(join(path, in.key), in, b.child(in.key))
	}
	for _, in := range b.items {
		if a.child(in.key) == nil {
			c.both(join(path, in.key), nil, in)
		}
	}
}

// order compares the order of the names that both tables have.
func (c *comparison) order(path string, a, b *node) {
	first, second := shared(a, b), shared(b, a)
	if !slices.Equal(first, second) {
		c.found = append(c.found, Difference{
			Path: path, A: strings.Join(first, ", "), B: strings.Join(second, ", "), InA: true, InB: true, Order: true,
		})
	}
}

func shared(a, b *node) []string {
	var names []string
	for _, c := range a.items {
		if b.child(c.key) != nil {
			names = append(names, c.key)
		}
	}
	return names
}

// only adds every single value of n, which just one document has.
func (c *comparison) only(path string, n *node, first bool) {
	if n == nil {
		return
	}
	if len(n.items) == 0 {
		if first {
			c.single(path, n, nil)
		} else {
			c.single(path, nil, n)
		}
		return
	}
	for i, in := range n.items {
		below := itemPath(path, i)
		if n.kind == tableKind {
			below = join(path, in.key)
		}
		c.only(below, in, first)
	}
}

// single compares two values that hold no others.
func (c *comparison) single(path string, a, b *node) {
	d := Difference{Path: path, InA: a != nil, InB: b != nil}
	if d.InA && d.InB && a.same(b) {
		return
	}
	if d.InA {
		d.A = a.readable()
	}
	if d.InB {
		d.B = b.readable()
	}
	if d.InA && d.InB && d.A == d.B {
		d.A, d.B = a.spelled(), b.spelled()
	}
	c.found = append(c.found, d)
}

// same reports whether two values that hold no others are the same in both
// writings.
func (n *node) same(other *node) bool {
	if (n.kind == tableKind || n.kind == listKind) || (other.kind == tableKind || other.kind == listKind) {
		return n.kind == other.kind
	}
	is, text := n.plain()
	also, others := other.plain()
	return is == also && text == others
}
