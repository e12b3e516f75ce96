package scene_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/engine/draw/scene"
)

func near(a, b float64) bool { return math.Abs(a-b) < 1e-9 }

func TestTickBoxStandsOnTheBaseline(t *testing.T) {
	box := scene.TickBox(10, 50, 4)
	if box.X != 10 || box.Y != 46 || box.Width != 4 || box.Height != 4 || !box.Fill.IsNone() || !box.Pen.Draws() {
		t.Errorf("got %+v", box)
	}
	if got := scene.Ticked(10, 50, 4); len(got.Items) != 2 || got.Items[0].(scene.Rect).X != 10 {
		t.Errorf("got %+v", got)
	}
}

func TestLeaderDotsLineUp(t *testing.T) {
	a, b := scene.Leader(20.2, 90, 40), scene.Leader(33.1, 71.7, 50)
	pitch := a.Pen.Dash[1]
	if a.Pen.Dash[0] != 0 || !a.Pen.Round {
		t.Errorf("dots are round dashes of no length: %+v", a.Pen)
	}
	apart := (b.Segments[0].To.X - a.Segments[0].To.X) / pitch
	if !near(apart, math.Round(apart)) {
		t.Errorf("rows are %v dots apart", apart)
	}
	if from, to := a.Segments[0].To.X, a.Segments[1].To.X; from < 20.2 || to > 90+pitch/8 {
		t.Errorf("dots from %v to %v", from, to)
	}
	for _, short := range []float64{20, 21, -5, math.NaN(), math.Inf(1)} {
		if got := scene.Leader(20.1, short, 0); len(got.Segments) > 0 {
			t.Errorf("to %v: %v", short, got.Segments)
		}
	}
}

func TestArrowEndsAtItsPoint(t *testing.T) {
	items := scene.Arrow(0, 0, 30, 40, 5, scene.Solid(0.5)).Items
	head := items[1].(scene.Polyline)
	if head.Points[0] != (scene.Point{X: 30, Y: 40}) || !head.Closed || head.Fill.IsNone() {
		t.Errorf("head %+v", head)
	}
	if shaft := items[0].(scene.Line); math.Hypot(shaft.X2, shaft.Y2) >= 50 {
		t.Errorf("a blunt shaft reaches through the point: %+v", shaft)
	}
	if got := scene.Arrow(1, 1, 1, 1, 5, scene.Solid(1)); len(got.Items) != 0 {
		t.Error("an arrow of no length has no direction")
	}
}

func TestDimensionReadsFromBelowOrFromTheRight(t *testing.T) {
	for _, c := range []struct{ x2, y2, angle float64 }{
		{10, 0, 0},
		{-10, 0, 0},
		{0, 10, 90},
		{0, -10, 90},
		{10, 10, -45},
		{-10, 10, 45},
	} {
		items := scene.Dimension(0, 0, c.x2, c.y2, scene.Text{Size: 10, Text: "x"}, scene.Solid(0.2)).Items
		label := items[len(items)-1].(scene.Text)
		if !near(label.Angle, c.angle) || label.Anchor != scene.Middle {
			t.Errorf("to %v,%v: turned %v, want %v", c.x2, c.y2, label.Angle, c.angle)
		}
	}
	if got := scene.Dimension(1, 1, 1, 1, scene.Text{}, scene.Solid(1)); len(got.Items) != 0 {
		t.Error("nothing to measure")
	}
}

func TestScaleBarIsTrue(t *testing.T) {
	bar := scene.ScaleBar(20, 100, "100 mm", "4 in", scene.Text{Size: 10})
	var wide []float64
	var words []string
	for _, it := range bar.Items {
		switch it := it.(type) {
		case scene.Rect:
			if !it.Fill.IsGrey() || it.X < 20 {
				t.Errorf("block %+v", it)
			}
			if it.Pen.Draws() {
				wide = append(wide, it.Width)
			}
		case scene.Text:
			words = append(words, it.Text)
		}
	}
	// 4 in are 101.6 mm.
	if len(wide) != 2 || wide[0] != 100 || !near(wide[1], 101.6) || strings.Join(words, "|") != "100 mm|4 in" {
		t.Errorf("bars of %v mm, labelled %q", wide, words)
	}
}

