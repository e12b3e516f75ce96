package tape

import (
	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
)

// figure is one part being drawn at its place on the page.
type figure struct {
	part
	cols         columns
	words        Words
	left, base   float64 // of the strip's edge, and of where the part begins, on the page
	below, above string  // the names of its joins, empty for none
	items        []scene.Item
}

func (f *figure) add(items ...scene.Item) { f.items = append(f.items, items...) }

// y is where a length on the loom is on the page.
func (f *figure) y(at float64) float64 { return f.base - (at - f.from) }

// x is where a distance from the strip's left edge is on the page.
func (f *figure) x(across float64) float64 { return f.left + across }

func (f *figure) draw() []Place {
	f.edges()
	f.graduate()
	f.tab()
	f.join(f.below, f.base-joinRoom/2)
	f.join(f.above, f.y(f.to)+joinRoom/2)
	return f.mark()
}

// Pens of a strip, in mm.
var (
	edge    = scene.Solid(0.2)
	seam    = scene.Pen{Width: 0.35, Dash: []float64{2, 1}}
	limit   = scene.Solid(0.5)
	light   = scene.Solid(0.4)  // a mark
	heavy   = scene.Solid(0.9)  // a strong mark
	leading = scene.Solid(0.25) // from a mark to its label
)

// edges are where to cut, and the lines where the strip begins, ends or is joined.
func (f *figure) edges() {
	high := f.high()
	top := f.base + Overlap - high
	f.add(scene.Rect{X: f.left, Y: top, Width: f.cols.width, Height: high, Pen: edge})
	begins := limit
	if !f.first {
		begins = seam
	}
	f.across(f.base, begins)
	if f.last {
		f.across(f.y(f.to), limit)
	}
}

func (f *figure) across(y float64, pen scene.Pen) {
	f.add(scene.Line{X1: f.left, Y1: y, X2: f.x(f.cols.width), Y2: y, Pen: pen})
}

// tab names the part below its beginning: units and what it measures, then the
// title.
func (f *figure) tab() {
	middle, right := f.x(f.cols.width/2), f.x(f.cols.width-air)
	y := f.base + line
	f.say(f.x(air), y, scene.Start, plain, f.words.Centimetres)
	f.say(right, y, scene.End, plain, f.words.Inches)
	if f.words.Running != nil {
		units := max(letter.Width(f.words.Centimetres, plain, pt), letter.Width(f.words.Inches, plain, pt))
		room := f.cols.width - 2*units - 4*air
		f.say(middle, y, scene.Middle, plain, letter.Fit(f.words.Running(f.from, f.to), plain, pt, room))
	}
	f.say(middle, y+line, scene.Middle, bold, letter.Fit(f.title, bold, pt, f.cols.width-2*air))
}

// say sets a text that must stay on the strip.
func (f *figure) say(x, y float64, anchor scene.Anchor, font scene.Font, text string) {
	if text == "" {
		return
	}
	box := scene.Box{X: f.left, Y: f.y(f.to) - tail, Width: f.cols.width, Height: f.to - f.from + tail + Overlap}
	f.add(scene.Text{X: x, Y: y, Size: pt, Font: font, Anchor: anchor, Text: text, Box: box})
}

// Room that the name of a join takes from the labels, and its ring, in mm.
const (
	joinRoom = 7.6
	ring     = 3.2
)

// join is the name of a join in a ring: the same on both sides of the seam.
func (f *figure) join(name string, y float64) {
	if name == "" {
		return
	}
	x := f.x((f.cols.text + f.cols.end) / 2)
	f.add(scene.Circle{X: x, Y: y, Radius: ring, Pen: scene.Solid(0.3)})
	f.say(x, y+rise, scene.Middle, bold, name)
}

// rise is from the middle of a line of capitals or figures down to its baseline.
var rise = letter.CapHeight(plain, pt) / 2
