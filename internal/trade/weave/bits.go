package weave

import "math/bits"

// bitsAt gives n bits, at most 64, of a row from bit from on; bits beyond the row
// are 0.
func bitsAt(row []uint64, from, n int) uint64 {
	at, off := from/wordBits, from%wordBits
	if at >= len(row) {
		return 0
	}
	v := row[at] >> off
	if off > 0 && at+1 < len(row) {
		v |= row[at+1] << (wordBits - off)
	}
	return v & lastMask64(n)
}

// lastMask64 is the lowest n bits, n from 0 to 64.
func lastMask64(n int) uint64 {
	if n >= wordBits {
		return ^uint64(0)
	}
	return uint64(1)<<n - 1
}

// copyBits writes n bits of src from bit from on into dst from bit to on; the bits
// of dst there must be 0.
func copyBits(dst []uint64, to int, src []uint64, from, n int) {
	for n > 0 {
		off := to % wordBits
		take := min(n, wordBits-off)
		dst[to/wordBits] |= bitsAt(src, from, take) << off
		to, from, n = to+take, from+take, n-take
	}
}

// reverseBits writes the n bits of src backwards into dst, which must be 0.
func reverseBits(dst, src []uint64, n int) {
	for at := 0; at < n; at += wordBits {
		take := min(wordBits, n-at)
		word := bits.Reverse64(bitsAt(src, n-at-take, take)) >> (wordBits - take)
		dst[at/wordBits] = word
	}
}

// transpose64 turns a block of 64 × 64 bits, row i being the word i, about its
// diagonal: halves are exchanged, then quarters, and so on (H. S. Warren, Hacker's
// Delight, 2nd ed. 2012, section 7-3, the method from memory).
func transpose64(a *[64]uint64) {
	mask := uint64(0x00000000ffffffff)
	for size := 32; size != 0; size >>= 1 {
		for k := 0; k < 64; k = (k + size + 1) &^ size {
			t := (a[k]>>size ^ a[k+size]) & mask
			a[k] ^= t << size
			a[k+size] ^= t
		}
		mask ^= mask << (size >> 1)
	}
}
