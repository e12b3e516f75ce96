package structure

import (
	"sley/internal/trade/draft"
	"sley/internal/trade/weave"
)

// Side is an edge of the cloth, as the weaver sits before it.
type Side int

// The sides.
const (
	Left Side = iota
	Right
)

// Other is the other side.
func (s Side) Other() Side { return 1 - s }

// Weaving says how the shuttles go.
type Weaving struct {
	// Shuttles is which shuttle throws each pick, from 0; beyond the list, and where it
	// is empty, shuttle 0 does.
	Shuttles []int
	// Start is the side from which each shuttle is first thrown; of those beyond the
	// list the left.
	Start []Side
	// Floating says on which sides, by Side, there is a floating selvedge: an end that
	// the weaver passes over going in and under coming out, so that every turn is caught.
	Floating [2]bool
}

func (s *Weaving) shuttle(pick int) int {
	if pick < len(s.Shuttles) {
		return max(s.Shuttles[pick], 0)
	}
	return 0
}

func (s *Weaving) start(shuttle int) Side {
	if shuttle < len(s.Start) {
		return s.Start[shuttle]
	}
	return Left
}

// Turn is where a shuttle that came out at a side goes in there again.
type Turn struct {
	Pick, Next int // the pick thrown before it and the one after, from 0
	Shuttle    int
	Side       Side
	// Caught says that the weft turns round the outermost end: that end is on top of one
	// of the two picks and beneath the other, or it is a floating selvedge.
	Caught bool
	// SameShed says that no end at all changes sides between the two picks, so that
	// without a floating selvedge the weft comes out again where it went in.
	SameShed bool
}

// Caught is how the turns of one side are caught.
type Caught struct {
	Turns, Caught int
	// Run is the most turns one after another, on this side, that are not caught; where
	// the picks are woven over and over and none is caught, all of them.
	Run int
	// Bare are the picks after which the weft turns without catching the outermost end,
	// from 0.
	Bare []int
}

// All reports whether every turn is caught.
func (c *Caught) All() bool { return c.Caught == c.Turns }

// Edges are how the weft turns at both edges of a cloth.
type Edges struct {
	// Picks are those judged. Of a weave woven over and over they are one repeat, or
	// two where a shuttle comes out on the other side after one.
	Picks int
	Turns []Turn // by their first pick
	Sides [2]Caught
	Fixes []Fix // what would catch more turns, the least trouble first
}

// EdgesOf judges the edges of a weave as wide as it is: its first end is the left
// edge, its last the right one. A cloth is judged from its first pick to its last; a
// weave that is not bounded is woven over and over, and its last picks turn into its
// first. Tile gives a weave of the width wanted.
func EdgesOf(w *weave.Weave, s Weaving) *Edges {
	return newJudge(w, w.Ends(), s).whole()
}

// EdgesOfDraft judges the edges of a draft woven over and over on that many ends,
// its threading repeated from the first end on. Where ends is the whole threading,
// an outermost end in no heddle is a floating selvedge.
func EdgesOfDraft(d *draft.Draft, ends int, s Weaving) *Edges {
	left, right := floating(d.Threading)
	if ends == d.Ends() && left+right > 0 {
		s.Floating[Left] = s.Floating[Left] || left > 0
		s.Floating[Right] = s.Floating[Right] || right > 0
		d = d.DeleteEnds(ends-right, right).DeleteEnds(0, left)
		ends = d.Ends()
	}
	return newJudge(d.Drawdown(), ends, s).whole()
}

// edges judges one pair of outermost ends.
func (j *judge) edges(outer edge) *Edges {
	e := &Edges{Picks: j.picks(), Turns: j.turns(outer)}
	var run, first [2]int
	var seen [2]bool
	for _, t := range e.Turns {
		c := &e.Sides[t.Side]
		c.Turns++
		if !t.Caught {
			c.Bare = append(c.Bare, t.Pick)
			run[t.Side]++
			c.Run = max(c.Run, run[t.Side])
			continue
		}
		c.Caught++
		if !seen[t.Side] {
			seen[t.Side], first[t.Side] = true, run[t.Side]
		}
		run[t.Side] = 0
	}
	for side := range e.Sides {
		if j.round() && seen[side] {
			e.Sides[side].Run = max(e.Sides[side].Run, run[side]+first[side])
		}
	}
	return e
}
