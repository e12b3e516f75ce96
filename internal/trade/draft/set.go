// Package draft holds how a weave is made on a loom: which shaft each end is on,
// which shafts each treadle moves, which treadles each pick presses, and the colours
// and sizes of the threads. Pure values: it says what is on top, and what of a draft
// a loom cannot do.
//
// Ends are counted from the left and picks from the first woven, both from 0;
// shafts and treadles from 1, as their numbers are spoken.
package draft

import (
	"math/bits"
	"strconv"
	"strings"
)

// The limits of a draft.
const (
	MostShafts   = 64
	MostTreadles = 64
)

// Set is a set of shafts, or of treadles, numbered from 1 to 64.
type Set uint64

// Of gives the set of those numbers; it panics on one below 1 or above 64.
func Of(numbers ...int) Set {
	var s Set
	for _, n := range numbers {
		s = s.With(n)
	}
	return s
}

// UpTo gives the set of 1 to n; of n below 1, none.
func UpTo(n int) Set {
	switch {
	case n < 1:
		return 0
	case n >= MostShafts:
		return ^Set(0)
	}
	return Set(1)<<n - 1
}

// With gives the set with n in it; it panics on an n below 1 or above 64.
func (s Set) With(n int) Set { return s | bit(n) }

// Without gives the set without n.
func (s Set) Without(n int) Set { return s &^ bit(n) }

// Has reports whether n is in the set; 0 is in none.
func (s Set) Has(n int) bool { return n >= 1 && n <= MostShafts && s&bit(n) != 0 }

func bit(n int) Set {
	if n < 1 || n > MostShafts {
		panic("internal error: number " + strconv.Itoa(n) + " of a shaft or treadle")
	}
	return Set(1) << (n - 1)
}

// Len gives how many are in the set.
func (s Set) Len() int { return bits.OnesCount64(uint64(s)) }

// Most gives the highest number in the set, 0 when it is empty.
func (s Set) Most() int { return bits.Len64(uint64(s)) }

// List gives the numbers from the lowest.
func (s Set) List() []int {
	var out []int
	for left := uint64(s); left != 0; left &= left - 1 {
		out = append(out, bits.TrailingZeros64(left)+1)
	}
	return out
}

// String gives the numbers parted by +, as a lift is spoken: 1+3; - for none.
func (s Set) String() string {
	if s == 0 {
		return "-"
	}
	var parts []string
	for _, n := range s.List() {
		parts = append(parts, strconv.Itoa(n))
	}
	return strings.Join(parts, "+")
}
