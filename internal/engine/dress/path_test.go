package dress

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/trade/qty"
)

// yardSquare has its pegs a yard apart: three spans are 3 yd.
var yardSquare = Board{Pegs: []Peg{
	{"start", 0, 0},
	{"cross 1", qty.Yard, 0},
	{"cross 2", qty.Yard, qty.Yard},
	{"a", 0, qty.Yard},
	{"b", 0, 2 * qty.Yard},
	{"c", qty.Yard, 2 * qty.Yard},
}}

func TestThreeYardsInThreeSpans(t *testing.T) {
	for name, b := range map[string]Board{"square": yardSquare, "zigzag": zigzag(6)} {
		p := b.Path(3*qty.Yard, Budget)
		if !p.Reaches || !p.Best || p.Length != 3*qty.Yard || !slices.Equal(p.Pegs, []int{0, 1, 2, 3}) {
			t.Errorf("%s: got %+v, want 3 yd over the first four pegs", name, p)
		}
	}
}

// zigzag is a board whose pegs stand left and right in turn, each a yard from
// the one before.
func zigzag(n int) Board {
	const down = 100 * qty.Millimetre
	wide := qty.Length(math.Sqrt(float64(qty.Yard)*float64(qty.Yard) - float64(down)*float64(down)))
	var b Board
	for i := range n {
		b.Pegs = append(b.Pegs, Peg{fmt.Sprint(i), qty.Length(i%2) * wide, qty.Length(i) * down})
	}
	return b
}

// The usual boards: a yard (a metre) along the top rail, and about nine in all.
// Common practice, no source.
func TestUsualBoards(t *testing.T) {
	for _, c := range []struct {
		metric bool
		unit   qty.Length
	}{{false, qty.Yard}, {true, qty.Metre}} {
		b := UsualBoard(c.metric)
		if p := b.Path(c.unit, Budget); p.Length != c.unit || len(p.Pegs) != 4 {
			t.Errorf("one unit: %+v", p)
		}
		p := b.Path(20*c.unit, Budget)
		if p.Reaches || !p.Best || p.Length < 9*c.unit || p.Length > 10*c.unit {
			t.Errorf("the longest way: %+v", p)
		}
	}
}

// On the usual board every length up to the longest is found within the budget,
// with less than four inches over.
func TestUsualBoardTakesEveryLength(t *testing.T) {
	b := UsualBoard(false)
	for wound := 2 * qty.Yard; wound <= 9*qty.Yard; wound += qty.Yard / 4 {
		p := b.Path(wound, Budget)
		if !p.Reaches || !p.Best || p.Length-wound > 4*qty.Inch {
			t.Errorf("%s: %s over %d pegs, best %v", wound, p.Length, len(p.Pegs), p.Best)
		}
	}
}

func TestBudget(t *testing.T) {
	b := UsualBoard(false)
	if p := b.Path(6*qty.Yard, 5); p.Best {
		t.Errorf("five steps cannot have looked at every way: %+v", p)
	}
	if p := b.Path(6*qty.Yard, 60); p.Best || !p.Reaches || p.Length < 6*qty.Yard {
		t.Errorf("sixty steps find a way, and not the best: %+v", p)
	}
}

func TestSpan(t *testing.T) {
	for _, c := range []struct{ x, y, want qty.Length }{
		{3 * qty.Inch, 4 * qty.Inch, 5 * qty.Inch},
		{qty.Metre, 0, qty.Metre},
		{qty.Metre, 25 * qty.Centimetre, 10308 * qty.Millimetre / 10}, // √1.0625 = 1.03078 m
	} {
		if got := Span(Peg{}, Peg{X: c.x, Y: c.y}); got != c.want {
			t.Errorf("√(%s² + %s²): got %s, want %s", c.x, c.y, got, c.want)
		}
	}
}

// The search finds what trying every way finds.
func TestPathIsThatOfEveryWay(t *testing.T) {
	found, short := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		b := drawBoard(t)
		wound := qty.Length(rapid.IntRange(1, 40).Draw(t, "wound")) * qty.Decimetre
		got, want := b.Path(wound, 10_000_000), everyWay(b, wound)
		if !slices.Equal(got.Pegs, want.Pegs) || got.Length != want.Length || got.Reaches != want.Reaches || !got.Best {
			t.Fatalf("%s on %v: got %+v, want %+v", wound, b.Pegs, got, want)
		}
		if got.Reaches {
			found++
		} else {
			short++
		}
	})
	if found < 10 || short < 3 {
		t.Errorf("%d ways found and %d boards too short: the drawing shows too little", found, short)
	}
}

