package scene

import "math"

// Point is a place in millimetres, x to the right and y down.
type Point struct{ X, Y float64 }

// Box is an upright rectangle in millimetres by its top left corner.
type Box struct{ X, Y, Width, Height float64 }

// IsZero says whether the box is the zero Box, which stands for none.
func (b Box) IsZero() bool { return b == Box{} }

// Right and Bottom are the far edges.
func (b Box) Right() float64  { return b.X + b.Width }
func (b Box) Bottom() float64 { return b.Y + b.Height }

// Corners are the four corners, clockwise from the top left.
func (b Box) Corners() []Point {
	return []Point{{b.X, b.Y}, {b.Right(), b.Y}, {b.Right(), b.Bottom()}, {b.X, b.Bottom()}}
}

// Inset is the box with every edge moved inwards by d mm, or outwards where d is
// negative.
func (b Box) Inset(d float64) Box { return Box{b.X + d, b.Y + d, b.Width - 2*d, b.Height - 2*d} }

// Shift is the box moved.
func (b Box) Shift(dx, dy float64) Box { return Box{b.X + dx, b.Y + dy, b.Width, b.Height} }

// Contains says whether the point lies in the box or on its edge.
func (b Box) Contains(p Point) bool {
	return p.X >= b.X && p.X <= b.Right() && p.Y >= b.Y && p.Y <= b.Bottom()
}

// Intersect is what two boxes share: a box without width or height, at most an
// edge, when they do not overlap.
func (b Box) Intersect(o Box) Box {
	x, y := max(b.X, o.X), max(b.Y, o.Y)
	return Box{x, y, max(min(b.Right(), o.Right())-x, 0), max(min(b.Bottom(), o.Bottom())-y, 0)}
}

// Around is the smallest box that holds all the points.
func Around(points []Point) Box {
	if len(points) == 0 {
		return Box{}
	}
	low, high := points[0], points[0]
	for _, p := range points[1:] {
		low = Point{min(low.X, p.X), min(low.Y, p.Y)}
		high = Point{max(high.X, p.X), max(high.Y, p.Y)}
	}
	return Box{low.X, low.Y, high.X - low.X, high.Y - low.Y}
}

// Turn is the point turned anticlockwise, as seen on the paper, about a centre.
func (p Point) Turn(centre Point, degrees float64) Point {
	if degrees == 0 {
		return p
	}
	sin, cos := Sincos(degrees)
	x, y := p.X-centre.X, p.Y-centre.Y
	return Point{centre.X + x*cos + y*sin, centre.Y - x*sin + y*cos}
}

// Sincos is the sine and cosine of an angle in degrees, exact at quarter turns so
// that what stands upright is upright.
func Sincos(degrees float64) (sin, cos float64) {
	switch math.Mod(degrees, 360) {
	case 0:
		return 0, 1
	case 90, -270:
		return 1, 0
	case 180, -180:
		return 0, -1
	case 270, -90:
		return -1, 0
	}
	return math.Sincos(degrees * math.Pi / 180)
}

// Points per millimetre and back: a point is 1/72 in, an inch 25.4 mm.
const (
	PointsPerMM = 72 / 25.4
	MMPerPoint  = 25.4 / 72
)
