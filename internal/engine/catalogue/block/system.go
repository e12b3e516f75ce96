package block

import (
	"slices"

	"sley/internal/trade/draft"
	"sley/internal/trade/near"
)

// System is a way to weave blocks: what the ends of a unit are threaded to and which
// sheds its picks open. All of them are described from memory of common practice; where
// a source says it, Source names it.
type System struct {
	ID     string
	Source string
	Tabby  bool // it has two sheds that weave plain cloth from edge to edge
	// Together says that any blocks may weave pattern in one pick. Where it is false,
	// only one can.
	Together bool
	// Ground says that a pick in which all blocks weave pattern lifts nothing, so that
	// one block at least must stay background.
	Ground bool
	// InTurn says that units of odd and of even blocks must lie in turn across the warp,
	// the last beside the first, for the tabby to be plain weave.
	InTurn bool
	Layers int // of cloth where no blocks differ; 1 for most

	shafts  func(blocks int) int
	unit    func(block, blocks int) []int
	between func(from, to, blocks int) []int // ends between units of two blocks; nil: none
	tabby   func(blocks int) [2]draft.Set
	picks   func(pattern draft.Set, blocks int) []Pick
	shows   func(pattern draft.Set, blocks int) draft.Set // nil: just those asked for
	colours []int                                         // of the ends of a unit; nil: all alike
}

// Pick is one pick: the shafts up are those of both parts, which a skeleton tie-up
// has on treadles of their own.
type Pick struct {
	Binder, Pattern draft.Set
	Colour          int // of the palette
}

// Up gives the shafts that are up.
func (p Pick) Up() draft.Set { return p.Binder | p.Pattern }

// Systems lists all systems by their kin.
func Systems() []*System { return slices.Clone(systems) }

// Find gives the system of that id; where there is none, near is what was likely
// meant.
func Find(id string) (s *System, likely string) {
	var ids []string
	for _, s := range systems {
		if s.ID == id {
			return s, ""
		}
		ids = append(ids, s.ID)
	}
	return nil, near.To(id, ids)
}

// Shafts gives the shafts that many blocks need.
func (s *System) Shafts(blocks int) int { return s.shafts(blocks) }

// Fit gives the most blocks that those shafts can weave, 0 when not even one.
func (s *System) Fit(shafts int) int {
	fit := 0
	for n := 1; n <= MostBlocks; n++ {
		if s.shafts(n) <= shafts {
			fit = n
		}
	}
	return fit
}

// Unit gives the shafts of the ends of a unit.
func (s *System) Unit(block, blocks int) []int { return s.unit(block, blocks) }

// Picks gives the picks of one unit in which those blocks weave pattern.
func (s *System) Picks(pattern draft.Set, blocks int) []Pick { return s.picks(pattern, blocks) }

// TabbySheds gives the two sheds of plain weave; they are empty where the system has
// none.
func (s *System) TabbySheds(blocks int) [2]draft.Set {
	if s.tabby == nil {
		return [2]draft.Set{}
	}
	return s.tabby(blocks)
}

// Shows gives the blocks that weave pattern when those are asked for: in crackle a
// neighbour always does so too.
func (s *System) Shows(pattern draft.Set, blocks int) draft.Set {
	if s.shows == nil {
		return pattern
	}
	return s.shows(pattern, blocks)
}

// own gives the shafts of blocks that have so many shafts each, after the first ones.
func own(pattern draft.Set, each, first int) draft.Set {
	var out draft.Set
	for _, k := range pattern.List() {
		for i := range each {
			out = out.With(first + (k-1)*each + i + 1)
		}
	}
	return out
}

// every gives the shafts at those places, from 1, within each of n blocks of so many
// shafts.
func every(pattern draft.Set, each, first int, places ...int) draft.Set {
	var out draft.Set
	for _, k := range pattern.List() {
		for _, at := range places {
			out = out.With(first + (k-1)*each + at)
		}
	}
	return out
}

// others gives the blocks that are not in the set.
func others(pattern draft.Set, blocks int) draft.Set { return draft.UpTo(blocks) &^ pattern }
