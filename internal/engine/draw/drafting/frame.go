package drafting

import (
	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
)

// frame is a place on the page in which everything is drawn as if the threading stood
// above and the tie-up on the right: u runs from the outer side of the cloth to the
// tie-up, v from the outer side of the threading to the cloth, in mm. Where threading
// or tie-up stand elsewhere it is seen in a mirror, and its letters are not.
type frame struct {
	box          scene.Box
	left, upside bool // u runs to the left, v upwards
}

func (f frame) x(u float64) float64 {
	if f.left {
		return f.box.Right() - u
	}
	return f.box.X + u
}

func (f frame) y(v float64) float64 {
	if f.upside {
		return f.box.Bottom() - v
	}
	return f.box.Y + v
}

// at is the box between two places.
func (f frame) at(u0, v0, u1, v1 float64) scene.Box {
	return scene.Around([]scene.Point{{X: f.x(u0), Y: f.y(v0)}, {X: f.x(u1), Y: f.y(v1)}})
}

func (f frame) rect(u0, v0, u1, v1 float64, fill scene.Ink, pen scene.Pen) scene.Rect {
	b := f.at(u0, v0, u1, v1)
	return scene.Rect{X: b.X, Y: b.Y, Width: b.Width, Height: b.Height, Fill: fill, Pen: pen}
}

// line adds a straight stroke to a path.
func (f frame) line(p scene.Path, u0, v0, u1, v1 float64) scene.Path {
	return p.Move(f.x(u0), f.y(v0)).Line(f.x(u1), f.y(v1))
}

// oblong adds an upright rectangle to a path, clockwise on the page.
func (f frame) oblong(p scene.Path, u0, v0, u1, v1 float64) scene.Path {
	b := f.at(u0, v0, u1, v1)
	return p.Move(b.X, b.Y).Line(b.Right(), b.Y).Line(b.Right(), b.Bottom()).Line(b.X, b.Bottom()).Shut()
}

// Letters of a drawing.
const (
	pt   = 10.0
	line = 4.4 // from baseline to baseline, mm
	air  = 0.8 // beside letters, mm
)

var (
	plain = scene.Font{}
	bold  = scene.Font{Bold: true}
)

// high is how high figures stand, in mm.
var high = letter.CapHeight(plain, pt)

func wide(text string) float64 { return letter.Width(text, plain, pt) }

// say sets a text whose capitals have their middle at v; the anchor is as in the
// frame: a text that starts at u runs towards the tie-up.
func (f frame) say(u, v float64, anchor scene.Anchor, font scene.Font, text string) scene.Text {
	if f.left && anchor != scene.Middle {
		anchor = scene.End - anchor
	}
	return scene.Text{X: f.x(u), Y: f.y(v) + high/2, Size: pt, Font: font, Anchor: anchor, Text: text}
}
