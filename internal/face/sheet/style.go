package sheet

import (
	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
)

// style is letters of one size with the height of their line in mm.
type style struct {
	font scene.Font
	pt   float64
	lead float64
}

// The styles of the sheets. Nothing is smaller than 10 pt; what is read from the
// bench is 12 pt and more, the key figures 14 pt and more.
var (
	sans, bold    = scene.Font{}, scene.Font{Bold: true}
	serif, italic = scene.Font{Family: scene.Serif}, scene.Font{Family: scene.Serif, Italic: true}
	serifBold     = scene.Font{Family: scene.Serif, Bold: true}

	body     = style{sans, 12, 6.4}
	strong   = style{bold, 12, 6.4}
	figured  = style{bold, 14, 6.4}
	telling  = style{sans, 14, 8.2}
	told     = style{bold, 17, 8.2}
	large    = style{sans, 14, 9.6}
	key      = style{bold, 20, 9.6}
	small    = style{sans, 10, 5}
	label    = style{bold, 10, 5}
	formula  = style{serif, 12, 5.8}
	aside    = style{italic, 12, 5.8}
	heading  = style{serifBold, 16, 8}
	headline = style{serifBold, 26, 12}
	further  = style{serifBold, 16, 9}
)

// Pens, in grey and black.
var (
	hair = scene.Pen{Width: 0.15, Ink: scene.Grey(0.55)}
	rule = scene.Pen{Width: 0.25, Ink: scene.Black}
)

// base is the baseline in a line whose top is at y: capitals stand in its middle.
func (s style) base(y float64) float64 {
	return y + (s.lead+letter.CapHeight(s.font, s.pt))/2
}

// wide is how far a text runs, in mm.
func (s style) wide(text string) float64 { return letter.Width(text, s.font, s.pt) }

// at sets a text that begins at x in the line whose top is at y.
func (s style) at(x, y float64, text string) scene.Text {
	return scene.Text{X: x, Y: s.base(y), Size: s.pt, Font: s.font, Text: text}
}

// ending sets a text that ends at x.
func (s style) ending(x, y float64, text string) scene.Text {
	t := s.at(x, y, text)
	t.Anchor = scene.End
	return t
}

// mostLines is how many lines one entry takes at most; the last is cut.
const mostLines = 12

// wrap breaks a text into lines no wider than width mm.
func (s style) wrap(text string, width float64) []string {
	lines := letter.Wrap(text, s.font, s.pt, width)
	if len(lines) > mostLines {
		lines = lines[:mostLines]
		lines[mostLines-1] = letter.Fit(lines[mostLines-1]+" "+letter.Ellipsis, s.font, s.pt, width)
	}
	return lines
}

// even is wrap with the lines drawn in as little as it takes for the last not to be
// short, so that no word stands alone.
func (s style) even(text string, width float64) []string {
	lines := s.wrap(text, width)
	for share := 0.95; s.lastShort(lines, width) && share > 0.5; share -= 0.05 {
		closer := s.wrap(text, share*width)
		if len(closer) > len(lines) {
			break
		}
		lines = closer
	}
	return lines
}

// lastShort reports whether the last of several lines is short.
func (s style) lastShort(lines []string, width float64) bool {
	n := len(lines)
	return n > 1 && s.wide(lines[n-1]) < width/3
}

// fit cuts a text to width mm.
func (s style) fit(text string, width float64) string {
	return letter.Fit(text, s.font, s.pt, width)
}
