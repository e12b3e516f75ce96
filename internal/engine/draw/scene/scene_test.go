package scene_test

import (
	"flag"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sley/internal/engine/draw/scene"
	"sley/internal/engine/draw/specimen"
)

var update = flag.Bool("update", false, "write the golden anew")

func TestDump(t *testing.T) {
	const golden = "testdata/specimen.txt"
	got := scene.Dump(specimen.Document())
	if *update {
		if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")); diff != "" {
		t.Errorf("the specimen has changed; when it should, go test -update (-want +got):\n%s", diff)
	}
}

func TestDumpOfEveryItem(t *testing.T) {
	page := scene.Page{Width: 100, Height: 50, Items: []scene.Item{
		scene.Line{X1: 1, Y1: 2, X2: 3.00049, Y2: -0.0001, Pen: scene.Pen{Width: 0.25, Dash: []float64{2, 1}}},
		scene.Polyline{Points: []scene.Point{{X: 1, Y: 2}, {X: 3, Y: 4}}, Fill: scene.Black},
		scene.Polyline{Points: []scene.Point{{X: 1, Y: 2}, {X: 3, Y: 4}}, Closed: true, Fill: scene.Grey(0.5)},
		scene.Rect{X: 1, Y: 2, Width: 3, Height: 4, Pen: scene.Pen{Width: 1, Round: true}},
		scene.Circle{X: 1, Y: 2, Radius: 3},
		scene.Path{Pen: scene.Solid(1)}.Move(0, 0).Line(1, 1).Cubic(1, 2, 3, 4, 5, 6).Shut(),
		scene.Group{X: 5, Clip: scene.Box{Width: 9, Height: 8}, Items: []scene.Item{scene.Text{
			X: 1, Y: 2, Size: 12, Font: scene.Font{Family: scene.Serif, Bold: true, Italic: true}, Anchor: scene.End,
			Angle: 90, Ink: scene.RGB(1, 2, 3), Text: "a \"b\"", Box: scene.Box{Width: 7, Height: 6},
		}}},
	}}
	want := `document "T" author "A" subject "S" date "D"
page 100 x 50
  line 1,2 3,0 pen 0.25 #000000 dash 2,1
  polyline 1,2 3,4  fill #000000
  polygon 1,2 3,4  fill #808080
  rect 1,2 size 3,4 pen 1 #000000 round
  circle 1,2 radius 3
  path M0,0 L1,1 C1,2 3,4 5,6 Z pen 1 #000000
  group 5,0 clip 0,0 size 9,8
    text 1,2 serif bold italic 12 end turned 90 #010203 "a \"b\"" in 0,0 size 7,6
`
	got := scene.Dump(scene.Document{Title: "T", Author: "A", Subject: "S", Date: "D", Pages: []scene.Page{page}})
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
}

func TestACircleStraysLessThanThreeTenThousandths(t *testing.T) {
	path, ok := scene.Outline(scene.Circle{X: 3, Y: 4, Radius: 1})
	if !ok {
		t.Fatal("a circle has an outline")
	}
	from := path.Segments[0].To
	for _, s := range path.Segments[1:5] {
		for i := range 101 {
			u := float64(i) / 100
			v := 1 - u
			x := v*v*v*from.X + 3*v*v*u*s.C1.X + 3*v*u*u*s.C2.X + u*u*u*s.To.X
			y := v*v*v*from.Y + 3*v*v*u*s.C1.Y + 3*v*u*u*s.C2.Y + u*u*u*s.To.Y
			if off := math.Abs(math.Hypot(x-3, y-4) - 1); off > 0.0003 {
				t.Fatalf("at %v the radius is off by %v", u, off)
			}
		}
		from = s.To
	}
}

func TestTurnIsAnticlockwiseOnThePaper(t *testing.T) {
	got := scene.Point{X: 12, Y: 5}.Turn(scene.Point{X: 10, Y: 5}, 90) // from right of the centre to above it
	if math.Abs(got.X-10) > 1e-12 || math.Abs(got.Y-3) > 1e-12 {
		t.Errorf("got %v", got)
	}
}

func TestBoxes(t *testing.T) {
	a, b := scene.Box{X: 1, Y: 1, Width: 4, Height: 4}, scene.Box{X: 3, Y: 0, Width: 9, Height: 3}
	if got, want := a.Intersect(b), (scene.Box{X: 3, Y: 1, Width: 2, Height: 2}); got != want {
		t.Errorf("common: %v", got)
	}
	if got := a.Intersect(b.Shift(50, 0)); got.Width != 0 {
		t.Errorf("boxes apart share %v", got)
	}
	if got, want := scene.Around([]scene.Point{{X: 3, Y: 1}, {X: 1, Y: 7}}), (scene.Box{X: 1, Y: 1, Width: 2, Height: 6}); got != want {
		t.Errorf("around: %v", got)
	}
	if !scene.Around(nil).IsZero() {
		t.Error("around nothing is nothing")
	}
}

func TestInks(t *testing.T) {
	if !scene.None.IsNone() || scene.Black.IsNone() || scene.None.OrBlack() != scene.Black {
		t.Error("no ink is not black ink, and stands for it in strokes")
	}
	if scene.Grey(2) != scene.White || scene.Grey(-1) != scene.Black || scene.Grey(0.5) != scene.RGB(128, 128, 128) {
		t.Error("greys run from black to white")
	}
	if scene.RGB(1, 1, 2).IsGrey() || !scene.RGB(7, 7, 7).IsGrey() {
		t.Error("grey is red, green and blue alike")
	}
}
