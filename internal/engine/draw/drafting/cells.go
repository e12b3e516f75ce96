package drafting

import (
	"sley/internal/engine/draw/scene"
)

// painter holds a path for each ink, in the order in which inks are first needed, so
// that a drawing is a few shapes whatever it has of cells.
type painter struct {
	order []scene.Ink
	paths map[scene.Ink]*scene.Path
}

func (p *painter) of(k scene.Ink) *scene.Path {
	if p.paths == nil {
		p.paths = map[scene.Ink]*scene.Path{}
	}
	if p.paths[k] == nil {
		p.paths[k] = &scene.Path{Fill: k}
		p.order = append(p.order, k)
	}
	return p.paths[k]
}

// fill paints an upright rectangle of the frame.
func (g *drawing) fill(p *painter, k scene.Ink, u0, v0, u1, v1 float64) {
	path := p.of(k)
	*path = g.oblong(*path, u0, v0, u1, v1)
}

func (g *drawing) paint(p *painter) {
	for _, k := range p.order {
		g.add(*p.paths[k])
	}
}

// drawdown draws the crossings of a part with their grid.
func (g *drawing) drawdown() {
	switch {
	case (g.c1-g.c0)*(g.r1-g.r0) > MostShapes:
		g.add(g.raster())
	case g.look.ToScale && g.look.Cells != Filled:
		g.strips()
	default:
		g.runs()
	}
	if g.look.Cells == Both {
		g.squares()
	}
	if g.look.Cells == Colours {
		_, _, around := g.pens()
		g.add(g.rect(g.u(g.c0), g.v(g.r0), g.u(g.c1), g.v(g.r1), scene.None, around))
		return
	}
	g.grid(g.colLines(), g.rowLines())
}

// warpInk is the ink of the end of a column.
func (g *drawing) warpInk(c int) scene.Ink {
	if g.look.Cells == Filled {
		return black
	}
	return at(g.inks, g.Warp.ColourOf(g.end(c)))
}

func (g *drawing) weftInk(r int) scene.Ink {
	if g.look.Cells == Filled {
		return white
	}
	return at(g.inks, g.Weft.ColourOf(g.pick(r)))
}

// inkAt is the ink of the thread on top.
func (g *drawing) inkAt(r, c int) scene.Ink {
	if g.up(r, c) {
		return g.warpInk(c)
	}
	return g.weftInk(r)
}

// runs paints equal cells of a row as one rectangle. White is the paper.
func (g *drawing) runs() {
	var p painter
	for r := g.r0; r < g.r1; r++ {
		for c := g.c0; c < g.c1; {
			k, from := g.inkAt(r, c), c
			for c < g.c1 && g.inkAt(r, c) == k {
				c++
			}
			if k != white {
				g.fill(&p, k, g.u(from), g.v(r), g.u(c), g.v(r+1))
			}
		}
	}
	g.paint(&p)
}

// strips paints threads with their thickness: the ends, over them the picks, and over
// these the ends again where they are on top.
func (g *drawing) strips() {
	var ends, picks, tops painter
	for c := g.c0; c < g.c1; c++ {
		from, to := within(g.u(c), g.u(c+1), g.cols, c)
		g.fill(&ends, g.warpInk(c), from, g.v(g.r0), to, g.v(g.r1))
		for r := g.r0; r < g.r1; r++ {
			if first := r; g.up(r, c) {
				for r < g.r1 && g.up(r, c) {
					r++
				}
				g.fill(&tops, g.warpInk(c), from, g.v(first), to, g.v(r))
			}
		}
	}
	for r := g.r0; r < g.r1; r++ {
		from, to := within(g.v(r), g.v(r+1), g.rows, r)
		g.fill(&picks, g.weftInk(r), g.u(g.c0), from, g.u(g.c1), to)
	}
	g.paint(&ends)
	g.paint(&picks)
	g.paint(&tops)
}

// within is where a thread lies in its place.
func within(from, to float64, a axis, i int) (low, high float64) {
	if a.thick == nil {
		return from, to
	}
	off := (to - from) * (1 - a.thick[i]) / 2
	return from + off, to - off
}

// dot is the side of the square that says that the warp is on top, as a share of its
// cell.
const dot = 0.36

// squares marks coloured cells in which the warp is on top.
func (g *drawing) squares() {
	var p painter
	for r := g.r0; r < g.r1; r++ {
		for c := g.c0; c < g.c1; c++ {
			if g.up(r, c) {
				u, v := (g.u(c)+g.u(c+1))/2, (g.v(r)+g.v(r+1))/2
				off := dot / 2 * min(g.u(c+1)-g.u(c), g.v(r+1)-g.v(r))
				g.fill(&p, against(g.warpInk(c)), u-off, v-off, u+off, v+off)
			}
		}
	}
	g.paint(&p)
}
