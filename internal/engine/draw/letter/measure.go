package letter

import (
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"

	"sley/internal/engine/draw/scene"
)

// Width is how far a line of text runs, in mm: the sum of its glyphs' advances as
// drawn, after Clean.
func Width(text string, f scene.Font, pt float64) float64 {
	return faceOf(f).width(Clean(text, f)) * mm(pt)
}

// width of text already clean, in ems.
func (a *face) width(text string) float64 {
	sum := 0.0
	for _, r := range text {
		sum += a.glyphs[r].advance
	}
	return sum
}

// Ascent is the height above the baseline that the font keeps free for a line, in
// mm; it leaves room for two accents on a capital.
func Ascent(f scene.Font, pt float64) float64 { return faceOf(f).metrics().ascent * mm(pt) }

// Descent is the depth below the baseline that it keeps free, in mm, positive.
func Descent(f scene.Font, pt float64) float64 { return faceOf(f).metrics().descent * mm(pt) }

// CapHeight is how high a capital stands, in mm.
func CapHeight(f scene.Font, pt float64) float64 { return faceOf(f).metrics().capital * mm(pt) }

// XHeight is how high an x stands, in mm.
func XHeight(f scene.Font, pt float64) float64 { return faceOf(f).metrics().x * mm(pt) }

// metrics of a font in ems.
type metrics struct{ ascent, descent, capital, x float64 }

func (a *face) metrics() metrics {
	m, err := a.font.Metrics(nil, a.ppem(), font.HintingNone)
	if err != nil {
		return metrics{1, 0.25, 0.7, 0.5}
	}
	return metrics{
		float64(m.Ascent) / a.em, float64(m.Descent) / a.em,
		float64(m.CapHeight) / a.em, float64(m.XHeight) / a.em,
	}
}

// Ink is the box that the ink of a line of text fills when it begins at the point
// 0, 0 on the baseline, in mm; the zero Box when there is no ink.
func Ink(text string, f scene.Font, pt float64) scene.Box {
	a := faceOf(f)
	em := mm(pt)
	var corners []scene.Point
	x := 0.0
	for _, r := range Clean(text, f) {
		g := a.glyphs[r]
		if b := a.ink(g.index); !b.IsZero() {
			corners = append(corners, place(scene.Point{X: b.X, Y: b.Y}, x, em), place(scene.Point{X: b.Right(), Y: b.Bottom()}, x, em))
		}
		x += g.advance
	}
	return scene.Around(corners)
}

// ink is the box of a glyph in ems, found once: that of its points, those that bend
// its curves among them, which the curves never leave.
func (a *face) ink(index sfnt.GlyphIndex) scene.Box {
	if known, ok := a.inks.Load(index); ok {
		return known.(scene.Box)
	}
	var corners []scene.Point
	for _, s := range a.shape(index) {
		if s.Step == scene.CubicTo {
			corners = append(corners, s.C1, s.C2)
		}
		if s.Step != scene.Close {
			corners = append(corners, s.To)
		}
	}
	b := scene.Around(corners)
	a.inks.Store(index, b)
	return b
}

// Quad is where the ink of a text lies on the page: the corners of its ink box,
// anchored and turned, clockwise from the top left as the text is read. It is nil
// when there is no ink.
func Quad(t scene.Text) []scene.Point {
	ink := Ink(t.Text, t.Font, t.Size)
	if ink.IsZero() {
		return nil
	}
	x, y := Origin(t)
	corners := ink.Shift(x, y).Corners()
	for i, c := range corners {
		corners[i] = c.Turn(scene.Point{X: t.X, Y: t.Y}, t.Angle)
	}
	return corners
}

// Origin is where on the baseline the text begins, before it is turned.
func Origin(t scene.Text) (x, y float64) {
	switch t.Anchor {
	case scene.Middle:
		return t.X - Width(t.Text, t.Font, t.Size)/2, t.Y
	case scene.End:
		return t.X - Width(t.Text, t.Font, t.Size), t.Y
	}
	return t.X, t.Y
}
