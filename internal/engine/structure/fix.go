package structure

import (
	"math"
	"slices"
)

// Fix is a change that catches more turns of the weft.
type Fix struct {
	// Swap are the shuttles that start from the other side.
	Swap []int
	// Ends is how many ends are added at each side, by Side, as the threading goes on
	// there; below 0 they are left out.
	Ends [2]int
	// Floating says on which sides a floating selvedge is hung.
	Floating [2]bool
	// Caught is how many of the turns are then caught on each side, by Side, and Turns
	// how many there are.
	Caught, Turns [2]int
}

// All reports whether every turn is then caught.
func (f *Fix) All() bool { return f.Caught == f.Turns }

// mostSwapped is the most shuttles of which every choice is tried; with more of
// them they start from the other side all at once, or not at all.
const mostSwapped = 4

// fixes gives what catches more turns than e does: the best way to begin from other
// sides; the best change of an end at one edge or both, where that is better still;
// and floating selvedges, which catch all, where nothing else does.
func (j *judge) fixes(e *Edges) []Fix {
	least := bare(e)
	if least == 0 {
		return nil
	}
	var out []Fix
	for _, changes := range [][][2]int{{{}}, j.changes()} {
		if f, n := j.best(changes); n < least {
			out, least = append(out, f), n
		}
	}
	if least > 0 {
		out = append(out, j.hung(e))
	}
	return out
}

// bare counts the turns that are not caught.
func bare(e *Edges) int { return len(e.Sides[Left].Bare) + len(e.Sides[Right].Bare) }

// changes gives how many ends may be added at each side, those that change least
// first. Ends cannot be added to a cloth in which they do not come again.
func (j *judge) changes() [][2]int {
	grows := j.round() || j.period < j.unit.Ends()
	var out [][2]int
	for _, c := range [][2]int{
		{0, -1}, {-1, 0}, {0, 1}, {1, 0}, {-1, -1}, {1, -1}, {-1, 1}, {1, 1},
	} {
		if j.ends+min(c[Left], 0)+min(c[Right], 0) >= 1 && (grows || c[Left] <= 0 && c[Right] <= 0) {
			out = append(out, c)
		}
	}
	return out
}

// best tries every choice of shuttles with every change, and gives the first that
// leaves the fewest turns bare, and how many those are.
func (j *judge) best(changes [][2]int) (best Fix, least int) {
	least = math.MaxInt
	for _, swap := range j.swaps() {
		other := *j
		other.weaving.Start = j.swapped(swap)
		for _, change := range changes {
			e := other.edges(j.outermost(change))
			if n := bare(e); n < least {
				best, least = fixed(e, Fix{Swap: swap, Ends: change}), n
			}
		}
	}
	return best, least
}

// fixed puts the turns that are caught into a fix.
func fixed(e *Edges, f Fix) Fix {
	for side, c := range e.Sides {
		f.Caught[side], f.Turns[side] = c.Caught, c.Turns
	}
	return f
}

// hung is a floating selvedge on each side that has turns to catch.
func (j *judge) hung(e *Edges) Fix {
	changed := *j
	var f Fix
	for side := range e.Sides {
		f.Floating[side] = !e.Sides[side].All()
		changed.weaving.Floating[side] = f.Floating[side] || j.weaving.Floating[side]
	}
	return fixed(changed.edges(j.outermost([2]int{})), f)
}

// swaps gives the choices of shuttles to start from the other side, none first and
// then those of the fewest.
func (j *judge) swaps() [][]int {
	all := j.shuttles
	if len(all) > mostSwapped {
		return [][]int{nil, all}
	}
	var out [][]int
	for set := range 1 << len(all) {
		var swap []int
		for k, shuttle := range all {
			if set>>k&1 == 1 {
				swap = append(swap, shuttle)
			}
		}
		out = append(out, swap)
	}
	slices.SortStableFunc(out, func(a, b []int) int { return len(a) - len(b) })
	return out
}

// swapped gives the sides to start from with those shuttles on the other one.
func (j *judge) swapped(swap []int) []Side {
	var out []Side
	for shuttle := range slices.Max(j.shuttles) + 1 {
		side := j.weaving.start(shuttle)
		if slices.Contains(swap, shuttle) {
			side = side.Other()
		}
		out = append(out, side)
	}
	return out
}
