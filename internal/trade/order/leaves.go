package order

import "math/bits"

// Leaf is what of an order's text is neither bracket nor suffix: a stripe, a shaft or a
// run of them, a pick or a run of picks, the name of a group.
type Leaf struct {
	From, To    int    // bytes into the text; To is behind the last
	Group       string // the named group that is called; then there is nothing else
	Run         Run    // its thread, counted as it is written; of a run of shafts or treadles its first
	First, Last int    // of shafts, and of treadles that are pressed one by one; else 0
	Depth       int    // brackets around it
	Times       int    // how often the innermost repeat around it comes; 1 where there is none
	Fills       bool   // it is in the group that fills
}

// Leaves gives the leaves of an order's text in the order of the text; nil where the
// text has faults. It costs what Parse costs.
func Leaves(text string, ctx Context) []Leaf {
	r := newReading(ctx)
	p := parser{reading: r, lexer: lexer{text: text}}
	p.step()
	p.whole()
	if len(r.faults) > 0 {
		return nil
	}
	return r.leaves
}

// note keeps where a leaf stands that was read into a node of the tree. Those of named
// groups stand elsewhere.
func (p *parser) note(id int, start token) {
	if id == none || p.call != nil || start.shape == opening {
		return
	}
	l := Leaf{From: start.pos, To: p.ended, Depth: p.depth, Times: 1}
	p.tree.tell(&l, id)
	p.leaves = append(p.leaves, l)
}

// tell says what the leaf of a node is.
func (t *tree) tell(l *Leaf, id int) {
	n := &t.nodes[id]
	switch n.form {
	case group:
		l.Group = n.name
	case ends:
		l.First, l.Last = n.a, n.b
		l.Run = Run{Shaft: n.a, Count: n.threads}
	case row: // treadles one by one
		first, last := t.nodes[n.kids[0]], t.nodes[n.kids[len(n.kids)-1]]
		l.Run = t.sorts[first.sort]
		l.Run.Count = n.threads
		l.First, l.Last = bits.Len64(l.Run.Set), bits.Len64(t.sorts[last.sort].Set)
	default:
		l.Run = t.sorts[n.sort]
		l.Run.Count = n.count
		if bits.OnesCount64(l.Run.Set) == 1 {
			l.First = bits.Len64(l.Run.Set)
			l.Last = l.First
		}
	}
}

// noteTimes tells the leaves of the part that they are repeated: those that no repeat
// further in has told already.
func (p *parser) noteTimes(n int) {
	if p.call != nil {
		return
	}
	for i := p.since; i < len(p.leaves); i++ {
		if p.leaves[i].Times == 1 {
			p.leaves[i].Times = n
		}
	}
}

func (p *parser) noteFill() {
	for i := p.since; p.call == nil && i < len(p.leaves); i++ {
		p.leaves[i].Fills = true
	}
}

// Laid gives the runs of exactly so many threads: the group that fills is repeated, or
// the whole order where none fills, and what is too much is cut off at the end; the
// group is cut before what stands behind it. At most that many runs are given, and
// whether those are all.
func (o Order) Laid(threads, most int) (runs []Run, all bool) {
	if o.tree == nil {
		return nil, true
	}
	before, group, after := o.Before(), o.FillRuns(), o.After()
	if len(group) == 0 {
		before, group = nil, before
	}
	l := laying{left: threads, most: most, runs: make([]Run, 0, roomFor(threads, most, before, group, after))}
	l.some(before, threads)
	l.fill(group, threads-Threads(before)-Threads(after))
	l.some(after, threads)
	return l.runs, !l.more
}

// roomFor is how many runs so many threads may come to.
func roomFor(threads, most int, before, group, after []Run) int {
	times := 0
	if each := Threads(group); each > 0 {
		times = (threads-Threads(before)-Threads(after))/each + 1
	}
	return max(0, min(most, threads, len(before)+times*len(group)+len(after)))
}

// Threads counts the threads of runs.
func Threads(runs []Run) int {
	n := 0
	for _, run := range runs {
		n += run.Count
	}
	return n
}

// laying lays runs out until there are enough threads, or too many runs.
type laying struct {
	runs       []Run
	left, most int
	more       bool // there were more runs than are wanted
}

func (l *laying) fill(group []Run, room int) {
	for each := Threads(group); room > 0 && each > 0 && !l.more; room -= each {
		l.some(group, room)
	}
}

// some lays runs until room threads are laid.
func (l *laying) some(runs []Run, room int) {
	for _, run := range runs {
		run.Count = min(run.Count, room, l.left)
		if run.Count <= 0 || l.more {
			return
		}
		room, l.left = room-run.Count, l.left-run.Count
		l.put(run)
	}
}

func (l *laying) put(run Run) {
	if n := len(l.runs); n > 0 && l.runs[n-1].sort() == run.sort() {
		l.runs[n-1].Count += run.Count
		return
	}
	if l.more = len(l.runs) == l.most; !l.more {
		l.runs = append(l.runs, run)
	}
}
