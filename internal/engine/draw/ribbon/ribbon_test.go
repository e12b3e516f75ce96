package ribbon

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/engine/draw/check"
	"sley/internal/engine/draw/scene"
)

// grounds are the filled boxes of a drawing in order, labels' left out.
func grounds(g scene.Group) []scene.Rect {
	var out []scene.Rect
	for _, it := range g.Items {
		if r, ok := it.(scene.Rect); ok && !r.Fill.IsNone() && !r.Pen.Draws() {
			out = append(out, r)
		}
	}
	return out
}

func texts(g scene.Group) []string {
	var out []string
	for _, it := range g.Items {
		if t, ok := it.(scene.Text); ok {
			out = append(out, t.Text)
		}
	}
	return out
}

var bar = scene.Box{X: 15, Y: 20, Width: 180, Height: 12}

// Every part is as long as it is of the whole, and they lie end to end.
func TestPartsAreToScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sizes := rapid.SliceOfN(rapid.Float64Range(0.5, 300), 1, 40).Draw(t, "sizes")
		var parts []Part
		whole := 0.0
		for i, size := range sizes {
			parts = append(parts, Part{Size: size, Tone: Tone(i % 5)})
			whole += size
		}
		got := grounds(Draw(parts, bar))
		if len(got) != len(parts) {
			t.Fatalf("%d parts drawn, want %d", len(got), len(parts))
		}
		at := bar.X
		for i, r := range got {
			if math.Abs(r.X-at) > 1e-6 || math.Abs(r.Width-bar.Width*sizes[i]/whole) > 1e-6 {
				t.Fatalf("part %d at %g, %g wide: want %g and %g", i, r.X, r.Width, at, bar.Width*sizes[i]/whole)
			}
			at += r.Width
		}
		if math.Abs(at-bar.Right()) > 1e-6 {
			t.Fatalf("the parts end at %g, the bar at %g", at, bar.Right())
		}
	})
}

// A label is set where it fits and can be read, and left out where not.
func TestLabelsWhereThereIsRoom(t *testing.T) {
	g := Draw([]Part{{10, 0, "towel"}, {1, 0, "towel"}, {10, 1, "dark"}, {10, Waste, "waste"}, {0, 0, "none"}}, bar)
	got := texts(g)
	if len(got) != 2 || got[0] != "towel" || got[1] != "waste" {
		t.Errorf("labels %q, want towel and waste", got)
	}
	page := scene.Page{Width: scene.A4.Width, Height: scene.A4.Height, Items: []scene.Item{g}}
	for _, f := range check.Read(scene.Document{Pages: []scene.Page{page}}, check.Rules{MinPt: 10, Margin: 15}) {
		t.Error(f)
	}
}

func TestNothingToDraw(t *testing.T) {
	for _, g := range []scene.Group{Draw(nil, bar), Draw([]Part{{Size: -1}}, bar), Draw([]Part{{Size: 1}}, scene.Box{})} {
		if len(g.Items) > 0 {
			t.Errorf("drawn: %v", g)
		}
	}
}

// The first fifteen tones are all different: a grey apart by a sixth of the scale
// or more, or another hatching.
func TestTonesCanBeToldApart(t *testing.T) {
	for a := range Tone(15) {
		for b := range a {
			wayA, hatchedA := a.hatching()
			wayB, hatchedB := b.hatching()
			if math.Abs(a.grey()-b.grey()) < 1.0/6 && hatchedA == hatchedB && wayA == wayB {
				t.Errorf("tones %d and %d look alike", a, b)
			}
		}
	}
}
