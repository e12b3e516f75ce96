package structure

import (
	"iter"
	"math/bits"
)

const wordBits = 64

// run is neighbouring crossings of a thread with the same of the two on top.
type run struct {
	from, long int
	up         bool // the warp is
}

// runsOf gives the runs of a row of n bits from its first, cut where it ends.
func runsOf(row []uint64, n int) iter.Seq[run] {
	return func(yield func(run) bool) {
		for from := 0; from < n; {
			up := row[from/wordBits]>>(from%wordBits)&1 == 1
			to := runEnd(row, from, n, up)
			if !yield(run{from, to - from, up}) {
				return
			}
			from = to
		}
	}
}

// runEnd gives the first bit from on that is not up, or n: whole words are passed
// over at once.
func runEnd(row []uint64, from, n int, up bool) int {
	flip := uint64(0)
	if up {
		flip = ^uint64(0)
	}
	k := from / wordBits
	word := (row[k] ^ flip) >> (from % wordBits)
	if word != 0 {
		return min(from+bits.TrailingZeros64(word), n)
	}
	for k++; k < len(row); k++ {
		if word = row[k] ^ flip; word != 0 {
			return min(k*wordBits+bits.TrailingZeros64(word), n)
		}
	}
	return n
}

// floatsOf gives the runs of a row as floats: in a repeat the last goes on into the
// first, so that a row that never changes has none at all.
func floatsOf(row []uint64, n int, bounded bool) iter.Seq[run] {
	return func(yield func(run) bool) {
		if n == 0 {
			return
		}
		first := run{0, runEnd(row, 0, n, row[0]&1 == 1), row[0]&1 == 1}
		if first.long == n && !bounded {
			return
		}
		joined := !bounded && bitAt(row, n-1) == first.up
		for r := range runsOf(row, n) {
			if joined && r.from == 0 {
				continue
			}
			if joined && r.from+r.long == n {
				r.long += first.long
			}
			if !yield(r) {
				return
			}
		}
	}
}

func bitAt(row []uint64, i int) bool { return row[i/wordBits]>>(i%wordBits)&1 == 1 }

// steps is up to which length runs are counted by whole words: runs of a dense weave
// are hardly ever longer, and of a weave with long floats there are few.
const steps = 4

// tally counts runs by their length.
type tally struct {
	counts  [2][]int // of runs that are not up and of those that are; [n] is n long
	longest [2]int   // of the row counted last
	room    []uint64
}

// add counts n runs of that length.
func (t *tally) add(up bool, long, n int) {
	side := sideOf(up)
	t.longest[side] = max(t.longest[side], long)
	list := &t.counts[side]
	for len(*list) <= long {
		*list = append(*list, 0)
	}
	(*list)[long] += n
}

func sideOf(up bool) int {
	if up {
		return 1
	}
	return 0
}

// row counts the floats of a row, times over, and gives how often it changes sides.
// It is floatsOf, counted 64 crossings at a time.
func (t *tally) row(row []uint64, n, times int, bounded bool) (changes int) {
	t.longest = [2]int{}
	if n == 0 {
		return 0
	}
	first := run{0, runEnd(row, 0, n, row[0]&1 == 1), row[0]&1 == 1}
	if first.long == n {
		if bounded {
			t.add(first.up, n, times)
		}
		return 0
	}
	changes = t.cut(row, n, times, true) + t.cut(row, n, times, false) - 1
	if bounded {
		return changes
	}
	last := n - runStart(row, n)
	if bitAt(row, n-1) != first.up {
		return changes + 1
	}
	t.add(first.up, first.long, -times)
	t.add(first.up, last, -times)
	t.add(first.up, first.long+last, times)
	return changes
}

// runStart gives where the last run of a row begins.
func runStart(row []uint64, n int) int {
	up := bitAt(row, n-1)
	for k := (n - 1) / wordBits; k >= 0; k-- {
		word := row[k]
		if up {
			word = ^word
		}
		if k == (n-1)/wordBits && n%wordBits > 0 {
			word &= 1<<(n%wordBits) - 1
		}
		if word != 0 {
			return k*wordBits + bits.Len64(word)
		}
	}
	return 0
}

// cut counts the runs of a row that are up, or those that are not, cut at the ends
// of the row, and gives how many there are. Narrowing every run by one, again and
// again, tells how many are longer than each length: the bits that begin a run are
// counted by the word. What is left after some steps is counted run by run.
func (t *tally) cut(row []uint64, n, times int, up bool) (all int) {
	words := t.load(row, n, up)
	longer := starts(words)
	all = longer
	for long := 1; long < steps; long++ {
		if longer == 0 {
			return all
		}
		narrow(words)
		now := starts(words)
		if longer > now {
			t.add(up, long, (longer-now)*times)
		}
		longer = now
	}
	if longer > 0 {
		for r := range runsOf(words, n) {
			if r.up {
				t.add(up, r.long+steps-1, times)
			}
		}
	}
	return all
}

// load copies a row, turned over unless up, so that the runs wanted are those of
// ones.
func (t *tally) load(row []uint64, n int, up bool) []uint64 {
	t.room = append(t.room[:0], row...)
	if !up {
		for k := range t.room {
			t.room[k] = ^t.room[k]
		}
		if n%wordBits > 0 {
			t.room[len(t.room)-1] &= 1<<(n%wordBits) - 1
		}
	}
	return t.room
}

// starts counts the runs of ones.
func starts(words []uint64) int {
	sum, before := 0, uint64(0)
	for _, word := range words {
		sum += bits.OnesCount64(word &^ (word<<1 | before))
		before = word >> (wordBits - 1)
	}
	return sum
}

// narrow takes the last one from every run of ones.
func narrow(words []uint64) {
	for k, word := range words {
		next := uint64(0)
		if k+1 < len(words) {
			next = words[k+1] << (wordBits - 1)
		}
		words[k] = word & (word>>1 | next)
	}
}
