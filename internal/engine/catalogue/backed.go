package catalogue

import (
	"sley/internal/trade/draft"
	"sley/internal/trade/problem"
	"sley/internal/trade/weave"
)

// backed cloths have one set of threads for each face and one that holds both.
func backed() []*Entry {
	return []*Entry{
		{
			ID: "weft-backed-twill", Family: Layers, Source: memory, Params: []Param{count("ends", 4, 16, 4)},
			make: func(m *making) *draft.Draft { return woven(twoFaced(m.count("ends"), 1)) },
		},
		{
			ID: "warp-backed-twill", Family: Layers, Source: memory, Sett: TwoLayers, Params: []Param{count("ends", 4, 16, 4)},
			make: func(m *making) *draft.Draft { return woven(twoFaced(m.count("ends"), 1).Exchange()) },
		},
	}
}

// piles are woven with floats that are cut afterwards.
func piles() []*Entry {
	return []*Entry{
		{
			ID: "corduroy", Family: Piles, Source: memory, Sett: AsPlain, make: corduroy,
			Params: []Param{evens("ends", 6, 24, 6), count("picks", 1, 4, 2)},
		},
		{
			ID: "velveteen", Family: Piles, Source: memory, Sett: AsPlain, make: velveteen,
			Params: []Param{evens("ends", 6, 16, 6), count("picks", 1, 4, 3), count("move", 1, 15, 2)},
		},
	}
}

// corduroy follows each pick of plain weave with pile picks that are bound by one end
// each, side by side, so that their floats lie above one another in rows.
func corduroy(m *making) *draft.Draft {
	n, piles := m.count("ends"), m.count("picks")
	return woven(piled(n, piles, 2, func(k int) int { return k % piles }))
}

// velveteen binds each pile pick some ends on from the one before.
func velveteen(m *making) *draft.Draft {
	n, piles, move := m.count("ends"), m.count("picks"), m.count("move")
	if move >= n {
		m.fail("catalogue.range", "move", problem.Args{"least": 1, "most": n - 1})
		return nil
	}
	grounds := lcm(n/gcd(n, move), piles) / piles
	return woven(piled(n, piles, lcm(grounds, 2), func(k int) int { return k * move % n }))
}

// piled gives so many picks of plain weave, each followed by pile picks; bind says by
// which end the kth pile pick is bound.
func piled(ends, piles, grounds int, bind func(k int) int) *weave.Weave {
	each := piles + 1
	return plot(grounds*each, ends, func(i, j int) bool {
		ground, at := i/each, i%each
		if at == 0 {
			return odd(ground + j)
		}
		return j == bind(ground*piles+at-1)
	})
}
