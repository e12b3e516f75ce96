package dress

import (
	"math"
	"slices"
	"strconv"

	"sley/internal/trade/qty"
)

// Peg is a peg of a warping board; X goes to the right and Y down.
type Peg struct {
	Name string
	X, Y qty.Length
}

// Board is a warping board of 3 pegs or more. The warp starts at the first peg;
// the cross is made between the second and the third.
type Board struct{ Pegs []Peg }

// Rows of the usual boards.
const usualRows = 5

// UsualBoard is a board as many weavers have it: five rows of pegs a yard (or a
// metre) apart, a quarter of that below one another, with the start and the two
// pegs of the cross on the top rail. Common practice, no source.
func UsualBoard(metric bool) Board {
	wide, third := qty.Yard, 12*qty.Inch
	if metric {
		wide, third = qty.Metre, 30*qty.Centimetre
	}
	b := Board{Pegs: []Peg{{"start", 0, 0}, {"cross 1", third, 0}, {"cross 2", 2 * third, 0}, {"right 1", wide, 0}}}
	for row := 2; row <= usualRows; row++ {
		down := qty.Length(row-1) * (wide / 4)
		b.Pegs = append(b.Pegs, Peg{"left " + strconv.Itoa(row), 0, down}, Peg{"right " + strconv.Itoa(row), wide, down})
	}
	return b
}

// tenth is what spans are rounded to: no guide string is measured closer.
const tenth = qty.Millimetre / 10

// Span gives the length from peg to peg, to the nearest 0.1 mm: square roots are
// not exact, and sums of whole tenths are the same on every machine.
func Span(a, b Peg) qty.Length {
	x, y := float64(b.X-a.X), float64(b.Y-a.Y)
	return qty.Length(math.Round(math.Sqrt(float64(x*x)+float64(y*y))/float64(tenth))) * tenth
}

// ground is a board with everything that the search looks up.
type ground struct {
	pegs []Peg
	span [][]qty.Length // 0 where the straight thread would run over another peg
	turn [][][]int8     // 1, 0 or -1: which way a, b, c turn
	far  []qty.Length   // the longest span that ends at the peg
}

func newGround(b Board) *ground {
	g := &ground{pegs: b.Pegs}
	g.setTurns()
	g.setSpans()
	for _, spans := range g.span {
		g.far = append(g.far, slices.Max(spans))
	}
	return g
}

func (g *ground) setTurns() {
	n := len(g.pegs)
	g.turn = make([][][]int8, n)
	for a := range g.turn {
		g.turn[a] = make([][]int8, n)
		for b := range g.turn[a] {
			g.turn[a][b] = make([]int8, n)
			for c := range g.turn[a][b] {
				g.turn[a][b][c] = turns(g.pegs[a], g.pegs[b], g.pegs[c])
			}
		}
	}
}

// turns gives the side of the line from a to b on which c lies, exactly.
func turns(a, b, c Peg) int8 {
	one := (b.X - a.X).Rat().Mul((c.Y - a.Y).Rat())
	other := (b.Y - a.Y).Rat().Mul((c.X - a.X).Rat())
	return int8(one.Cmp(other))
}

func (g *ground) setSpans() {
	for a := range g.pegs {
		spans := make([]qty.Length, len(g.pegs))
		for b := range g.pegs {
			if a != b && !g.blocked(a, b) {
				spans[b] = Span(g.pegs[a], g.pegs[b])
			}
		}
		g.span = append(g.span, spans)
	}
}

// blocked reports whether a peg stands on the straight way from a to b.
func (g *ground) blocked(a, b int) bool {
	for c := range g.pegs {
		if c != a && c != b && g.turn[a][b][c] == 0 && g.between(a, b, c) {
			return true
		}
	}
	return false
}

func (g *ground) between(a, b, c int) bool {
	p, q, r := g.pegs[a], g.pegs[b], g.pegs[c]
	return min(p.X, q.X) <= r.X && r.X <= max(p.X, q.X) && min(p.Y, q.Y) <= r.Y && r.Y <= max(p.Y, q.Y)
}

// cross reports whether the spans a to b and c to d, which share no peg, cross.
func (g *ground) cross(a, b, c, d int) bool {
	return g.turn[a][b][c]*g.turn[a][b][d] < 0 && g.turn[c][d][a]*g.turn[c][d][b] < 0
}
