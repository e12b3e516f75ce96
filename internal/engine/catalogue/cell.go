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
