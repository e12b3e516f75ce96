package order

// spread lays an order's threads out from left to right.
type spread struct {
	tree *tree
	runs []Run
	last int // sort of the last run, valid when there is one
}

// runs lays out some of a tree's nodes.
func (t *tree) runs(parts []int) []Run {
	s := spread{tree: t, runs: make([]Run, 0, t.leavesOf(parts))}
	s.all(parts)
	return s.runs
}

// mostRoom is how many runs room is made for at once.
const mostRoom = 1 << 12

// leavesOf is about how many runs some nodes come to.
func (t *tree) leavesOf(parts []int) int {
	n := 0
	for _, id := range parts {
		n = min(n+t.nodes[id].leaves, mostRoom)
	}
	return n
}

func (s *spread) all(parts []int) {
	for _, id := range parts {
		s.leaves(id, 0, s.tree.nodes[id].leaves, false, none)
	}
}

// leaves lays out a node's leaves from lo to hi, hi left out, from right to
// left when back. Within a named group, at is where the group is called;
// elsewhere none. A filled node is never laid out, only what it repeats.
func (s *spread) leaves(id, lo, hi int, back bool, at int) {
	n := &s.tree.nodes[id]
	switch n.form {
	case stripe:
		s.put(n.sort, n.count, place(at, n))
	case ends:
		for i := range hi - lo {
			s.put(n.shaft(pick(lo, hi, i, back))-1, 1, place(at, n))
		}
	case row:
		s.row(n, lo, hi, back, at)
	case times:
		s.times(n, lo, hi, back, at)
	case turned:
		s.turned(n, lo, hi, back, at)
	case group:
		s.leaves(n.kids[0], lo, hi, back, place(at, n))
	}
}

// place gives where a leaf stands in the order's own text.
func place(called int, n *node) int {
	if called != none {
		return called
	}
	return n.at
}

// pick gives item i of lo to hi, from either side.
func pick(lo, hi, i int, back bool) int {
	if back {
		return hi - 1 - i
	}
	return lo + i
}

func (s *spread) row(n *node, lo, hi int, back bool, at int) {
	for i := range n.kids {
		k := pick(0, len(n.kids), i, back)
		size := s.tree.nodes[n.kids[k]].leaves
		from, to := max(lo-n.starts[k], 0), min(hi-n.starts[k], size)
		if from < to {
			s.leaves(n.kids[k], from, to, back, at)
		}
	}
}

func (s *spread) times(n *node, lo, hi int, back bool, at int) {
	size := s.tree.nodes[n.kids[0]].leaves
	first, end := lo/size, (hi+size-1)/size
	for i := range end - first {
		start := pick(first, end, i, back) * size
		s.leaves(n.kids[0], max(lo-start, 0), min(hi-start, size), back, at)
	}
}

// turned lays out the way there and the way back, of which leaf i is the kid's
// leaf turn-i.
func (s *spread) turned(n *node, lo, hi int, back bool, at int) {
	size := s.tree.nodes[n.kids[0]].leaves
	_, top := n.turn.back(size)
	turn := size + top
	there := func() { s.some(n.kids[0], lo, min(hi, size), back, at) }
	andBack := func() { s.some(n.kids[0], turn-hi, turn-max(lo, size), !back, at) }
	if back {
		there, andBack = andBack, there
	}
	there()
	andBack()
}

func (s *spread) some(id, lo, hi int, back bool, at int) {
	if lo < hi {
		s.leaves(id, lo, hi, back, at)
	}
}

// put adds threads of a sort, to the last run when they are like it.
func (s *spread) put(sort, count, at int) {
	if len(s.runs) > 0 && s.last == sort {
		s.runs[len(s.runs)-1].Count += count
		return
	}
	run := s.tree.sample(sort)
	run.Count, run.At = count, at
	s.runs, s.last = append(s.runs, run), sort
}

// sample gives a run of the sort, without count or place.
func (t *tree) sample(sort int) Run {
	if t.kind == Shafts {
		return Run{Shaft: sort + 1}
	}
	return t.sorts[sort]
}
