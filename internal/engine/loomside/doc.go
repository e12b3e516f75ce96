// Package loomside says what is to be done at the loom, one thing after another, with
// running counts: the steps of dressing it, in groups that can be checked one by one, and
// the weaving pick by pick with its tape, its forecast and its yarn. Pure functions of a
// reckoning and of what was said at the loom.
package loomside

import (
	"sley/internal/engine/dress"
	"sley/internal/engine/tieup"
	"sley/internal/trade/draft"
	"sley/internal/trade/qty"
)

// Way is how a warp is put on a loom.
type Way string

// The ways. Back to front: wound, spread in the raddle, beamed, threaded, sleyed, tied on.
// Front to back: wound, sleyed, threaded, tied on behind, beamed. Tying on: the new ends
// are tied to those of the old warp, which still stand in heddles and reed.
const (
	BackToFront Way = "back to front"
	FrontToBack Way = "front to back"
	TyingOn     Way = "tying on"
)

// Ways lists the ways, the usual one first.
func Ways() []Way { return []Way{BackToFront, FrontToBack, TyingOn} }

// The steps of dressing.
const (
	Winding    = "winding"
	Sections   = "sections"  // wound straight onto a sectional beam
	Spreading  = "spreading" // in the raddle
	Beaming    = "beaming"
	Threading  = "threading"
	Sleying    = "sleying"
	Knotting   = "knotting" // new ends to the old ones
	TyingFront = "tying-on"
	TyingUp    = "tie-up"
	FirstInch  = "first-inch"
)

// Side is where work across the warp begins.
type Side string

// The sides. Only sleying and spreading begin at the centre.
const (
	Left   Side = "left"
	Right  Side = "right"
	Centre Side = "centre"
)

// Sides lists the sides that a step may begin at; none where it has no side.
func Sides(step string) []Side {
	switch step {
	case Threading, Knotting:
		return []Side{Left, Right}
	case Sleying:
		return []Side{Left, Centre, Right}
	case Spreading:
		return []Side{Centre, Left, Right}
	}
	return nil
}

// Asked is how the weaver wants it done. Zero fields are as usual.
type Asked struct {
	Way   Way
	Sides map[string]Side // by step
}

// Step is one step of dressing: so much of something, in parts that are done and checked
// one after another.
type Step struct {
	ID      string
	Side    Side          // empty where the step has none
	Total   int           // of what it counts: ends, dents, spaces, sections, treadles, things to do
	Feet    *tieup.Feet   // tie-up: whether the feet can take turns; nil where they press none
	ByShaft []tieup.Cords // tie-up: the same cords from the other end, shaft 1 first
	Parts   []Part
}

// Part is what is done before the next check. By the step only some fields are set.
type Part struct {
	From, To int // of what the step counts, before it and after it

	Thing    string   // a thing to do, by name; its words are elsewhere
	Shafts   []int    // threading: of each end, in the order of the work; 1 is the front one
	Heddles  []int    // threading: those the part takes on each shaft, shaft 1 first
	Taken    []int    // threading: those taken on each shaft by its end, with all before it
	Dents    []Dent   // sleying: in the order of the work
	Ends     int      // ends in the part
	Sum      int      // ends by its end, with all before it
	Yarns    []OfYarn // winding, knotting, sections: its ends by yarn, in their order
	Passes   int      // winding: how often the cross is passed
	Ties     int      // winding: counting ties, the last part's ends left without
	Changes  []dress.Change
	Spaces   []int       // spreading: ends in each space, in the order of the work
	Number   int         // of the bout, the section, the treadle; from 1
	Whole    bool        // a whole section
	Cords    tieup.Cords // tie-up: of the treadle
	Up       draft.Set   // tie-up: what is on top; first inch: what to open
	Opens    tieup.Shed  // tie-up: how it opens on this loom
	Pressed  draft.Set   // first inch: the treadles that open it; none: by hand
	Reads    []dress.Run // first inch: neighbours up, above 0, and down, below 0, from the left
	Distance qty.Length  // sections: what each end of the part is long
}

// OfYarn is neighbouring ends, or picks, of one yarn.
type OfYarn struct {
	Yarn  string
	Count int
}

// Dent is a dent of the reed that is used.
type Dent struct {
	At    int // from the left of the cloth, floating selvedges among them; from 1
	Reed  int // from the left of the reed; 0 where its width is not known
	Ends  int // in it, doubled ones with their neighbours
	Float bool
}
