package letter

import (
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"sley/internal/engine/draw/scene"
)

// Outline is the shape of a line of text that begins at 0, 0 on the baseline, in
// mm. Filled by the non-zero rule it is the letters.
func Outline(text string, f scene.Font, pt float64) []scene.Segment {
	a := faceOf(f)
	em := mm(pt)
	var shape []scene.Segment
	x := 0.0
	for _, r := range Clean(text, f) {
		g := a.glyphs[r]
		for _, s := range a.shape(g.index) {
			shape = append(shape, scene.Segment{
				Step: s.Step, C1: place(s.C1, x, em), C2: place(s.C2, x, em), To: place(s.To, x, em),
			})
		}
		x += g.advance
	}
	return shape
}

// place scales a point of a glyph that begins at x, both in ems.
func place(p scene.Point, x, em float64) scene.Point {
	return scene.Point{X: (p.X + x) * em, Y: p.Y * em}
}

// shape is the outline of a glyph in ems, read once.
func (a *face) shape(index sfnt.GlyphIndex) []scene.Segment {
	if known, ok := a.shapes.Load(index); ok {
		return known.([]scene.Segment)
	}
	loaded, err := a.font.LoadGlyph(nil, index, a.ppem(), nil)
	if err != nil {
		return nil
	}
	shape := a.convert(loaded)
	a.shapes.Store(index, shape)
	return shape
}

// convert closes every contour and lifts the quadratic curves of TrueType to
// cubic ones.
func (a *face) convert(loaded sfnt.Segments) []scene.Segment {
	var shape []scene.Segment
	var last scene.Point
	for _, s := range loaded {
		p := [3]scene.Point{a.point(s.Args[0]), a.point(s.Args[1]), a.point(s.Args[2])}
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			if len(shape) > 0 {
				shape = append(shape, scene.Segment{Step: scene.Close})
			}
			shape = append(shape, scene.Segment{Step: scene.MoveTo, To: p[0]})
			last = p[0]
		case sfnt.SegmentOpLineTo:
			shape = append(shape, scene.Segment{Step: scene.LineTo, To: p[0]})
			last = p[0]
		case sfnt.SegmentOpQuadTo:
			shape = append(shape, lift(last, p[0], p[1]))
			last = p[1]
		case sfnt.SegmentOpCubeTo:
			shape = append(shape, scene.Segment{Step: scene.CubicTo, C1: p[0], C2: p[1], To: p[2]})
			last = p[2]
		}
	}
	if len(shape) > 0 {
		shape = append(shape, scene.Segment{Step: scene.Close})
	}
	return shape
}

func (a *face) point(p fixed.Point26_6) scene.Point {
	return scene.Point{X: float64(p.X) / a.em, Y: float64(p.Y) / a.em}
}

// lift is a quadratic curve as a cubic one: its control points lie two thirds of
// the way from each end to the one it has.
func lift(from, control, to scene.Point) scene.Segment {
	toward := func(p scene.Point) scene.Point {
		return scene.Point{X: p.X + (control.X-p.X)*2/3, Y: p.Y + (control.Y-p.Y)*2/3}
	}
	return scene.Segment{Step: scene.CubicTo, C1: toward(from), C2: toward(to), To: to}
}
