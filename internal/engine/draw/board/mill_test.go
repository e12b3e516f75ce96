package board_test

import (
	"math"
	"testing"

	"sley/internal/engine/draw/board"
	"sley/internal/engine/draw/check"
	"sley/internal/engine/draw/scene"
)

var millWords = board.MillWords{Start: "start", End: "end", Turns: "4 turns and 30 cm", Girth: "girth 2 m"}

// front is how many strokes of thread are in front, and where the last one ends.
func front(g scene.Group) (count int, last scene.Point) {
	for _, it := range g.Items {
		if l, ok := it.(scene.Line); ok && l.Pen.Round {
			count, last = count+1, scene.Point{X: l.X2, Y: l.Y2}
		}
	}
	return count, last
}

func TestMillHasItsTurns(t *testing.T) {
	for _, c := range []struct {
		turns int
		over  float64
		front int
	}{{0, 0, 0}, {0, 0.25, 1}, {1, 0, 1}, {4, 0.15, 5}, {4, 0.75, 5}, {12, 0, 12}} {
		g := board.Mill(c.turns, c.over, box, millWords)
		if got, _ := front(g); got != c.front {
			t.Errorf("%d turns and %v: %d strokes in front, want %d", c.turns, c.over, got, c.front)
		}
		for _, f := range check.Read(scene.Document{Pages: []scene.Page{{Width: 210, Height: 297, Items: []scene.Item{g}}}}, check.Rules{MinPt: 10, Margin: 19}) {
			t.Errorf("%d turns: %s", c.turns, f)
		}
	}
}

// A quarter of a turn ends in the middle of the front; too many turns stay on the
// mill, and the marks of the ends agree with the thread.
func TestMillEnds(t *testing.T) {
	_, quarter := front(board.Mill(2, 0.25, box, millWords))
	_, whole := front(board.Mill(2, 0.5, box, millWords))
	_, start := front(board.Mill(0, 0, box, millWords))
	if start != (scene.Point{}) || whole.X-quarter.X < 20 {
		t.Errorf("a quarter ends at %v, a half at %v", quarter, whole)
	}
	_, last := front(board.Mill(1000, 0, box, millWords))
	if math.IsNaN(last.Y) || last.Y > box.Bottom() {
		t.Errorf("a thousand turns end at %v", last)
	}
	if g := board.Mill(3, 0, scene.Box{Width: 30, Height: 20}, millWords); len(g.Items) > 0 {
		t.Error("a mill in a box too small for it")
	}
}
