package block

import "sley/internal/trade/draft"

// The colours of a palette of two.
const (
	Ground  = 0 // of warp and tabby
	Pattern = 1 // of the weft that makes the pattern, or of the second warp
)

// onTabby follows each pattern pick with one of plain weave, the two in turn.
func onTabby(pattern []draft.Set, tabby [2]draft.Set) []Pick {
	var out []Pick
	for i, up := range pattern {
		out = append(out, Pick{Pattern: up, Colour: Pattern}, Pick{Binder: tabby[i%2], Colour: Ground})
	}
	return out
}

// overshot has two shafts for a block, each shared with a neighbour, in a circle. The
// odd shaft comes first in every unit, so that odd and even ends are in turn and the
// tabby is plain weave; there are as many shafts as blocks, and an even number. In the
// blocks that share a shaft the pattern weft passes over every other end: half-tone.
func overshot() *System {
	even := func(blocks int) int { return max(4, blocks+blocks%2) }
	pair := func(block, blocks int) (odd, even2 int) {
		a, b := block, block%even(blocks)+1
		if a%2 == 0 {
			a, b = b, a
		}
		return a, b
	}
	s := &System{
		ID: "overshot", Source: fromMemory, Tabby: true, Ground: true, Layers: 1,
		shafts: even,
		unit: func(block, blocks int) []int {
			a, b := pair(block, blocks)
			return []int{a, b, a, b}
		},
		tabby: func(blocks int) [2]draft.Set { return parity(even(blocks)) },
	}
	s.picks = func(pattern draft.Set, blocks int) []Pick {
		if pattern == 0 {
			return onlyTabby(s.tabby(blocks))
		}
		a, b := pair(pattern.Most(), blocks)
		up := draft.UpTo(even(blocks)).Without(a).Without(b)
		return onTabby([]draft.Set{up, up}, s.tabby(blocks))
	}
	return s
}

// parity gives the odd and the even shafts.
func parity(shafts int) [2]draft.Set {
	var out [2]draft.Set
	for n := 1; n <= shafts; n++ {
		out[1-n%2] = out[1-n%2].With(n)
	}
	return out
}

// onlyTabby is a unit without pattern: the pattern weft waits.
func onlyTabby(tabby [2]draft.Set) []Pick {
	return []Pick{{Binder: tabby[0]}, {Binder: tabby[1]}}
}

// monksBelt has two shafts of its own for each block. The pattern weft passes over
// whole blocks and beneath the others; there is no half-tone.
func monksBelt() *System {
	s := &System{
		ID: "monks-belt", Source: fromMemory, Tabby: true, Together: true, Ground: true, Layers: 1,
		shafts: func(blocks int) int { return max(4, 2*blocks) },
		unit: func(block, _ int) []int {
			return []int{2*block - 1, 2 * block, 2*block - 1, 2 * block}
		},
		tabby: func(blocks int) [2]draft.Set { return parity(2 * blocks) },
	}
	s.picks = func(pattern draft.Set, blocks int) []Pick {
		if pattern == 0 {
			return onlyTabby(s.tabby(blocks))
		}
		up := own(others(pattern, blocks), 2, 0)
		return onTabby([]draft.Set{up, up}, s.tabby(blocks))
	}
	return s
}

// tied gives the unit of four ends with two tie-downs on shafts 1 and 2 and two ends
// on the shaft of the block.
func tied(block, _ int) []int { return []int{1, block + 2, 2, block + 2} }

// summerAndWinter has two tie-downs, on shafts 1 and 2, for all blocks, and a pattern
// shaft for each. The pattern weft passes over three ends and under one in pattern, and
// the other way in background, so no float is longer than three.
func summerAndWinter() *System {
	s := &System{
		ID: "summer-and-winter", Source: fromMemory, Tabby: true, Together: true, Layers: 1,
		shafts: func(blocks int) int { return 2 + blocks },
		unit:   tied,
		tabby: func(blocks int) [2]draft.Set {
			return [2]draft.Set{draft.Of(1, 2), own(draft.UpTo(blocks), 1, 2)}
		},
	}
	s.picks = func(pattern draft.Set, blocks int) []Pick {
		tabby, ground := s.tabby(blocks), own(others(pattern, blocks), 1, 2)
		return []Pick{
			{draft.Of(1), ground, Pattern},
			{Binder: tabby[0]},
			{draft.Of(2), ground, Pattern},
			{Pattern: tabby[1]},
		}
	}
	return s
}

// taquete is threaded as summer and winter and woven without tabby: of two wefts in
// turn one shows where there is pattern, the other where there is none.
func taquete() *System {
	return &System{
		ID: "taquete", Source: fromMemory, Together: true, Layers: 1,
		shafts: func(blocks int) int { return 2 + blocks },
		unit:   tied,
		picks: func(pattern draft.Set, blocks int) []Pick {
			shown, ground := own(pattern, 1, 2), own(others(pattern, blocks), 1, 2)
			return []Pick{
				{draft.Of(1), ground, Pattern},
				{draft.Of(1), shown, Ground},
				{draft.Of(2), ground, Pattern},
				{draft.Of(2), shown, Ground},
			}
		},
	}
}
