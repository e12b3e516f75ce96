package board_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"sley/internal/engine/draw/board"
	"sley/internal/engine/draw/check"
	"sley/internal/engine/draw/scene"
	"sley/internal/engine/dress"
	"sley/internal/trade/qty"
)

var words = board.Words{Wide: "1 yd", High: "1 yd", Cross: "cross", Tie: "choke tie, every yard"}

var box = scene.Box{X: 20, Y: 20, Width: 170, Height: 130}

// row is a board with all its pegs in a row, column one with all below one another,
// crowd one with forty pegs a hand apart, tall a board of two far ones.
func row() dress.Board {
	var b dress.Board
	for i := range 5 {
		b.Pegs = append(b.Pegs, dress.Peg{Name: fmt.Sprint("peg ", i+1), X: qty.Length(i) * 20 * qty.Centimetre})
	}
	return b
}

func column() dress.Board {
	b := row()
	for i := range b.Pegs {
		b.Pegs[i].X, b.Pegs[i].Y = 0, b.Pegs[i].X
	}
	return b
}

func crowd() dress.Board {
	var b dress.Board
	for i := range 40 {
		b.Pegs = append(b.Pegs, dress.Peg{
			Name: fmt.Sprint("number ", i+1),
			X:    qty.Length(i%8*10+i/8%2*5) * qty.Centimetre, Y: qty.Length(i/8) * 10 * qty.Centimetre,
		})
	}
	return b
}

func tall() dress.Board {
	b := dress.UsualBoard(true)
	for i := range b.Pegs {
		b.Pegs[i].Y *= 4
		b.Pegs[i].X = -b.Pegs[i].X
	}
	return b
}

var boards = map[string]dress.Board{
	"imperial": dress.UsualBoard(false), "metric": dress.UsualBoard(true),
	"row": row(), "column": column(), "crowd": crowd(), "tall": tall(),
	"three": {Pegs: []dress.Peg{{Name: "start"}, {Name: "a", X: qty.Metre}, {Name: "b", X: qty.Metre, Y: qty.Metre}}},
	"one":   {Pegs: []dress.Peg{{Name: "start"}, {Name: "same"}, {Name: "place"}}},
}

// drawn is a board on a page of A4 with the way of a warp over it.
func drawn(b dress.Board, wound qty.Length, within scene.Box) scene.Document {
	p := b.Path(wound, dress.Budget)
	g := board.Draw(b, p, board.Ties(b, p, qty.Yard), within, words)
	return scene.Document{Pages: []scene.Page{{Width: scene.A4.Width, Height: scene.A4.Height, Items: []scene.Item{g}}}}
}

func TestAPrinterFindsNothing(t *testing.T) {
	for name, b := range boards {
		for _, wound := range []qty.Length{qty.Yard, 4 * qty.Yard, 13 * qty.Yard / 2, 20 * qty.Yard} {
			for _, within := range []scene.Box{box, {X: 20, Y: 20, Width: 80, Height: 70}, {X: 15, Y: 15, Width: 180, Height: 250}} {
				doc := drawn(b, wound, within)
				if err := doc.Pages[0].Validate(); err != nil {
					t.Fatalf("%s: %v", name, err)
				}
				for _, f := range check.Read(doc, check.Rules{MinPt: 10, Margin: 14}) {
					t.Errorf("%s, %s in %v: %s", name, wound, within, f)
				}
			}
		}
	}
}

// flat is every item of the drawing outside its groups.
func flat(items []scene.Item) []scene.Item {
	var all []scene.Item
	for _, it := range items {
		if g, ok := it.(scene.Group); ok && g.X == 0 && g.Y == 0 {
			all = append(all, flat(g.Items)...)
			continue
		}
		all = append(all, it)
	}
	return all
}

// circles are the centres of the pegs, in the order of the board.
func circles(items []scene.Item) []scene.Point {
	var found []scene.Point
	for _, it := range flat(items) {
		if c, ok := it.(scene.Circle); ok && c.Pen.Draws() {
			found = append(found, scene.Point{X: c.X, Y: c.Y})
		}
	}
	return found
}

