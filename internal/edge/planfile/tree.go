package planfile

import (
	"strconv"

	"sley/internal/trade/problem"
)

// kind is what a value of the file is.
type kind int

const (
	tableKind kind = iota
	listKind
	textKind
	wholeKind
	decimalKind
	truthKind
	dateKind
	otherKind // times and the like, which no key wants
)

// making says how a table came into the file, which decides whether it may be
// added to later.
type making int

const (
	byHeader  making = iota // [warp]
	byTheWay                // the warp of [warp.second-beam]
	byDots                  // the warp of warp.sett = "24 epi"
	closed                  // { ... }, a value that nothing can be added to
	byHeaders               // the list of [[pieces]]
)

// node is one value of the file with its key and the place of both.
type node struct {
	kind   kind
	made   making
	key    string
	index  int // in a list
	parent *node
	text   string // a text without its quotes, or the value as written
	keyAt  span
	at     span
	inside int // where the text's first character stands; -1 when escapes hide it
	items  []*node
	byKey  map[string]*node // only of large tables
}

// few is the size up to which a table is searched from end to end.
const few = 16

// child gives the value under the key, or nil.
func (n *node) child(key string) *node {
	if n == nil || n.kind != tableKind {
		return nil
	}
	if n.byKey != nil {
		return n.byKey[key]
	}
	for _, c := range n.items {
		if c.key == key {
			return c
		}
	}
	return nil
}

// add appends c to a table or list.
func (n *node) add(c *node) {
	c.parent, c.index = n, len(n.items)
	n.items = append(n.items, c)
	if n.kind == tableKind && len(n.items) > few {
		n.keep()
	}
}

func (n *node) keep() {
	if n.byKey != nil {
		last := n.items[len(n.items)-1]
		n.byKey[last.key] = last
		return
	}
	n.byKey = map[string]*node{}
	for _, c := range n.items {
		n.byKey[c.key] = c
	}
}

// path gives the way from the top of the file: pieces[2].width.
func (n *node) path() string {
	if n == nil || n.parent == nil {
		return ""
	}
	above := n.parent.path()
	if n.parent.kind == listKind {
		return above + "[" + strconv.Itoa(n.index) + "]"
	}
	return join(above, n.key)
}

func join(above, key string) string { return problem.JoinPath(above, key) }

// depth counts the nodes above n.
func (n *node) depth() int {
	depth := 0
	for up := n.parent; up != nil; up = up.parent {
		depth++
	}
	return depth
}
