package structure

import (
	"slices"

	"sley/internal/trade/weave"
)

// Layer is threads that hold one another, or threads that lie loose. Layers lie one
// on another: wherever threads of two layers cross, that of the upper one is on top.
type Layer struct {
	Ends, Picks []int // from the first
}

// Loose reports whether nothing holds the threads of a layer: they are ends alone,
// or picks alone, and each of them can be lifted off or falls off.
func (l *Layer) Loose() bool { return len(l.Ends) == 0 || len(l.Picks) == 0 }

// HangsTogether reports whether a weave is one cloth: its threads cannot be parted
// so that some lie on top of all the others wherever they cross. A repeat hangs
// together just when one repeat of it does. A weave without ends, or without picks,
// is no cloth.
func HangsTogether(w *weave.Weave) bool {
	c := sortThreads(w)
	return len(c.cuts()) == 2
}

// cut parts the classes of threads: above it lie so many ends, of those sorted from
// the one most on top, and so many picks, sorted likewise.
type cut struct{ ends, picks int }

// cuts gives all ways to part the threads into an upper and a lower part, from above
// everything to below everything; a cloth that hangs together has only these two.
//
// Let r be the sums of the rows from the largest and c those of the columns. For
// every s and t, r1+…+rs ≤ st + c(t+1)+…+cn, since the ups of s rows are at most
// those inside t columns and all those of the other columns. The two are equal just
// where the s picks lie below the t ends, and the other ends below the other picks:
// that is a cut, and every cut shows so. (A criterion of this kind is Clapham's,
// "When a fabric hangs together", Bulletin of the London Mathematical Society 12,
// 1980, from memory; the proof here was worked out anew.) The right side is least,
// Σ min(s, c), at t = #{c > s} and t = #{c ≥ s}, so that two are tried for each s.
// Threads that do the same have been taken out: then none on one side of a cut has
// the same sum as one on the other.
func (c *cloth) cuts() []cut {
	m, n := c.block.Picks(), c.block.Ends()
	if m == 0 || n == 0 {
		return nil
	}
	rows := bySum(sums(c.block), n)
	slices.Reverse(rows)
	over := reaching(sums(c.turned), m) // over[s] ends are on top of s picks or more
	var out []cut
	ones, least := 0, 0
	for s := 0; s <= m; s++ {
		if s > 0 {
			ones += c.block.UpsOfPick(rows[s-1])
			least += over[s]
		}
		if ones != least {
			continue
		}
		out = append(out, cut{over[s], m - s})
		if over[s+1] != over[s] {
			out = append(out, cut{over[s+1], m - s})
		}
	}
	slices.Reverse(out)
	return out
}

// sums gives the ups of each row.
func sums(w *weave.Weave) []int {
	out := make([]int, w.Picks())
	for i := range out {
		out[i] = w.UpsOfPick(i)
	}
	return out
}

// reaching gives, for each s from 0 to most+1, how many sums are s or more.
func reaching(sums []int, most int) []int {
	out := make([]int, most+2)
	for _, sum := range sums {
		out[sum]++
	}
	for s := most; s >= 0; s-- {
		out[s] += out[s+1]
	}
	return out
}

// bySum gives the places of a list sorted from its least, equal ones in their order;
// none is above most.
func bySum(sums []int, most int) []int {
	next := make([]int, most+2)
	for _, sum := range sums {
		next[sum+1]++
	}
	for s := range most + 1 {
		next[s+1] += next[s]
	}
	out := make([]int, len(sums))
	for i, sum := range sums {
		out[next[sum]] = i
		next[sum]++
	}
	return out
}

// layers gives the layers from the top.
func (c *cloth) layers() []Layer {
	cuts := c.cuts()
	if len(cuts) == 0 {
		return nil
	}
	ends := bySum(sums(c.turned), c.block.Picks())
	slices.Reverse(ends)
	picks := bySum(sums(c.block), c.block.Ends())
	endAt, pickAt := make([]int, len(ends)), make([]int, len(picks))
	for k := range cuts[1:] {
		for _, class := range ends[cuts[k].ends:cuts[k+1].ends] {
			endAt[class] = k
		}
		for _, class := range picks[cuts[k].picks:cuts[k+1].picks] {
			pickAt[class] = k
		}
	}
	out := make([]Layer, len(cuts)-1)
	for end, class := range c.ends.Class {
		layer := &out[endAt[class]]
		layer.Ends = append(layer.Ends, end)
	}
	for pick, class := range c.picks.Class {
		layer := &out[pickAt[class]]
		layer.Picks = append(layer.Picks, pick)
	}
	return out
}
