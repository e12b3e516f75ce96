package structure

import (
	"slices"

	"sley/internal/trade/weave"
)

// judge holds what edges are judged by. The cloth is as wide as ends, and filled with
// unit from its first end on.
type judge struct {
	unit   *weave.Weave
	ends   int
	period int   // after which the ends of the unit come again
	sheds  []int // of each pick of the unit, over the ends of the cloth

	weaving  Weaving
	shuttles []int // those in use, from the lowest
	thrower  []int // of each pick, its place in shuttles
}

// newJudge reads a unit that has picks and ends; for others, and for a cloth without
// ends, it is nil.
func newJudge(unit *weave.Weave, ends int, s Weaving) *judge {
	if unit.Picks() == 0 || unit.Ends() == 0 || ends <= 0 {
		return nil
	}
	j := &judge{unit: unit, ends: ends, period: unit.EndPeriod(), weaving: s}
	j.sheds, _ = unit.Crop(0, 0, unit.Picks(), min(ends, unit.Ends())).PickClasses()
	for pick := range unit.Picks() {
		j.shuttles = append(j.shuttles, s.shuttle(pick))
	}
	of := slices.Clone(j.shuttles)
	slices.Sort(j.shuttles)
	j.shuttles = slices.Compact(j.shuttles)
	for _, shuttle := range of {
		at, _ := slices.BinarySearch(j.shuttles, shuttle)
		j.thrower = append(j.thrower, at)
	}
	return j
}

// whole judges the cloth, and looks for fixes.
func (j *judge) whole() *Edges {
	if j == nil {
		return &Edges{}
	}
	e := j.edges(j.outermost([2]int{}))
	e.Fixes = j.fixes(e)
	return e
}

// edge is the outermost end of each side: whether it is on top at each pick.
type edge [2][]bool

// outermost gives the edge with so many ends added at each side.
func (j *judge) outermost(added [2]int) edge {
	return edge{j.column(-added[Left]), j.column(j.ends - 1 + added[Right])}
}

// column reads the end at that place, as the unit goes on beyond both its sides.
func (j *judge) column(end int) []bool {
	out := make([]bool, j.unit.Picks())
	for i := range out {
		out[i] = j.unit.WarpUp(i, mod(end, j.period))
	}
	return out
}

// round reports whether the picks are woven over and over.
func (j *judge) round() bool { return !j.unit.Bounded }

// picks gives how many picks are judged.
func (j *judge) picks() int {
	thrown := make([]int, len(j.shuttles))
	for _, k := range j.thrower {
		thrown[k]++
	}
	odd := slices.ContainsFunc(thrown, func(times int) bool { return times%2 == 1 })
	if j.round() && odd {
		return 2 * len(j.thrower)
	}
	return len(j.thrower)
}

// flight is where a shuttle is.
type flight struct {
	thrown      bool
	from        Side // where it last went in
	first, last int  // picks
}

// turns follows each shuttle from side to side.
func (j *judge) turns(outer edge) []Turn {
	flights := make([]flight, len(j.shuttles))
	next := make([]Turn, j.picks())
	for pick := range next {
		k := j.thrower[pick%len(j.thrower)]
		f := &flights[k]
		if !f.thrown {
			*f = flight{true, j.weaving.start(j.shuttles[k]), pick, pick}
			continue
		}
		f.from = f.from.Other()
		next[f.last] = j.turn(outer, k, f.last, pick, f.from)
		f.last = pick
	}
	for k, f := range flights {
		if j.round() {
			next[f.last] = j.turn(outer, k, f.last, f.first, f.from.Other())
		}
	}
	// A pick that is the last of its shuttle is followed by no turn.
	return slices.DeleteFunc(next, func(t Turn) bool { return t.Pick == t.Next })
}

func (j *judge) turn(outer edge, k, before, pick int, side Side) Turn {
	n := len(j.sheds)
	return Turn{
		Pick: before, Next: pick, Shuttle: j.shuttles[k], Side: side,
		Caught:   j.weaving.Floating[side] || outer[side][before%n] != outer[side][pick%n],
		SameShed: j.sheds[before%n] == j.sheds[pick%n],
	}
}
