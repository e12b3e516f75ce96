package board

import (
	"math"

	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
	"sley/internal/engine/dress"
)

// names writes the name of every peg, and of the cross, where it strikes least.
func (d *drawing) names(b dress.Board) {
	if len(d.way) > 2 {
		d.write(d.words.Cross, between(d.way[1], d.way[2], 0.5), 270)
	}
	for i, p := range b.Pegs {
		at := d.pegs[i]
		d.write(d.name(p), at, d.outward(at))
	}
}

// outward is the direction, in degrees from the right anticlockwise, in which there
// is most room for a name: to the nearer side, or upwards in the middle.
func (d *drawing) outward(at scene.Point) float64 {
	a := d.around
	switch share := (at.X - a.X) / max(a.Width, 1); {
	case share < 0.15:
		return 180
	case share > 0.85:
		return 0
	}
	return 90
}

// reaches are how far from its peg a name may stand, in mm.
var reaches = []float64{peg + air, peg + 3.5, peg + 7, peg + 12}

// strike is what it costs a name to lie over thread or a peg, to be turned from its
// best direction by half a circle, and to be a step further off.
const (
	strike  = 10.0
	turned  = 4.0
	further = 3.0
)

// write sets a name beside a point at the place that costs least of those in the box
// that no other name has; where there is none it writes nothing.
func (d *drawing) write(text string, at scene.Point, best float64) {
	ink := letter.Ink(text, plain, pt)
	if ink.IsZero() {
		return
	}
	least, where, steps := math.Inf(1), scene.Box{}, 0
	for step, reach := range reaches {
		for angle := 0.0; angle < 360; angle += 30 {
			b := beside(at, angle, reach, ink)
			cost := strike*float64(d.struck(b)+d.led(at, b, step)) + turned*apart(angle, best)/180 + further*float64(step)
			if cost < least && d.free(b) {
				least, where, steps = cost, b, step
			}
		}
	}
	if where.IsZero() {
		return
	}
	d.taken = append(d.taken, where)
	if steps > 0 {
		l := leader(at, where)
		d.taken = append(d.taken, scene.Around([]scene.Point{{X: l.X1, Y: l.Y1}, {X: l.X2, Y: l.Y2}}).Inset(-air/4))
		d.add(l)
	}
	d.add(scene.Text{X: where.X - ink.X, Y: where.Y - ink.Y, Size: pt, Text: text, Box: d.box})
}

// led is how many names the leader to a name would run through.
func (d *drawing) led(at scene.Point, name scene.Box, step int) int {
	count := 0
	l := leader(at, name)
	for _, other := range d.taken {
		if step > 0 && meets(other, scene.Point{X: l.X1, Y: l.Y1}, scene.Point{X: l.X2, Y: l.Y2}) {
			count++
		}
	}
	return count
}

// leader leads from a peg to the nearest place of a name that is further off.
func leader(at scene.Point, name scene.Box) scene.Line {
	to := scene.Point{X: min(max(at.X, name.X), name.Right()), Y: min(max(at.Y, name.Y), name.Bottom())}
	from := between(at, to, min(peg/max(far(at, to), peg), 1))
	to = between(from, to, 1-air/2/max(far(from, to), air))
	return scene.Line{X1: from.X, Y1: from.Y, X2: to.X, Y2: to.Y, Pen: scene.Solid(0.18)}
}

// beside is the box of the ink whose nearest point lies so far off in a direction.
func beside(at scene.Point, angle, reach float64, ink scene.Box) scene.Box {
	sin, cos := scene.Sincos(angle)
	x, y := at.X+reach*cos, at.Y-reach*sin
	return scene.Box{
		X: x - ink.Width*(1-cos)/2, Y: y - ink.Height*(1+sin)/2,
		Width: ink.Width, Height: ink.Height,
	}
}

// apart is the angle between two directions, 0 to 180.
func apart(a, b float64) float64 {
	return math.Abs(math.Mod(a-b+540, 360) - 180)
}

// free says whether a name at the box stays within the drawing and off other names.
func (d *drawing) free(b scene.Box) bool {
	if b.X < d.box.X || b.Y < d.box.Y || b.Right() > d.box.Right() || b.Bottom() > d.box.Bottom() {
		return false
	}
	for _, other := range d.taken {
		if common := b.Inset(-air / 2).Intersect(other); common.Width > 0 && common.Height > 0 {
			return false
		}
	}
	return true
}

// struck is how many pegs and spans the box lies over.
func (d *drawing) struck(b scene.Box) int {
	count := 0
	for _, p := range d.pegs {
		if b.Inset(-peg).Contains(p) {
			count++
		}
	}
	for i := 0; i+1 < len(d.way); i++ {
		off := air / 2
		if i == 1 {
			off = peg + air // the cross is as wide as its pegs
		}
		if meets(b.Inset(-off), d.way[i], d.way[i+1]) {
			count++
		}
	}
	return count
}

// meets says whether the straight way passes through the box, by cutting it at each
// of the box's edges (Y.-D. Liang, B. A. Barsky, "A new concept and method for line
// clipping", ACM Transactions on Graphics 3, 1984).
func meets(b scene.Box, from, to scene.Point) bool {
	low, high := 0.0, 1.0
	for _, e := range [][2]float64{
		{from.X - to.X, from.X - b.X},
		{to.X - from.X, b.Right() - from.X},
		{from.Y - to.Y, from.Y - b.Y},
		{to.Y - from.Y, b.Bottom() - from.Y},
	} {
		switch step, room := e[0], e[1]; {
		case step == 0 && room < 0:
			return false
		case step < 0:
			low = max(low, room/step)
		case step > 0:
			high = min(high, room/step)
		}
	}
	return low <= high
}
