package block

import "sley/internal/trade/draft"

const (
	fromMemory = "from memory"
	bergdala   = "the numbering 4-1-4-1-4-3 of a Swedish teaching page on this threading (bergdalaspinnhus.com, detaljsolvningar), turned round"
	petrini    = "M. Petrini, teaching notes on Bronson weaves: shaft 1 and one pattern shaft for each block"
)

// huck has two half units of five ends, each with a ground shaft of its own, 1 and
// 2, and a pattern shaft for each half of each block. In a pattern block five picks
// float over one half unit; in lace the warp floats in the other at the same time, and
// five picks later they change places.
func huck(id string, bothWays bool) *System {
	half := func(ground, pattern int) []int { return []int{ground, pattern, ground, pattern, ground} }
	s := &System{
		ID: id, Source: fromMemory, Tabby: true, Together: true, Layers: 1,
		shafts: func(blocks int) int { return 2 + 2*blocks },
		unit: func(block, _ int) []int {
			return append(half(1, 2*block+1), half(2, 2*block+2)...)
		},
		tabby: func(blocks int) [2]draft.Set {
			all := draft.UpTo(blocks)
			return [2]draft.Set{every(all, 2, 2, 2).With(1), every(all, 2, 2, 1).With(2)}
		},
	}
	s.picks = func(pattern draft.Set, blocks int) []Pick {
		tabby := s.tabby(blocks)
		first, second := every(pattern, 2, 2, 1), every(pattern, 2, 2, 2)
		floats := [2]draft.Set{tabby[0] &^ second, tabby[1] &^ first} // over the second half, over the first
		if bothWays {
			floats = [2]draft.Set{floats[0] | first, floats[1] | second}
		}
		up := []draft.Set{tabby[0], floats[1], tabby[0], floats[1], tabby[0], tabby[1], floats[0], tabby[1], floats[0], tabby[1]}
		return parted(up, draft.Of(1, 2))
	}
	return s
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
