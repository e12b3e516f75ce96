package structure

import (
	"math/bits"
	"slices"
	"testing"

	"sley/internal/trade/weave"
)

// TestFiveByFive looks at all 33,554,432 matrices of 5 × 5: 17,564,070 hang together
// (own computation, by two criteria). Whether one does hangs on the sums of its rows
// and of its columns in any order, so each pair is judged once, by its first matrix.
func TestFiveByFive(t *testing.T) {
	if testing.Short() {
		t.Skip("thirty-three million matrices")
	}
	const unknown, hangs, apart = 0, 1, 2
	order := sortedSums()
	judged := make([]uint8, 7776*252)
	count := 0
	for m := range uint32(1) << 25 {
		sums := [2]int{}
		for i, place := 0, 1; i < 5; i, place = i+1, place*6 {
			row := int(m >> (5 * i) & 31)
			sums[0] += bits.OnesCount(uint(row)) * place
			sums[1] += columns[row]
		}
		verdict := &judged[order[sums[0]]*7776+order[sums[1]]]
		if *verdict == unknown {
			*verdict = apart
			if HangsTogether(five(m)) {
				*verdict = hangs
			}
		}
		if *verdict == hangs {
			count++
		}
	}
	if count != 17_564_070 {
		t.Errorf("%d hang together", count)
	}
}

// sortedSums numbers sums of five lines, digits to the base 6, so that the same sums in
// any order share a number: there are 252 of them.
func sortedSums() []int {
	out, seen := make([]int, 7776), map[[5]int]int{}
	for code := range out {
		digits := [5]int{}
		for k, left := 0, code; k < 5; k, left = k+1, left/6 {
			digits[k] = left % 6
		}
		slices.Sort(digits[:])
		if _, ok := seen[digits]; !ok {
			seen[digits] = len(seen)
		}
		out[code] = seen[digits]
	}
	return out
}

// columns is a row's part of the sums of the columns, each a digit to the base 6.
var columns = func() (out [32]int) {
	for row := range out {
		for k, place := 0, 1; k < 5; k, place = k+1, place*6 {
			out[row] += row >> k & 1 * place
		}
	}
	return out
}()

func five(m uint32) *weave.Weave {
	w := weave.New(5, 5)
	for k := range 25 {
		w.Set(k/5, k%5, m>>k&1 == 1)
	}
	return w
}
