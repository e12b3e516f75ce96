package drafting

import (
	"strconv"

	"sley/internal/engine/draw/scene"
	"sley/internal/trade/draft"
	"sley/internal/trade/weave"
)

// drawing is a draft being drawn with cells of one size.
type drawing struct {
	*draft.Draft
	look       Look
	marks      Marks
	words      Words
	weave      *weave.Weave
	inks       []scene.Ink // of the palette
	used       []int       // the colours of the palette in use, in their order
	lifts      []draft.Set // what a lift plan shows; nil where treadles are drawn
	cell       float64
	cols, rows axis // in the order of the frame
	seams      bool // it is cut into parts
	frame
	part
	items []scene.Item
}

// part is what of a drawing is on one page: columns and rows of the frame from the
// first to before the last.
type part struct {
	c0, c1, r0, r1 int
	head, side     bool // with the threading; with the treadling
}

func newDrawing(d *draft.Draft, look Look, marks Marks, words Words) *drawing {
	if look.Alone {
		look.Below, look.TieUpLeft, look.Bars, look.Numbers = false, false, false, false
	} else {
		look.Face = Front
	}
	if len(d.Palette) == 0 {
		look.Cells, look.Bars = Filled, false
	}
	g := &drawing{Draft: d, look: look, marks: marks, words: words, weave: d.Drawdown(), inks: look.palette(d)}
	if !d.Treadled() || look.LiftPlan {
		g.lifts = d.LiftPlan()
	}
	g.used = g.usedColours()
	g.left, g.upside = look.TieUpLeft, look.Below
	return g
}

// usedColours are the colours of the threads in the order of the palette.
func (g *drawing) usedColours() []int {
	seen := make([]bool, len(g.Palette))
	see := func(i int) {
		if i >= 0 && i < len(seen) {
			seen[i] = true
		}
	}
	for i := range g.Ends() {
		see(g.Warp.ColourOf(i))
	}
	for i := range g.Picks() {
		see(g.Weft.ColourOf(i))
	}
	var out []int
	for i, yes := range seen {
		if yes {
			out = append(out, i)
		}
	}
	return out
}

// size makes the cells so large.
func (g *drawing) size(cell float64) {
	g.cell = cell
	ends, picks := even(g.Ends(), cell), even(g.Picks(), cell)
	if g.look.ToScale {
		ends, picks = scaled(g.Draft, cell)
	}
	if g.endsBackwards() {
		ends = ends.reversed()
	}
	if g.picksBackwards() {
		picks = picks.reversed()
	}
	g.cols, g.rows = ends, picks
}

// endsBackwards says whether the first column of the frame is the last end.
func (g *drawing) endsBackwards() bool { return g.left != (g.look.Face == Back) }

// picksBackwards says whether the first row of the frame is the last pick.
func (g *drawing) picksBackwards() bool { return g.upside != g.look.Upwards }

func turned(i, n int, backwards bool) int {
	if backwards {
		return n - 1 - i
	}
	return i
}

// end is the end of a column, and column the column of an end.
func (g *drawing) end(c int) int    { return turned(c, g.Ends(), g.endsBackwards()) }
func (g *drawing) pick(r int) int   { return turned(r, g.Picks(), g.picksBackwards()) }
func (g *drawing) column(e int) int { return g.end(e) }
func (g *drawing) row(p int) int    { return g.pick(p) }

// endNumber is what the end of a column is called.
func (g *drawing) endNumber(c int) int {
	if g.look.FromRight {
		return g.Ends() - g.end(c)
	}
	return g.end(c) + 1
}

func (g *drawing) pickNumber(r int) int { return g.pick(r) + 1 }

// up says whether the warp is on top of the face that is drawn.
func (g *drawing) up(r, c int) bool {
	return g.weave.WarpUp(g.pick(r), g.end(c)) != (g.look.Face == Back)
}

// whole is all of the draft on one page.
func (g *drawing) whole() part {
	return part{0, g.Ends(), 0, g.Picks(), !g.look.Alone, !g.look.Alone}
}

// places beside the cloth: how many columns treadling or lift plan have.
func (g *drawing) across() int {
	if g.lifts != nil {
		return g.Shafts
	}
	return max(g.Treadles, len(g.Ties))
}

func (g *drawing) add(items ...scene.Item) { g.items = append(g.items, items...) }

func number(n int) string { return strconv.Itoa(n) }