// One scale holds for every pair of pegs, and the outermost fill the room.
func TestPegsStandToScale(t *testing.T) {
	for _, name := range []string{"imperial", "metric", "crowd", "tall", "row", "column", "three"} {
		b := boards[name]
		at := circles(drawn(b, qty.Yard, box).Pages[0].Items)
		if len(at) != len(b.Pegs) {
			t.Fatalf("%s: %d pegs drawn, want %d", name, len(at), len(b.Pegs))
		}
		scale := math.Hypot(at[1].X-at[0].X, at[1].Y-at[0].Y) / math.Hypot(float64(b.Pegs[1].X-b.Pegs[0].X), float64(b.Pegs[1].Y-b.Pegs[0].Y))
		for i, p := range b.Pegs {
			dx, dy := float64(p.X-b.Pegs[0].X)*scale, float64(p.Y-b.Pegs[0].Y)*scale
			if math.Abs(at[i].X-at[0].X-dx) > 1e-6 || math.Abs(at[i].Y-at[0].Y-dy) > 1e-6 {
				t.Errorf("%s: %s is %v, %v from the start, want %v, %v", name, p.Name, at[i].X-at[0].X, at[i].Y-at[0].Y, dx, dy)
			}
		}
		if size := scene.Around(at); max(size.Width, size.Height) < 50 {
			t.Errorf("%s: the board is %v by %v mm in a box of 170 by 130", name, size.Width, size.Height)
		}
	}
}

// On the usual boards every peg and the cross have their names.
func TestEveryNameIsThere(t *testing.T) {
	for _, name := range []string{"imperial", "metric", "row", "column", "tall", "three"} {
		b := boards[name]
		var said []string
		for _, it := range flat(drawn(b, 9*qty.Yard, box).Pages[0].Items) {
			if text, ok := it.(scene.Text); ok {
				said = append(said, text.Text)
			}
		}
		want := []string{"cross"}
		for _, p := range b.Pegs {
			want = append(want, p.Name)
		}
		for _, w := range want {
			if !slices.Contains(said, w) {
				t.Errorf("%s: %q is missing from %q", name, w, said)
			}
		}
	}
}

// Ties are a yard apart from the third peg on: on 13/2 yd over the yard board, whose
// third peg is 24 in along, at 60 in and every 36 in after it.
func TestTies(t *testing.T) {
	b := dress.UsualBoard(false)
	p := b.Path(13*qty.Yard/2, dress.Budget)
	ties := board.Ties(b, p, qty.Yard)
	if len(ties) != 5 || ties[0] != 60*qty.Inch || ties[4] != 204*qty.Inch {
		t.Errorf("got %v on %s", ties, p.Length)
	}
	strokes := 0
	for _, it := range flat([]scene.Item{board.Draw(b, p, append(ties, 99*qty.Yard, -qty.Yard), box, board.Words{})}) {
		if l, ok := it.(scene.Line); ok && l.Pen.Width > 1 {
			strokes++
		}
	}
	if strokes != 5 {
		t.Errorf("%d strokes, want 5: those beyond the way are left out", strokes)
	}
	if got := board.Ties(b, p, 0); got != nil {
		t.Errorf("every nothing: %v", got)
	}
}

func TestNoRoom(t *testing.T) {
	for _, b := range []dress.Board{{}, dress.UsualBoard(true)} {
		small := scene.Box{Width: 20, Height: 20}
		if g := board.Draw(b, dress.Path{}, nil, small, words); len(g.Items) > 0 {
			t.Errorf("%d items in a box of 20 mm", len(g.Items))
		}
	}
	if g := board.Draw(dress.UsualBoard(true), dress.Path{Pegs: []int{0, 99, -1}}, nil, box, words); len(g.Items) == 0 {
		t.Error("a way that leaves the board ends there")
	}
}
