package draft

import (
	"slices"

	"sley/internal/trade/loom"
	"sley/internal/trade/qty"
)

// Edits are lists of places: thread i of the new draft is thread list[i] of the old
// one, or a new one where that is below 0. Colours and sizes go with their threads.

func times(n, k int) []int {
	var out []int
	for range k {
		out = append(out, upTo(n)...)
	}
	return out
}

func upTo(n int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = i
	}
	return out
}

func backwards(n int) []int {
	out := upTo(n)
	slices.Reverse(out)
	return out
}

func mirror(n int) []int {
	return append(upTo(n), backwards(max(n-1, 0))...)
}

func clamp(at, n int) int { return min(max(at, 0), n) }

func without(n, at, count int) []int {
	from := clamp(at, n)
	to := clamp(at+max(count, 0), n)
	return append(upTo(from), upTo(n)[max(from, to):]...)
}

func opened(n, at, count int) []int {
	at = clamp(at, n)
	return slices.Concat(upTo(at), slices.Repeat([]int{-1}, count), upTo(n)[at:])
}

// withEnds gives the draft with the ends of those places.
func (d *Draft) withEnds(list []int) *Draft {
	c := d.Clone()
	c.Threading = make([]int, len(list))
	for i, at := range list {
		if at >= 0 {
			c.Threading[i] = d.Threading[at]
		}
	}
	c.Warp.pick(&d.Warp, list)
	return c
}

// withPicks gives the draft with the picks of those places.
func (d *Draft) withPicks(list []int) *Draft {
	c := d.Clone()
	c.Treadling, c.Lifts = placed(d.Treadling, list), placed(d.Lifts, list)
	c.Weft.pick(&d.Weft, list)
	return c
}

func placed(of []Set, list []int) []Set {
	if len(of) == 0 {
		return nil
	}
	out := make([]Set, len(list))
	for i, at := range list {
		if at >= 0 && at < len(of) {
			out[i] = of[at]
		}
	}
	return out
}

// Picked gives the threads of those places, each with its colour and its sizes; a place
// below 0 is a new thread, which has those of all.
func (t *Threads) Picked(list []int) Threads {
	c := *t
	c.pick(t, list)
	return c
}

// pick gives threads the colours and sizes that those places have.
func (t *Threads) pick(of *Threads, list []int) {
	t.Colours, t.Thicks, t.Aparts = nil, nil, nil
	for _, at := range list {
		if len(of.Colours) > 0 {
			t.Colours = append(t.Colours, of.colourAt(at))
		}
		if len(of.Thicks) > 0 {
			t.Thicks = append(t.Thicks, sizeAt(of.Thicks, at))
		}
		if len(of.Aparts) > 0 {
			t.Aparts = append(t.Aparts, sizeAt(of.Aparts, at))
		}
	}
}

func (t *Threads) colourAt(at int) int {
	if at < 0 {
		return t.Colour
	}
	return t.ColourOf(at)
}

func sizeAt(list []qty.Length, at int) qty.Length {
	if at < 0 || at >= len(list) {
		return 0
	}
	return list[at]
}

// drawnBothWays reports whether treadles raise and lower: on a countermarch.
func (d *Draft) drawnBothWays() bool { return d.Shed == loom.Countermarch }
