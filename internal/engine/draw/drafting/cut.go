package drafting

import "sley/internal/engine/draw/scene"

// plan is how a draft is cut: the columns and the rows of its parts.
type plan struct {
	cell       float64
	cols, rows [][2]int
}

// parts is how many there are; none where a part would not fit the paper.
func (p plan) parts() int { return len(p.cols) * len(p.rows) }

// cut finds the parts of a draft with cells so large: as few as can be, and those of
// one row or column about as large as one another.
func (s *sheet) cut(cell float64) plan {
	s.size(cell)
	w, h := s.room()
	beside := s.outer() + s.inner()
	p := plan{cell: cell}
	p.cols = balanced(s.cols, w-beside, 0, s.treadling(!s.look.Alone), s.endNumber)
	p.rows = balanced(s.rows, h-s.foot(false)-s.top(false), s.top(!s.look.Alone)-s.top(false), 0, s.pickNumber)
	return p
}

// balanced cuts an axis into as few ranges as have room, and makes the room smaller
// as long as they do not become more. first and last are what the first and the last
// range have less of it.
func balanced(a axis, room, first, last float64, num func(int) int) [][2]int {
	best := ranges(a, room, first, last, num)
	for share := 0.98; share > 0.3; share -= 0.02 {
		smaller := ranges(a, room*share, first, last, num)
		if len(smaller) != len(best) {
			break
		}
		best = smaller
	}
	return best
}

// ranges cuts an axis: each range as long as there is room for, up to a strong line
// of the grid where there is one, and begun some threads before the end of the last.
// It is nil where there is no room for more threads than the overlap.
func ranges(a axis, room, first, last float64, num func(int) int) [][2]int {
	var out [][2]int
	from, n := 0, a.n()
	for {
		less := 0.0
		if from == 0 {
			less = first
		}
		to := from
		for to < n && a.long(from, to+1) <= room-less {
			to++
		}
		if to == n && a.long(from, n) <= room-less-last {
			return append(out, [2]int{from, n})
		}
		to = evenly(from, min(to, n-1), num)
		if to-overlap <= from {
			return nil
		}
		out = append(out, [2]int{from, to})
		from = to - overlap
	}
}

// evenly moves the end of a range back to a strong line of the grid, if one is near.
func evenly(from, to int, num func(int) int) int {
	for at := to; at > from+2*overlap && at > to-fifth; at-- {
		if min(num(at-1), num(at))%fifth == 0 {
			return at
		}
	}
	return to
}

// eachPart visits the parts as they lie on the page, row by row from the top left.
func (s *sheet) eachPart(p plan, visit func(i, j int)) {
	for i := range p.rows {
		for j := range p.cols {
			visit(turned(i, len(p.rows), s.upside), turned(j, len(p.cols), s.left))
		}
	}
}

// several are the overview and a page for each part.
func (s *sheet) several(p plan) []scene.Page {
	s.size(p.cell)
	of := p.parts() + 1
	pages := []scene.Page{s.overview(p, of)}
	s.eachPart(p, func(i, j int) {
		one := s.partOf(p, i, j)
		page := s.page(len(pages)+1, of, s.name(p, i, j), one.head && one.side)
		w, _ := s.room()
		wide, _ := s.extent(one)
		s.draw(one, margin+(w-wide)/2, margin+head)
		s.join(p, i, j)
		page.Items = append(page.Items, s.items...)
		pages = append(pages, page)
	})
	return pages
}

func (s *sheet) partOf(p plan, i, j int) part {
	whole := !s.look.Alone
	return part{
		c0: p.cols[j][0], c1: p.cols[j][1], r0: p.rows[i][0], r1: p.rows[i][1],
		head: whole && i == 0, side: whole && j == len(p.cols)-1,
	}
}

// name is what a part is called: a letter for its column and a number for its row, as
// they lie on the page.
func (s *sheet) name(p plan, i, j int) string {
	i, j = turned(i, len(p.rows), s.upside), turned(j, len(p.cols), s.left)
	return string(rune('A'+j%26)) + number(i+1)
}

// join marks the threads that a part shares with its neighbours: a bracket as long as
// the shared threads, with the neighbour's name.
func (s *sheet) join(p plan, i, j int) {
	if j > 0 {
		s.below(s.c0, s.c0+overlap, s.name(p, i, j-1))
	}
	if j+1 < len(p.cols) {
		s.below(s.c1-overlap, s.c1, s.name(p, i, j+1))
	}
	if i > 0 {
		s.aside(s.r0, s.r0+overlap, s.name(p, i-1, j))
	}
	if i+1 < len(p.rows) {
		s.aside(s.r1-overlap, s.r1, s.name(p, i+1, j))
	}
}

var joining = scene.Pen{Width: 0.35}

// below draws a bracket under columns, aside one beside rows.
func (s *sheet) below(c0, c1 int, name string) {
	u0, u1, v := s.u(c0), s.u(c1), s.v(s.r1)+s.foot(s.head)-joint
	path := s.line(s.line(s.line(scene.Path{Pen: joining}, u0, v+0.2, u0, v+1.6), u0, v+1, u1, v+1), u1, v+0.2, u1, v+1.6)
	s.add(path, s.say((u0+u1)/2, v+joint-high/2-0.4, scene.Middle, bold, name))
}

func (s *sheet) aside(r0, r1 int, name string) {
	v0, v1, u := s.v(r0), s.v(r1), s.u(s.c0)-s.beside()+jointWide
	path := s.line(s.line(s.line(scene.Path{Pen: joining}, u-0.2, v0, u-1.6, v0), u-1, v0, u-1, v1), u-0.2, v1, u-1.6, v1)
	s.add(path, s.say(u-1.8, (v0+v1)/2, scene.End, bold, name))
}
