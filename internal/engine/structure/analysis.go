package structure

import (
	"iter"

	"sley/internal/trade/draft"
	"sley/internal/trade/weave"
)

// Analysis is what is known of a weave. Ends are counted from the left and picks
// from the first woven, both from 0.
type Analysis struct {
	Picks, Ends int  // of the weave as it was given
	Bounded     bool // it is a cloth with edges, and no repeat

	RepeatPicks, RepeatEnds int // of its smallest repeat
	// Shafts are the fewest it can be woven with: one for each end that differs.
	// Lifts are the fewest, and with one foot the fewest treadles: one for each pick
	// that differs.
	Shafts, Lifts int
	WarpUps       int // crossings with the warp on top, of Picks × Ends

	Layers []Layer // from the top; one when it hangs together
	Name   Name    // that handbooks give it

	// Floating are the ends in no heddle at the left and at the right edge of a draft.
	// They are left out here, so that end 0 is the first in a heddle.
	Floating [2]int

	floats   [2][2]Floats // by Way and Face
	crossing [2]Interlacing
	cloth    cloth
}

// Of analyses a weave. It takes a time that grows with the words the weave is held
// in, 64 crossings each, and what differs in it.
func Of(w *weave.Weave) *Analysis {
	c := sortThreads(w)
	a := &Analysis{
		Picks: w.Picks(), Ends: w.Ends(), Bounded: w.Bounded,
		RepeatPicks: weave.Period(c.picks.Class, !w.Bounded),
		RepeatEnds:  weave.Period(c.ends.Class, !w.Bounded),
		Shafts:      c.ends.Distinct(), Lifts: c.picks.Distinct(),
		Layers: c.layers(),
	}
	for i, times := range c.picks.Times {
		a.WarpUps += times * c.picks.cells.UpsOfPick(i)
	}
	for _, lines := range []*Lines{&c.ends, &c.picks} {
		floats, changes := lines.floats()
		a.floats[lines.way] = floats
		a.crossing[lines.way] = lines.interlacing(changes)
	}
	a.cloth = c
	a.Name = a.name()
	return a
}

// OfDraft analyses the drawdown of a draft, as a repeat. Ends in no heddle at its
// edges are floating selvedges, which the weaver catches by hand: they are no part
// of the weave.
func OfDraft(d *draft.Draft) *Analysis {
	left, right := floating(d.Threading)
	a := Of(d.DeleteEnds(d.Ends()-right, right).DeleteEnds(0, left).Drawdown())
	a.Floating = [2]int{left, right}
	return a
}

// floating counts the ends in no heddle at both edges. Where there are no others,
// there is no edge and none floats.
func floating(threading []int) (left, right int) {
	n := len(threading)
	for left < n && threading[left] == 0 {
		left++
	}
	if left == n {
		return 0, 0
	}
	for threading[n-1-right] == 0 {
		right++
	}
	return left, right
}

// Floats gives the floats of one way on one face.
func (a *Analysis) Floats(way Way, face Face) *Floats { return &a.floats[way][face] }

// Places gives where all floats of one way on one face lie that are at least that
// long, by thread and then along it.
func (a *Analysis) Places(way Way, face Face, atLeast int) iter.Seq[Place] {
	return a.Lines(way).places(face, atLeast)
}

// Lines gives the ends, or the picks, sorted by what they do.
func (a *Analysis) Lines(way Way) *Lines {
	if way == Warp {
		return &a.cloth.ends
	}
	return &a.cloth.picks
}

// Threads gives how many ends, or picks, there are.
func (a *Analysis) Threads(way Way) int { return a.Lines(way).Threads() }

// HangsTogether reports whether the weave is one cloth.
func (a *Analysis) HangsTogether() bool { return len(a.Layers) == 1 }

// Woven gives how many of the layers are cloth, and no loose threads.
func (a *Analysis) Woven() int {
	n := 0
	for i := range a.Layers {
		if !a.Layers[i].Loose() {
			n++
		}
	}
	return n
}

// Loose gives the ends, or the picks, that nothing holds, from the first. A weave
// that is woven in several layers may have none.
func (a *Analysis) Loose(way Way) []int {
	at := make([]bool, a.Threads(way))
	for i := range a.Layers {
		l := &a.Layers[i]
		if !l.Loose() {
			continue
		}
		for _, thread := range l.threads(way) {
			at[thread] = true
		}
	}
	var out []int
	for thread, loose := range at {
		if loose {
			out = append(out, thread)
		}
	}
	return out
}

func (l *Layer) threads(way Way) []int {
	if way == Warp {
		return l.Ends
	}
	return l.Picks
}

// Balance says which thread a face shows more of.
type Balance int

// The balances of the front.
const (
	Even Balance = iota
	WarpFaced
	WeftFaced
)

// evenWithin is how far from half of the crossings, in twentieths, a cloth still
// counts as even: a setting. A 3/2 twill, with twelve of twenty, is warp-faced.
const evenWithin = 1

// Balance says which thread is on top at more crossings of the weave.
func (a *Analysis) Balance() Balance {
	switch off := 20*a.WarpUps - 10*a.Picks*a.Ends; {
	case off > evenWithin*a.Picks*a.Ends:
		return WarpFaced
	case off < -evenWithin*a.Picks*a.Ends:
		return WeftFaced
	}
	return Even
}
