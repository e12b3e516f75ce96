// Package scene is the one drawing model of the house: a display list of plain
// values that every back end (SVG, PDF, PNG) draws alike.
//
// Lengths are millimetres on the paper, x to the right and y down, from the top
// left corner of the page; letters are sized in points (1/72 in). Items are drawn
// in order, later ones over earlier ones. A scene holds what callers hand in: it
// has no words, no clock and no settings of its own.
package scene

type (
	// Document is pages under one title. The strings describe the file; none of
	// them is drawn.
	Document struct {
		Title, Author, Subject string
		// Date is when the content was made, as 2026-11-25 or RFC 3339, or
		// empty. It is given, never the clock: same scene, same file.
		Date  string
		Pages []Page
	}

	// Page is a sheet of paper of the given size with what is drawn on it.
	Page struct {
		Width, Height float64 // mm
		Items         []Item
	}

	// Item is one thing drawn: a Line, Polyline, Rect, Path, Circle, Picture, Text
	// or Group.
	Item interface{ item() }

	// Line is a straight stroke.
	Line struct {
		X1, Y1, X2, Y2 float64
		Pen            Pen
	}

	// Polyline joins points by straight strokes. Closed makes it a polygon; only
	// then is it filled.
	Polyline struct {
		Points []Point
		Closed bool
		Pen    Pen
		Fill   Ink
	}

	// Rect has its top left corner at X, Y.
	Rect struct {
		X, Y, Width, Height float64
		Pen                 Pen
		Fill                Ink
	}

	// Circle has its centre at X, Y.
	Circle struct {
		X, Y, Radius float64
		Pen          Pen
		Fill         Ink
	}

	// Text is one line of letters; breaking and cutting are package letter's.
	Text struct {
		X, Y   float64 // of the anchor, on the baseline
		Size   float64 // points
		Font   Font
		Anchor Anchor
		Angle  float64 // degrees, turned anticlockwise about the anchor
		Ink    Ink     // black when none
		Text   string
		// Box is where the ink must stay, for the check of the layout; the zero
		// Box promises nothing. It is not drawn and does not clip.
		Box Box
	}

	// Group draws its items shifted by X, Y. A Clip that is not zero, in the
	// group's own measure, shows only what lies inside it.
	Group struct {
		X, Y  float64
		Clip  Box
		Items []Item
	}
)

func (Line) item()     {}
func (Polyline) item() {}
func (Rect) item()     {}
func (Circle) item()   {}
func (Path) item()     {}
func (Text) item()     {}
func (Group) item()    {}

type (
	// Family of letters.
	Family int
	// Font is a family and its cut. A cut the house has no letters for (Sans
	// Italic, Serif Bold Italic) is drawn upright: see letter.Resolve.
	Font struct {
		Family       Family
		Bold, Italic bool
	}
	// Anchor is the part of a text that stands at its X.
	Anchor int
)

const (
	Sans  Family = iota // for reading: everything but headings
	Serif               // headings, totals and formulas
)

const (
	Start  Anchor = iota // X is where the text begins
	Middle               // X is its middle
	End                  // X is where it ends
)

// A4 and Letter are the papers of the house, upright, in millimetres (ISO 216;
// ANSI/ASME Y14.1, 8 1/2 by 11 in).
var (
	A4     = Size{210, 297}
	Letter = Size{215.9, 279.4}
)

// Size is a width and a height in millimetres.
type Size struct{ Width, Height float64 }
