package pdf

import (
	"strconv"
	"strings"

	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
)

// text sets one line of letters with its beginning on the baseline where the scene
// puts it.
func (e *encoder) text(t scene.Text) {
	words := letter.Clean(t.Text, t.Font)
	if strings.Trim(words, " ") == "" {
		return
	}
	x, y := letter.Origin(t)
	e.put("q ", colour(t.Ink.OrBlack(), "g", "rg"), e.turn(t))
	e.flush()
	e.pdf.SetFont(e.font(t.Font, words), style(t.Font), t.Size)
	e.pdf.Text(x, y, words)
	e.put("Q\n")
}

// turn is the matrix that turns about the anchor (ISO 32000-1, 8.3.3).
func (e *encoder) turn(t scene.Text) string {
	if t.Angle == 0 {
		return ""
	}
	sin, cos := scene.Sincos(t.Angle)
	x, y := t.X*scene.PointsPerMM, (e.height-t.Y)*scene.PointsPerMM
	text := ""
	for _, v := range []float64{cos, sin, -sin, cos} {
		text += strconv.FormatFloat(v, 'f', 6, 64) + " "
	}
	return text + num(x-x*cos+y*sin) + " " + num(y-x*sin-y*cos) + " cm"
}

// font loads the letters when they are first needed and returns their family; the
// words are those to be drawn in it.
func (e *encoder) font(f scene.Font, words string) string {
	f = letter.Resolve(f)
	s := e.fonts[f]
	if s == nil {
		s = newSubset(f)
		e.pdf.AddUTF8FontFromBytes(s.family(), style(f), letter.File(f))
		e.fonts[f] = s
	}
	s.draw(words)
	return s.family()
}

// style is fpdf's name for a cut.
func style(f scene.Font) string {
	f = letter.Resolve(f)
	switch {
	case f.Bold:
		return "B"
	case f.Italic:
		return "I"
	}
	return ""
}
