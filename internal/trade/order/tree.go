package order

import "sort"

// form is what a node of the tree stands for.
type form int

const (
	stripe form = iota // count threads of one sort
	ends               // one end on each shaft from a to b
	row                // its kids, one after another
	group              // its kid, called by name
	times              // its kid, count times
	turned             // its kid and then the kid's reverse
	filled             // its kid, as often as the width needs
)

// turn says which leaves stand at the turns of a mirrored part.
type turn int

const (
	once    turn = iota // the last leaf once
	joined              // and the first leaf only at the beginning
	doubled             // every leaf twice
)

// none stands for a node that could not be read.
const none = -1

// node is one part of an order. Its kids come before it in the tree.
type node struct {
	form    form
	kids    []int
	starts  []int // of a row: the leaves before each kid
	count   int   // of a stripe: threads; of times: repeats
	sort    int   // of a stripe: which of the tree's sorts
	a, b    int   // of ends: first and last shaft
	turn    turn
	name    string // of a group
	at      int    // characters into the text it was written in
	leaves  int    // stripes as written, or ends
	threads int    // at most MostThreads + 1
}

// tree is an order that has been read: its nodes, and which of them follow one
// another at the top.
type tree struct {
	kind    Kind
	nodes   []node
	sorts   []Run           // the distinct threads of an order of stripes
	numbers map[sortKey]int // of the sorts
	parts   []int
	fill    int // which of the parts fills; none if there is none
	fixed   int
	filler  int
	highest int // shaft
}

func (t *tree) add(n node) int {
	t.nodes = append(t.nodes, n)
	return len(t.nodes) - 1
}

// over makes n no more than MostThreads + 1, which stands for too many.
func over(n int64) int { return int(min(n, MostThreads+1)) }

func (t *tree) addStripe(run Run) int {
	at, count := run.At, run.Count
	return t.add(node{form: stripe, count: count, sort: t.sortOf(run), at: at, leaves: 1, threads: over(int64(count))})
}

// sortOf gives the number of the run's sort of thread.
func (t *tree) sortOf(run Run) int {
	key := run.sort()
	n, known := t.numbers[key]
	if !known {
		n = len(t.sorts)
		t.numbers[key] = n
		run.Count, run.At = 0, 0
		t.sorts = append(t.sorts, run)
	}
	return n
}

func (t *tree) addEnds(a, b, at int) int {
	t.highest = max(t.highest, a, b)
	n := max(a-b, b-a) + 1
	return t.add(node{form: ends, a: a, b: b, at: at, leaves: n, threads: n})
}

// addRow puts parts one after another. Rows within it lose their brackets, and
// one part alone stays what it is.
func (t *tree) addRow(parts []int, at int) int {
	parts = t.flat(parts)
	if len(parts) == 1 {
		return parts[0]
	}
	n := node{form: row, kids: parts, at: at}
	for _, id := range parts {
		n.starts = append(n.starts, n.leaves)
		n.leaves = over(int64(n.leaves) + int64(t.nodes[id].leaves))
		n.threads = over(int64(n.threads) + int64(t.nodes[id].threads))
	}
	return t.add(n)
}

// flat gives the parts without the brackets that change nothing.
func (t *tree) flat(parts []int) []int {
	var out []int
	for _, id := range parts {
		if t.nodes[id].form == row {
			out = append(out, t.nodes[id].kids...)
		} else {
			out = append(out, id)
		}
	}
	return out
}

func (t *tree) addGroup(kid int, name string, at int) int {
	return t.addAround(node{form: group, kids: []int{kid}, name: name, at: at})
}

func (t *tree) addFilled(kid, at int) int {
	return t.addAround(node{form: filled, kids: []int{kid}, at: at})
}

// addAround adds a node with as many leaves and threads as its kid.
func (t *tree) addAround(n node) int {
	k := &t.nodes[n.kids[0]]
	n.leaves, n.threads = k.leaves, k.threads
	return t.add(n)
}

func (t *tree) addTimes(kid, count, at int) int {
	if count == 1 {
		return kid
	}
	k, n := &t.nodes[kid], int64(count)
	return t.add(node{
		form: times, kids: []int{kid}, count: count, at: at,
		leaves: over(n * int64(k.leaves)), threads: over(n * int64(k.threads)),
	})
}

// addTurned mirrors a part. What mirroring leaves as it is stays as it is.
func (t *tree) addTurned(kid int, how turn, at int) int {
	k := &t.nodes[kid]
	if how == doubled && k.leaves == 1 {
		return t.addTimes(kid, 2, at)
	}
	if how != doubled && k.leaves == 1 || how == joined && k.leaves == 2 {
		return kid
	}
	n := node{form: turned, kids: []int{kid}, turn: how, at: at}
	lo, hi := how.back(k.leaves)
	n.leaves = over(int64(k.leaves + hi - lo))
	n.threads = t.turnedThreads(kid, how)
	return t.add(n)
}

func (t *tree) turnedThreads(kid int, how turn) int {
	k := &t.nodes[kid]
	if k.threads > MostThreads {
		return k.threads
	}
	n := int64(2 * k.threads)
	for _, i := range how.left(k.leaves) {
		_, count := t.leaf(kid, i)
		n -= int64(count)
	}
	return over(n)
}

// back gives the leaves lo to hi of n, hi left out, that come back reversed.
func (h turn) back(n int) (lo, hi int) {
	switch h {
	case once:
		return 0, n - 1
	case joined:
		return 1, n - 1
	}
	return 0, n
}

// left gives the leaves of n that do not come back.
func (h turn) left(n int) []int {
	return [][]int{once: {n - 1}, joined: {0, n - 1}, doubled: nil}[h]
}

// leaf gives the sort of a node's leaf i and its threads.
func (t *tree) leaf(id, i int) (sort, count int) {
	for {
		n := &t.nodes[id]
		switch n.form {
		case stripe:
			return n.sort, n.count
		case ends:
			return n.shaft(i) - 1, 1
		}
		id, i = t.down(n, i)
	}
}

// down gives the kid that holds leaf i, and which of the kid's leaves it is.
func (t *tree) down(n *node, i int) (kid, leaf int) {
	switch n.form {
	case row:
		k := sort.SearchInts(n.starts, i+1) - 1
		return n.kids[k], i - n.starts[k]
	case turned:
		if size := t.nodes[n.kids[0]].leaves; i >= size {
			_, hi := n.turn.back(size)
			i = hi - 1 - (i - size)
		}
		return n.kids[0], i
	}
	return n.kids[0], i % t.nodes[n.kids[0]].leaves
}

// shaft gives the shaft of end i.
func (n *node) shaft(i int) int {
	if n.a > n.b {
		return n.a - i
	}
	return n.a + i
}

// split gives the parts before the fill group and those after it.
func (t *tree) split() (before, after []int) {
	if t.fill == none {
		return t.parts, nil
	}
	return t.parts[:t.fill], t.parts[t.fill+1:]
}

// filling gives what the fill group repeats.
func (t *tree) filling() []int {
	if t.fill == none {
		return nil
	}
	return t.nodes[t.parts[t.fill]].kids
}
