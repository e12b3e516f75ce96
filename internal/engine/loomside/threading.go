package loomside

import (
	"cmp"
	"slices"

	"sley/internal/engine/dress"
	"sley/internal/trade/draft"
)

// The sizes of what is checked at once. Common practice, no source: about what a weaver
// holds in her head.
const (
	endsInGroup  = 24
	dentsInGroup = 10
	usualBout    = 60
)

// threading puts the ends into groups as the threading suits, from the side asked: a group
// is whole repeats, or an even part of a long one.
func (d dressing) threading(from Side) []Part {
	times, ok := d.r.Threadings()
	if !ok {
		return nil
	}
	t := d.r.Plan.Warp.Threading
	rows := dress.Threading(draft.ShaftsOf(t.Before()), draft.ShaftsOf(t.FillRuns()), draft.ShaftsOf(t.After()), times, endsInGroup)
	groups := joined(inOrder(rows))
	if from == Right {
		slices.Reverse(groups)
		for i := range groups {
			groups[i] = slices.Clone(groups[i])
			slices.Reverse(groups[i])
		}
	}
	return counted(groups, d.r.Plan.Shafts())
}

// inOrder is the shafts of each group, from left to right.
func inOrder(rows []dress.Threaded) [][]int {
	type group struct {
		after  int
		shafts []int
	}
	var all []group
	for _, row := range rows {
		shafts := slices.Repeat(row.Shafts, row.Times)
		for _, after := range row.After {
			all = append(all, group{after, shafts})
		}
	}
	slices.SortFunc(all, func(a, b group) int { return cmp.Compare(a.after, b.after) })
	out := make([][]int, len(all))
	for i, g := range all {
		out[i] = g.shafts
	}
	return out
}

// fewEnds is how many ends are too few for a group of their own: one that balances, or
// what is over at the end.
const fewEnds = 6

// joined puts groups of a few ends to their neighbours.
func joined(groups [][]int) [][]int {
	var out [][]int
	for i, g := range groups {
		last := len(out) - 1
		if last >= 0 && (len(g) < fewEnds || i == 1 && len(out[last]) < fewEnds) {
			out[last] = slices.Concat(out[last], g)
			continue
		}
		out = append(out, g)
	}
	return out
}

// counted gives each group the ends before and after it and the heddles it takes.
func counted(groups [][]int, shafts int) []Part {
	taken := make([]int, shafts)
	at := 0
	var out []Part
	for _, group := range groups {
		p := Part{From: at, To: at + len(group), Shafts: group, Ends: len(group), Heddles: make([]int, shafts)}
		for _, s := range group {
			p.Heddles[s-1]++
			taken[s-1]++
		}
		at = p.To
		p.Taken, p.Sum = slices.Clone(taken), at
		out = append(out, p)
	}
	return out
}

// knots puts the ends that are tied to those of the old warp into groups.
func (d dressing) knots(from Side) []Part {
	yarns := ofEnds(d.r.Stretches())
	if from == Right {
		slices.Reverse(yarns)
	}
	var out []Part
	for at := 0; at < len(yarns); {
		to := min(at+endsInGroup, len(yarns))
		out = append(out, Part{From: at, To: to, Ends: to - at, Sum: to, Yarns: runsOf(yarns[at:to])})
		at = to
	}
	return out
}

// ofEnds is the yarn of every end that is wound, from left to right.
func ofEnds(list []dress.Stretch) []string {
	var out []string
	for _, s := range list {
		out = append(out, slices.Repeat([]string{s.Yarn}, s.Ends())...)
	}
	return out
}

// runsOf writes neighbours alike as one.
func runsOf(yarns []string) []OfYarn {
	var out []OfYarn
	for _, y := range yarns {
		if n := len(out); n > 0 && out[n-1].Yarn == y {
			out[n-1].Count++
			continue
		}
		out = append(out, OfYarn{y, 1})
	}
	return out
}
