package block

import (
	"slices"
	"strconv"

	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/problem"
)

// Feet says how the lifts are made.
type Feet int

// The ways to make lifts. A skeleton tie-up has binders and patterns on treadles of
// their own and is worked with two feet; it needs a rising shed.
const (
	OneFoot  Feet = iota // a treadle for each lift
	TwoFeet              // a skeleton tie-up
	LiftPlan             // no treadles: a table loom
)

// palette is undyed and indigo.
var palette = []draft.Colour{{R: 0xf0, G: 0xe8, B: 0xd6}, {R: 0x2b, G: 0x3f, B: 0x66}}

// Expand writes a profile out into a draft for a rising shed. Problems: those of
// Profile.Check; block.shafts and block.treadles where a draft has too few,
// block.in-turn where two units cannot be neighbours, block.together and block.ground
// where the system cannot weave what a unit of picks asks for. The draft is then nil.
func (s *System) Expand(p *Profile, feet Feet) (*draft.Draft, *problem.List) {
	list := s.check(p)
	if list.Failed() {
		return nil, list
	}
	if needs := s.Needs(p); feet == OneFoot && needs.OneFoot > draft.MostTreadles || feet == TwoFeet && needs.TwoFeet > draft.MostTreadles {
		s.failTreadles(list, needs.OneFoot, draft.MostTreadles, p)
		return nil, list
	}
	d := &draft.Draft{Shafts: s.shafts(p.Blocks), Shed: loom.Rising, Palette: slices.Clone(palette)}
	s.thread(d, p)
	picks := s.allPicks(p)
	for _, pick := range picks {
		d.Lifts = append(d.Lifts, pick.Up())
		d.Weft.Colours = append(d.Weft.Colours, pick.Colour)
	}
	switch feet {
	case OneFoot:
		d, _ = d.WithTreadles(loom.Rising)
	case TwoFeet:
		skeleton(d, picks)
	}
	return d, list
}

// thread lays the units side by side, with the ends that lie between them; the last
// unit joins the first.
func (s *System) thread(d *draft.Draft, p *Profile) {
	for i, block := range p.Threading {
		d.Threading = append(d.Threading, s.unit(block, p.Blocks)...)
		if s.between != nil {
			next := p.Threading[(i+1)%len(p.Threading)]
			d.Threading = append(d.Threading, s.between(block, next, p.Blocks)...)
		}
	}
	if s.colours != nil {
		for i := range d.Threading {
			d.Warp.Colours = append(d.Warp.Colours, s.colours[i%len(s.colours)])
		}
	}
}

func (s *System) allPicks(p *Profile) []Pick {
	var out []Pick
	for _, pattern := range p.Patterns() {
		out = append(out, s.picks(pattern, p.Blocks)...)
	}
	return out
}

// skeleton ties a treadle for each binder and each pattern that differ, and presses
// one of each.
func skeleton(d *draft.Draft, picks []Pick) {
	at := map[draft.Set]int{}
	tie := func(up draft.Set) draft.Set {
		if up == 0 {
			return 0
		}
		if at[up] == 0 {
			d.Ties = append(d.Ties, draft.Tie{Tied: up})
			at[up] = len(d.Ties)
		}
		return draft.Of(at[up])
	}
	for _, pick := range picks {
		d.Treadling = append(d.Treadling, tie(pick.Binder)|tie(pick.Pattern))
	}
	d.Treadles, d.Lifts = len(d.Ties), nil
}

// check tells what the system cannot do with a profile.
func (s *System) check(p *Profile) *problem.List {
	list := p.Check()
	if list.Failed() {
		return list
	}
	if shafts := s.shafts(p.Blocks); shafts > draft.MostShafts {
		list.Fail("block.shafts", "blocks", strconv.Itoa(p.Blocks), s.shaftArgs(p.Blocks, draft.MostShafts))
	}
	if s.InTurn {
		s.checkTurns(p, list)
	}
	for i, pattern := range p.Patterns() {
		path := "treadling[" + strconv.Itoa(i) + "]"
		switch {
		case !s.Together && pattern.Len() > 1:
			list.Fail("block.together", path, pattern.String(), problem.Args{"unit": i + 1, "system": s.ID})
		case s.Ground && pattern == draft.UpTo(p.Blocks):
			list.Fail("block.ground", path, pattern.String(), problem.Args{"unit": i + 1, "system": s.ID})
		}
	}
	return list
}

// checkTurns tells neighbouring units that are both of odd blocks, or both of even ones.
func (s *System) checkTurns(p *Profile, list *problem.List) {
	for i, block := range p.Threading {
		next := p.Threading[(i+1)%len(p.Threading)]
		if (next-block)%2 == 0 {
			list.Fail("block.in-turn", "threading["+strconv.Itoa(i)+"]", Letter(block), problem.Args{"unit": i + 1, "next": Letter(next), "system": s.ID})
		}
	}
}

func distinct(lifts []draft.Set) []draft.Set {
	out := slices.Clone(lifts)
	slices.Sort(out)
	return slices.Compact(out)
}
