package tieup

import (
	"math/bits"
	"slices"

	"sley/internal/trade/draft"
)

// Order gives the new number of each of so many treadles, of treadle 1 first, so that
// they lie well for the feet: those of the left foot on the left, those of the right
// foot beside them, each foot's in the order in which it goes the least way, counted in
// treadles from press to press over the whole walk. Where orders are as good, a treadle
// that is pressed sooner lies farther out, so that the feet walk inwards. Treadles that
// are never pressed come last, as they lay. It reports false where the feet cannot take
// turns.
//
// The way is the least there is for feet of up to mostExact treadles; for more, an order
// that no exchange of two treadles betters. That feet taking turns weave with less
// strain is common practice, no source.
func Order(w Walk, treadles int) ([]int, bool) {
	feet := FeetOf(w)
	if feet.Why != Alternate || (feet.Left|feet.Right).Most() > treadles || treadles > draft.MostTreadles {
		return nil, false
	}
	across := append(w.outside(feet.Left), reversed(w.outside(feet.Right))...)
	for t := 1; t <= treadles; t++ {
		if !(feet.Left | feet.Right).Has(t) {
			across = append(across, t)
		}
	}
	numbers := make([]int, treadles)
	for i, t := range across {
		numbers[t-1] = i + 1
	}
	return numbers, true
}

// presses are the treadles that a foot presses, one after another.
func (w Walk) presses(foot draft.Set) []int {
	var out []int
	for _, set := range w.Picks {
		out = append(out, (set & foot).List()...)
	}
	return out
}

// after is what follows a press of the same foot.
func (w Walk) after(presses []int, i int) (int, bool) {
	switch {
	case i+1 < len(presses):
		return presses[i+1], true
	case w.Round:
		return presses[0], true
	}
	return 0, false
}

// mostExact is of how many treadles of one foot the best order is found by looking at
// every set of them: 4096 sets.
const mostExact = 12

// outside gives the treadles of a foot in the order in which it goes the least way, that
// from outside to inside.
func (w Walk) outside(foot draft.Set) []int {
	presses := w.presses(foot)
	var list []int
	for _, t := range presses {
		list = appendNew(list, draft.Of(t))
	}
	at := map[int]int{}
	for i, t := range list {
		at[t] = i
	}
	steps := newSteps(len(list))
	for i, t := range presses {
		if next, ok := w.after(presses, i); ok {
			steps.add(at[t], at[next])
		}
	}
	order := steps.bettered()
	if len(list) <= mostExact {
		order = steps.least()
	}
	out := make([]int, len(list))
	for i, k := range order {
		out[i] = list[k]
	}
	return out
}

func reversed(list []int) []int {
	slices.Reverse(list)
	return list
}

// steps is how often a foot goes between each two of its treadles, which are counted
// from 0 as they are first pressed.
type steps [][]int

func newSteps(n int) steps {
	s := make(steps, n)
	for i := range s {
		s[i] = make([]int, n)
	}
	return s
}

func (s steps) add(a, b int) {
	if a != b {
		s[a][b]++
		s[b][a]++
	}
}

// least gives the order of the least way, and of several as good the first by the
// numbers of their treadles. The way is the sum, over the gaps between neighbouring
// treadles, of the steps that cross the gap; what crosses the gap behind some treadles
// depends on which they are and not on their order, so the best is found set by set
// (dynamic programming over subsets, M. Held and R. Karp 1962; from memory).
func (s steps) least() []int {
	n := len(s)
	rest := make([]int, 1<<n) // the way over the gaps that follow once a set lies outside
	first := make([]int, 1<<n)
	for set := 1<<n - 2; set >= 0; set-- {
		rest[set] = -1
		for k := range n {
			with := set | 1<<k
			if with == set {
				continue
			}
			if way := s.crossing(with) + rest[with]; rest[set] < 0 || way < rest[set] {
				rest[set], first[set] = way, k
			}
		}
	}
	var order []int
	for set := 0; len(order) < n; set |= 1 << order[len(order)-1] {
		order = append(order, first[set])
	}
	return order
}

// crossing counts the steps between a set and the others.
func (s steps) crossing(set int) int {
	sum := 0
	for in := uint(set); in != 0; in &= in - 1 {
		for k, times := range s[bits.TrailingZeros(in)] {
			if set>>k&1 == 0 {
				sum += times
			}
		}
	}
	return sum
}

// bettered begins with the order in which treadles are first pressed and exchanges two
// as long as that shortens the way.
func (s steps) bettered() []int {
	order := make([]int, len(s))
	for i := range order {
		order[i] = i
	}
	best := s.way(order)
	for again := true; again; {
		again = false
		for i := range order {
			for k := range i {
				order[i], order[k] = order[k], order[i]
				if way := s.way(order); way < best {
					best, again = way, true
				} else {
					order[i], order[k] = order[k], order[i]
				}
			}
		}
	}
	return order
}

// way is the whole way of a foot with its treadles in that order.
func (s steps) way(order []int) int {
	sum := 0
	for i, a := range order {
		for k, b := range order[:i] {
			sum += (i - k) * s[a][b]
		}
	}
	return sum
}
