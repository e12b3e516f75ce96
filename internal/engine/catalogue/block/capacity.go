package block

import (
	"strconv"

	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/problem"
)

// Needs is what a profile woven in a system takes of a loom.
type Needs struct {
	Blocks, Shafts int
	OneFoot        int // treadles with one for each lift
	TwoFeet        int // treadles of a skeleton tie-up
}

// Needs counts what a profile takes. The profile must be one that Expand takes.
func (s *System) Needs(p *Profile) Needs {
	n := Needs{Blocks: p.Blocks, Shafts: s.shafts(p.Blocks)}
	var lifts, parts []draft.Set
	for _, pick := range s.allPicks(p) {
		lifts = append(lifts, pick.Up())
		for _, part := range []draft.Set{pick.Binder, pick.Pattern} {
			if part != 0 {
				parts = append(parts, part)
			}
		}
	}
	n.OneFoot, n.TwoFeet = len(distinct(lifts)), len(distinct(parts))
	return n
}

// Capacity tells what a loom lacks for a profile, and what else could be done:
// block.shafts with the most blocks it can weave; block.treadles where neither one foot
// nor two will do; block.two-feet, a warning, where a skeleton tie-up will. A loom that
// does not say how many shafts or treadles it has is not asked, nor a table loom for
// treadles. Problems of the profile itself come first, and alone.
func (s *System) Capacity(p *Profile, on *loom.Loom) *problem.List {
	list := s.check(p)
	if list.Failed() {
		return list
	}
	if shafts := s.shafts(p.Blocks); on.Shafts > 0 && shafts > on.Shafts {
		list.Fail("block.shafts", "blocks", strconv.Itoa(p.Blocks), s.shaftArgs(p.Blocks, on.Shafts))
	}
	if on.Shed == loom.Table || on.Treadles == 0 {
		return list
	}
	switch needs := s.Needs(p); {
	case needs.OneFoot <= on.Treadles:
	case needs.TwoFeet <= on.Treadles && pulls(on.Shed):
		list.Warn("block.two-feet", "treadling", strconv.Itoa(needs.OneFoot), problem.Args{
			"treadles": on.Treadles, "two": needs.TwoFeet, "system": s.ID,
		})
	default:
		s.failTreadles(list, needs.OneFoot, on.Treadles, p)
	}
	return list
}

// pulls reports whether the lifts of two treadles unite, as a skeleton tie-up asks.
func pulls(shed loom.Shed) bool { return shed == loom.Rising || shed == loom.UnsaidShed }

func (s *System) shaftArgs(blocks, has int) problem.Args {
	return problem.Args{"needs": s.shafts(blocks), "shafts": has, "fit": s.Fit(has), "system": s.ID}
}

func (s *System) failTreadles(list *problem.List, needs, has int, p *Profile) {
	list.Fail("block.treadles", "treadling", strconv.Itoa(needs), problem.Args{
		"treadles": has, "two": s.Needs(p).TwoFeet, "system": s.ID,
	})
}
