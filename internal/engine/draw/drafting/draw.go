package drafting

import (
	"math"

	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
	"sley/internal/trade/draft"
)

// Sizes of cells, in mm.
const (
	Least    = 1.2 // on paper: smaller ones cannot be counted
	usual    = 4.0 // of a drawing that has no paper to fit
	greatest = 5.0 // on paper: larger ones are no easier to read
)

// border is what a drawing without paper has around it, and head what a heading
// takes, in mm.
const (
	border = 3.0
	head   = 7.0
	narrow = 60.0 // the least width, for the heading and the key
)

// Draw draws a draft as one picture of its own size, with cells of Look.Cell mm or
// 4 mm; smaller where the page would be larger than a page can be. A drawdown of more
// than MostShapes crossings is drawn as a scene.Picture, without marks in the cells.
// It is false where the draft has no crossings, or more than MostDots.
func Draw(d *draft.Draft, look Look, marks Marks, words Words) (scene.Page, bool) {
	if none(d) || d.Ends() > MostDots/d.Picks() {
		return scene.Page{}, false
	}
	g := newDrawing(d, look, marks, words)
	cell := max(look.Cell, 0)
	if cell == 0 {
		cell = max(usual, g.leastCell())
	}
	w, h := g.fitted(cell)
	room := max(w, narrow)
	rows := flowed(g.key(true), room)
	h += g.keyApart()
	page := scene.Page{Width: room + 2*border, Height: h + 2*border + keyLine*float64(len(rows))}
	top := border
	if words.Heading != "" {
		page.Items, top = heading(words.Heading, "", border, room), border+head
		page.Height += head
	}
	g.draw(g.whole(), border, top)
	page.Items = append(page.Items, g.items...)
	page.Items = append(page.Items, set(rows, border, top+h, room)...)
	return page, true
}

// keyApart keeps the key off the numbers of the ends, where they are below.
func (g *drawing) keyApart() float64 {
	if g.upside {
		return gap
	}
	return 0
}

// fitted makes the cells so large, or as large as a page can be, and gives the size
// of the whole.
func (g *drawing) fitted(cell float64) (w, h float64) {
	for {
		g.size(cell)
		w, h = g.extent(g.whole())
		if most := max(w, h); most <= scene.MaxSide-50 || cell < 1e-3 {
			return w, h
		}
		cell *= 0.98 * (scene.MaxSide - 50) / max(w, h)
	}
}

// leastCell is the smallest cell in which what is written into cells can be read.
func (g *drawing) leastCell() float64 {
	if !g.look.Numbers {
		return Least
	}
	widest := wide(number(max(g.Shafts, g.across())))
	return math.Ceil(10*max(widest+air, high+air)) / 10
}

// draw draws a part with its top left corner at x, y.
func (g *drawing) draw(p part, x, y float64) {
	g.part = p
	w, h := g.extent(p)
	g.box = scene.Box{X: x, Y: y, Width: w, Height: h}
	g.items = nil
	g.drawdown()
	if g.head {
		g.threading()
	}
	if g.side {
		g.treadles()
	}
	if g.head && g.side && g.lifts == nil {
		g.tieUp()
	}
	if g.look.Bars {
		g.bars()
	}
	g.numbers()
	g.point()
	g.floats()
	g.repeat()
}

// heading is the first line of a page.
func heading(left, right string, x, room float64) []scene.Item {
	right = letter.Fit(right, plain, pt, room/2)
	left = letter.Fit(left, bold, pt, room-wide(right)-6*line)
	y := x + line - 0.6
	return []scene.Item{
		scene.Text{X: x, Y: y, Size: pt, Font: bold, Text: left},
		scene.Text{X: x + room, Y: y, Size: pt, Anchor: scene.End, Text: right},
	}
}
