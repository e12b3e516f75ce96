package weave

// Transpose exchanges warp and weft as rows and columns are exchanged: the crossing
// of pick i and end j goes to pick j and end i, and what was on top is on top. See
// Turn for the cloth turned by a quarter.
func (w *Weave) Transpose() *Weave {
	out := w.like(w.ends, w.picks)
	var block [64]uint64
	for row := 0; row < w.picks; row += wordBits {
		for col := range w.stride {
			for k := range block {
				block[k] = 0
				if row+k < w.picks {
					block[k] = w.words[(row+k)*w.stride+col]
				}
			}
			transpose64(&block)
			for k := 0; k < wordBits && col*wordBits+k < w.ends; k++ {
				out.words[(col*wordBits+k)*out.stride+row/wordBits] = block[k]
			}
		}
	}
	return out
}

// Complement puts the other thread on top everywhere.
func (w *Weave) Complement() *Weave {
	out := w.like(w.picks, w.ends)
	for i, word := range w.words {
		out.words[i] = ^word
	}
	out.trim()
	return out
}

// trim clears the bits beyond the last end.
func (w *Weave) trim() {
	if w.ends%wordBits == 0 {
		return
	}
	for at := w.stride - 1; at < len(w.words); at += w.stride {
		w.words[at] &= w.last()
	}
}

// Reverse gives the ends from the right.
func (w *Weave) Reverse() *Weave {
	out := w.like(w.picks, w.ends)
	for i := range w.picks {
		reverseBits(out.Row(i), w.Row(i), w.ends)
	}
	return out
}

// ReversePicks gives the picks from the last.
func (w *Weave) ReversePicks() *Weave {
	out := w.like(w.picks, w.ends)
	for i := range w.picks {
		copy(out.Row(i), w.Row(w.picks-1-i))
	}
	return out
}

// Half gives the weave turned by half a turn, as it is seen from the other end of
// the cloth.
func (w *Weave) Half() *Weave { return w.Reverse().ReversePicks() }

// Exchange gives the weave with warp and weft exchanged: ends become picks, so that
// the thread on top stays on top, which is the other of the two.
func (w *Weave) Exchange() *Weave { return w.Transpose().Complement() }

// Turn gives the cloth turned by a quarter, anticlockwise as it is seen with the
// first pick at the bottom: ends become picks and picks ends.
func (w *Weave) Turn() *Weave { return w.Exchange().Reverse() }

// Back gives the other face of the cloth, turned over from side to side: the other
// thread is on top, and the ends come from the right.
func (w *Weave) Back() *Weave { return w.Complement().Reverse() }

// Shift moves a repeat: pick i and end j come from pick i+picks and end j+ends,
// round the repeat. What is shifted out of a bounded weave comes in at the other
// side as well.
func (w *Weave) Shift(picks, ends int) *Weave {
	out := w.like(w.picks, w.ends)
	if w.picks == 0 || w.ends == 0 {
		return out
	}
	picks, ends = mod(picks, w.picks), mod(ends, w.ends)
	for i := range w.picks {
		src, dst := w.Row((i+picks)%w.picks), out.Row(i)
		copyBits(dst, 0, src, ends, w.ends-ends)
		copyBits(dst, w.ends-ends, src, 0, ends)
	}
	return out
}

func mod(a, n int) int { return ((a % n) + n) % n }

// Tile gives a weave of that size filled with w from its first pick and first end
// on, the last repeats cut off where they do not fit. It panics when w has no
// threads and the tile has, or beyond the limits.
func (w *Weave) Tile(picks, ends int) *Weave {
	out := w.like(picks, ends)
	if picks == 0 || ends == 0 {
		return out
	}
	for i := range min(picks, w.picks) {
		fill(out.Row(i), w.Row(i), w.ends, ends)
	}
	for i := w.picks; i < picks; i++ {
		copy(out.Row(i), out.Row(i-w.picks))
	}
	return out
}

// fill writes src of n ends into dst again and again until it has all ends: what
// is there doubles each time.
func fill(dst, src []uint64, n, all int) {
	copyBits(dst, 0, src, 0, min(n, all))
	for have := n; have < all; have *= 2 {
		copyBits(dst, have, dst, 0, min(have, all-have))
	}
}

// Cloth gives a bounded weave of that size filled with w.
func (w *Weave) Cloth(picks, ends int) *Weave {
	out := w.Tile(picks, ends)
	out.Bounded = true
	return out
}

// Crop gives the part that begins at that pick and end. It panics when the part
// does not lie in the weave.
func (w *Weave) Crop(pick, end, picks, ends int) *Weave {
	if pick < 0 || end < 0 || picks < 0 || ends < 0 || pick+picks > w.picks || end+ends > w.ends {
		panic("internal error: a part that does not lie in its weave")
	}
	out := w.like(picks, ends)
	for i := range picks {
		copyBits(out.Row(i), 0, w.Row(pick+i), end, ends)
	}
	return out
}
