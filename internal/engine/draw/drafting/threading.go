package drafting

import (
	"sley/internal/engine/draw/scene"
	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
)

// threading draws which shaft each end is on. An end in no heddle has no mark.
func (g *drawing) threading() {
	var p painter
	for c := g.c0; c < g.c1; c++ {
		if shaft := g.Threading[g.end(c)]; shaft >= 1 && shaft <= g.Shafts {
			v := g.threadingAt(shaft)
			g.mark(&p, shaft, g.u(c), v, g.u(c+1), v+g.cell)
		}
	}
	g.paint(&p)
	g.grid(g.colLines(), g.shaftLines())
}

// treadles draws the treadles that each pick presses, or the shafts that are up.
func (g *drawing) treadles() {
	var p painter
	for r := g.r0; r < g.r1; r++ {
		for _, n := range g.pressed(r).List() {
			if n <= g.across() {
				u := g.treadleAt(n)
				g.mark(&p, n, u, g.v(r), u+g.cell, g.v(r+1))
			}
		}
	}
	g.paint(&p)
	if g.across() > 0 {
		g.grid(g.treadleLines(), g.rowLines())
	}
}

func (g *drawing) pressed(r int) draft.Set {
	if g.lifts != nil {
		return g.lifts[g.pick(r)]
	}
	return g.Treadling[g.pick(r)]
}

// mark fills a cell, or writes the number into it where numbers are asked for and
// have room.
func (g *drawing) mark(p *painter, n int, u0, v0, u1, v1 float64) {
	if text := number(n); g.look.Numbers && wide(text)+air/2 <= u1-u0 && high+air <= v1-v0 {
		g.add(g.say((u0+u1)/2, (v0+v1)/2, scene.Middle, plain, text))
		return
	}
	g.fill(p, black, u0, v0, u1, v1)
}

// tieUp draws what the treadles are tied to: a circle for a shaft that a treadle
// raises, a cross for one that it lowers.
func (g *drawing) tieUp() {
	if g.across() == 0 {
		return
	}
	pen := scene.Pen{Width: min(max(g.cell/11, 0.12), 0.4)}
	crosses := scene.Path{Pen: pen}
	g.grid(g.treadleLines(), g.shaftLines())
	for i := range g.Ties {
		raised, lowered := g.tied(i)
		for shaft := 1; shaft <= g.Shafts; shaft++ {
			u, v := g.treadleAt(i+1)+g.cell/2, g.threadingAt(shaft)+g.cell/2
			if raised.Has(shaft) {
				g.add(scene.Circle{X: g.x(u), Y: g.y(v), Radius: 0.32 * g.cell, Pen: pen})
			}
			if off := 0.27 * g.cell; lowered.Has(shaft) {
				crosses = g.line(g.line(crosses, u-off, v-off, u+off, v+off), u-off, v+off, u+off, v-off)
			}
		}
	}
	if len(crosses.Segments) > 0 {
		g.add(crosses)
	}
}

// tied is what a treadle raises and what it lowers.
func (g *drawing) tied(i int) (raised, lowered draft.Set) {
	switch tie := g.Ties[i]; g.Shed {
	case loom.Sinking, loom.Counterbalance:
		return 0, tie.Tied
	case loom.Countermarch:
		return tie.Tied, tie.Lowered
	default:
		return tie.Tied, 0
	}
}

// bars draws the colours of the ends outside the threading, and of the picks outside
// the treadling; runs of a colour have its letter where there is room.
func (g *drawing) bars() {
	if g.head {
		g.barOf(g.c0, g.c1, func(c int) int { return g.Warp.ColourOf(g.end(c)) }, func(from, to int) (a, b, c, d float64) {
			return g.u(from), line, g.u(to), line + barHigh
		})
	}
	if u := g.u(g.c1) + g.treadling(true); g.side {
		g.barOf(g.r0, g.r1, func(r int) int { return g.Weft.ColourOf(g.pick(r)) }, func(from, to int) (a, b, c, d float64) {
			return u - barHigh, g.v(from), u, g.v(to)
		})
	}
}

func (g *drawing) barOf(from, to int, colour func(int) int, place func(from, to int) (u0, v0, u1, v1 float64)) {
	thin, _, around := g.pens()
	thin.Ink = strong
	for i := from; i < to; {
		first, k := i, colour(i)
		for i < to && colour(i) == k {
			i++
		}
		u0, v0, u1, v1 := place(first, i)
		g.add(g.rect(u0, v0, u1, v1, at(g.inks, k), thin))
		if text := g.letter(k); text != "" && wide(text)+air/2 <= u1-u0 && high+air/2 <= v1-v0 {
			t := g.say((u0+u1)/2, (v0+v1)/2, scene.Middle, plain, text)
			t.Ink = against(at(g.inks, k))
			g.add(t)
		}
	}
	u0, v0, u1, v1 := place(from, to)
	g.add(g.rect(u0, v0, u1, v1, scene.None, around))
}
