package draft

import "slices"

// RepeatEnds gives the draft with its ends n times over; n below 1 leaves none.
func (d *Draft) RepeatEnds(n int) *Draft { return d.withEnds(times(d.Ends(), n)) }

// RepeatPicks gives the draft with its picks n times over.
func (d *Draft) RepeatPicks(n int) *Draft { return d.withPicks(times(d.Picks(), n)) }

// MirrorEnds gives the draft with its ends followed by the same backwards, the last
// of them only once: a point.
func (d *Draft) MirrorEnds() *Draft { return d.withEnds(mirror(d.Ends())) }

// MirrorPicks gives the draft with its picks followed by the same backwards, the
// last of them only once.
func (d *Draft) MirrorPicks() *Draft { return d.withPicks(mirror(d.Picks())) }

// ReverseEnds gives the draft with its ends from the right.
func (d *Draft) ReverseEnds() *Draft { return d.withEnds(backwards(d.Ends())) }

// ReversePicks gives the draft with its picks from the last.
func (d *Draft) ReversePicks() *Draft { return d.withPicks(backwards(d.Picks())) }

// DeleteEnds gives the draft without n ends from the end at on; what does not lie in
// the draft is left out of account.
func (d *Draft) DeleteEnds(at, n int) *Draft { return d.withEnds(without(d.Ends(), at, n)) }

// DeletePicks gives the draft without n picks from the pick at on.
func (d *Draft) DeletePicks(at, n int) *Draft { return d.withPicks(without(d.Picks(), at, n)) }

// InsertEnds gives the draft with ends on those shafts before the end at; they have
// the colour and the sizes of all threads.
func (d *Draft) InsertEnds(at int, shafts ...int) *Draft {
	c := d.withEnds(opened(d.Ends(), at, len(shafts)))
	copy(c.Threading[clamp(at, d.Ends()):], shafts)
	return c
}

// InsertPicks gives the draft with picks before the pick at: sets of treadles where
// it has treadles, lifts where not.
func (d *Draft) InsertPicks(at int, sets ...Set) *Draft {
	c := d.withPicks(opened(d.Picks(), at, len(sets)))
	if d.Treadled() {
		copy(c.Treadling[clamp(at, d.Picks()):], sets)
		c.Lifts = nil
		return c
	}
	copy(c.Lifts[clamp(at, d.Picks()):], sets)
	return c
}

// AdvanceEnds gives the ends n times over, each time by shafts further, round the
// shafts of the draft: an advancing threading. Ends in no heddle stay in none.
func (d *Draft) AdvanceEnds(n, by int) *Draft {
	c := d.RepeatEnds(n)
	for i, shaft := range c.Threading {
		c.Threading[i] = further(shaft, i/max(d.Ends(), 1)*by, d.Shafts)
	}
	return c
}

// AdvancePicks gives the picks n times over, each time by treadles further, round
// the treadles of the draft; where it has no treadles, by shafts further.
func (d *Draft) AdvancePicks(n, by int) *Draft {
	c := d.RepeatPicks(n)
	each := max(d.Picks(), 1)
	for i, pressed := range c.Treadling {
		c.Treadling[i] = pressed.further(i/each*by, d.Treadles)
	}
	for i, up := range c.Lifts {
		c.Lifts[i] = up.further(i/each*by, d.Shafts)
	}
	if d.Treadled() {
		c.Lifts = nil
	}
	return c
}

// ShiftShafts gives the draft with every end by shafts further, round the shafts.
func (d *Draft) ShiftShafts(by int) *Draft {
	c := d.Clone()
	for i, shaft := range c.Threading {
		c.Threading[i] = further(shaft, by, d.Shafts)
	}
	return c
}

func further(n, by, of int) int {
	if n < 1 || of < 1 {
		return n
	}
	return ((n-1+by)%of+of)%of + 1
}

func (s Set) further(by, of int) Set {
	var out Set
	for _, n := range s.List() {
		out = out.With(further(n, by, of))
	}
	return out
}

// AsDrawnIn gives the draft treadled as it is threaded: a pick for each end, by the
// treadle of the end's shaft; ends in no heddle give none. The picks have the
// colours of the ends that they follow. It reports false where a shaft has no
// treadle of its number; the draft is then nil.
func (d *Draft) AsDrawnIn() (*Draft, bool) {
	c := d.Clone()
	c.Lifts, c.Treadling, c.Weft = nil, nil, d.Warp.clone()
	c.Weft.Colours, c.Weft.Thicks, c.Weft.Aparts = nil, nil, nil
	for end, shaft := range d.Threading {
		if shaft > len(d.Ties) {
			return nil, false
		}
		if shaft > 0 {
			c.Treadling = append(c.Treadling, Of(shaft))
			c.Weft.Colours = append(c.Weft.Colours, d.Warp.ColourOf(end))
		}
	}
	return c, true
}

// OtherFace gives the draft that weaves the same cloth with its other face up: at
// every pick the other shafts are up.
func (d *Draft) OtherFace() *Draft {
	c := d.Clone()
	all := UpTo(d.Shafts)
	for i := range c.Lifts {
		c.Lifts[i] = all &^ c.Lifts[i]
	}
	for i, tie := range c.Ties {
		if c.Ties[i] = (Tie{Tied: tie.Lowered, Lowered: tie.Tied}); !d.drawnBothWays() {
			c.Ties[i] = Tie{Tied: all &^ tie.Tied}
		}
	}
	if d.Treadled() && slices.ContainsFunc(d.Treadling, func(s Set) bool { return s.Len() != 1 }) {
		return d.otherLifts()
	}
	return c
}

// otherLifts is the other face where picks press several treadles: they unite, and
// the other shafts are no union of other treadles. A treadle for each lift is.
func (d *Draft) otherLifts() *Draft {
	c := d.WithoutTreadles()
	for i := range c.Lifts {
		c.Lifts[i] = UpTo(d.Shafts) &^ c.Lifts[i]
	}
	if t, ok := c.WithTreadles(d.Shed); ok {
		return t
	}
	return c
}

// First gives the draft with no more than its first ends and picks.
func (d *Draft) First(ends, picks int) *Draft {
	if d.Ends() <= ends && d.Picks() <= picks {
		return d
	}
	return d.DeleteEnds(ends, d.Ends()).DeletePicks(picks, d.Picks())
}
