package planfile

import (
	"slices"
	"unicode/utf8"

	"sley/internal/trade/problem"
	"sley/internal/trade/warp"
)

// Paths are those of problems: pieces[0].length, yarns.white.count. A key with a
// full stop or a bracket inside stands in quotes, yarns."a.b".count; see
// problem.Path.

// Get gives the value at a path, and false when there is none or the path is not
// one. The empty path is that of the whole document.
func (d *Document) Get(path string) (Value, bool) {
	n := d.top.follow(path)
	if n == nil {
		return Value{}, false
	}
	return Value{n.copy().settled()}, true
}

// Set writes a value at a path, in the place of what stands there. Tables on the
// way that are not there are made, and an index just beyond the end of a list
// makes it longer. A new key of the format goes where the format has it, another
// to the end. The error is a *Fault, and then nothing was changed.
func (d *Document) Set(path string, v Value) error { return d.write(path, v, false) }

// Insert writes a value into a list, in front of the item that has the path now,
// or at the end. What find.what and built.woven say of pieces keeps meaning the
// same ones.
func (d *Document) Insert(path string, v Value) error { return d.write(path, v, true) }

func (d *Document) write(path string, v Value, between bool) error {
	steps, bad := mayWrite(path, v, between)
	if bad != nil {
		return bad
	}
	n, rest, bad := d.way(steps)
	if bad != nil {
		return bad
	}
	grown := *d
	grown.size += len(v.JSON()) + 8*len(path) + 8
	if grown.size > largest/swelling { // it may turn out too large, and then this one stays
		grown.top = d.top.copy()
		n, rest, _ = grown.way(steps)
	}
	if last := len(steps) - 1; between && len(rest) == 0 {
		grown.renumber(steps, func(i int) int { return i + one(i >= steps[last].Index) })
		n, rest = n.parent, steps[last:]
	}
	put(n, rest, grown.tableOf(n), v.n.copy())
	if bad := grown.tooLarge(); bad != nil {
		return bad
	}
	*d = grown
	d.src = nil
	return nil
}

// one counts what is so.
func one(so bool) int {
	if so {
		return 1
	}
	return 0
}

// mayWrite takes the path apart and looks whether the value may stand there.
func mayWrite(path string, v Value, between bool) (problem.Path, *Fault) {
	steps, err := problem.ParsePath(path)
	switch {
	case err != nil:
		return nil, syntaxFault(path, err)
	case len(steps) == 0:
		return nil, faultOf("path.empty", "", path, nil)
	case between && !steps[len(steps)-1].Item:
		return nil, faultOf("path.item", steps.String(), path, nil)
	case v.IsZero():
		return nil, faultOf("value.none", steps.String(), "", nil)
	case len(steps)+v.n.height() > deepest:
		return nil, deepFault(steps.String())
	case !v.n.valid():
		return nil, faultOf("text.not-utf8", steps.String(), "", nil)
	}
	return steps, newerVersion(steps, v.n)
}

// newerVersion is the fault of a version that would keep the document from being
// read again.
func newerVersion(steps problem.Path, n *node) *Fault {
	if len(steps) != 1 || steps[0].Key != "sley" || n.kind != wholeKind {
		return nil
	}
	if version, ok := wholeNumber(n.text); ok && version <= warp.Format {
		return nil
	}
	return faultOf("format.newer", "sley", n.text, problem.Args{"most": warp.Format})
}

// height counts the levels below n.
func (n *node) height() int {
	most := 0
	for _, c := range n.items {
		most = max(most, 1+c.height())
	}
	return most
}

// valid reports whether every text and key below n is UTF-8.
func (n *node) valid() bool {
	return utf8.ValidString(n.text) && utf8.ValidString(n.key) &&
		!slices.ContainsFunc(n.items, func(c *node) bool { return !c.valid() })
}

// way follows the steps as far as the document has them, and gives the rest;
// what is in the way of the rest is a fault.
func (d *Document) way(steps problem.Path) (*node, problem.Path, *Fault) {
	n := d.top
	for i, s := range steps {
		if bad := passable(n, s, steps[:i], steps[:i+1]); bad != nil {
			return nil, nil, bad
		}
		next := n.step(s)
		if next == nil {
			return n, steps[i:], startsLists(steps, i)
		}
		n = next
	}
	return n, nil, nil
}

// passable looks whether a step can go on from n, which stands at a path.
func passable(n *node, s problem.Step, at, to problem.Path) *Fault {
	switch {
	case n.kind == listKind && !s.Item:
		return faultOf("path.list", at.String(), s.Key, nil)
	case n.kind == tableKind && s.Item:
		return faultOf("path.table", at.String(), to.String(), nil)
	case n.kind != listKind && n.kind != tableKind:
		return faultOf("path.through", at.String(), n.text, problem.Args{"found": n.kind.String()})
	case s.Item && s.Index > len(n.items):
		return faultOf("path.index", to.String(), to.String(), problem.Args{"length": len(n.items)})
	}
	return nil
}

// startsLists looks whether every list that is to be made begins with its first
// item; the step at missing is the first that is not there.
func startsLists(steps problem.Path, missing int) *Fault {
	for i := missing + 1; i < len(steps); i++ {
		if steps[i].Item && steps[i].Index > 0 {
			to := steps[:i+1].String()
			return faultOf("path.index", to, to, problem.Args{"length": 0})
		}
	}
	return nil
}

// put writes v at the end of the rest of a path below n, whose keys are kept
// under the name of the table; with no rest in the place of n.
func put(n *node, rest problem.Path, table string, v *node) {
	if len(rest) == 0 {
		n.become(v)
		return
	}
	c := v
	if len(rest) > 1 {
		c = &node{kind: tableKind, made: closed, inside: -1}
		if rest[1].Item {
			c.kind = listKind
		}
	}
	if s := rest[0]; s.Item {
		n.putAt(s.Index, c)
	} else {
		c.key = s.Key
		n.putAt(n.spot(s.Key, table), c)
		table = below(table, c)
	}
	if len(rest) > 1 {
		put(c, rest[1:], table, v)
	}
}

// become gives n the value v, whose items it takes.
func (n *node) become(v *node) {
	n.kind, n.made, n.text, n.inside, n.items, n.byKey = v.kind, closed, v.text, -1, nil, nil
	for _, c := range v.items {
		n.add(c)
	}
}

// spot gives the index at which a new key goes into a table: behind the last key
// that the format has before it.
func (n *node) spot(key, table string) int {
	format := keys[table]
	rank := slices.Index(format, key)
	if rank < 0 {
		return len(n.items)
	}
	for i, c := range slices.Backward(n.items) {
		if other := slices.Index(format, c.key); other >= 0 && other < rank {
			return i + 1
		}
	}
	return 0
}

// putAt adds c as the item of that index.
func (n *node) putAt(i int, c *node) {
	n.add(c)
	copy(n.items[i+1:], n.items[i:])
	n.items[i] = c
	n.count(i)
}

// count numbers the items from one on.
func (n *node) count(from int) {
	for i := from; i < len(n.items); i++ {
		n.items[i].index = i
	}
}

// tableOf gives the name under which the keys of n are kept.
func (d *Document) tableOf(n *node) string {
	if n.parent == nil {
		return d.table
	}
	above := d.tableOf(n.parent)
	if n.parent.kind == listKind {
		return above
	}
	return below(above, n)
}
