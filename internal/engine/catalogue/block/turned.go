package block

import "sley/internal/trade/draft"

// turned weaves blocks of one weave against its other face: each block has shafts of
// its own, and in pick i one of them binds. Background shows the weft, pattern the
// warp. Common practice, no source.
func turned(id string, binds []int) *System {
	n := len(binds)
	return &System{
		ID: id, Source: "common practice, no source", Together: true, Layers: 1,
		shafts: func(blocks int) int { return n * blocks },
		unit: func(block, _ int) []int {
			var out []int
			for i := range n {
				out = append(out, (block-1)*n+i+1)
			}
			return out
		},
		picks: func(pattern draft.Set, blocks int) []Pick {
			var out []Pick
			for _, at := range binds {
				// Pattern is the background turned over, end for end: then every float ends
				// where blocks meet side by side. Where they meet one above the other it does
				// when the binds, read from both ends, add up to the same.
				down := every(pattern, n, 0, n-at)
				up := every(others(pattern, blocks), n, 0, at+1)
				// Nothing is shared by all blocks, so that a second foot would help nothing.
				out = append(out, Pick{Binder: up | own(pattern, n, 0)&^down})
			}
			return out
		},
	}
}
