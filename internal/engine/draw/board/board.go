// Package board draws a warping board to scale, with the way of the warp over its
// pegs, and a warping mill with its turns.
//
// Pegs stand as far apart as on the board, all by one scale; what marks them is as
// large as can be read. All words are the caller's.
package board

import (
	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
	"sley/internal/engine/dress"
	"sley/internal/trade/qty"
)

// Words are what the drawing of a board says; empty words say nothing.
type Words struct {
	Peg        func(dress.Peg) string // names a peg; nil for the peg's own name
	Wide, High string                 // the distances between the outermost pegs
	Cross      string                 // what is made between the second and the third peg
	Tie        string                 // what the marks of the choke ties are
}

// Sizes on the paper, in mm and points.
const (
	pt       = 10.0
	line     = 4.4 // from baseline to baseline
	peg      = 1.6 // radius
	air      = 0.8 // between a peg and its name
	measured = 7.0 // for a dimension with its label
	arrow    = 3.0 // head
	stroke   = 2.2 // half the length of a tie's stroke
)

var (
	plain  = scene.Font{}
	frame  = scene.Pen{Width: 0.25, Ink: scene.Grey(0.45)}
	warp   = scene.Pen{Width: 0.6, Round: true}
	choked = scene.Pen{Width: 1.1}
)

// Draw draws the board, the way over it and the ties, which are lengths along the
// way, as large as the box allows; a tie that would lie on a peg stands beside it. A
// board of no pegs, and a box too small for its
// words, give an empty group; ties beyond the way are left out. Where pegs stand so
// close that there is no place for a name, it is left out.
func Draw(b dress.Board, p dress.Path, ties []qty.Length, box scene.Box, words Words) scene.Group {
	d := &drawing{box: box, words: words}
	if !d.fit(b) {
		return scene.Group{}
	}
	d.way = d.along(p.Pegs)
	d.dimensions()
	d.tie(ties)
	d.thread()
	d.stand()
	d.legend()
	d.names(b)
	return scene.Group{Items: d.items}
}

// Ties are places for choke ties: every so far along the way from the third peg,
// behind the cross, none at its very end. None where every is not more than 0.
func Ties(b dress.Board, p dress.Path, every qty.Length) []qty.Length {
	if every <= 0 || len(p.Pegs) < 3 {
		return nil
	}
	pegs := b.Pegs
	at := dress.Span(pegs[p.Pegs[0]], pegs[p.Pegs[1]]) + dress.Span(pegs[p.Pegs[1]], pegs[p.Pegs[2]])
	var ties []qty.Length
	for at += every; at < p.Length; at += every {
		ties = append(ties, at)
	}
	return ties
}

// drawing is a board being drawn; all places are on the paper.
type drawing struct {
	box    scene.Box
	words  Words
	pegs   []scene.Point
	around scene.Box // the outermost pegs
	scale  float64   // mm on the paper to a nanometre
	side   float64   // what names take beside the outermost pegs
	way    []scene.Point
	tied   []scene.Point
	taken  []scene.Box // where words and dimensions stand
	items  []scene.Item
}

func (d *drawing) add(items ...scene.Item) { d.items = append(d.items, items...) }

func (d *drawing) name(p dress.Peg) string {
	if d.words.Peg == nil {
		return p.Name
	}
	return d.words.Peg(p)
}

// fit finds the scale, and where every peg is on the paper.
func (d *drawing) fit(b dress.Board) bool {
	room := d.room(b)
	if len(b.Pegs) == 0 || room.Width <= 0 || room.Height <= 0 {
		return false
	}
	for _, p := range b.Pegs {
		d.pegs = append(d.pegs, scene.Point{X: float64(p.X), Y: float64(p.Y)})
	}
	whole := scene.Around(d.pegs)
	d.scale = scaleOf(room, whole)
	left := room.X + (room.Width-whole.Width*d.scale)/2
	for i, p := range d.pegs {
		d.pegs[i] = scene.Point{X: left + (p.X-whole.X)*d.scale, Y: room.Y + (p.Y-whole.Y)*d.scale}
	}
	d.around = scene.Around(d.pegs)
	return true
}

// scaleOf is the scale at which the whole fits the room; 1 for a single point.
func scaleOf(room, whole scene.Box) float64 {
	switch {
	case whole.Width == 0 && whole.Height == 0:
		return 1
	case whole.Width == 0:
		return room.Height / whole.Height
	case whole.Height == 0:
		return room.Width / whole.Width
	}
	return min(room.Width/whole.Width, room.Height/whole.Height)
}

// room is the box without what stands around the pegs: names at the sides and above,
// dimensions and the legend.
func (d *drawing) room(b dress.Board) scene.Box {
	for _, p := range b.Pegs {
		d.side = max(d.side, letter.Width(d.name(p), plain, pt))
	}
	d.side = min(d.side, d.box.Width/4) + peg + 2*air
	room := scene.Box{X: d.box.X + d.side, Y: d.box.Y + line + 2*peg, Width: d.box.Width - 2*d.side}
	if d.words.High != "" {
		room.X, room.Width = room.X+measured, room.Width-measured
	}
	room.Height = d.box.Bottom() - room.Y - line - 2*peg - measured - 1.5*line
	return room
}
