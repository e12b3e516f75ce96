// Package specimen is a document with one of everything a scene can hold, as a
// printer's specimen sheet shows every letter: what the back ends and the check of
// the layout are tried on.
package specimen

import (
	"fmt"

	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
)

var (
	serif = scene.Font{Family: scene.Serif}
	title = scene.Font{Family: scene.Serif, Bold: true}
	slant = scene.Font{Family: scene.Serif, Italic: true}
	sans  = scene.Font{Family: scene.Sans}
	bold  = scene.Font{Family: scene.Sans, Bold: true}
	rule  = scene.Pen{Width: 0.2, Ink: scene.Grey(0.4)}
)

// margin of every page, and the width of the text on A4, in mm.
const (
	margin = 18.0
	wide   = 210 - 2*margin
)

// Document is a sheet of A4 and one of Letter, turned.
func Document() scene.Document {
	return scene.Document{
		Title: "Galley towels: cottolin, point twill", Author: "Saltmarsh", Subject: "A specimen of sheets", Date: "2026-11-25",
		Pages: []scene.Page{Sheet(), Letters()},
	}
}

// Sheet is a page as a weaver would have it at the loom.
func Sheet() scene.Page {
	var s sheet
	s.heading()
	s.ledger()
	s.ticks()
	s.words()
	s.hatches()
	s.cloth()
	s.foot(scene.A4, "1")
	return scene.Page{Width: scene.A4.Width, Height: scene.A4.Height, Items: s.items}
}

// sheet is filled from the top down.
type sheet struct{ items []scene.Item }

func (s *sheet) draw(items ...scene.Item) { s.items = append(s.items, items...) }

// say sets a text that must stay within the margins of an A4 page.
func (s *sheet) say(x, y, pt float64, f scene.Font, anchor scene.Anchor, text string) {
	box := scene.Box{X: margin, Y: 0, Width: wide, Height: scene.A4.Height}
	s.draw(scene.Text{X: x, Y: y, Size: pt, Font: f, Anchor: anchor, Text: text, Box: box})
}

func (s *sheet) rule(y float64) {
	s.draw(scene.Line{X1: margin, Y1: y, X2: margin + wide, Y2: y, Pen: rule})
}

func (s *sheet) heading() {
	s.say(margin, 27, 25, title, scene.Start, "Galley towels")
	s.say(margin+wide, 27, 12, slant, scene.End, "cottolin, point twill, six on one warp")
	s.draw(scene.Line{X1: margin, Y1: 31, X2: margin + wide, Y2: 31, Pen: scene.Solid(0.5)})
}

func (s *sheet) ledger() {
	rows := [][2]string{
		{"Width in the reed", letter.FractionText("21 1/4 in")},
		{"Ends, two to a dent", "510 + 2"},
		{"Warp, wound", letter.FractionText("6 3/4 yd")},
		{"Fringe, each end", letter.FractionText("2 3/16 in")},
		{"Sett in the reed", "24 ends per inch"},
		{"Take-up × shrinkage", "−8 % × −6 %"},
	}
	for i, row := range rows {
		y := 41 + 7.5*float64(i)
		s.entry(y, row[0], row[1])
	}
	s.say(margin, 91, 17, serif, scene.Start, "Yarn in all")
	s.say(margin+wide, 91, 17, title, scene.End, letter.FractionText("1 1/2 lb")+" ≈ 681 g")
	s.rule(94.5)
}

// entry is a label, dots and a value.
func (s *sheet) entry(y float64, label, value string) {
	const pt = 12
	s.say(margin, y, pt, sans, scene.Start, label)
	s.say(margin+wide, y, pt, sans, scene.End, value)
	s.draw(scene.Leader(margin+letter.Width(label, sans, pt)+2, margin+wide-letter.Width(value, sans, pt)-2, y))
}

func (s *sheet) ticks() {
	s.say(margin, 104, 17, serif, scene.Start, "Threading, in groups of twenty")
	for i := range 10 {
		x, y := margin+float64(i%5)*35.2, 114+8.5*float64(i/5)
		s.draw(scene.Ticked(x, y, 4.2))
		if i > 2 {
			s.items[len(s.items)-1] = scene.TickBox(x, y, 4.2)
		}
		s.say(x+6.5, y, 12, sans, scene.Start, fmt.Sprintf("%d to %d", i*20+1, i*20+20))
	}
}

