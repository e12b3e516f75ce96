package strokes

import (
	"slices"

	"sley/internal/trade/draft"
)

// rethread finds a shaft for each end that changes, and gives the highest one: beyond
// draft.MostShafts there are too few.
func (e *edit) rethread() int {
	staying, left := e.staying()
	e.threading = slices.Clone(e.was.Threading)
	slices.Sort(e.changed)
	at := map[string]int{} // of each column, its move + 1
	for _, end := range e.changed {
		col := e.columnOf(end)
		key := col.key()
		if to, ok := staying[key]; ok {
			e.threading[end] = to
			continue
		}
		if at[key] == 0 {
			e.moves = append(e.moves, move{from: e.shaftOf(end), col: col})
			at[key] = len(e.moves)
		}
		m := &e.moves[at[key]-1]
		m.ends = append(m.ends, end)
	}
	return max(e.was.Shafts, e.number(left))
}

// staying gives the columns of shafts some of whose ends do not change, each with the
// lowest shaft that has it; and the shafts that all ends leave.
func (e *edit) staying() (at map[string]int, left draft.Set) {
	var on [draft.MostShafts + 1]int
	for end := range e.was.Threading {
		on[e.shaftOf(end)]++
	}
	had := on
	for _, end := range e.changed {
		on[e.shaftOf(end)]--
	}
	at = map[string]int{}
	for shaft := draft.MostShafts; shaft >= 1; shaft-- {
		if on[shaft] > 0 {
			at[e.columns[shaft].key()] = shaft
		} else if had[shaft] > 0 {
			left = left.With(shaft)
		}
	}
	return at, left
}

// number gives each move its shaft and puts its ends there: one that its own ends left,
// else the lowest that is free.
func (e *edit) number(left draft.Set) int {
	for k := range e.moves {
		m := &e.moves[k]
		for _, end := range m.ends {
			if own := e.shaftOf(end); left.Has(own) {
				m.to, m.from, left = own, own, left.Without(own)
				break
			}
		}
	}
	taken, most := e.taken(), 0
	for k := range e.moves {
		m := &e.moves[k]
		for shaft := 1; m.to == 0; shaft++ {
			if shaft > draft.MostShafts || !taken.Has(shaft) {
				m.to = shaft
			}
		}
		if most = max(most, m.to); m.to > draft.MostShafts {
			return most
		}
		taken = taken.With(m.to)
		for _, end := range m.ends {
			e.threading[end] = m.to
		}
	}
	return most
}

// taken are the shafts that have an end of the new threading, or were given to a move.
func (e *edit) taken() draft.Set {
	var out draft.Set
	for end := range e.threading {
		if _, changes := e.flips[end]; !changes || e.threading[end] != e.was.Threading[end] {
			if shaft := e.threading[end]; shaft >= 1 && shaft <= draft.MostShafts {
				out = out.With(shaft)
			}
		}
	}
	for _, m := range e.moves {
		if m.to > 0 {
			out = out.With(m.to)
		}
	}
	return out
}

// draft gives the draft with its new threading and lifts, or with ties by which picks
// that do not change lift what they should.
func (e *edit) draft() *draft.Draft {
	c := e.was.Clone()
	c.Threading = e.threading
	for _, m := range e.moves {
		c.Shafts = max(c.Shafts, m.to)
		for pick, up := range e.lifts {
			if e.lifts[pick] = up.Without(m.to); m.col.has(pick) {
				e.lifts[pick] = up.With(m.to)
			}
		}
	}
	if c.Lifts = e.lifts; e.was.Treadled() {
		c.Lifts = nil
		e.retie(c)
	}
	return c
}
