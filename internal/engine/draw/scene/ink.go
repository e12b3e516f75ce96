package scene

import "math"

// Ink is a colour in sRGB (IEC 61966-2-1). The zero Ink is no ink: no fill for
// shapes, and black for strokes and letters, which are always drawn.
type Ink struct {
	R, G, B uint8
	set     bool
}

// Black and White are inks; None fills nothing.
var (
	Black = RGB(0, 0, 0)
	White = RGB(255, 255, 255)
	None  = Ink{}
)

// RGB is an ink of the three parts, each 0 to 255.
func RGB(r, g, b uint8) Ink { return Ink{r, g, b, true} }

// Grey is an ink from black (0) to white (1); shares outside are taken as the
// nearer of the two.
func Grey(light float64) Ink {
	v := uint8(math.Round(255 * min(max(light, 0), 1)))
	return RGB(v, v, v)
}

// IsNone says whether there is nothing to draw with.
func (k Ink) IsNone() bool { return !k.set }

// OrBlack is the ink, or black when there is none.
func (k Ink) OrBlack() Ink {
	if k.IsNone() {
		return Black
	}
	return k
}

// IsGrey says whether the ink prints alike in black and white.
func (k Ink) IsGrey() bool { return k.R == k.G && k.G == k.B }

// Pen is how a stroke is drawn; one of no width draws none.
type Pen struct {
	Width float64 // mm
	Ink   Ink     // black when none
	// Dash is lengths of ink and gap in turn, in mm, from where a stroke begins;
	// an odd number is gone through twice. Empty is a whole stroke.
	Dash []float64
	// Round gives strokes and dashes round ends and corners, so that a dash of
	// length 0 is a dot. Otherwise ends are cut square at the end point, and
	// corners are mitred to a length of at most MiterLimit widths.
	Round bool
}

// MiterLimit is how far a corner may reach, in widths of its stroke, before it is
// cut off: the default of PDF (ISO 32000-1, 8.4.3.5), a corner of 11.5 degrees.
const MiterLimit = 10

// Draws says whether the pen leaves a stroke.
func (p Pen) Draws() bool { return p.Width > 0 }

// Solid is a pen of the width in mm that draws whole black strokes.
func Solid(width float64) Pen { return Pen{Width: width} }
