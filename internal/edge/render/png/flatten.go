package png

import (
	"math"

	"sley/internal/engine/draw/scene"
)

// part is one run of a path as points, in pixels.
type part struct {
	points []scene.Point
	closed bool
}

// flatten turns a path into runs of points on the way that place puts them; curves
// become short lines.
func flatten(segments []scene.Segment, place func(scene.Point) scene.Point) []part {
	var parts []part
	for _, s := range segments {
		last := len(parts) - 1
		switch {
		case s.Step == scene.MoveTo:
			parts = append(parts, part{points: []scene.Point{place(s.To)}})
			continue
		case s.Step == scene.Close:
			parts[last].closed = true
			continue
		case parts[last].closed: // goes on from where the closed part began
			parts = append(parts, part{points: []scene.Point{parts[last].points[0]}})
			last++
		}
		if s.Step == scene.CubicTo {
			parts[last].points = curve(parts[last].points, place(s.C1), place(s.C2), place(s.To))
		} else {
			parts[last].points = append(parts[last].points, place(s.To))
		}
	}
	return parts
}

// flatness is how far a chord may stray from its curve, in pixels.
const flatness = 0.05

// curve adds a cubic curve as n equal steps of its parameter. A chord strays by at
// most an eighth of the curve's greatest second derivative over n squared, and that
// derivative is at most six times the greater second difference of the control
// points.
func curve(points []scene.Point, c1, c2, to scene.Point) []scene.Point {
	from := points[len(points)-1]
	bend := max(
		math.Hypot(from.X-2*c1.X+c2.X, from.Y-2*c1.Y+c2.Y),
		math.Hypot(c1.X-2*c2.X+to.X, c1.Y-2*c2.Y+to.Y),
	)
	n := min(max(math.Ceil(math.Sqrt(0.75*bend/flatness)), 1), 500)
	for i := 1.0; i < n; i++ {
		points = append(points, bezier(from, c1, c2, to, i/n))
	}
	return append(points, to)
}

func bezier(a, b, c, d scene.Point, t float64) scene.Point {
	s := 1 - t
	wa, wb, wc, wd := s*s*s, 3*s*s*t, 3*s*t*t, t*t*t
	return scene.Point{X: wa*a.X + wb*b.X + wc*c.X + wd*d.X, Y: wa*a.Y + wb*b.Y + wc*c.Y + wd*d.Y}
}

// contours are the parts as polygons to fill, all closed.
func contours(parts []part) [][]scene.Point {
	var polygons [][]scene.Point
	for _, p := range parts {
		polygons = append(polygons, p.points)
	}
	return polygons
}

// within is the polygon cut to a box, edge by edge (I. Sutherland, G. Hodgman,
// "Reentrant Polygon Clipping", CACM 17, 1974). What it winds round inside the box
// stays as it was.
func within(polygon []scene.Point, box scene.Box) []scene.Point {
	if around := scene.Around(polygon); box.Contains(scene.Point{X: around.X, Y: around.Y}) &&
		box.Contains(scene.Point{X: around.Right(), Y: around.Bottom()}) {
		return polygon
	}
	x := func(p scene.Point) float64 { return p.X }
	y := func(p scene.Point) float64 { return p.Y }
	polygon = keep(polygon, x, box.X, 1)
	polygon = keep(polygon, x, box.Right(), -1)
	polygon = keep(polygon, y, box.Y, 1)
	return keep(polygon, y, box.Bottom(), -1)
}

// keep leaves the side of an edge where sign times the coordinate grows.
func keep(polygon []scene.Point, coordinate func(scene.Point) float64, edge, sign float64) []scene.Point {
	var kept []scene.Point
	for i, b := range polygon {
		a := polygon[(i+len(polygon)-1)%len(polygon)]
		da, db := sign*(coordinate(a)-edge), sign*(coordinate(b)-edge)
		if (da < 0) != (db < 0) {
			t := da / (da - db)
			kept = append(kept, scene.Point{X: a.X + t*(b.X-a.X), Y: a.Y + t*(b.Y-a.Y)})
		}
		if db >= 0 {
			kept = append(kept, b)
		}
	}
	return kept
}
