// Package tape draws the measuring tape of a warp at true scale: strips of paper to
// cut out, join and pin to the cloth on the loom, with a mark wherever the weaver
// has something to do.
//
// A strip stands upright on the page and is read from its foot, as cloth on the
// loom grows away from the weaver. Lengths are millimetres on the loom and on the
// paper alike. All words are the caller's.
package tape

import "sley/internal/engine/draw/scene"

type (
	// Mark is a place on the cloth where something is done.
	Mark struct {
		At     float64 // mm on the loom from the beginning of the strip, 0 to its Length
		Label  string
		Strong bool // a heavy line and bold letters
	}

	// Strip is the tape of one piece; it begins with 0.
	Strip struct {
		Title  string
		Length float64 // mm on the loom, more than 0 and at most MaxLength
		Marks  []Mark  // in any order; those beyond the strip are left out
	}

	// Words are what the pages say. Nil functions and empty words say nothing.
	Words struct {
		Heading          string                        // at the head of every page, on the left
		Page             func(page, of int) string     // at its head, on the right; pages from 1
		Note             string                        // at its foot: how to cut and join
		Running          func(from, to float64) string // what a part of a strip measures, mm
		Centimetres      string                        // the unit of the left edge: "cm"
		Inches           string                        // the unit of the right edge: "in"
		BarMetric, BarIn string                        // beside the two scale bars: "100 mm", "4 in"
	}

	// Place is where a mark fell.
	Place struct {
		Strip, Mark int     // indices into the strips and their marks
		Page        int     // from 1
		X, Y        float64 // mm on the page: the left end of its line
		Start       float64 // the Y at which its part of the strip begins
		Offset      float64 // the mm on the loom at which its part begins
		Labelled    bool    // false where other marks left no room for its label
	}
)

// MaxLength is the longest strip that is drawn, in mm: 200 m of paper.
const MaxLength = 200_000.0

// Pages lays the strips out on paper, in order, and tells where every mark fell,
// strip by strip and upwards. A strip that is longer than the page is cut into
// parts of whole centimetres, which overlap by Overlap and are joined where the
// letters are the same; short ones stand beside and above one another. Strips of
// no length, and paper too small for any strip, give no pages.
func Pages(strips []Strip, paper scene.Size, words Words) ([]scene.Page, []Place) {
	l := layout{paper: paper, words: words}
	l.measure(strips)
	if l.longest() < shortest || l.perRow() < 1 {
		return nil, nil
	}
	for i, s := range strips {
		for _, p := range cut(i, s, l.longest()) {
			l.put(p)
		}
	}
	l.frame()
	return l.pages, l.places
}

// drawable says whether the strip can be drawn; no number compares with a NaN.
func (s Strip) drawable() bool { return s.Length > 0 && s.Length <= MaxLength }
