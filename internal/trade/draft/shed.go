package draft

import "sley/internal/trade/loom"

// Shed is what the pressed treadles do to the shafts.
type Shed struct {
	Up     Set // raised, or left up: their ends are on top
	Locked Set // drawn both ways at once on a countermarch: they do not move
	Free   Set // tied neither way on a countermarch: they hang where they like
}

// Open gives the shed of pressed treadles. On a rising shed the raised shafts
// unite; on a sinking shed and a counterbalance loom the lowered ones do, and all
// others are up; on a countermarch each shaft is drawn up or down, and one that is
// drawn both ways, or neither, is not counted as up.
func (d *Draft) Open(pressed Set) Shed {
	tied, lowered := Set(0), Set(0)
	for i, tie := range d.Ties {
		if pressed.Has(i + 1) {
			tied |= tie.Tied
			lowered |= tie.Lowered
		}
	}
	all := UpTo(d.Shafts)
	switch d.Shed {
	case loom.Sinking, loom.Counterbalance:
		return Shed{Up: all &^ tied}
	case loom.Countermarch:
		return Shed{Up: tied &^ lowered, Locked: tied & lowered, Free: all &^ (tied | lowered)}
	}
	return Shed{Up: tied}
}

// TieFor gives what a treadle is tied to so that it alone puts those shafts up.
func TieFor(shed loom.Shed, up Set, shafts int) Tie {
	down := UpTo(shafts) &^ up
	switch shed {
	case loom.Sinking, loom.Counterbalance:
		return Tie{Tied: down}
	case loom.Countermarch:
		return Tie{Tied: up, Lowered: down}
	}
	return Tie{Tied: up}
}

// Opening is how well a shed opens on a kind of loom.
type Opening int

// The openings, the best first.
const (
	Clean  Opening = iota // evenly
	Uneven                // some shafts are drawn further than others, or hang between
	Shut                  // not at all: all shafts are up, or none is
)

// Opens says how well the shed of those shafts opens. A counterbalance loom hangs
// its shafts in opposed pairs, so that what rises balances what sinks: as many up as
// down open cleanly, one against three does not. Every other loom opens any shed.
// Common practice, no source.
func Opens(shed loom.Shed, up Set, shafts int) Opening {
	n := (up & UpTo(shafts)).Len()
	switch {
	case n == 0 || n == shafts:
		return Shut
	case shed == loom.Counterbalance && 2*n != shafts:
		return Uneven
	}
	return Clean
}

// LiftPlan gives the shafts that are up at each pick.
func (d *Draft) LiftPlan() []Set {
	if !d.Treadled() {
		out := make([]Set, len(d.Lifts))
		copy(out, d.Lifts)
		return out
	}
	out := make([]Set, len(d.Treadling))
	opened := map[Set]Set{}
	for i, pressed := range d.Treadling {
		up, ok := opened[pressed]
		if !ok {
			up = d.Open(pressed).Up
			opened[pressed] = up
		}
		out[i] = up
	}
	return out
}

// WithoutTreadles gives the draft with its lift plan alone, as a table loom is
// worked.
func (d *Draft) WithoutTreadles() *Draft {
	c := d.Clone()
	c.Lifts = d.LiftPlan()
	c.Ties, c.Treadling, c.Treadles = nil, nil, 0
	return c
}

// WithTreadles gives the draft worked with one foot: a treadle for each lift, which
// is the fewest that one foot can do with, numbered as the lifts first come. The
// shed says how they are tied. It reports false when that takes more than
// MostTreadles; the draft is then nil.
func (d *Draft) WithTreadles(shed loom.Shed) (*Draft, bool) {
	lifts := d.LiftPlan()
	c := d.Clone()
	c.Lifts, c.Ties, c.Treadling, c.Shed = nil, nil, make([]Set, len(lifts)), shed
	at := map[Set]int{}
	for i, up := range lifts {
		if at[up] == 0 {
			if len(c.Ties) == MostTreadles {
				return nil, false
			}
			c.Ties = append(c.Ties, TieFor(shed, up, d.Shafts))
			at[up] = len(c.Ties)
		}
		c.Treadling[i] = Of(at[up])
	}
	c.Treadles = len(c.Ties)
	return c, true
}

// OnLoom gives the draft tied anew for another kind of loom, treadle by treadle, so
// that each treadle alone puts up what it put up before. A pick that presses several
// treadles may then open another shed: reports whether all picks stay the same.
func (d *Draft) OnLoom(shed loom.Shed) (*Draft, bool) {
	c := d.Clone()
	c.Shed = shed
	for i := range c.Ties {
		c.Ties[i] = TieFor(shed, d.Open(Of(i+1)).Up, d.Shafts)
	}
	same := true
	for _, pressed := range d.Treadling {
		same = same && c.Open(pressed).Up == d.Open(pressed).Up
	}
	return c, same
}
