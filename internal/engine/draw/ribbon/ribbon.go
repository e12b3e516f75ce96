// Package ribbon draws what lies end to end, such as the lengths of a warp or the
// stripes across it, as one bar to one scale. Parts are told apart without colour:
// by greys and hatchings, which a key repeats. All words are the caller's.
package ribbon

import (
	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
)

// Part is a stretch of the ribbon.
type Part struct {
	Size  float64 // in any unit, the same for all parts; a part of 0 or less is left out
	Tone  Tone
	Label string // stands in the part where there is room for it
}

// Sizes on the paper, in mm and points.
const (
	pt     = 10.0
	air    = 1.0 // round a label
	pitch  = 1.4 // of hatchings
	finest = 0.6 // the narrowest part that has an outline
)

var (
	outline = scene.Pen{Width: 0.2}
	hatched = scene.Pen{Width: 0.18, Ink: scene.Grey(0.3)}
	font    = scene.Font{}
)

// Draw draws the parts from left to right over the whole box; no parts, no drawing.
func Draw(parts []Part, box scene.Box) scene.Group {
	whole := sum(parts)
	if whole <= 0 || box.Width <= 0 || box.Height <= 0 {
		return scene.Group{}
	}
	var items []scene.Item
	at := 0.0
	for _, p := range parts {
		if p.Size <= 0 {
			continue
		}
		from, to := box.Width*at/whole, box.Width*(at+p.Size)/whole
		items = append(items, p.draw(scene.Box{X: box.X + from, Y: box.Y, Width: to - from, Height: box.Height})...)
		at += p.Size
	}
	return scene.Group{Items: append(items, frame(box, outline))}
}

func sum(parts []Part) float64 {
	whole := 0.0
	for _, p := range parts {
		whole += max(p.Size, 0)
	}
	return whole
}

func frame(b scene.Box, pen scene.Pen) scene.Rect {
	return scene.Rect{X: b.X, Y: b.Y, Width: b.Width, Height: b.Height, Pen: pen}
}

// draw fills a part, outlines it and sets its label where there is room.
func (p Part) draw(box scene.Box) []scene.Item {
	items := p.Tone.fill(box)
	if box.Width >= finest {
		items = append(items, frame(box, outline))
	}
	wide := letter.Width(p.Label, font, pt)
	if p.Label == "" || wide+2*air > box.Width || p.Tone.dark() {
		return items
	}
	return append(items, p.label(box, wide)...)
}

// label stands in the middle of the part, on white where the part is hatched.
func (p Part) label(box scene.Box, wide float64) []scene.Item {
	high := letter.CapHeight(font, pt)
	at := scene.Point{X: box.X + box.Width/2, Y: box.Y + (box.Height+high)/2}
	text := scene.Text{X: at.X, Y: at.Y, Size: pt, Font: font, Anchor: scene.Middle, Text: p.Label, Box: box}
	if !p.Tone.hatched() {
		return []scene.Item{text}
	}
	ground := scene.Rect{X: at.X - wide/2 - air/2, Y: at.Y - high - air, Width: wide + air, Height: high + 2*air, Fill: scene.White}
	return []scene.Item{ground, text}
}

// Swatch is a little square of a tone, for a key, with its bottom left corner at
// x, y.
func Swatch(t Tone, x, y, side float64) scene.Group {
	box := scene.Box{X: x, Y: y - side, Width: side, Height: side}
	return scene.Group{Items: append(t.fill(box), frame(box, outline))}
}
