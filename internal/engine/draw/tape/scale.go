package tape

import (
	"math"

	"sley/internal/engine/draw/scene"
)

// Graduations from the longest to the shortest: how long, and with which pen, mm.
var grades = []struct {
	long float64
	pen  scene.Pen
}{{ticks, scene.Solid(0.3)}, {3.6, scene.Solid(0.2)}, {2.8, scene.Solid(0.18)}, {2.2, scene.Solid(0.15)}}

// graduate draws both edges: centimetres with millimetres on the left, inches with
// eighths on the right.
func (f *figure) graduate() {
	f.ruler(1, f.left, 1, metric)
	f.ruler(inch/8, f.x(f.cols.width), -1, eighths)
	f.numbers(10, 5, f.x(f.cols.cm), scene.Start)
	f.numbers(inch, 12, f.x(f.cols.inches), scene.End)
}

// metric is the grade of the nth millimetre, eighths that of the nth eighth inch.
func metric(n int) int {
	switch {
	case n%10 == 0:
		return 0
	case n%5 == 0:
		return 1
	}
	return 3
}

func eighths(n int) int {
	switch {
	case n%8 == 0:
		return 0
	case n%4 == 0:
		return 1
	case n%2 == 0:
		return 2
	}
	return 3
}

// ruler draws a graduation every step mm of the part from the edge at x inwards.
func (f *figure) ruler(step, x, inwards float64, grade func(int) int) {
	paths := make([]scene.Path, len(grades))
	for n := f.firstOf(step); float64(n)*step <= f.to+hair; n++ {
		g, y := grade(n), f.y(float64(n)*step)
		paths[g] = paths[g].Move(x, y).Line(x+inwards*grades[g].long, y)
	}
	for g, path := range paths {
		if path.Pen = grades[g].pen; len(path.Segments) > 0 {
			f.add(path)
		}
	}
}

// hair is what lengths may be apart and still be the same, in mm.
const hair = 1e-6

func (f *figure) firstOf(step float64) int { return int(math.Ceil((f.from - hair) / step)) }

// numbers are every step mm, each boldly'th bold. Those at the ends of the part move
// inwards to stay whole; the one where the next part begins stands there.
func (f *figure) numbers(step float64, boldly int, x float64, anchor scene.Anchor) {
	for n := f.firstOf(step); f.numbered(n, step); n++ {
		font := plain
		if n%boldly == 0 {
			font = bold
		}
		f.say(x, f.numberY(n, step)+rise, anchor, font, number(n))
	}
}

func (f *figure) numbered(n int, step float64) bool {
	at := float64(n) * step
	return at < f.to-hair || f.last && at <= f.to+hair
}

// numberY is where the middle of the nth number is.
func (f *figure) numberY(n int, step float64) float64 {
	return max(min(f.y(float64(n)*step), f.base-keep), f.y(f.to)+keep)
}

// strikes says whether a line at y would run through a number.
func (f *figure) strikes(y, step float64) bool {
	near := int(math.Round((f.base - y + f.from) / step))
	for n := max(near-1, 0); n <= near+1; n++ {
		if f.numbered(n, step) && n >= f.firstOf(step) && math.Abs(f.numberY(n, step)-y) < rise+air {
			return true
		}
	}
	return false
}
