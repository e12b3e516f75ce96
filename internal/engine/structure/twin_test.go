package structure

import (
	"pgregory.net/rapid"

	"sley/internal/trade/weave"
)

// drawn draws a weave: small ones, ones about the size of a word, and dense ones or
// ones with long floats.
func drawn(t *rapid.T) *weave.Weave {
	size := rapid.OneOf(rapid.IntRange(1, 12), rapid.SampledFrom([]int{63, 64, 65, 128, 130}))
	w := weave.New(size.Draw(t, "picks"), size.Draw(t, "ends"))
	fill(w, rapid.Uint64().Draw(t, "seed"), rapid.SampledFrom([]uint64{1, 8, 15}).Draw(t, "density"))
	if rapid.Bool().Draw(t, "tiled") {
		w = w.Tile(w.Picks()+rapid.IntRange(0, 9).Draw(t, "more picks"), 2*w.Ends())
	}
	w.Bounded = rapid.Bool().Draw(t, "bounded")
	return w
}

// fill puts the warp on top at some of sixteen crossings; the numbers are those of
// Knuth's MMIX generator.
func fill(w *weave.Weave, seed, sixteenths uint64) {
	for i := range w.Picks() {
		for j := range w.Ends() {
			seed = seed*6364136223846793005 + 1442695040888963407
			w.Set(i, j, seed>>60 < sixteenths)
		}
	}
}

// of makes the weave of m picks and n ends whose crossings are the bits.
func of(m, n int, bits uint64) *weave.Weave {
	w := weave.New(m, n)
	for k := range m * n {
		w.Set(k/n, k%n, bits>>k&1 == 1)
	}
	return w
}

// line reads a thread crossing by crossing: what is on top.
func line(w *weave.Weave, way Way, thread int) []bool {
	if way == Weft {
		w = w.Transpose()
	}
	return (&judge{unit: w, period: w.Ends()}).column(thread)
}

// slowFloats walks a thread from every crossing where a float begins.
func slowFloats(line []bool, up, bounded bool) (out []run) {
	n := len(line)
	constant := true
	for _, b := range line {
		constant = constant && b == line[0]
	}
	for from := range n {
		begins := line[from] == up && line[mod(from-1, n)] != up
		if bounded {
			begins = line[from] == up && (from == 0 || line[from-1] != up)
		}
		if !begins || constant && !bounded {
			continue
		}
		long := 0
		for long < n && line[(from+long)%n] == up && (!bounded || from+long < n) {
			long++
		}
		out = append(out, run{from, long, up})
	}
	return out
}

// slowChanges counts how often a line changes sides.
func slowChanges(line []bool, bounded bool) int {
	n, sum := len(line), 0
	for i := range line {
		if (i+1 < n || !bounded) && line[i] != line[(i+1)%n] {
			sum++
		}
	}
	return sum
}
