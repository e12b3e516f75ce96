package png

import (
	"math"
	"slices"

	"sley/internal/engine/draw/scene"
)

// stroke is the polygons that cover the stroke of a pen along the parts: one for
// each straight piece, each corner and each round end, all turning the same way so
// that none takes from another. scale is pixels per mm.
func stroke(parts []part, pen scene.Pen, scale float64) [][]scene.Point {
	s := stroker{half: pen.Width * scale / 2, round: pen.Round}
	for _, p := range parts {
		if len(p.points) < 2 && !p.closed {
			continue // a move alone leaves no mark
		}
		if !dashed(p, pen.Dash, scale) {
			s.run(p)
			continue
		}
		for _, dash := range dashes(p, pen.Dash, scale) {
			s.run(part{points: dash})
		}
	}
	return s.polygons
}

type stroker struct {
	half     float64 // of the width
	round    bool
	polygons [][]scene.Point
}

func (s *stroker) add(polygon ...scene.Point) {
	if area(polygon) < 0 {
		slices.Reverse(polygon)
	}
	s.polygons = append(s.polygons, polygon)
}

// area is twice the signed area of a polygon.
func area(polygon []scene.Point) float64 {
	sum := 0.0
	for i, b := range polygon {
		a := polygon[(i+len(polygon)-1)%len(polygon)]
		sum += a.X*b.Y - b.X*a.Y
	}
	return sum
}

func (s *stroker) run(p part) {
	points := slices.Compact(slices.Clone(p.points))
	if p.closed && len(points) > 1 {
		if points[0] == points[len(points)-1] {
			points = points[:len(points)-1]
		}
		points = append(points[:len(points):len(points)], points[0])
	}
	for i := 1; i < len(points); i++ {
		s.piece(points[i-1], points[i])
	}
	for i := 1; i+1 < len(points); i++ {
		s.corner(points[i-1], points[i], points[i+1])
	}
	switch {
	case len(points) == 0:
	case p.closed && len(points) > 2:
		s.corner(points[len(points)-2], points[0], points[1])
	case s.round:
		s.disc(points[0])
		s.disc(points[len(points)-1])
	}
}

// piece is the rectangle about a straight line.
func (s *stroker) piece(a, b scene.Point) {
	n := s.normal(a, b)
	s.add(plus(a, n, 1), plus(b, n, 1), plus(b, n, -1), plus(a, n, -1))
}

// normal is the vector half a width long across the way from a to b.
func (s *stroker) normal(a, b scene.Point) scene.Point {
	length := math.Hypot(b.X-a.X, b.Y-a.Y)
	return scene.Point{X: -(b.Y - a.Y) / length * s.half, Y: (b.X - a.X) / length * s.half}
}

func plus(p, v scene.Point, times float64) scene.Point {
	return scene.Point{X: p.X + times*v.X, Y: p.Y + times*v.Y}
}

// corner fills the gap on the outer side of a bend, with a mitre when it is not
// too long.
func (s *stroker) corner(a, b, c scene.Point) {
	if s.round {
		s.disc(b)
		return
	}
	n, m := s.normal(a, b), s.normal(b, c)
	side := 1.0
	if n.X*m.Y-n.Y*m.X > 0 {
		side = -1
	}
	p, q := plus(b, n, side), plus(b, m, side)
	sum := scene.Point{X: n.X + m.X, Y: n.Y + m.Y}
	square := sum.X*sum.X + sum.Y*sum.Y
	// The mitre is half / cos of half the bend long, and cos is |sum| / 2 half.
	if square*scene.MiterLimit*scene.MiterLimit < 4*s.half*s.half {
		s.add(p, b, q)
		return
	}
	s.add(p, plus(b, sum, side*2*s.half*s.half/square), q, b)
}

// disc is a round end: a polygon that strays from the circle by less than the
// flatness of curves.
func (s *stroker) disc(centre scene.Point) {
	n := min(max(math.Ceil(math.Pi/math.Acos(1-min(flatness/s.half, 1))), 8), 200)
	var polygon []scene.Point
	for i := range int(n) {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / n)
		polygon = append(polygon, scene.Point{X: centre.X + s.half*cos, Y: centre.Y + s.half*sin})
	}
	s.add(polygon...)
}
