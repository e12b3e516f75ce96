package draft

import "sley/internal/trade/weave"

// UpAt reports whether the end is on top at the pick: whether its shaft is up. An
// end in no heddle is never on top.
func (d *Draft) UpAt(pick, end int) bool {
	up := Set(0)
	if d.Treadled() {
		up = d.Open(d.Treadling[pick]).Up
	} else {
		up = d.Lifts[pick]
	}
	return up.Has(d.Threading[end])
}

// Drawdown gives which thread is on top at every crossing, as a repeat.
func (d *Draft) Drawdown() *weave.Weave {
	w := weave.New(d.Picks(), d.Ends())
	Draw(w, d.Threading, d.LiftPlan())
	return w
}

// Cloth gives a cloth of that size with edges, the draft repeated from its first
// end and pick on.
func (d *Draft) Cloth(picks, ends int) *weave.Weave {
	if d.Picks() == 0 || d.Ends() == 0 {
		w := weave.New(picks, ends)
		w.Bounded = true
		return w
	}
	return d.Drawdown().Cloth(picks, ends)
}

// Draw writes the drawdown of a threading and lifts into w, which has a pick for
// each lift and an end for each of the threading, or it panics. A row is worked out
// once for each lift that differs and copied for the others; with few lifts that is
// as quick as writing the memory.
func Draw(w *weave.Weave, threading []int, lifts []Set) {
	if w.Picks() != len(lifts) || w.Ends() != len(threading) {
		panic("internal error: a weave of another size than its draft")
	}
	masks := newMasks(threading)
	first := map[Set]int{}
	for i, up := range lifts {
		if at, ok := first[up]; ok {
			copy(w.Row(i), w.Row(at))
			continue
		}
		first[up] = i
		masks.row(w.Row(i), up)
	}
}

// masks are the ends on each shaft, as rows of a weave.
type masks struct {
	on []([]uint64) // of shaft 1 first; nil where no end is on the shaft
}

func newMasks(threading []int) masks {
	var m masks
	stride := (len(threading) + 63) / 64
	for end, shaft := range threading {
		if shaft < 1 || shaft > MostShafts {
			continue
		}
		for len(m.on) < shaft {
			m.on = append(m.on, nil)
		}
		if m.on[shaft-1] == nil {
			m.on[shaft-1] = make([]uint64, stride)
		}
		m.on[shaft-1][end/64] |= 1 << (end % 64)
	}
	return m
}

// row writes the ends of the shafts that are up.
func (m masks) row(dst []uint64, up Set) {
	clear(dst)
	for i, on := range m.on {
		if on == nil || !up.Has(i+1) {
			continue
		}
		for k, word := range on {
			dst[k] |= word
		}
	}
}

// DrawEnd writes one end of a drawdown anew: its shaft over the lifts. It allocates
// nothing.
func DrawEnd(w *weave.Weave, end, shaft int, lifts []Set) {
	for i, up := range lifts {
		w.Set(i, end, up.Has(shaft))
	}
}
