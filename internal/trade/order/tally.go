package order

// Shafts gives the threads on each shaft, shaft 1 first and MaxShaft last, nil
// in other orders than those of shafts. Like Totals it costs as much as the text is long.
func (o Order) Shafts(fill int) []int {
	if o.MaxShaft() == 0 {
		return nil
	}
	return o.counts(fill)
}

// Totals gives the threads of each sort, one run for each yarn, density and
// beam (or for each shaft), in the order of their first appearance and placed
// there. It costs as much as the text is long, whatever fill is; counts beyond
// the range of an int stay at its top.
func (o Order) Totals(fill int) []Run {
	if o.tree == nil {
		return nil
	}
	counts := o.counts(fill)
	runs := o.tree.appear(fill)
	for i, run := range runs {
		runs[i].Count = counts[run.Count]
	}
	return runs
}

// counts gives the threads of each sort.
func (o Order) counts(fill int) []int {
	before, after := o.tree.split()
	counts := o.tree.tally(before, after)
	for sort, n := range o.tree.tally(o.tree.filling()) {
		counts[sort] = plus(counts[sort], n, fill)
	}
	return counts
}

// tally counts the threads of each sort without laying them out: it pours how
// often a node occurs down to its kids, which stand before it in the tree.
func (t *tree) tally(parts ...[]int) []int {
	p := pour{tree: t, occurs: make([]int, len(t.nodes)), counts: make([]int, max(len(t.sorts), t.highest))}
	for _, ids := range parts {
		for _, id := range ids {
			p.occurs[id]++
		}
	}
	for id := len(t.nodes) - 1; id >= 0; id-- {
		if p.occurs[id] != 0 {
			p.down(&t.nodes[id], p.occurs[id])
		}
	}
	return p.counts
}

// pour is a tally in the making.
type pour struct {
	tree   *tree
	occurs []int // of each node
	counts []int // of each sort
}

func (p *pour) down(n *node, occurs int) {
	switch n.form {
	case stripe:
		p.counts[n.sort] += occurs * n.count
	case ends:
		for i := range n.leaves {
			p.counts[n.shaft(i)-1] += occurs
		}
	case row:
		for _, id := range n.kids {
			p.occurs[id] += occurs
		}
	case times:
		p.occurs[n.kids[0]] += occurs * n.count
	case turned:
		p.turned(n, occurs)
	case group:
		p.occurs[n.kids[0]] += occurs
	}
}

// turned counts the kid twice, less the leaves that do not come back.
func (p *pour) turned(n *node, occurs int) {
	kid := n.kids[0]
	p.occurs[kid] += 2 * occurs
	for _, i := range n.turn.left(p.tree.nodes[kid].leaves) {
		sort, count := p.tree.leaf(kid, i)
		p.counts[sort] -= occurs * count
	}
}

// appear gives every sort where it first appears, its number as Count.
func (t *tree) appear(fill int) []Run {
	a := appearance{tree: t, met: make([]bool, len(t.nodes)), known: make([]bool, max(len(t.sorts), t.highest))}
	for i, id := range t.parts {
		if i != t.fill || fill > 0 {
			a.look(id, none)
		}
	}
	return a.runs
}

// appearance looks for the first of every sort. A node that was met before has
// nothing new, and mirroring shows nothing before its kid has.
type appearance struct {
	tree       *tree
	met, known []bool
	runs       []Run
}

func (a *appearance) look(id, at int) {
	n := &a.tree.nodes[id]
	if a.met[id] {
		return
	}
	a.met[id] = true
	switch n.form {
	case stripe:
		a.first(n.sort, place(at, n))
	case ends:
		for i := range n.leaves {
			a.first(n.shaft(i)-1, place(at, n))
		}
	case group:
		at = place(at, n)
	}
	for _, kid := range n.kids {
		a.look(kid, at)
	}
}

func (a *appearance) first(sort, at int) {
	if a.known[sort] {
		return
	}
	a.known[sort] = true
	run := a.tree.sample(sort)
	run.Count, run.At = sort, at
	a.runs = append(a.runs, run)
}
