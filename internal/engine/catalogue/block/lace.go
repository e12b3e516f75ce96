package block

import "sley/internal/trade/draft"

const (
	fromMemory = "from memory"
	bergdala   = "the numbering 4-1-4-1-4-3 of a Swedish teaching page on this threading (bergdalaspinnhus.com, detaljsolvningar), turned round"
	petrini    = "M. Petrini, teaching notes on Bronson weaves: shaft 1 and one pattern shaft for each block"
)

// halfUnit is five ends of huck in turn on a ground and a pattern shaft.
func halfUnit(ground, pattern int) []int { return []int{ground, pattern, ground, pattern, ground} }

// huck has two half units of five ends, each with a ground shaft of its own, 1 and
// 2, and a pattern shaft for each half of each block.
func huck(id string, bothWays bool) *System {
	s := &System{
		ID: id, Source: fromMemory, Tabby: true, Together: true, Layers: 1,
		shafts: func(blocks int) int { return 2 + 2*blocks },
		unit: func(block, _ int) []int {
			return append(halfUnit(1, 2*block+1), halfUnit(2, 2*block+2)...)
		},
		tabby: func(blocks int) [2]draft.Set {
			all := draft.UpTo(blocks)
			return [2]draft.Set{every(all, 2, 2, 2).With(1), every(all, 2, 2, 1).With(2)}
		},
	}
	s.picks = func(pattern draft.Set, blocks int) []Pick {
		return huckPicks(s.tabby(blocks), every(pattern, 2, 2, 1), every(pattern, 2, 2, 2), bothWays)
	}
	return s
}

// huckHalves is huck lace whose blocks are half units, so that each takes one shaft:
// odd blocks have their ground on shaft 1 and even ones on shaft 2, and lie in turn.
func huckHalves() *System {
	s := &System{
		ID: "huck-half-units", Source: fromMemory, Tabby: true, Together: true, InTurn: true, Layers: 1,
		shafts: func(blocks int) int { return 2 + blocks },
		unit:   func(block, _ int) []int { return halfUnit(2-block%2, block+2) },
		tabby: func(blocks int) [2]draft.Set {
			odd, even := sorted(draft.UpTo(blocks))
			return [2]draft.Set{even.With(1), odd.With(2)}
		},
	}
	s.picks = func(pattern draft.Set, blocks int) []Pick {
		odd, even := sorted(pattern)
		return huckPicks(s.tabby(blocks), odd, even, true)
	}
	return s
}

// sorted gives the pattern shafts of the odd and of the even blocks, one to a block
// after the first two.
func sorted(blocks draft.Set) (odd, even draft.Set) {
	of := parity(draft.MostShafts)
	return own(blocks&of[0], 1, 2), own(blocks&of[1], 1, 2)
}

// huckPicks floats over the first half units of pattern for five picks, then over the
// second for five; in lace the warp floats in the other half units at the same time.
func huckPicks(tabby [2]draft.Set, first, second draft.Set, bothWays bool) []Pick {
	floats := [2]draft.Set{tabby[0] &^ second, tabby[1] &^ first}
	if bothWays {
		floats = [2]draft.Set{floats[0] | first, floats[1] | second}
	}
	a, b := tabby[0], tabby[1]
	up := []draft.Set{a, floats[1], a, floats[1], a, b, floats[0], b, floats[0], b}
	return parted(up, draft.Of(1, 2))
}

// parted makes picks of sheds: what they lift of the binders, and the rest.
func parted(up []draft.Set, binders draft.Set) []Pick {
	var out []Pick
	for _, lift := range up {
		out = append(out, Pick{Binder: lift & binders, Pattern: lift &^ binders})
	}
	return out
}

// bronsonLace has units of six ends: every other end on shaft 1, the last on shaft
// 2, the two between on the pattern shaft of the block.
func bronsonLace() *System {
	s := &System{
		ID: "bronson-lace", Source: bergdala, Tabby: true, Together: true, Layers: 1,
		shafts: func(blocks int) int { return 2 + blocks },
		unit: func(block, _ int) []int {
			p := block + 2
			return []int{1, p, 1, p, 1, 2}
		},
		tabby: func(blocks int) [2]draft.Set {
			return [2]draft.Set{draft.Of(1), own(draft.UpTo(blocks), 1, 2).With(2)}
		},
	}
	s.picks = func(pattern draft.Set, blocks int) []Pick {
		tabby := s.tabby(blocks)
		lace := tabby[1] &^ own(pattern, 1, 2)
		up := []draft.Set{tabby[0], lace, tabby[0], lace, tabby[0], tabby[1]}
		return parted(up, draft.Of(1, 2))
	}
	return s
}

// spotBronson has every other end on shaft 1 and the others on the shaft of the
// block: shafts weave one block fewer than they are.
func spotBronson() *System {
	s := &System{
		ID: "spot-bronson", Source: petrini, Tabby: true, Together: true, Ground: true, Layers: 1,
		shafts: func(blocks int) int { return 1 + blocks },
		unit: func(block, _ int) []int {
			return []int{1, block + 1, 1, block + 1}
		},
		tabby: func(blocks int) [2]draft.Set {
			return [2]draft.Set{draft.Of(1), own(draft.UpTo(blocks), 1, 1)}
		},
	}
	s.picks = func(pattern draft.Set, blocks int) []Pick {
		tabby := s.tabby(blocks)
		spot := own(others(pattern, blocks), 1, 1)
		return []Pick{{Binder: tabby[0]}, {Pattern: spot}, {Binder: tabby[0]}, {Pattern: spot}}
	}
	return s
}
