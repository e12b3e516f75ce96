package strokes

import (
	"fmt"
	"math/bits"
	"strconv"

	"sley/internal/trade/draft"
	"sley/internal/trade/problem"
)

// cells makes the drawdown what the weaver wants it to be, and finds the threading and
// the lifts that weave just that.
//
// Ends on one shaft are equal columns, so an end whose column changes must leave those
// that stay. It goes to a shaft whose ends it is like; with others that became the same it
// keeps a shaft that all of its ends left, or takes one that is free, or a new one.
// Ends and picks of which no crossing changed stay as they are, and so an edit takes no
// more shafts than there are columns that differ, if no two shafts were alike before.
func (s *stroke) cells(a *Act) {
	e := newEdit(s.Draft)
	for i, c := range a.Cells {
		if c.Pick < 0 || c.End < 0 || c.Pick >= s.Picks() || c.End >= s.Ends() {
			read := fmt.Sprintf("%d, %d", c.Pick, c.End)
			s.fail("stroke.cell", "cells["+strconv.Itoa(i)+"]", read, problem.Args{"picks": s.Picks(), "ends": s.Ends()})
			continue
		}
		e.want(c, a.Up)
	}
	if s.failed() || len(e.changed) == 0 {
		return
	}
	if shafts := e.rethread(); shafts > draft.MostShafts {
		s.fail("stroke.too-many-shafts", "cells", strconv.Itoa(shafts), problem.Args{"most": draft.MostShafts})
		return
	}
	s.take(e)
}

// take lays what an edit found, if it is within what there can be.
func (s *stroke) take(e *edit) {
	d := e.draft()
	if s.Treadled() {
		if n := e.retreadle(d); n > draft.MostTreadles {
			s.fail("stroke.too-many-treadles", "cells", strconv.Itoa(n), problem.Args{"most": draft.MostTreadles})
			return
		}
		if has := treadles(s.Draft); d.Treadles > has {
			s.warn("stroke.more-treadles", "cells", strconv.Itoa(d.Treadles), problem.Args{"treadles": has, "needs": d.Treadles})
		}
	}
	if d.Shafts > s.Shafts {
		s.warn("stroke.more-shafts", "cells", strconv.Itoa(d.Shafts), problem.Args{"shafts": s.Shafts, "needs": d.Shafts})
	}
	s.Draft = d
}

// column is a bit for each pick: whether an end is on top.
type column []uint64

func (c column) has(pick int) bool { return c[pick/64]>>(pick%64)&1 == 1 }
func (c column) flip(pick int)     { c[pick/64] ^= 1 << (pick % 64) }

// key is a column as a key of a map.
func (c column) key() string {
	out := make([]byte, 0, 8*len(c))
	for _, word := range c {
		for range 8 {
			out = append(out, byte(word))
			word >>= 8
		}
	}
	return string(out)
}

// edit is a drawdown being changed.
type edit struct {
	was       *draft.Draft
	lifts     []draft.Set
	columns   [draft.MostShafts + 1]column // of each shaft, as it was; of 0 that of ends in no heddle
	flips     map[int]column               // of each end that changes, where it does
	changed   []int                        // those ends, as they came
	threading []int
	moves     []move
}

// move is a column that ends go to a shaft with: the shaft, the column, and the shaft
// that one of its ends was on.
type move struct {
	to, from int
	col      column
	ends     []int
}

func newEdit(d *draft.Draft) *edit {
	e := &edit{was: d, lifts: d.LiftPlan(), flips: map[int]column{}}
	n := (len(e.lifts) + 63) / 64
	room := make(column, n*len(e.columns))
	for shaft := range e.columns {
		e.columns[shaft] = room[shaft*n : (shaft+1)*n : (shaft+1)*n]
	}
	for pick, up := range e.lifts {
		for left := uint64(up); left != 0; left &= left - 1 {
			e.columns[bits.TrailingZeros64(left)+1].flip(pick)
		}
	}
	return e
}

// shaftOf gives the shaft an end was on, 0 for one that there cannot be.
func (e *edit) shaftOf(end int) int {
	if shaft := e.was.Threading[end]; shaft >= 0 && shaft <= draft.MostShafts {
		return shaft
	}
	return 0
}

// want puts one thread on top of the other, if it is not.
func (e *edit) want(c Cell, up bool) {
	if e.columns[e.shaftOf(c.End)].has(c.Pick) == up {
		return
	}
	flips, ok := e.flips[c.End]
	if !ok {
		flips = make(column, len(e.columns[0]))
		e.flips[c.End] = flips
		e.changed = append(e.changed, c.End)
	}
	if !flips.has(c.Pick) {
		flips.flip(c.Pick)
	}
}

// columnOf is the column that an end comes to have.
func (e *edit) columnOf(end int) column {
	out := make(column, len(e.columns[0]))
	flips := e.flips[end]
	for k, word := range e.columns[e.shaftOf(end)] {
		out[k] = word ^ flips[k]
	}
	return out
}
