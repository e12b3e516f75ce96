package check

import (
	"math"

	"sley/internal/engine/draw/scene"
)

// judge holds every text against the rules and against the texts before it.
func (p *proof) judge(page scene.Box) {
	for i, t := range p.texts {
		p.alone(t, page)
		for _, before := range p.texts[:i] {
			if overlap(before, t, p.rules.Slack) {
				p.report(Overlap, t, before.Text.Text)
			}
		}
	}
}

func (p *proof) alone(t placed, page scene.Box) {
	if t.Size < p.rules.MinPt {
		p.report(Small, t, "")
	}
	if !holds(page, t, p.rules.Slack) {
		p.report(OffPage, t, "")
	}
	if !t.box.IsZero() && !holds(t.box, t, p.rules.Slack) {
		p.report(OutsideBox, t, "")
	}
	for _, clip := range t.clips {
		if !holds(clip, t, p.rules.Slack) {
			p.report(Cut, t, "")
			return
		}
	}
}

func (p *proof) report(kind Kind, t placed, other string) {
	p.found = append(p.found, Finding{p.number, kind, t.Text.Text, other, t.ink})
}

// holds says whether the ink lies in the box, give or take the slack.
func holds(box scene.Box, t placed, slack float64) bool {
	box = box.Inset(-slack)
	for _, corner := range t.quad {
		if !box.Contains(corner) {
			return false
		}
	}
	return true
}

// overlap says whether the ink boxes of two texts, as they are turned, share more
// than the slack in every direction.
func overlap(a, b placed, slack float64) bool {
	common := a.ink.Intersect(b.ink)
	return common.Width > slack && common.Height > slack && meet(a.quad, b.quad, slack)
}

// meet is the separating axis test for two rectangles: they are apart when a line
// along an edge of either runs between them (S. Gottschalk, M. Lin, D. Manocha,
// "OBBTree", SIGGRAPH 1996, section 5).
func meet(a, b []scene.Point, slack float64) bool {
	for _, rectangle := range [][]scene.Point{a, b} {
		for i := range 2 {
			if shared(a, b, direction(rectangle[i], rectangle[i+1])) <= slack {
				return false
			}
		}
	}
	return true
}

func direction(from, to scene.Point) scene.Point {
	x, y := to.X-from.X, to.Y-from.Y
	length := math.Hypot(x, y)
	if length == 0 {
		return scene.Point{X: 1}
	}
	return scene.Point{X: x / length, Y: y / length}
}

// shared is how far the shadows of two shapes on an axis overlap.
func shared(a, b []scene.Point, axis scene.Point) float64 {
	lowA, highA := shadow(a, axis)
	lowB, highB := shadow(b, axis)
	return min(highA, highB) - max(lowA, lowB)
}

func shadow(points []scene.Point, axis scene.Point) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, p := range points {
		at := p.X*axis.X + p.Y*axis.Y
		low, high = min(low, at), max(high, at)
	}
	return low, high
}
