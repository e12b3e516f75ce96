package strokes

import (
	"slices"

	"sley/internal/trade/draft"
)

// retie ties the shafts that ends moved to as those were that they came from: so the
// picks that did not change need no other treadle.
func (e *edit) retie(c *draft.Draft) {
	c.Ties = append(c.Ties, make([]draft.Tie, treadles(c)-len(c.Ties))...)
	c.Treadles = len(c.Ties)
	was := slices.Clone(c.Ties)
	for _, m := range e.moves {
		never := draft.TieFor(c.Shed, 0, draft.MostShafts) // as an end in no heddle is tied
		for k, tie := range was {
			if m.from == 0 {
				tie = never
			}
			c.Ties[k].Tied = copied(c.Ties[k].Tied, m.to, tie.Tied, m.from)
			c.Ties[k].Lowered = copied(c.Ties[k].Lowered, m.to, tie.Lowered, m.from)
		}
	}
}

// copied gives a set with a number in it if another is in the set it is copied from; of 0
// any will do.
func copied(set draft.Set, to int, of draft.Set, from int) draft.Set {
	if of.Has(max(from, 1)) {
		return set.With(to)
	}
	return set.Without(to)
}

// retreadle gives picks that changed, and those whose lift is not what their treadles
// give, the first treadle that lifts it, treadles that are pressed together and do, their
// own one tied anew, or a treadle that is free or new. It gives how many treadles that
// takes.
func (e *edit) retreadle(d *draft.Draft) int {
	changed := e.picks()
	r := retreadling{Draft: d, used: usedShafts(d), need: map[draft.Set][]int{}, opened: map[draft.Set]draft.Set{}}
	for pick, pressed := range d.Treadling {
		if lift := e.lifts[pick] & r.used; changed.has(pick) || r.opens(pressed) != lift {
			if r.need[lift] == nil {
				r.order = append(r.order, lift)
			}
			r.need[lift] = append(r.need[lift], pick)
		}
	}
	for _, lift := range r.order {
		pressed, ok := r.find(lift)
		if !ok {
			if pressed, ok = r.make(lift, e.lifts[r.need[lift][0]]); !ok {
				return draft.MostTreadles + 1
			}
		}
		for _, pick := range r.need[lift] {
			d.Treadling[pick] = pressed
		}
	}
	return d.Treadles
}

// picks are those at which an end changed.
func (e *edit) picks() column {
	out := make(column, len(e.columns[0]))
	for _, flips := range e.flips {
		for k, word := range flips {
			out[k] |= word
		}
	}
	return out
}

func usedShafts(d *draft.Draft) draft.Set {
	var out draft.Set
	for _, shaft := range d.Threading {
		if shaft >= 1 && shaft <= draft.MostShafts {
			out = out.With(shaft)
		}
	}
	return out
}

type retreadling struct {
	*draft.Draft
	used   draft.Set
	need   map[draft.Set][]int // of each lift that is needed, its picks
	order  []draft.Set         // those lifts, as they first come
	opened map[draft.Set]draft.Set
}

// opens gives the shafts with ends that pressed treadles put up.
func (r *retreadling) opens(pressed draft.Set) draft.Set {
	up, ok := r.opened[pressed]
	if !ok {
		up = r.Open(pressed).Up & r.used
		r.opened[pressed] = up
	}
	return up
}

// find looks for a treadle that gives a lift, then for several that are pressed already.
func (r *retreadling) find(lift draft.Set) (draft.Set, bool) {
	for k := range r.Ties {
		if r.opens(draft.Of(k+1)) == lift {
			return draft.Of(k + 1), true
		}
	}
	for _, pressed := range r.Treadling {
		if r.opens(pressed) == lift {
			return pressed, true
		}
	}
	return 0, false
}

// make ties a treadle for a lift: that of the picks that need it, if no others press it,
// else one that nobody presses and nothing is tied to, else one more.
func (r *retreadling) make(lift, whole draft.Set) (draft.Set, bool) {
	k := r.own(lift)
	if k < 0 {
		k = r.free()
	}
	if k == draft.MostTreadles {
		return 0, false
	}
	if k == len(r.Ties) {
		r.Ties = append(r.Ties, draft.Tie{})
	}
	r.Treadles = len(r.Ties)
	r.Ties[k] = draft.TieFor(r.Shed, lift|whole&^r.used, r.Shafts)
	clear(r.opened)
	return draft.Of(k + 1), true
}

// own gives the treadle that the picks of a lift press, and no other pick, from 0; -1
// where there is none.
func (r *retreadling) own(lift draft.Set) int {
	picks := r.need[lift]
	pressed := r.Treadling[picks[0]]
	if pressed.Len() != 1 {
		return -1
	}
	presses := 0
	for _, set := range r.Treadling {
		if set&pressed != 0 {
			presses++
		}
	}
	for _, pick := range picks {
		if r.Treadling[pick] != pressed {
			return -1
		}
	}
	if presses > len(picks) {
		return -1
	}
	return pressed.Most() - 1
}

// free gives a treadle to tie, from 0; as many as there are is one more.
func (r *retreadling) free() int {
	var pressed draft.Set
	for _, set := range r.Treadling {
		pressed |= set
	}
	for k, tie := range r.Ties {
		if tie == (draft.Tie{}) && !pressed.Has(k+1) {
			return k
		}
	}
	return len(r.Ties)
}
