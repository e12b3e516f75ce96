package pdf

import (
	"strconv"
	"strings"

	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
	"sley/third_party/fonts"
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
	e.pdf.SetFont(e.font(t.Font), style(t.Font), t.Size)
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

// font loads the letters when they are first needed and returns their family.
func (e *encoder) font(f scene.Font) string {
	f = letter.Resolve(f)
	if family, known := e.fonts[f]; known {
		return family
	}
	family := fonts.Sans
	if f.Family == scene.Serif {
		family = fonts.Serif
	}
	family = strings.ReplaceAll(family, " ", "")
	e.pdf.AddUTF8FontFromBytes(family, style(f), letter.File(f))
	e.fonts[f] = family
	return family
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
