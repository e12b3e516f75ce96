package tieup

import (
	"slices"

	"sley/internal/trade/draft"
	"sley/internal/trade/order"
)

// Walk is what the feet do: the treadles that each pick presses, in the order woven.
type Walk struct {
	Picks []draft.Set
	Round bool // after the last pick the first follows
}

// WalkOf gives the walk of an order of picks as it is woven: what fills follows itself,
// between what stands before it and after it once. An order that is all of one part is
// repeated.
func WalkOf(o order.Order) Walk {
	before, fill, after := draft.SetsOf(o.Before()), draft.SetsOf(o.FillRuns()), draft.SetsOf(o.After())
	switch {
	case len(fill) == 0:
		return Walk{append(before, after...), true}
	case len(before)+len(after) == 0:
		return Walk{fill, true}
	}
	return Walk{slices.Concat(before, fill, fill, after), false}
}

// Why says why feet cannot take turns.
type Why int

// The reasons.
const (
	Alternate Why = iota // they can
	Unpressed            // no pick presses a treadle
	Many                 // a pick presses more than two, and one foot must hold two of them
	Twice                // a treadle is pressed in two picks running, by one foot twice
	Odd                  // treadles follow one another in a ring of an odd number
)

// Feet is which foot has which treadles.
type Feet struct {
	Left, Right draft.Set // empty where the feet cannot take turns
	Why         Why
	Pick        int   // of Many and Twice the first such pick, from 0
	Ring        []int // of Odd the shortest ring: treadles of which each follows, or is pressed with, the one before, and the first the last; of Many and Twice the treadles
}

// FeetOf says whether the feet can take turns strictly, left and right, and which
// treadles are whose: that is so if the treadles can be split in two, none following
// another of its own half. A pick that presses two treadles at once keeps both feet
// busy: it wants them in different halves, and either foot may go on after it. A pick
// that presses none rests them both. The treadle pressed first is the left foot's; so
// is, of treadles that nothing ties to the others, the choice that shares them out most
// evenly.
func FeetOf(w Walk) Feet {
	var follows graph
	var pressed []int
	for i, set := range w.Picks {
		pressed = appendNew(pressed, set)
		if set.Len() > 2 {
			return Feet{Why: Many, Pick: i, Ring: set.List()}
		}
		if set.Len() == 2 {
			follows.join(set.List()[0], set.Most())
		}
		if a, b, ok := w.step(i); ok {
			if a == b {
				return Feet{Why: Twice, Pick: i, Ring: []int{a}}
			}
			follows.join(a, b)
		}
	}
	if len(pressed) == 0 {
		return Feet{Why: Unpressed}
	}
	if left, right, ok := follows.split(pressed); ok {
		return Feet{Left: left, Right: right}
	}
	return Feet{Why: Odd, Ring: follows.ring(pressed)}
}

// step gives the treadles of a pick and of the next where both press one.
func (w Walk) step(i int) (a, b int, ok bool) {
	next := i + 1
	if next == len(w.Picks) {
		if !w.Round {
			return 0, 0, false
		}
		next = 0
	}
	a, b = w.Picks[i].Most(), w.Picks[next].Most()
	return a, b, w.Picks[i].Len() == 1 && w.Picks[next].Len() == 1
}

// appendNew adds the treadles of a set that are not in the list.
func appendNew(list []int, set draft.Set) []int {
	for _, t := range set.List() {
		if !slices.Contains(list, t) {
			list = append(list, t)
		}
	}
	return list
}
