package catalogue

import (
	"slices"

	"sley/internal/trade/draft"
)

func cells() []*Entry {
	return []*Entry{
		{
			ID: "waffle", Family: Textures, Source: memory, Params: []Param{count("shafts", 4, 16, 5)}, Sett: ByInterlacings, make: waffle,
		},
		{
			ID: "brighton-honeycomb", Family: Textures, Source: memory, Params: []Param{count("quarter", 2, 8, 2)},
			make: func(m *making) *draft.Draft { return brighton(m.count("quarter")) },
		},
		{
			ID: "honeycomb", Family: Textures, Source: memory, Sett: AsPlain, make: honeycomb,
			Params: []Param{evens("ends", 4, 32, 8), evens("picks", 2, 24, 8)},
		},
	}
}

// waffle is on a point both ways. One line of single binds crosses itself and parts the
// cloth into cells; in every second cell the warp floats, leaving one thread clear of the
// line, in the others the weft.
func waffle(m *making) *draft.Draft {
	n := m.count("shafts")
	ties := make([]draft.Set, n)
	for p := range n {
		for q := range n {
			if p == q || p >= q+2 {
				ties[p] = ties[p].With(q + 1)
			}
		}
	}
	return drawn(there(straight(n)), ties, there(straight(n)))
}

// brighton is on a straight threading of four times as many ends: a single line one way
// and a double line the other way part the repeat into two large cells and smaller ones
// where the double line runs, and in the middle of each large cell the warp floats in a
// diamond. The longest float is half of the ends, less one, both ways.
func brighton(quarter int) *draft.Draft {
	n := 4 * quarter
	off := func(a, b int) int { return min(mod(a-b, n), mod(b-a, n)) }
	ties := make([]draft.Set, n)
	for i := range n {
		for j := range n {
			line := i == j || mod(i+j, n) == 0 || mod(i+j, n) == n-1
			if line || min(off(i, 0)+off(j, n/2), off(i, n/2)+off(j, 0)) < quarter {
				ties[i] = ties[i].With(j + 1)
			}
		}
	}
	return drawn(straight(n), ties, straight(n))
}

// honeycomb weaves plain cloth in one block while the ends of the other lie on top,
// then two thick picks of plain weave from edge to edge, which bend round the cells, and
// the same with the blocks exchanged.
func honeycomb(m *making) *draft.Draft {
	e, p := m.count("ends"), m.count("picks")
	threading := slices.Concat(slices.Repeat([]int{0, 1}, e/2), slices.Repeat([]int{2, 3}, e/2))
	ties := []draft.Set{
		draft.Of(1, 3), draft.Of(2, 4), // from edge to edge
		draft.Of(1, 3, 4), draft.Of(2, 3, 4), // cells of the first block
		draft.Of(3, 1, 2), draft.Of(4, 1, 2), // and of the second
	}
	thick := []int{0, 1}
	picks := slices.Concat(thick, slices.Repeat([]int{2, 3}, p/2), thick, slices.Repeat([]int{4, 5}, p/2))
	d := drawn(threading, ties, picks)
	d.Palette = slices.Clone(twoColours)
	for _, treadle := range picks {
		d.Weft.Colours = append(d.Weft.Colours, boolToInt(treadle < 2))
	}
	return d
}

func boolToInt(is bool) int {
	if is {
		return 1
	}
	return 0
}
