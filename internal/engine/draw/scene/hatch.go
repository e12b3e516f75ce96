package scene

import (
	"math"
	"slices"
)

// Hatching is a way to fill a shape so that it can be told from its neighbours
// without colour.
type Hatching int

const (
	Rising    Hatching = iota // strokes up to the right
	Falling                   // strokes down to the right
	Upright                   // strokes up and down
	Level                     // strokes across
	Crossed                   // Rising and Falling
	Squared                   // Upright and Level
	Dotted                    // dots
	hatchings                 // how many there are
)

// Hatchings is the number of ways; HatchingOf counts round them.
const Hatchings = int(hatchings)

// HatchingOf is a way for the nth of several things, from 0; the first seven are
// all different.
func HatchingOf(n int) Hatching {
	return Hatching((n%Hatchings + Hatchings) % Hatchings)
}

// MinPitch is the closest that strokes of a hatching may lie, in mm: closer ones
// run together in print.
const MinPitch = 0.3

// Hatch fills a polygon with strokes or dots pitch mm apart (at least MinPitch), on
// a grid common to the whole page so that neighbours join. A point is inside when
// a ray from it crosses the outline an odd number of times.
func Hatch(polygon []Point, way Hatching, pitch float64, pen Pen) Path {
	pitch = max(pitch, MinPitch)
	path := Path{Pen: pen}
	for _, angle := range way.angles() {
		path.Segments = append(path.Segments, strokes(polygon, angle, pitch)...)
	}
	if way == Dotted {
		path.Pen.Dash, path.Pen.Round = []float64{0, pitch}, true
		path.Pen.Width = max(pen.Width, dotShare*pitch)
		path.Segments = onGrid(strokes(polygon, 0, pitch), pitch)
	}
	return path
}

// dotShare is how wide a dot is, as a share of the pitch, so that dots are about as
// dark as strokes are.
const dotShare = 0.35

func (h Hatching) angles() []float64 {
	switch h {
	case Rising:
		return []float64{45}
	case Falling:
		return []float64{-45}
	case Upright:
		return []float64{90}
	case Level:
		return []float64{0}
	case Crossed:
		return []float64{45, -45}
	case Squared:
		return []float64{0, 90}
	}
	return nil
}

// strokes turns the polygon until the strokes run across, takes a row at a time,
// and turns what it found back.
func strokes(polygon []Point, angle, pitch float64) []Segment {
	turned := make([]Point, len(polygon))
	for i, p := range polygon {
		turned[i] = p.Turn(Point{}, -angle)
	}
	around := Around(turned)
	first, last := math.Ceil(around.Y/pitch), math.Floor(around.Bottom()/pitch)
	if last-first > 2*MaxReach {
		return nil
	}
	var found []Segment
	for row := first; row <= last; row++ {
		cuts := crossings(turned, row*pitch)
		for i := 0; i+1 < len(cuts); i += 2 {
			from, to := Point{cuts[i], row * pitch}, Point{cuts[i+1], row * pitch}
			found = append(found, Segment{To: from.Turn(Point{}, angle)}, Segment{Step: LineTo, To: to.Turn(Point{}, angle)})
		}
	}
	return found
}

// crossings are where the outline crosses the height y, from left to right.
func crossings(polygon []Point, y float64) []float64 {
	var cuts []float64
	for i, a := range polygon {
		b := polygon[(i+1)%len(polygon)]
		if (a.Y <= y) != (b.Y <= y) {
			cuts = append(cuts, a.X+(y-a.Y)*(b.X-a.X)/(b.Y-a.Y))
		}
	}
	slices.Sort(cuts)
	return cuts
}

// onGrid moves the ends of level strokes inwards to whole pitches, every other row
// by half a pitch, so that dots stand as on dice; rows too short for one are left
// out.
func onGrid(rows []Segment, pitch float64) []Segment {
	var found []Segment
	for i := 0; i+1 < len(rows); i += 2 {
		y := rows[i].To.Y
		half := pitch / 2 * math.Abs(math.Mod(math.Round(y/pitch), 2))
		from := math.Ceil((rows[i].To.X-half)/pitch)*pitch + half
		to := math.Floor((rows[i+1].To.X-half)/pitch)*pitch + half
		if from <= to {
			// The hair beyond the last dot is for back ends that round it away.
			found = append(found, Segment{To: Point{from, y}}, Segment{Step: LineTo, To: Point{to + pitch/8, y}})
		}
	}
	return found
}
