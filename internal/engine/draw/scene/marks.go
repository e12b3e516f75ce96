package scene

import "math"

// TickBox is an empty box for a pencil, square, with its bottom left corner at
// x, y so that it stands on the baseline of the text beside it.
func TickBox(x, y, side float64) Rect {
	return Rect{X: x, Y: y - side, Width: side, Height: side, Pen: Solid(max(side/14, 0.2))}
}

// Ticked is a TickBox with a tick in it, drawn a little beyond its corner.
func Ticked(x, y, side float64) Group {
	tick := Polyline{
		Points: []Point{{x + 0.2*side, y - 0.5*side}, {x + 0.42*side, y - 0.2*side}, {x + 0.95*side, y - 1.05*side}},
		Pen:    Pen{Width: side / 7, Round: true},
	}
	return Group{Items: []Item{TickBox(x, y, side), tick}}
}

// leaderPitch is from dot to dot of a leader in mm, leaderDot its dots' width.
const (
	leaderPitch = 1.5
	leaderDot   = 0.28
)

// Leader is a row of dots on the baseline y from x1 to x2. Dots stand on a common
// grid, whole pitches from x = 0, so that they line up from row to row; where less
// than two fit there are none, and the path is empty.
func Leader(x1, x2, y float64) Path {
	first := math.Ceil(x1/leaderPitch) * leaderPitch
	count := math.Floor((x2-first)/leaderPitch) + 1
	if !(count >= 2 && count <= MaxReach) {
		return Path{}
	}
	last := first + (count-1)*leaderPitch
	pen := Pen{Width: leaderDot, Dash: []float64{0, leaderPitch}, Round: true}
	// The hair beyond the last dot is for back ends that round it away.
	return Path{Pen: pen}.Move(first, y-leaderDot/2).Line(last+leaderPitch/8, y-leaderDot/2)
}

// Arrow is a line with a filled head at its second end; the point of the head is
// the end. head is its length in mm.
func Arrow(x1, y1, x2, y2, head float64, pen Pen) Group {
	length := math.Hypot(x2-x1, y2-y1)
	if length == 0 {
		return Group{}
	}
	ux, uy := (x2-x1)/length, (y2-y1)/length
	neck := min(head, length)
	bx, by := x2-ux*neck, y2-uy*neck
	shaft := Line{x1, y1, bx + ux*neck/4, by + uy*neck/4, pen}
	return Group{Items: []Item{shaft, arrowHead(Point{x2, y2}, Point{bx, by}, pen.Ink)}}
}

// slim is half the width of an arrow head over its length.
const slim = 0.3

func arrowHead(tip, base Point, ink Ink) Polyline {
	dx, dy := slim*(tip.Y-base.Y), slim*(base.X-tip.X)
	return Polyline{
		Points: []Point{tip, {base.X + dx, base.Y + dy}, {base.X - dx, base.Y - dy}},
		Closed: true, Fill: ink.OrBlack(),
	}
}

// dimensionHead is the length of a dimension's arrow heads in mm.
const dimensionHead = 2.2

// Dimension measures from one point to another: arrows both ways between two
// short cross strokes, with the label above the middle, along the line, always
// readable from below or from the right.
func Dimension(x1, y1, x2, y2 float64, label Text, pen Pen) Group {
	length := math.Hypot(x2-x1, y2-y1)
	if length == 0 {
		return Group{}
	}
	mx, my := (x1+x2)/2, (y1+y2)/2
	ux, uy := (x2-x1)/length, (y2-y1)/length
	cross := func(x, y float64) Line { return Line{x + 1.5*uy, y - 1.5*ux, x - 1.5*uy, y + 1.5*ux, pen} }
	return Group{Items: []Item{
		Arrow(mx, my, x1, y1, dimensionHead, pen), Arrow(mx, my, x2, y2, dimensionHead, pen),
		cross(x1, y1), cross(x2, y2), label.along(mx, my, ux, uy),
	}}
}

// along sets the text over the middle of a line with the direction ux, uy.
func (t Text) along(mx, my, ux, uy float64) Text {
	if ux < 0 || ux == 0 && uy > 0 {
		ux, uy = -ux, -uy
	}
	const gap = 1.2
	t.X, t.Y, t.Anchor = mx+gap*uy, my-gap*ux, Middle
	t.Angle = -math.Atan2(uy, ux) * 180 / math.Pi
	return t
}