// drawBoard draws pegs on a coarse grid, so that ways cross, meet pegs and tie.
func drawBoard(t *rapid.T) Board {
	n := rapid.IntRange(4, 8).Draw(t, "pegs")
	places := rapid.SliceOfNDistinct(rapid.IntRange(0, 24), n, n, rapid.ID[int]).Draw(t, "places")
	var b Board
	for i, at := range places {
		b.Pegs = append(b.Pegs, Peg{fmt.Sprint(i), qty.Length(at%5) * 2 * qty.Decimetre, qty.Length(at/5) * 2 * qty.Decimetre})
	}
	return b
}

// everyWay tries every order of every choice of pegs.
func everyWay(b Board, wound qty.Length) Path {
	var best, longest Path
	var try func(way []int)
	try = func(way []int) {
		if !lawful(b, way) {
			return
		}
		p := Path{Pegs: slices.Clone(way), Length: lengthOf(b, way)}
		p.Reaches = p.Length >= wound
		if p.Reaches && (!best.Reaches || p.Length < best.Length || p.Length == best.Length && len(way) < len(best.Pegs)) {
			best = p
		}
		if p.Length > longest.Length {
			longest = p
		}
		for next := range b.Pegs {
			if !slices.Contains(way, next) {
				try(append(slices.Clone(way), next))
			}
		}
	}
	try([]int{0, 1, 2})
	if best.Reaches {
		return best
	}
	return longest
}

func lengthOf(b Board, way []int) qty.Length {
	var sum qty.Length
	for i := range len(way) - 1 {
		sum += Span(b.Pegs[way[i]], b.Pegs[way[i+1]])
	}
	return sum
}

// lawful looks at every pair of spans and every peg beside every span, apart
// from the three pegs that the way begins with. The pegs stand on whole
// decimetres, so that floats hold every product exactly.
func lawful(b Board, way []int) bool {
	for i := 2; i < len(way)-1; i++ {
		p, q := b.Pegs[way[i]], b.Pegs[way[i+1]]
		for c, peg := range b.Pegs {
			if c != way[i] && c != way[i+1] && lies(p, q, peg) {
				return false
			}
		}
		for j := range i - 1 {
			if meet(p, q, b.Pegs[way[j]], b.Pegs[way[j+1]]) {
				return false
			}
		}
	}
	return true
}

// lies reports whether c is on the span: then the two parts are as long as the
// whole.
func lies(p, q, c Peg) bool {
	return side(p, q, c) == 0 && dot(p, q, c) >= 0 && dot(q, p, c) >= 0
}

func dm(l qty.Length) float64 { return float64(l) / float64(qty.Decimetre) }

func side(p, q, c Peg) float64 {
	return (dm(q.X)-dm(p.X))*(dm(c.Y)-dm(p.Y)) - (dm(q.Y)-dm(p.Y))*(dm(c.X)-dm(p.X))
}

func dot(p, q, c Peg) float64 {
	return (dm(q.X)-dm(p.X))*(dm(c.X)-dm(p.X)) + (dm(q.Y)-dm(p.Y))*(dm(c.Y)-dm(p.Y))
}

// meet solves where the two lines meet, and asks whether that is inside both.
func meet(p, q, r, s Peg) bool {
	dx, dy := dm(q.X)-dm(p.X), dm(q.Y)-dm(p.Y)
	ex, ey := dm(s.X)-dm(r.X), dm(s.Y)-dm(r.Y)
	whole := dx*ey - dy*ex
	if whole == 0 {
		return false
	}
	fx, fy := dm(r.X)-dm(p.X), dm(r.Y)-dm(p.Y)
	a, b := (fx*ey-fy*ex)/whole, (fx*dy-fy*dx)/whole
	return a > 0 && a < 1 && b > 0 && b < 1
}

func BenchmarkPath(b *testing.B) {
	board := UsualBoard(false)
	for b.Loop() {
		board.Path(15*qty.Yard/2, Budget)
	}
}
