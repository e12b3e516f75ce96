package scene

// Path is strokes of straight lines and cubic curves. Where it is filled, a point
// is inside when the outline winds round it (the non-zero rule), so a hole runs
// the other way about; parts left open are closed for the fill.
type Path struct {
	Segments []Segment
	Pen      Pen
	Fill     Ink
}

// Segment is a step of a Path. C1 and C2 are the control points of a CubicTo and
// mean nothing elsewhere; a Close needs no point.
type Segment struct {
	Step   Step
	C1, C2 Point
	To     Point
}

// Step is what a Segment does.
type Step uint8

const (
	MoveTo  Step = iota // begins a part at To
	LineTo              // a straight line to To
	CubicTo             // a cubic Bezier curve to To
	Close               // a straight line back to where the part began
)

// Move returns the path with a new part begun at x, y. It grows the path as
// append does, and so do the others: go on with what they return.
func (p Path) Move(x, y float64) Path { return p.add(Segment{Step: MoveTo, To: Point{x, y}}) }

// Line returns the path with a straight line to x, y.
func (p Path) Line(x, y float64) Path { return p.add(Segment{Step: LineTo, To: Point{x, y}}) }

// Cubic returns the path with a curve to x, y by way of its two control points.
func (p Path) Cubic(x1, y1, x2, y2, x, y float64) Path {
	return p.add(Segment{CubicTo, Point{x1, y1}, Point{x2, y2}, Point{x, y}})
}

// Shut returns the path with its last part closed.
func (p Path) Shut() Path { return p.add(Segment{Step: Close}) }

func (p Path) add(s Segment) Path {
	p.Segments = append(p.Segments, s)
	return p
}

// Outline is the item as a path, for back ends that draw everything as paths; ok
// is false for Text, Picture and Group, which have none.
func Outline(it Item) (path Path, ok bool) {
	switch it := it.(type) {
	case Line:
		return Path{Pen: it.Pen}.along([]Point{{it.X1, it.Y1}, {it.X2, it.Y2}}), true
	case Polyline:
		return it.path(), true
	case Rect:
		return Polyline{Box{it.X, it.Y, it.Width, it.Height}.Corners(), true, it.Pen, it.Fill}.path(), true
	case Circle:
		return it.path(), true
	case Path:
		return it, true
	}
	return Path{}, false
}

func (p Path) along(points []Point) Path {
	segments := make([]Segment, 0, len(points)+1)
	for i, at := range points {
		step := LineTo
		if i == 0 {
			step = MoveTo
		}
		segments = append(segments, Segment{Step: step, To: at})
	}
	p.Segments = segments
	return p
}

func (l Polyline) path() Path {
	p := Path{Pen: l.Pen}.along(l.Points)
	if l.Closed && len(l.Points) > 0 {
		p.Fill = l.Fill
		p.Segments = append(p.Segments, Segment{Step: Close})
	}
	return p
}

// kappa is the length of the control arms with which a cubic curve meets a quarter
// of the unit circle at both ends and in its middle: 4/3 (sqrt 2 - 1). It strays
// by less than 0.03 % of the radius, which the tests hold it to.
const kappa = 0.5522847498307936

func (c Circle) path() Path {
	x, y, r, k := c.X, c.Y, c.Radius, kappa*c.Radius
	return Path{Pen: c.Pen, Fill: c.Fill}.
		Move(x+r, y).
		Cubic(x+r, y+k, x+k, y+r, x, y+r).
		Cubic(x-k, y+r, x-r, y+k, x-r, y).
		Cubic(x-r, y-k, x-k, y-r, x, y-r).
		Cubic(x+k, y-r, x+r, y-k, x+r, y).
		Shut()
}
