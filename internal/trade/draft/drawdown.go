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
	first := newFirsts()
	for i, up := range lifts {
		if at := first.of(up, i); at < i {
			copy(w.Row(i), w.Row(at))
			continue
		}
		masks.row(w.Row(i), up)
	}
}

// firsts is where each lift first comes: a table of places that holds at most half
// of what it has room for. A map would take longer than the copying it saves.
type firsts struct {
	keys  []Set
	at    []int32 // the pick + 1; 0: free
	n     int
	shift uint // of the hash, to the table's size
}

func newFirsts() *firsts { return &firsts{make([]Set, 64), make([]int32, 64), 0, 64 - 6} }

// of gives the pick at which a lift first came, which is i when it is new.
func (f *firsts) of(up Set, i int) int {
	k := f.find(up)
	if f.at[k] != 0 {
		return int(f.at[k]) - 1
	}
	f.keys[k], f.at[k] = up, int32(i)+1
	if f.n++; 2*f.n > len(f.keys) {
		f.grow()
	}
	return i
}

// find gives the place of a lift, or the free one where it belongs (multiplicative
// hashing with the golden ratio; Knuth, The Art of Computer Programming 3, 6.4).
func (f *firsts) find(up Set) int {
	k := int(uint64(up) * 0x9e3779b97f4a7c15 >> f.shift)
	for f.at[k] != 0 && f.keys[k] != up {
		k = (k + 1) & (len(f.keys) - 1)
	}
	return k
}

func (f *firsts) grow() {
	old := *f
	f.keys, f.at, f.shift = make([]Set, 2*len(old.keys)), make([]int32, 2*len(old.keys)), old.shift-1
	for k, at := range old.at {
		if at != 0 {
			to := f.find(old.keys[k])
			f.keys[to], f.at[to] = old.keys[k], at
		}
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