// inside is the slow way: count the edges that a ray to the right crosses.
func inside(polygon []scene.Point, p scene.Point) bool {
	in := false
	for i, a := range polygon {
		b := polygon[(i+1)%len(polygon)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)*(b.X-a.X)/(b.Y-a.Y) {
			in = !in
		}
	}
	return in
}

func drawPolygon(t *rapid.T) []scene.Point {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) scene.Point {
		return scene.Point{X: rapid.Float64Range(0, 60).Draw(t, "x"), Y: rapid.Float64Range(0, 60).Draw(t, "y")}
	}), 3, 9).Draw(t, "polygon")
}

func TestStrokesOfAHatchLieInside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		polygon := drawPolygon(t)
		way := scene.HatchingOf(rapid.IntRange(0, int(scene.Squared)).Draw(t, "way"))
		path := scene.Hatch(polygon, way, rapid.Float64Range(0, 5).Draw(t, "pitch"), scene.Solid(0.1))
		for i := 0; i+1 < len(path.Segments); i += 2 {
			a, b := path.Segments[i].To, path.Segments[i+1].To
			if math.Hypot(a.X-b.X, a.Y-b.Y) < 0.01 {
				continue // too short to ask about its middle
			}
			if middle := (scene.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}); !inside(polygon, middle) {
				t.Fatalf("%v: a stroke from %v to %v lies outside", way, a, b)
			}
		}
	})
}

func TestHatchCoversASquare(t *testing.T) {
	square := scene.Box{X: 10, Y: 10, Width: 20, Height: 20}.Corners()
	for _, c := range []struct {
		way     scene.Hatching
		strokes int
	}{
		{scene.Level, 10}, // 10 to 28 by 2; the far edge belongs to the neighbour
		{scene.Upright, 10},
		{scene.Squared, 20},
	} {
		path := scene.Hatch(square, c.way, 2, scene.Solid(0.1))
		length := 0.0
		for i := 0; i+1 < len(path.Segments); i += 2 {
			length += math.Hypot(path.Segments[i+1].To.X-path.Segments[i].To.X, path.Segments[i+1].To.Y-path.Segments[i].To.Y)
		}
		if len(path.Segments) != 2*c.strokes || !near(length, 20*float64(c.strokes)) {
			t.Errorf("%v: %d strokes of %v mm, want %d of 20 each", c.way, len(path.Segments)/2, length, c.strokes)
		}
	}
}

func TestDotsStandInsideAsOnDice(t *testing.T) {
	square := scene.Box{X: 10, Y: 10, Width: 20, Height: 20}.Corners()
	path := scene.Hatch(square, scene.Dotted, 2, scene.Solid(0.1))
	if !path.Pen.Round || path.Pen.Width != 0.7 {
		t.Errorf("pen %v", path.Pen)
	}
	for i := 0; i < len(path.Segments); i += 2 {
		from, to := path.Segments[i].To, path.Segments[i+1].To
		if want := 11 - float64(i/2%2); !near(from.X, want) || to.X > 30+0.25+1e-9 {
			t.Errorf("row %d from %v to %v, want it to begin at %v", i/2, from.X, to.X, want)
		}
	}
}

func TestHatchingsAreSevenAndGoRound(t *testing.T) {
	seen := map[scene.Hatching]bool{}
	for i := range scene.Hatchings {
		seen[scene.HatchingOf(i)] = true
	}
	if len(seen) != 7 || scene.HatchingOf(-1) != scene.Dotted || scene.HatchingOf(7) != scene.Rising {
		t.Errorf("%v", seen)
	}
}
