package catalogue

import (
	"slices"

	"sley/internal/trade/draft"
)

// laces are those that are not woven by blocks of units: see blocked for huck and
// Bronson lace.
func laces() []*Entry {
	return []*Entry{
		{
			ID: "mock-leno", Family: Laces, Source: memory, Sett: AsPlain, make: mockLeno,
			Params: []Param{count("ends", 3, 7, 3)},
		},
		{
			ID: "ms-and-os", Family: Laces, Source: memory, Sett: AsPlain, make: msAndOs,
			Params: []Param{evens("ends", 4, 12, 4), count("times", 1, 8, 2)},
		},
	}
}

// mockLeno groups ends and picks: in one square the outer ones, or with an odd
// number every second one, float over the square and the others weave plain; the next
// square is its other face.
func mockLeno(m *making) *draft.Draft {
	n := m.count("ends")
	floats := func(k int) bool { return k%2 == 0 }
	if !odd(n) {
		floats = func(k int) bool { return k == 0 || k == n-1 }
	}
	return woven(plot(2*n, 2*n, func(i, j int) bool {
		up := floats(j%n) || !floats(i%n)
		return up == ((i/n+j/n)%2 == 0)
	}))
}

// msAndOs threads a block of 1 2 and 3 4, and one of 1 3 and 2 4: each lift of two
// shafts weaves one block plain and the other with floats.
func msAndOs(m *making) *draft.Draft {
	pairs, times := m.count("ends")/2, m.count("times")
	half := func(a, b int) []int { return slices.Repeat([]int{a, b}, pairs) }
	first := append(half(0, 1), half(2, 3)...)
	second := append(half(0, 2), half(1, 3)...)
	threading := slices.Concat(slices.Repeat(first, times), slices.Repeat(second, times))
	ties := []draft.Set{draft.Of(1, 3), draft.Of(2, 4), draft.Of(1, 2), draft.Of(3, 4)}
	picks := slices.Concat(slices.Repeat([]int{0, 1}, 2*pairs*times), slices.Repeat([]int{2, 3}, 2*pairs*times))
	return drawn(threading, ties, picks)
}
