package structure

import (
	"slices"

	"sley/internal/trade/weave"
)

// grouped finds plain weave and what comes of it when neighbours work as one.
func (p *pattern) grouped() (Name, bool) {
	if p.n != 2 || len(p.ups) != 2 {
		return Name{}, false
	}
	// Two classes each way that hang together are always plain weave of groups.
	ends, picks := groups(p.ends), groups(p.picks)
	found := Name{EndGroups: ends, PickGroups: picks}
	single := []int{1}
	switch ones, twos := slices.Equal(ends, single), slices.Equal(picks, single); {
	case ones && twos:
		found = Name{Kind: Plain}
	case ones:
		found.Kind = WarpRib
	case twos:
		found.Kind = WeftRib
	default:
		found.Kind = Basket
	}
	return found, true
}

// groups gives the sizes of the groups of neighbours that are alike in a repeat of
// two classes, as few as say all, from where the greatest come first.
func groups(repeat []int) []int {
	sizes := cycleRuns(repeat)
	sizes = sizes[:weave.Period(sizes, true)]
	return greatest(sizes, 1)
}

// cycleRuns gives the lengths of the runs of equal numbers round a list, from its
// first change on.
func cycleRuns(list []int) []int {
	n := len(list)
	from := 0
	for from < n-1 && list[from] == list[(from+n-1)%n] {
		from++
	}
	var out []int
	for i := range n {
		at := (from + i) % n
		if i == 0 || list[at] != list[(at+n-1)%n] {
			out = append(out, 0)
		}
		out[len(out)-1]++
	}
	return out
}

// greatest gives the list begun at a place that step divides, and read either way,
// so that its numbers come to the greatest from the first on. Read backwards a list
// begins with the same number.
func greatest(list []int, step int) []int {
	n := len(list)
	back := make([]int, n)
	for i := range back {
		back[i] = list[(n-i)%n]
	}
	best := list
	for _, way := range [][]int{list, back} {
		for from := 0; from < n; from += step {
			if turned := slices.Concat(way[from:], way[:from]); slices.Compare(turned, best) > 0 {
				best = turned
			}
		}
	}
	return best
}
