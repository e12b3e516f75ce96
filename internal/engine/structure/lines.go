package structure

import (
	"slices"

	"sley/internal/trade/weave"
)

// Lines are the threads of one way, sorted by what they do: threads that do the
// same share a class, and what is counted is counted once for each.
type Lines struct {
	Class []int // of each thread, from 0 as they first come
	First []int // of each class, its first thread
	Times []int // of each class, how many threads

	way     Way
	cells   *weave.Weave // a row for each class: its crossings, bounded as the cloth is
	longest [][2]int     // float of each class, where the warp is not up and where it is
}

// Way is warp or weft.
type Way int

// The two ways of a cloth.
const (
	Warp Way = iota
	Weft
)

// Across is the other way.
func (w Way) Across() Way { return 1 - w }

// Threads gives how many threads there are.
func (l *Lines) Threads() int { return len(l.Class) }

// Distinct gives how many of them differ.
func (l *Lines) Distinct() int { return len(l.First) }

// sorted gives lines of those classes, n of them, without their cells.
func sorted(way Way, class []int, n int) Lines {
	l := Lines{Class: class, First: make([]int, n), Times: make([]int, n), way: way}
	for i, c := range slices.Backward(class) {
		l.First[c] = i
		l.Times[c]++
	}
	return l
}

// cloth is a weave with its threads sorted. Block has a pick for each class of picks
// and an end for each class of ends, and turned is it with rows and columns
// exchanged: whatever does not ask which threads are neighbours needs no more.
type cloth struct {
	ends, picks   Lines
	block, turned *weave.Weave
}

func sortThreads(w *weave.Weave) cloth {
	class, n := w.PickClasses()
	c := cloth{picks: sorted(Weft, class, n)}
	c.picks.cells = rowsAt(w, c.picks.First)
	if c.picks.cells == w {
		c.picks.cells = w.Clone() // w may change later, what was found of it may not
	}

	// Only picks that differ tell ends apart.
	columns := c.picks.cells.Transpose()
	class, n = columns.PickClasses()
	c.ends = sorted(Warp, class, n)
	c.turned = rowsAt(columns, c.ends.First)
	c.block = c.turned.Transpose()
	c.ends.cells = rowsAt(c.block, c.picks.Class).Transpose()
	return c
}

// rowsAt gives a weave of those rows of w, in that order; w itself where it is those.
func rowsAt(w *weave.Weave, rows []int) *weave.Weave {
	if isUpTo(rows, w.Picks()) {
		return w
	}
	out := weave.New(len(rows), w.Ends())
	out.Bounded = w.Bounded
	for i, at := range rows {
		copy(out.Row(i), w.Row(at))
	}
	return out
}

// isUpTo reports whether a list is 0, 1, … n-1.
func isUpTo(list []int, n int) bool {
	if len(list) != n {
		return false
	}
	for i, at := range list {
		if i != at {
			return false
		}
	}
	return true
}
