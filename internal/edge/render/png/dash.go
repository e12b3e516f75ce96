package png

import (
	"math"

	"sley/internal/engine/draw/scene"
)

// maxDashes is how many rounds of a pattern a part is given. A page has room for
// far fewer; a line that runs out of all sight is drawn whole.
const maxDashes = 100_000

// dashed says whether a part is to be cut into dashes.
func dashed(p part, pattern []float64, scale float64) bool {
	length, round := 0.0, 0.0
	for i := 1; i < len(p.points); i++ {
		length += math.Hypot(p.points[i].X-p.points[i-1].X, p.points[i].Y-p.points[i-1].Y)
	}
	for _, d := range pattern {
		round += d * scale
	}
	return len(pattern) > 0 && length <= round*maxDashes
}

// dashes cuts a part into the runs where its pen is down. A dash of no length is a
// run of one point.
func dashes(p part, pattern []float64, scale float64) [][]scene.Point {
	points := p.points
	if p.closed && len(points) > 1 {
		points = append(points[:len(points):len(points)], points[0])
	}
	if len(points) == 0 {
		return nil
	}
	d := dasher{pattern: pattern, scale: scale}
	d.left = pattern[0] * scale
	d.begin(points[0])
	for i := 1; i < len(points); i++ {
		d.along(points[i-1], points[i])
	}
	d.lift()
	return d.runs
}

type dasher struct {
	pattern []float64 // mm, down and up in turn
	scale   float64
	at      int     // of the pattern, counted on and on
	left    float64 // of its length, pixels
	run     []scene.Point
	runs    [][]scene.Point
}

func (d *dasher) down() bool { return d.at%2 == 0 }

func (d *dasher) begin(p scene.Point) {
	if d.down() {
		d.run = []scene.Point{p}
	}
}

func (d *dasher) lift() {
	if len(d.run) > 0 {
		d.runs = append(d.runs, d.run)
	}
	d.run = nil
}

// along goes from a to b and turns the pen up and down where the pattern says.
func (d *dasher) along(a, b scene.Point) {
	length := math.Hypot(b.X-a.X, b.Y-a.Y)
	done := 0.0
	for length-done > d.left {
		done += d.left
		p := scene.Point{X: a.X + (b.X-a.X)*done/length, Y: a.Y + (b.Y-a.Y)*done/length}
		if d.down() {
			d.run = append(d.run, p)
		}
		d.lift()
		d.at++
		d.left = d.pattern[d.at%len(d.pattern)] * d.scale
		d.begin(p)
	}
	d.left -= length - done
	if d.down() {
		d.run = append(d.run, b)
	}
}
