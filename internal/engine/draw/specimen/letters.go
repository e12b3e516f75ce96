package specimen

import (
	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
)

// Letters is a page of every cut, with signs and names that are hard to set, text
// turned, text cut, and a group that clips. It is Letter, turned.
func Letters() scene.Page {
	paper := scene.Size{Width: scene.Letter.Height, Height: scene.Letter.Width}
	var s sheet
	s.cuts()
	s.turned()
	s.clipped()
	s.narrow()
	s.foot(paper, "2")
	return scene.Page{Width: paper.Width, Height: paper.Height, Items: s.items}
}

func (s *sheet) cuts() {
	lines := []struct {
		font scene.Font
		text string
	}{
		{title, "Serif bold: Weaving 0123456789"},
		{serif, "Serif: Ångström, Łódź, Đorđe, Şirin, Țesut, Győr, ẞ ß æ œ þ"},
		{slant, "Serif italic: take-up " + letter.Fraction(0, 1, 8) + " and shrinkage √2 ≥ 1 ≤ 2 ≈ 1.414"},
		{sans, "Sans: 1 l I, 0 O, ½ ¼ ¾ ⅛ ⅜ " + letter.Fraction(3, 5, 16) + " " + letter.Fraction(0, 17, 32) + " m² × ÷ − ° ′ ″"},
		{sans, "Arrows → ← ↑ ↓, money € £ ¥, ticks ✓ and ✔, 1\u2009450\u2009m, “quotes” – dashes — …"},
		{bold, "Sans bold: ends 512, picks 1\u2009024"},
		{sans, "Ткачество, Trần Thị Hạnh, Ó Súilleabháin, O\u2019Brien"},
		{sans, "No letters for 織 and 🧶, a box ☐ and a bell\a."},
	}
	for i, line := range lines {
		s.draw(scene.Text{X: margin, Y: 28 + 9*float64(i), Size: 14, Font: line.font, Text: line.text})
	}
}

func (s *sheet) turned() {
	for i, angle := range []float64{0, 30, 60, 90} {
		at := scene.Point{X: 30, Y: 0}.Turn(scene.Point{}, angle)
		s.draw(scene.Text{X: 50 + at.X/3, Y: 150 + at.Y/3, Size: 12 + float64(i), Font: sans, Angle: angle, Text: "turned"})
	}
	s.draw(scene.Circle{X: 50, Y: 150, Radius: 1, Fill: scene.Black})
}

// clipped is rings seen through a window, in a group that is moved.
func (s *sheet) clipped() {
	var rings []scene.Item
	for i := range 12 {
		rings = append(rings, scene.Circle{X: 0, Y: 0, Radius: 4 + 4*float64(i), Pen: scene.Pen{Width: 0.8, Ink: scene.Grey(0.06 * float64(i))}})
	}
	window := scene.Box{X: -20, Y: -15, Width: 40, Height: 30}
	s.draw(scene.Group{X: 130, Y: 140, Clip: window, Items: rings})
	s.draw(scene.Rect{X: 110, Y: 125, Width: 40, Height: 30, Pen: scene.Solid(0.3)})
}

// narrow is text in a column too narrow for it.
func (s *sheet) narrow() {
	column := scene.Box{X: 170, Y: 120, Width: 42, Height: 40}
	s.draw(scene.Rect{X: column.X, Y: column.Y, Width: column.Width, Height: column.Height, Pen: rule})
	text := "Hand-spun singles, wet-finished, about 1\u00a0450\u00a0m; handweavers’ words of length such as countermarchlooms run on."
	for i, line := range letter.Wrap(text, sans, 10, column.Width-4) {
		s.draw(scene.Text{X: column.X + 2, Y: column.Y + 6 + 5*float64(i), Size: 10, Font: sans, Text: line, Box: column})
	}
	fit := letter.Fit("A title that is too long for its column", bold, 12, column.Width)
	s.draw(scene.Text{X: column.X, Y: 170, Size: 12, Font: bold, Text: fit, Box: column.Inset(-15)})
}
