package board

import (
	"math"
	"slices"

	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
	"sley/internal/trade/qty"
)

// along is the pegs of the way; one that is not on the board ends it.
func (d *drawing) along(pegs []int) []scene.Point {
	var way []scene.Point
	for _, i := range pegs {
		if i < 0 || i >= len(d.pegs) {
			break
		}
		way = append(way, d.pegs[i])
	}
	return way
}

// thread draws the way from peg to peg, an arrow on every span that is long enough,
// and the cross between the second peg and the third.
func (d *drawing) thread() {
	for i := 0; i+1 < len(d.way); i++ {
		from, to := d.way[i], d.way[i+1]
		if i == 1 {
			d.cross(from, to)
			continue
		}
		d.add(scene.Line{X1: from.X, Y1: from.Y, X2: to.X, Y2: to.Y, Pen: warp})
		d.head(from, to)
	}
}

func far(a, b scene.Point) float64 { return math.Hypot(b.X-a.X, b.Y-a.Y) }

// between is the point at a share of the straight way.
func between(a, b scene.Point, share float64) scene.Point {
	return scene.Point{X: a.X + (b.X-a.X)*share, Y: a.Y + (b.Y-a.Y)*share}
}

// aside is the point moved square to the straight way, to its left.
func aside(at, from, to scene.Point, by float64) scene.Point {
	length := far(from, to)
	return scene.Point{X: at.X + by*(to.Y-from.Y)/length, Y: at.Y - by*(to.X-from.X)/length}
}

// head is an arrow's head near the middle of a span that is long enough, clear of ties.
func (d *drawing) head(from, to scene.Point) {
	span := far(from, to)
	if span < 2*peg+2*arrow {
		return
	}
	share := 0.5
	for _, s := range []float64{0.5, 0.35, 0.65} {
		if d.untied(between(from, to, s)) {
			share = s
			break
		}
	}
	tip, back := between(from, to, share+arrow/2/span), between(from, to, share-arrow/2/span)
	one, other := aside(back, from, to, arrow/3), aside(back, from, to, -arrow/3)
	d.add(scene.Polyline{Points: []scene.Point{tip, one, other}, Closed: true, Fill: scene.Black})
}

func (d *drawing) untied(at scene.Point) bool {
	return !slices.ContainsFunc(d.tied, func(t scene.Point) bool { return far(t, at) < arrow })
}

// cross is the two ways of the thread, there and back, which pass the pegs on
// opposite sides and cross between them.
func (d *drawing) cross(from, to scene.Point) {
	if far(from, to) == 0 {
		return
	}
	for _, side := range []float64{peg, -peg} {
		a, b := aside(from, from, to, side), aside(to, from, to, -side)
		d.add(scene.Line{X1: a.X, Y1: a.Y, X2: b.X, Y2: b.Y, Pen: warp})
	}
}

// tie marks the places of the choke ties with strokes across the thread.
func (d *drawing) tie(ties []qty.Length) {
	for _, t := range ties {
		left := float64(t) * d.scale
		for i := 0; i+1 < len(d.way) && left >= 0; i++ {
			from, to := d.way[i], d.way[i+1]
			span := far(from, to)
			if left <= span && span > 0 {
				d.stroke(between(from, to, clear(left, span)/span), from, to)
				break
			}
			left -= span
		}
	}
}

// clear is the place on a span, moved off the pegs at its ends as far as there is room.
func clear(at, span float64) float64 {
	off := min(peg+1.5, span/2)
	return min(max(at, off), span-off)
}

func (d *drawing) stroke(at, from, to scene.Point) {
	d.tied = append(d.tied, at)
	a, b := aside(at, from, to, stroke), aside(at, from, to, -stroke)
	d.add(scene.Line{X1: a.X, Y1: a.Y, X2: b.X, Y2: b.Y, Pen: choked})
}

// stand draws the pegs over the thread that goes round them, the first one full.
func (d *drawing) stand() {
	for _, p := range d.pegs {
		d.add(scene.Circle{X: p.X, Y: p.Y, Radius: peg, Pen: scene.Solid(0.4), Fill: scene.White})
	}
	if len(d.way) > 0 {
		d.add(scene.Circle{X: d.way[0].X, Y: d.way[0].Y, Radius: peg / 2, Fill: scene.Black})
	}
}

// dimensions measure the board from its outermost pegs: below, and on the left.
func (d *drawing) dimensions() {
	a, label := d.around, scene.Text{Size: pt}
	if fits(d.words.Wide, a.Width) {
		label.Text = d.words.Wide
		y := a.Bottom() + peg + line + measured
		d.measure(scene.Dimension(a.X, y, a.Right(), y, label, frame))
	}
	if fits(d.words.High, a.Height) {
		label.Text = d.words.High
		x := a.X - d.side
		d.measure(scene.Dimension(x, a.Y, x, a.Bottom(), label, frame))
	}
}

// fits says whether a dimension is there to be drawn, and long enough for its label.
func fits(label string, length float64) bool {
	return label != "" && length >= letter.Width(label, plain, pt)
}

// measure draws a dimension and keeps names away from its label.
func (d *drawing) measure(g scene.Group) {
	d.add(g)
	for _, it := range g.Items {
		if text, ok := it.(scene.Text); ok {
			d.taken = append(d.taken, scene.Around(letter.Quad(text)))
		}
		if l, ok := it.(scene.Line); ok {
			d.taken = append(d.taken, scene.Around([]scene.Point{{X: l.X1, Y: l.Y1}, {X: l.X2, Y: l.Y2}}).Inset(-air))
		}
	}
}

// legend says what the strokes across the thread are, below the board.
func (d *drawing) legend() {
	if d.words.Tie == "" || len(d.tied) == 0 {
		return
	}
	y := min(d.around.Bottom()+peg+measured+2.5*line, d.box.Bottom()-line/2)
	from, to := scene.Point{X: d.box.X + 1, Y: y}, scene.Point{X: d.box.X + 9, Y: y}
	d.add(scene.Line{X1: from.X, Y1: y, X2: to.X, Y2: y, Pen: warp})
	d.stroke(between(from, to, 0.5), from, to)
	text := letter.Fit(d.words.Tie, plain, pt, d.box.Width-12)
	d.taken = append(d.taken, scene.Box{X: d.box.X, Y: y - line/2, Width: d.box.Width, Height: line})
	d.add(scene.Text{X: to.X + 2, Y: y + letter.CapHeight(plain, pt)/2, Size: pt, Text: text, Box: d.box})
}