func (s *sheet) words() {
	s.rule(128)
	text := "Beam with paper or sticks between the layers, and keep the same tension from edge to edge: hold the warp " +
		"in two bouts, shake it out, wind a turn, and tug each bout before the next. A warp that is slack at one side weaves ripples."
	for i, line := range letter.Wrap(text, sans, 12, wide) {
		s.say(margin, 136+6.2*float64(i), 12, sans, scene.Start, line)
	}
	s.rule(157)
}

func (s *sheet) hatches() {
	s.say(margin, 166, 17, serif, scene.Start, "Yarns, told apart without colour")
	for i := range scene.Hatchings {
		box := scene.Box{X: margin + 25*float64(i), Y: 170, Width: 20, Height: 12}
		s.draw(scene.Hatch(box.Corners(), scene.HatchingOf(i), 1.6, scene.Solid(0.18)))
		s.draw(scene.Rect{X: box.X, Y: box.Y, Width: box.Width, Height: box.Height, Pen: scene.Solid(0.25)})
		s.say(box.X+10, 188, 10, bold, scene.Middle, string(rune('A'+i)))
	}
}

// cloth is a point twill in thin grid lines, with measures, arrows and a circle.
func (s *sheet) cloth() {
	const x, y, cell, across, up = margin + 8, 199, 2.5, 24, 16
	grid := scene.Path{Pen: scene.Pen{Width: 0.1, Ink: scene.Grey(0.5)}}
	var dark scene.Path
	for end := range across {
		grid = grid.Move(x+cell*float64(end), y).Line(x+cell*float64(end), y+cell*up)
		for pick := range up {
			if onTop(end, pick) {
				left, top := x+cell*float64(end), y+cell*float64(pick)
				dark = dark.Move(left, top).Line(left+cell, top).Line(left+cell, top+cell).Line(left, top+cell).Shut()
			}
		}
	}
	for pick := range up {
		grid = grid.Move(x, y+cell*float64(pick)).Line(x+cell*across, y+cell*float64(pick))
	}
	dark.Fill = scene.RGB(0x25, 0x40, 0x7c)
	s.draw(dark, grid, scene.Rect{X: x, Y: y, Width: cell * across, Height: cell * up, Pen: scene.Solid(0.3)})
	label := scene.Text{Size: 10, Font: sans, Text: "60 mm"}
	s.draw(scene.Dimension(x, y+cell*up+5, x+cell*across, y+cell*up+5, label, scene.Solid(0.2)))
	label.Text = "40 mm"
	s.draw(scene.Dimension(x-4.5, y, x-4.5, y+cell*up, label, scene.Solid(0.2)))
	s.beside(x + cell*across + 12)
}

func onTop(end, pick int) bool {
	shaft := end % 6
	if shaft > 3 {
		shaft = 6 - shaft
	}
	return (shaft+pick)%4 < 2
}

func (s *sheet) beside(x float64) {
	dashed := scene.Pen{Width: 0.3, Ink: scene.Grey(0.3), Dash: []float64{2, 1}}
	s.draw(
		scene.Circle{X: x + 15, Y: 214, Radius: 14, Pen: scene.Solid(0.4), Fill: scene.Grey(0.9)},
		scene.Circle{X: x + 15, Y: 214, Radius: 4, Pen: dashed, Fill: scene.White},
		scene.Arrow(x+30, 214, x+44, 214, 3, scene.Pen{Width: 0.6, Ink: scene.RGB(0x9b, 0x2c, 0x24)}),
		scene.Polyline{Points: []scene.Point{{X: x + 50, Y: 226}, {X: x + 58, Y: 202}, {X: x + 66, Y: 226}}, Pen: scene.Solid(1.2)},
		scene.Polyline{Points: []scene.Point{{X: x + 72, Y: 226}, {X: x + 80, Y: 202}, {X: x + 88, Y: 226}}, Pen: scene.Pen{Width: 1.2, Round: true}},
	)
	s.say(x, 238, 10, sans, scene.Start, "warp on top is dark; beat 24 → 26 picks per inch")
}

func (s *sheet) foot(paper scene.Size, page string) {
	y := paper.Height - 26
	s.draw(scene.ScaleBar(margin, y, "100 mm", "4 in", scene.Text{Size: 10, Font: sans}))
	s.draw(scene.Line{X1: margin, Y1: y + 8, X2: paper.Width - margin, Y2: y + 8, Pen: rule})
	s.draw(scene.Text{X: margin, Y: y + 13, Size: 10, Font: sans, Text: "Saltmarsh, version 3, 25 November 2026"})
	s.draw(scene.Text{X: paper.Width - margin, Y: y + 13, Size: 10, Font: sans, Anchor: scene.End, Text: "page " + page + " of 2"})
}
