package pdf_test

import (
	"bytes"
	"io"
	"math"
	"testing"

	"sley/internal/edge/render/pdf"
	"sley/internal/edge/render/png"
	"sley/internal/edge/render/svg"
	"sley/internal/engine/draw/check"
	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
)

// FuzzScene draws random text and shapes with all three back ends: they agree on
// what can be drawn, never panic, and PDF and SVG are the same twice.
func FuzzScene(f *testing.F) {
	f.Add("Warp 1½ yd", "galley towels", 10.0, 20.0, 12.0, 30.0, uint8(0))
	f.Add("🧶\x00\xff織", "(\\) <&> ]]>", -5.0, 1e5, 0.01, -90.0, uint8(37))
	f.Add("\u202ecafe\u0301", "", math.MaxFloat64, math.Inf(-1), math.NaN(), 1e300, uint8(255))
	f.Fuzz(func(t *testing.T, text, title string, x, y, size, angle float64, kind uint8) {
		page := scene.Page{Width: 60, Height: 40, Items: fuzzed(text, x, y, size, angle, kind)}
		doc := scene.Document{Title: title, Author: text, Subject: title, Pages: []scene.Page{page}}
		var a, b bytes.Buffer
		errs := []error{pdf.Encode(&a, doc), svg.Encode(&b, page, title), png.Encode(io.Discard, page, 40)}
		for _, err := range errs {
			if (err == nil) != (page.Validate() == nil) {
				t.Fatalf("of one page: %v", errs)
			}
		}
		if errs[0] != nil {
			return
		}
		var c, d bytes.Buffer
		if pdf.Encode(&c, doc) != nil || !bytes.Equal(a.Bytes(), c.Bytes()) || svg.Encode(&d, page, title) != nil || !bytes.Equal(b.Bytes(), d.Bytes()) {
			t.Error("the same scene gave other bytes")
		}
		check.Read(doc, check.Rules{MinPt: 6})
		scene.Dump(doc)
	})
}

func fuzzed(text string, x, y, size, angle float64, kind uint8) []scene.Item {
	font := scene.Font{Family: scene.Family(kind & 1), Bold: kind&2 != 0, Italic: kind&4 != 0}
	pen := scene.Pen{Width: size / 10, Ink: scene.RGB(kind, 0, 0), Round: kind&8 != 0}
	if kind&16 != 0 {
		pen.Dash = []float64{size, y / 10}
	}
	words := scene.Text{X: x, Y: y, Size: size, Font: font, Anchor: scene.Anchor(kind % 3), Angle: angle, Text: text}
	items := []scene.Item{
		words,
		scene.Arrow(x, y, angle, size, size, pen),
		scene.Dimension(angle, x, y, size, words, pen),
		scene.Circle{X: y, Y: x, Radius: size, Pen: pen, Fill: scene.Grey(angle)},
		scene.Leader(x, angle, y),
		scene.Path{Pen: pen, Fill: scene.Black}.Move(x, y).Cubic(y, x, angle, size, size, angle).Shut().Line(size, x),
	}
	for i, line := range letter.Wrap(text, font, 10, size) {
		items = append(items, scene.Text{X: 1, Y: float64(i), Size: 10, Font: font, Text: letter.Fit(line, font, 10, size)})
	}
	if kind&32 != 0 {
		items = append(items, scene.Hatch(scene.Box{X: 5, Y: 5, Width: 30, Height: 20}.Corners(), scene.HatchingOf(int(kind)), size, pen))
	}
	return []scene.Item{scene.Group{X: angle / 100, Clip: scene.Box{Width: x, Height: y}, Items: items}}
}
