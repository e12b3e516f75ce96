// Package drafting draws drafts as handbooks print them: threading, tie-up, treadling
// or lift plan, and drawdown; the drawdown alone, from either face; and a cloth as a
// picture of a few dots for each crossing.
//
// A filled cell is the warp on top. Everything is told apart without colour as well.
// Lengths are millimetres on the paper, letters 10 pt. Ends, picks, shafts and
// treadles are counted as package draft counts them. All words are the caller's.
package drafting

import "sley/internal/trade/draft"

type (
	// Look is how a draft is drawn; the zero Look is threading above, tie-up on the
	// right, ends numbered from the left, the first pick at the top, cells filled.
	// Ends always lie from left to right on the front. Below, TieUpLeft, Numbers,
	// LiftPlan and Bars are of a whole draft and mean nothing Alone.
	Look struct {
		Alone     bool // the drawdown alone
		Face      Face // of the drawdown alone; a whole draft shows its front
		Below     bool // the threading stands below the drawdown; shaft 1 is nearest the cloth either way
		TieUpLeft bool // tie-up and treadling stand on the left; treadle 1 is nearest the cloth either way
		FromRight bool // ends are numbered from the right
		Upwards   bool // the first pick is at the bottom, as it lies before the weaver
		Numbers   bool // threading, treadling and lift plan have numbers in place of filled cells
		LiftPlan  bool // lifts are drawn in place of treadles, where the draft has treadles
		Cells     Cells
		Grey      bool    // colours as greys that are as light as they are
		Bars      bool    // colour bars beside threading and treadling
		ToScale   bool    // threads as thick and as far apart as they are to one another
		Cell      float64 // mm from thread to thread; 0: as large as fits, within reason
	}

	// Cells is how crossings are drawn.
	Cells int

	// Face is the side of the cloth that is drawn. The back is seen when the cloth
	// is turned over from side to side.
	Face int

	// Marks are what is pointed out on a draft. What lies beyond the draft is left
	// out.
	Marks struct {
		Repeat       Part    // framed; none where it has no ends or no picks
		Floats       []Float // struck through
		Ends, Picks  []int   // pointed at
		FloatsBehind bool    // floats of the face that is not drawn are struck too, dashed
	}

	// Part is picks and ends of a draft: from the first of each, so many.
	Part struct{ Pick, End, Picks, Ends int }

	// Float is a float from a crossing on: along the end where Warp says so, else
	// along the pick. Long threads are passed over; it may run on from the last
	// thread into the first.
	Float struct {
		Pick, End, Long int
		Warp            bool
		Face            Face // on which it lies
	}

	// Words are what a drawing says; nil functions and empty words say nothing.
	Words struct {
		Heading                        string
		Page                           func(page, of int) string // pages from 1
		Ends, Picks, Shafts, Treadles  string                    // beside their numbers
		Filled                         string                    // what a filled cell means
		Raised, Lowered                string                    // what circle and cross of a tie-up mean
		Repeat, Float, Behind, Pointed string                    // what the marks mean
		Colour                         func(index int) string    // of the palette, for the key
		// Part says what a page of several shows: its name in the overview, its
		// ends and its picks, as they are numbered.
		Part func(name string, ends, picks [2]int) string
		// Cloth says that a draft is too large to be drawn thread by thread, and is
		// shown as a picture of the cloth only.
		Cloth string
	}
)

// The ways of drawing crossings.
const (
	Filled  Cells = iota // black where the warp is on top, white where the weft is
	Colours              // the colour of the thread on top; a draft without a palette is Filled
	Both                 // that colour, with a small square where the warp is on top
)

// The faces.
const (
	Front Face = iota
	Back
)

// none says whether there is nothing to draw.
func none(d *draft.Draft) bool { return d == nil || d.Ends() == 0 || d.Picks() == 0 }
