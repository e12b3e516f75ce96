package tieup

import (
	"math/bits"
	"slices"

	"sley/internal/trade/draft"
)

// Telling gives the fewest lifts that tell shafts apart: each shaft is up and down in a
// pattern of its own over them, so that an end on a wrong shaft shows in at least one.
// That takes as many lifts as doublings lead from one to the number of shafts: on four
// shafts two, 1-2 and 1-3; of one shaft or none, no lift. Every lift has half of the
// shafts up, of an odd number one more or fewer, and so opens on a counterbalance loom too.
func Telling(shafts draft.Set) []draft.Set {
	list := shafts.List()
	n := len(list)
	if n < 2 {
		return nil
	}
	k := bits.Len(uint(n - 1))
	lifts := make([]draft.Set, k)
	for i, pattern := range patterns(n, k) {
		for lift := range lifts {
			if pattern>>(k-1-lift)&1 == 1 {
				lifts[lift] = lifts[lift].With(list[i])
			}
		}
	}
	return lifts
}

// patterns gives n patterns of k bits, the greatest first: pairs of which one is the
// other turned over, so that each bit is set in half of them, and for an odd n one more.
func patterns(n, k int) []int {
	all := 1<<k - 1
	var out []int
	for i := range n / 2 {
		out = append(out, all-i, i)
	}
	if n%2 == 1 {
		out = append(out, all-n/2)
	}
	slices.Sort(out)
	slices.Reverse(out)
	return out
}

// Opened is a lift to open for reading, and the treadles that open it; none where it is
// lifted by hand.
type Opened struct{ Up, Pressed draft.Set }

// FirstInch gives the lifts to open before the knots are tied tight: as few as tell the
// shafts with ends apart. They are those of Telling where treadles, one or two, open
// them all or no others do as well; else, in their place, as many lifts that treadles
// open and that tell the shafts apart too. Each is given with its treadles, if it has
// any.
func FirstInch(d *draft.Draft) []Opened {
	used, _ := d.Used()
	lifts := Telling(used)
	by := byTreadles(d, used)
	out := make([]Opened, len(lifts))
	all := true
	for i, up := range lifts {
		out[i].Up = up
		at := slices.IndexFunc(by, func(o Opened) bool { return o.Up == up })
		if all = all && at >= 0; at >= 0 {
			out[i].Pressed = by[at].Pressed
		}
	}
	if all {
		return out
	}
	if others, ok := telling(by, used.List(), len(lifts)); ok {
		return others
	}
	return out
}

// byTreadles gives the lifts of the shafts with ends that treadles open, alone or in
// pairs: those of one first; none is empty or full.
func byTreadles(d *draft.Draft, used draft.Set) []Opened {
	var out []Opened
	try := func(pressed draft.Set) {
		s := d.Open(pressed)
		up := s.Up & used
		known := slices.ContainsFunc(out, func(o Opened) bool { return o.Up == up })
		if (s.Locked|s.Free)&used == 0 && up != 0 && up != used && !known {
			out = append(out, Opened{up, pressed})
		}
	}
	for a := range d.Ties {
		try(draft.Of(a + 1))
	}
	for a := range d.Ties {
		for b := range a {
			try(draft.Of(b+1, a+1))
		}
	}
	return out[:min(len(out), mostTried)]
}

// mostTried is how many lifts are tried together: of 24, six at most, there are 134,596
// choices.
const mostTried = 24

// telling chooses n of the lifts that tell shafts apart; the first such choice.
func telling(from []Opened, shafts []int, n int) ([]Opened, bool) {
	groups := func(chosen []Opened) int { return patternsOf(chosen, shafts) }
	var chosen []Opened
	var choose func(at int) bool
	choose = func(at int) bool {
		if have := groups(chosen); have<<(n-len(chosen)) < len(shafts) {
			return false // each lift more can at most double what is told apart
		}
		if len(chosen) == n {
			return true
		}
		for i := at; i < len(from); i++ {
			chosen = append(chosen, from[i])
			if choose(i + 1) {
				return true
			}
			chosen = chosen[:len(chosen)-1]
		}
		return false
	}
	return chosen, choose(0)
}

// patternsOf counts the patterns of up and down that shafts have over lifts.
func patternsOf(lifts []Opened, shafts []int) int {
	seen := map[int]bool{}
	for _, shaft := range shafts {
		pattern := 0
		for i, l := range lifts {
			if l.Up.Has(shaft) {
				pattern |= 1 << i
			}
		}
		seen[pattern] = true
	}
	return len(seen)
}

// Across gives what is read across all ends of a lift, from the left: how many
// neighbours are up, as a number above 0, or down, as one below. Ends in no heddle are
// left out: they are neither. Read over the lifts of Telling it differs whenever an end
// is on another shaft of them.
func Across(threading []int, up draft.Set) []int {
	var out []int
	for _, shaft := range threading {
		if shaft < 1 {
			continue
		}
		step := -1
		if up.Has(shaft) {
			step = 1
		}
		if last := len(out) - 1; last >= 0 && out[last]*step > 0 {
			out[last] += step
			continue
		}
		out = append(out, step)
	}
	return out
}
