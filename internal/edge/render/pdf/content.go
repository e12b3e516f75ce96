package pdf

import (
	"math"
	"strconv"

	"sley/internal/engine/draw/scene"
)

// num is a number with at most three decimals: a thousandth of a point is a third
// of a micrometre.
func num(v float64) string {
	text := strconv.FormatFloat(math.Round(v*1000)/1000, 'f', -1, 64)
	if text == "-0" {
		return "0"
	}
	return text
}

// at is a place in points from the lower left corner, with a space after it.
func (e *encoder) at(x, y float64) string {
	return num(x*scene.PointsPerMM) + " " + num((e.height-y)*scene.PointsPerMM) + " "
}

// path draws between q and Q, so that its pen does not outlive it.
func (e *encoder) path(p scene.Path, dx, dy float64) {
	paint := painting(p)
	if paint == "" || len(p.Segments) == 0 {
		return
	}
	e.put("q ")
	if !p.Fill.IsNone() {
		e.put(colour(p.Fill, "g", "rg"))
	}
	e.pen(p.Pen)
	for _, s := range p.Segments {
		e.segment(s, dx, dy)
	}
	e.put(paint, " Q\n")
}

// painting is the operator that strokes, fills or both (ISO 32000-1, table 60).
func painting(p scene.Path) string {
	switch {
	case p.Pen.Draws() && !p.Fill.IsNone():
		return "B"
	case p.Pen.Draws():
		return "S"
	case !p.Fill.IsNone():
		return "f"
	}
	return ""
}

func (e *encoder) pen(p scene.Pen) {
	if !p.Draws() {
		return
	}
	e.put(colour(p.Ink.OrBlack(), "G", "RG"), num(p.Width*scene.PointsPerMM), " w ")
	if p.Round {
		e.put("1 J 1 j ")
	} else {
		e.put("0 J 0 j ")
	}
	if len(p.Dash) > 0 {
		e.put("[")
		for _, d := range p.Dash {
			e.put(num(d*scene.PointsPerMM), " ")
		}
		e.put("] 0 d ")
	}
}

func (e *encoder) segment(s scene.Segment, dx, dy float64) {
	to := func(p scene.Point) string { return e.at(p.X+dx, p.Y+dy) }
	switch s.Step {
	case scene.MoveTo:
		e.put(to(s.To), "m ")
	case scene.LineTo:
		e.put(to(s.To), "l ")
	case scene.CubicTo:
		e.put(to(s.C1), to(s.C2), to(s.To), "c ")
	case scene.Close:
		e.put("h ")
	}
}

// colour sets an ink with the operator for grey, which printers set in black
// alone, or else with the one for red, green and blue.
func colour(k scene.Ink, grey, rgb string) string {
	if k.IsGrey() {
		return num(float64(k.R)/255) + " " + grey + " "
	}
	return num(float64(k.R)/255) + " " + num(float64(k.G)/255) + " " + num(float64(k.B)/255) + " " + rgb + " "
}
