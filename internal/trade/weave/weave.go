// Package weave holds the interlacement of warp and weft: which thread is on top
// at every crossing. Pure values; judging them is package structure's.
//
// A weave is a matrix of bits. A row is a pick, a column an end; picks are counted
// from the first woven, ends from the left, both from 0. A bit is set where the
// warp is on top.
package weave

import (
	"fmt"
	"math/bits"
)

// The limits of a weave. They are far beyond any hand loom.
const (
	MostThreads       = 1 << 20 // ends, and picks
	MostCells   int64 = 1 << 33 // crossings: a gigabyte
)

// Weave is a matrix of interlacements. As a repeat it goes on in both ways without
// end; a bounded one is a cloth with edges. The zero value has no threads. Methods
// that give a weave give a new one; only Set and the writers of package draft
// change one.
type Weave struct {
	// Bounded says that the weave has edges, and is no repeat.
	Bounded bool

	picks, ends int
	stride      int      // words in a row
	words       []uint64 // bits beyond the last end are 0
}

const wordBits = 64

// New gives a weave of that many picks and ends with the weft on top everywhere. It
// panics when they are negative or beyond the limits: see Fits.
func New(picks, ends int) *Weave {
	if !Fits(picks, ends) {
		panic(fmt.Sprintf("internal error: a weave of %d picks and %d ends", picks, ends))
	}
	stride := (ends + wordBits - 1) / wordBits
	return &Weave{picks: picks, ends: ends, stride: stride, words: make([]uint64, picks*stride)}
}

// Fits reports whether a weave of that size is within the limits.
func Fits(picks, ends int) bool {
	return picks >= 0 && ends >= 0 && picks <= MostThreads && ends <= MostThreads && int64(picks)*int64(ends) <= MostCells
}

// like is an empty weave that is bounded as w is.
func (w *Weave) like(picks, ends int) *Weave {
	out := New(picks, ends)
	out.Bounded = w.Bounded
	return out
}

// Picks and Ends give the size.
func (w *Weave) Picks() int { return w.picks }

// Ends gives the number of columns.
func (w *Weave) Ends() int { return w.ends }

// WarpUp reports whether the warp is on top where the pick and the end cross. It
// panics outside the weave.
func (w *Weave) WarpUp(pick, end int) bool {
	w.inside(pick, end)
	return w.words[pick*w.stride+end/wordBits]>>(end%wordBits)&1 == 1
}

// Set puts the warp or the weft on top where the pick and the end cross. It panics
// outside the weave.
func (w *Weave) Set(pick, end int, warpUp bool) {
	w.inside(pick, end)
	word, bit := &w.words[pick*w.stride+end/wordBits], uint64(1)<<(end%wordBits)
	if warpUp {
		*word |= bit
	} else {
		*word &^= bit
	}
}

func (w *Weave) inside(pick, end int) {
	if uint(pick) >= uint(w.picks) || uint(end) >= uint(w.ends) {
		panic(fmt.Sprintf("internal error: pick %d, end %d of a weave of %d picks and %d ends", pick, end, w.picks, w.ends))
	}
}

// Row gives the bits of a pick, 64 ends in a word, the first end lowest. It shares
// the memory of the weave: whoever writes to it keeps the bits beyond the last end
// at 0.
func (w *Weave) Row(pick int) []uint64 {
	return w.words[pick*w.stride : (pick+1)*w.stride : (pick+1)*w.stride]
}

// last is the bits of the last word of a row that are ends.
func (w *Weave) last() uint64 { return lastMask(w.ends) }

func lastMask(ends int) uint64 {
	if ends%wordBits == 0 {
		return ^uint64(0)
	}
	return uint64(1)<<(ends%wordBits) - 1
}

// Clone gives a copy.
func (w *Weave) Clone() *Weave {
	out := w.like(w.picks, w.ends)
	copy(out.words, w.words)
	return out
}

// Equal reports whether two weaves have the same size, the same crossings, and are
// both bounded or both repeats.
func (w *Weave) Equal(v *Weave) bool {
	if w.picks != v.picks || w.ends != v.ends || w.Bounded != v.Bounded {
		return false
	}
	for i, word := range w.words {
		if word != v.words[i] {
			return false
		}
	}
	return true
}

// WarpUps gives the number of crossings with the warp on top.
func (w *Weave) WarpUps() int {
	sum := 0
	for _, word := range w.words {
		sum += bits.OnesCount64(word)
	}
	return sum
}

// UpsOfPick gives the ends on top of a pick.
func (w *Weave) UpsOfPick(pick int) int {
	sum := 0
	for _, word := range w.Row(pick) {
		sum += bits.OnesCount64(word)
	}
	return sum
}
