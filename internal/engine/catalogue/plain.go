package catalogue

import "sley/internal/trade/draft"

// skipDraft is Brooks's and Taylor's figure of plain weave on four shafts drawn in 1,
// 3, 2, 4.
const skipDraft = "skip draft: C. P. Brooks, Cotton Manufacturing, fig. 36; J. T. Taylor, Cotton Weaving and Designing, 6th ed. (1909)"

func plains() []*Entry {
	return []*Entry{
		{
			ID: "plain", Family: Plain, Source: skipDraft, make: plainWeave,
			Params: []Param{evens("shafts", 2, 32, 2), choice("draw", "straight", "skip", "odd-then-even")},
		},
		{
			ID: "warp-rib", Family: Plain, Source: memory, Params: []Param{ratio("picks", "2/2", 3, 24)},
			make: func(m *making) *draft.Draft { return grouped([]int{1, 1}, m.ratios["picks"]) },
		},
		{
			ID: "weft-rib", Family: Plain, Source: memory, Params: []Param{ratio("ends", "2/2", 3, 24)},
			make: func(m *making) *draft.Draft { return grouped(m.ratios["ends"], []int{1, 1}) },
		},
		{
			ID: "basket", Family: Plain, Source: memory,
			Params: []Param{count("ends", 2, 12, 2), count("picks", 2, 12, 2)},
			make: func(m *making) *draft.Draft {
				e, p := m.count("ends"), m.count("picks")
				return grouped([]int{e, e}, []int{p, p})
			},
		},
		{
			ID: "uneven-basket", Family: Plain, Source: memory,
			Params: []Param{ratio("ends", "3/1", 3, 24), ratio("picks", "3/1", 3, 24)},
			make:   func(m *making) *draft.Draft { return grouped(m.ratios["ends"], m.ratios["picks"]) },
		},
		{
			ID: "rib-squares", Family: Plain, Source: memory, make: ribSquares,
			Params: []Param{evens("side", 4, 16, 4)},
		},
	}
}

// plainWeave lifts every second end, whatever the threading: in each, ends in turn are
// on shafts that one treadle or the other lifts.
func plainWeave(m *making) *draft.Draft {
	threading := skipped(m.count("shafts"), m.text("draw"))
	var ties [2]draft.Set
	for end, shaft := range threading {
		ties[end%2] = ties[end%2].With(shaft + 1)
	}
	return drawn(threading, ties[:], []int{0, 1})
}

// skipped gives a threading of n shafts: in order, from each half in turn, or the
// odd ones before the even ones.
func skipped(n int, draw string) []int {
	var out []int
	for i := range n {
		switch draw {
		case "skip":
			out = append(out, i/2+i%2*(n/2))
		case "odd-then-even":
			out = append(out, 2*i%n+2*i/n)
		default:
			out = append(out, i)
		}
	}
	return out
}

// grouped is plain weave of groups of ends and groups of picks, of those sizes in
// turn.
func grouped(ends, picks []int) *draft.Draft {
	var threading, treadling []int
	for i, n := range ends {
		threading = append(threading, each([]int{i % 2}, n)...)
	}
	for i, n := range picks {
		treadling = append(treadling, each([]int{i % 2}, n)...)
	}
	return drawn(threading, []draft.Set{draft.Of(1), draft.Of(2)}, treadling)
}

// ribSquares sets squares of rib along the warp beside squares of rib along the weft.
func ribSquares(m *making) *draft.Draft {
	s := m.count("side")
	return woven(plot(2*s, 2*s, func(i, j int) bool {
		if (i/s+j/s)%2 == 0 {
			return odd(i%s/(s/2) + j)
		}
		return odd(j%s/(s/2) + i)
	}))
}
