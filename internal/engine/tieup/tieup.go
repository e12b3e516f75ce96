// Package tieup works out what lies between a draft and the feet of the weaver: the
// cords of each treadle, how well each shed opens, whether the feet can take turns and
// in which order the treadles then lie, whether two feet are needed for one lift, and
// the lifts that show errors of the threading before the knots are tied tight. Pure
// functions over drafts; shafts and treadles count from 1.
package tieup

import (
	"slices"

	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
)

// Cords are the cords of one treadle, by shafts, or of one shaft, by treadles, named
// by what they do when the treadle goes down.
type Cords struct{ Raises, Lowers draft.Set }

// Kinds says which cords a loom has: a rising shed has those that raise, a sinking
// shed and a counterbalance loom those that lower, a countermarch both. A table loom's
// levers raise.
func Kinds(shed loom.Shed) (raise, lower bool) {
	switch shed {
	case loom.Sinking, loom.Counterbalance:
		return false, true
	case loom.Countermarch:
		return true, true
	}
	return true, false
}

// ByTreadle gives the shafts that each treadle is tied to, treadle 1 first.
func ByTreadle(d *draft.Draft) []Cords {
	raise, lower := Kinds(d.Shed)
	out := make([]Cords, len(d.Ties))
	for i, tie := range d.Ties {
		switch {
		case raise && lower:
			out[i] = Cords{Raises: tie.Tied, Lowers: tie.Lowered}
		case lower:
			out[i] = Cords{Lowers: tie.Tied}
		default:
			out[i] = Cords{Raises: tie.Tied}
		}
	}
	return out
}

// ByShaft gives the treadles that each shaft hangs from, shaft 1 first: the same cords
// from the other end.
func ByShaft(d *draft.Draft) []Cords {
	out := make([]Cords, d.Shafts)
	for i, c := range ByTreadle(d) {
		for shaft := 1; shaft <= d.Shafts; shaft++ {
			if c.Raises.Has(shaft) {
				out[shaft-1].Raises = out[shaft-1].Raises.With(i + 1)
			}
			if c.Lowers.Has(shaft) {
				out[shaft-1].Lowers = out[shaft-1].Lowers.With(i + 1)
			}
		}
	}
	return out
}

// Lifts gives the lifts of the picks that differ, of the shafts that ends are on, in
// the order in which they first come.
func Lifts(d *draft.Draft) []draft.Set {
	used, _ := d.Used()
	var out []draft.Set
	for _, up := range d.LiftPlan() {
		if up &= used; !slices.Contains(out, up) {
			out = append(out, up)
		}
	}
	return out
}

// TwoFooted reports whether a loom with so many treadles, 0 where that is not known,
// has fewer than the draft has lifts: then one foot cannot open them all, and treadles
// have to be pressed two at a time, by a two-footed (skeleton) tie-up. It gives the
// lifts. A table loom is worked by hand and needs none.
func TwoFooted(d *draft.Draft, treadles int) (lifts int, needed bool) {
	lifts = len(Lifts(d))
	return lifts, d.Shed != loom.Table && treadles > 0 && treadles < lifts
}
