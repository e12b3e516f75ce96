package block

import "sley/internal/trade/draft"

// turns are the colours of ends in turn.
var turns = []int{Pattern, Ground, Pattern, Ground}

// doubleCloth has two layers of plain weave, one of each colour, on four shafts for
// each block. Where there is pattern the second colour lies on top; layers change places
// at the edges of blocks, which holds them together.
func doubleCloth() *System {
	return &System{
		ID: "double-cloth-blocks", Source: fromMemory, Together: true, Layers: 2,
		shafts: func(blocks int) int { return 4 * blocks },
		unit: func(block, _ int) []int {
			k := 4 * (block - 1)
			return []int{k + 1, k + 2, k + 3, k + 4}
		},
		picks: func(pattern draft.Set, blocks int) []Pick {
			all, ground := draft.UpTo(blocks), others(pattern, blocks)
			var out []Pick
			for _, i := range []int{1, 3} {
				out = append(out,
					// The layer beneath weaves below all ends of the layer on top.
					Pick{every(all, 4, 0, i), every(ground, 4, 0, 2, 4), Pattern},
					Pick{every(all, 4, 0, i+1), every(pattern, 4, 0, 1, 3), Ground})
			}
			return out
		},
		colours: turns,
	}
}

// rep has ends of two colours in turn, so close that they cover the weft, and two
// shafts for each block. A thick pick lies under the ends of one colour where there is
// pattern and under those of the other where there is none; a thin pick under the rest.
func rep() *System {
	return &System{
		ID: "rep", Source: fromMemory, Tabby: true, Together: true, Layers: 1,
		shafts: func(blocks int) int { return 2 * blocks },
		unit: func(block, _ int) []int {
			return []int{2*block - 1, 2 * block, 2*block - 1, 2 * block}
		},
		tabby: func(blocks int) [2]draft.Set { return parity(2 * blocks) },
		picks: func(pattern draft.Set, blocks int) []Pick {
			ground := others(pattern, blocks)
			thick := Pick{every(ground, 2, 0, 2), every(pattern, 2, 0, 1), Pattern}
			thin := Pick{every(ground, 2, 0, 1), every(pattern, 2, 0, 2), Ground}
			return []Pick{thick, thin, thick, thin}
		},
		colours: turns,
	}
}
