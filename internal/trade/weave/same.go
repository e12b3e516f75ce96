package weave

import "slices"

// The hash is FNV-1a's scheme over words (Fowler, Noll, Vo; the constants of 64
// bits), with a final mix. It is the same on every machine.
const (
	hashStart = 14695981039346656037
	hashPrime = 1099511628211
)

func hashRow(row []uint64) uint64 {
	h := uint64(hashStart)
	for _, word := range row {
		h = (h ^ word) * hashPrime
		h ^= h >> 29
	}
	return h
}

// Hash gives a number that equal weaves share.
func (w *Weave) Hash() uint64 {
	head := []uint64{uint64(w.picks), uint64(w.ends), 0}
	if w.Bounded {
		head[2] = 1
	}
	return hashRow([]uint64{hashRow(head), hashRow(w.words)})
}

// Likeness says which weaves count as the same.
type Likeness int

// The ways of being alike, each including those above it. All of them but Exactly
// compare smallest repeats.
const (
	Exactly    Likeness = iota
	Shifted             // up to where the repeat begins
	Moved               // and turned by half, or mirrored either way
	EitherFace          // and turned over
	EitherWay           // and turned by a quarter, warp and weft exchanged
)

// Same reports whether two weaves are alike in that way.
func (w *Weave) Same(v *Weave, how Likeness) bool {
	if how == Exactly {
		return w.Equal(v)
	}
	a, b := w.Repeat(), v.Repeat()
	first := a.firstShift()
	return slices.ContainsFunc(b.likes(how), func(c *Weave) bool {
		return c.picks == a.picks && c.ends == a.ends && c.firstShift().Equal(first)
	})
}

// Canon gives the weave that stands for all that are alike: those that are the same
// have the same one. Exactly gives the weave itself.
func (w *Weave) Canon(how Likeness) *Weave {
	if how == Exactly {
		return w.Clone()
	}
	var least *Weave
	for _, c := range w.Repeat().likes(how) {
		if c = c.firstShift(); least == nil || c.before(least) {
			least = c
		}
	}
	return least
}

// likes gives a repeat in all the ways that count, shifts left out.
func (w *Weave) likes(how Likeness) []*Weave {
	out := []*Weave{w}
	add := func(change func(*Weave) *Weave) {
		for _, v := range out {
			out = append(out, change(v))
		}
	}
	if how >= Moved {
		add((*Weave).Reverse)
		add((*Weave).ReversePicks)
	}
	if how >= EitherFace {
		add((*Weave).Complement)
	}
	if how >= EitherWay {
		add((*Weave).Exchange)
	}
	return out
}

// firstShift gives the shift of a repeat that comes before all others. Of the ways
// to begin at an end only those are compared whose first row can come first.
func (w *Weave) firstShift() *Weave {
	if w.picks == 0 || w.ends == 0 {
		return w.Clone()
	}
	var least *Weave
	for j := range w.ends {
		turned := w.Shift(0, j)
		start := turned.firstStart()
		if c := turned.Shift(start, 0); least == nil || c.before(least) {
			least = c
		}
	}
	return least
}

// firstStart gives the pick to begin at so that the rows, read one after another
// round the repeat, come before all other ways (Booth 1980, in the form that keeps
// two candidates).
func (w *Weave) firstStart() int {
	a, b, k := 0, 1, 0
	for a < w.picks && b < w.picks && k < w.picks {
		switch slices.Compare(w.Row((a+k)%w.picks), w.Row((b+k)%w.picks)) {
		case 0:
			k++
			continue
		case 1:
			a = a + k + 1
		default:
			b = b + k + 1
		}
		if a == b {
			b++
		}
		k = 0
	}
	return min(a, b)
}

// before orders weaves: by picks, by ends, then by their bits.
func (w *Weave) before(v *Weave) bool {
	if w.picks != v.picks {
		return w.picks < v.picks
	}
	if w.ends != v.ends {
		return w.ends < v.ends
	}
	return slices.Compare(w.words, v.words) < 0
}
