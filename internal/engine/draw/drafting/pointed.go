package drafting

import "sley/internal/engine/draw/scene"

// halo is how much wider than a mark the white is on which it lies, in mm: it is seen
// on white and on black alike.
const halo = 0.5

// over draws a path in a pen on a white halo.
func (g *drawing) over(p scene.Path, pen scene.Pen) {
	if len(p.Segments) == 0 {
		return
	}
	p.Pen = scene.Pen{Width: pen.Width + halo*min(g.cell/3, 1), Ink: white}
	g.add(p)
	p.Pen = pen
	g.add(p)
}

// repeat frames one repeat in the drawdown, and its ends and picks in threading and
// treadling. Where a repeat goes on in another part its frame is open.
func (g *drawing) repeat() {
	r := g.marks.Repeat
	if r.Ends < 1 || r.Picks < 1 {
		return
	}
	cols := g.stretch(r.End, r.Ends, g.Ends(), g.column, g.u, g.c0, g.c1)
	rows := g.stretch(r.Pick, r.Picks, g.Picks(), g.row, g.v, g.r0, g.r1)
	if cols.drawn && rows.drawn {
		g.frameOf(cols, rows)
	}
	if cols.drawn && g.head {
		g.frameOf(cols, stretch{from: g.threadingAt(g.Shafts), to: g.threadingAt(0)})
	}
	if rows.drawn && g.side {
		g.frameOf(stretch{from: g.treadleAt(1), to: g.treadleAt(g.across() + 1)}, rows)
	}
}

// stretch is a side of a frame: where it runs, and at which of its ends it goes on in
// another part.
type stretch struct {
	from, to      float64
	before, after bool
	drawn         bool
}

func (g *drawing) stretch(at, n, all int, place func(int) int, where func(int) float64, low, high int) stretch {
	from, to, ok := g.span(at, n, all, place, low, high)
	if !ok {
		return stretch{}
	}
	a, b, _ := g.span(at, n, all, place, 0, all)
	return stretch{where(from), where(to), a < from, b > to, true}
}

// frameOf draws a frame on its halo, without the sides at which it goes on.
func (g *drawing) frameOf(cols, rows stretch) {
	pen := scene.Pen{Width: min(max(g.cell/5, 0.35), 0.7)}
	if !cols.before && !cols.after && !rows.before && !rows.after {
		g.over(g.oblong(scene.Path{}, cols.from, rows.from, cols.to, rows.to), pen)
		return
	}
	var p scene.Path
	u0, u1 := cols.from, cols.to
	if !cols.before {
		p = g.line(p, u0, rows.from, u0, rows.to)
		u0 -= pen.Width / 2 // closes the corner
	}
	if !cols.after {
		p = g.line(p, u1, rows.from, u1, rows.to)
		u1 += pen.Width / 2
	}
	if !rows.before {
		p = g.line(p, u0, rows.from, u1, rows.from)
	}
	if !rows.after {
		p = g.line(p, u0, rows.to, u1, rows.to)
	}
	g.over(p, pen)
}

// floats strikes through floats: those of the face that is drawn with a whole stroke,
// those behind, where they are wanted, with a dashed one.
func (g *drawing) floats() {
	var here, behind scene.Path
	for _, f := range g.marks.Floats {
		switch {
		case f.Face == g.look.Face:
			here = g.strike(here, f)
		case g.marks.FloatsBehind:
			behind = g.strike(behind, f)
		}
	}
	wide := min(max(g.cell/6, 0.22), 0.6)
	g.over(behind, scene.Pen{Width: wide, Ink: madder, Dash: []float64{g.cell / 3, g.cell / 4}})
	g.over(here, scene.Pen{Width: wide, Ink: madder})
}

// strike adds a float to a path, in as many strokes as its edges and the part cut it
// into.
func (g *drawing) strike(p scene.Path, f Float) scene.Path {
	if f.Pick < 0 || f.End < 0 || f.Pick >= g.Picks() || f.End >= g.Ends() {
		return p
	}
	all, at := g.Ends(), f.End
	if f.Warp {
		all, at = g.Picks(), f.Pick
	}
	long := min(f.Long, all)
	p = g.stroke(p, f, at, min(at+long, all))
	if at+long > all {
		p = g.stroke(p, f, 0, at+long-all)
	}
	return p
}

// stroke adds the stroke from one thread to before another.
func (g *drawing) stroke(p scene.Path, f Float, from, to int) scene.Path {
	const inset = 0.18
	c, r := g.column(f.End), g.row(f.Pick)
	if f.Warp {
		if a, b, ok := g.span(from, to-from, g.Picks(), g.row, g.r0, g.r1); ok && c >= g.c0 && c < g.c1 {
			u := (g.u(c) + g.u(c+1)) / 2
			return g.line(p, u, g.v(a)+inset*g.cell, u, g.v(b)-inset*g.cell)
		}
		return p
	}
	if a, b, ok := g.span(from, to-from, g.Ends(), g.column, g.c0, g.c1); ok && r >= g.r0 && r < g.r1 {
		v := (g.v(r) + g.v(r+1)) / 2
		return g.line(p, g.u(a)+inset*g.cell, v, g.u(b)-inset*g.cell, v)
	}
	return p
}

// point points at single ends from below and at single picks from the outer side, and
// draws lines beside them.
func (g *drawing) point() {
	pen := scene.Pen{Width: min(max(g.cell/10, 0.16), 0.35), Ink: madder}
	for _, e := range g.marks.Ends {
		if c, to, ok := g.span(e, 1, g.Ends(), g.column, g.c0, g.c1); ok {
			u, v := (g.u(c)+g.u(to))/2, g.v(g.r1)+0.3
			g.over(g.oblong(scene.Path{}, g.u(c), g.v(g.r0), g.u(to), g.v(g.r1)), pen)
			g.add(g.triangle(u, v, u-0.9, v+1.8, u+0.9, v+1.8))
		}
	}
	for _, p := range g.marks.Picks {
		if r, to, ok := g.span(p, 1, g.Picks(), g.row, g.r0, g.r1); ok {
			u, v := g.u(g.c0)-0.3, (g.v(r)+g.v(to))/2
			g.over(g.oblong(scene.Path{}, g.u(g.c0), g.v(r), g.u(g.c1), g.v(to)), pen)
			g.add(g.triangle(u, v, u-1.8, v-0.9, u-1.8, v+0.9))
		}
	}
}

func (g *drawing) triangle(u0, v0, u1, v1, u2, v2 float64) scene.Polyline {
	return scene.Polyline{Closed: true, Fill: madder, Points: []scene.Point{
		{X: g.x(u0), Y: g.y(v0)}, {X: g.x(u1), Y: g.y(v1)}, {X: g.x(u2), Y: g.y(v2)},
	}}
}

// span is the columns or rows of some threads, within a part; ok is false where
// none of them lie in it.
func (g *drawing) span(at, n, all int, place func(int) int, low, high int) (from, to int, ok bool) {
	first, last := max(at, 0), min(at+n, all)-1
	if last < first {
		return 0, 0, false
	}
	a, b := place(first), place(last)
	from, to = max(min(a, b), low), min(max(a, b)+1, high)
	return from, to, from < to
}
