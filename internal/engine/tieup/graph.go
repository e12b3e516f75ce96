package tieup

import (
	"slices"

	"sley/internal/trade/draft"
)

// graph is which treadles are not of one foot, by their numbers.
type graph [draft.MostTreadles + 1]draft.Set

func (g *graph) join(a, b int) {
	g[a] = g[a].With(b)
	g[b] = g[b].With(a)
}

// split puts treadles into two halves so that none joins one of its own; treadles are
// taken in the order given. Each connected part goes where it makes the halves more
// even, with its first treadle on the left where that makes no difference.
func (g *graph) split(treadles []int) (left, right draft.Set, ok bool) {
	for _, t := range treadles {
		if (left | right).Has(t) {
			continue
		}
		a, b := g.halves(t)
		if a&b != 0 {
			return 0, 0, false
		}
		if l, r := left.Len(), right.Len(); uneven(l+b.Len(), r+a.Len()) < uneven(l+a.Len(), r+b.Len()) {
			a, b = b, a
		}
		left, right = left|a, right|b
	}
	return left, right, true
}

func uneven(a, b int) int { return max(a-b, b-a) }

// halves gives what is reached from a treadle in an even and in an odd number of steps.
func (g *graph) halves(from int) (even, odd draft.Set) {
	even = draft.Of(from)
	for {
		e, o := even|g.beside(odd), odd|g.beside(even)
		if e == even && o == odd {
			return even, odd
		}
		even, odd = e, o
	}
}

// beside gives the treadles that are joined to any of a set.
func (g *graph) beside(set draft.Set) draft.Set {
	var out draft.Set
	for _, t := range set.List() {
		out |= g[t]
	}
	return out
}

// ring gives the shortest ring of an odd number of treadles, none where there is none.
// It is the shortest way from a treadle to itself in an odd number of steps, sought in
// breadth from each of them.
func (g *graph) ring(treadles []int) []int {
	var best []int
	for _, t := range treadles {
		if way := g.around(t); way != nil && (best == nil || len(way) < len(best)) {
			best = way
		}
	}
	return best
}

// place is a treadle and whether it was reached in an odd number of steps.
type place struct {
	treadle int
	odd     bool
}

func (g *graph) around(from int) []int {
	start, end := place{from, false}, place{from, true}
	came := map[place]place{start: start}
	for queue := []place{start}; len(queue) > 0; queue = queue[1:] {
		at := queue[0]
		for _, t := range g[at.treadle].List() {
			next := place{t, !at.odd}
			if _, seen := came[next]; !seen {
				came[next] = at
				queue = append(queue, next)
			}
		}
	}
	if _, reached := came[end]; !reached {
		return nil
	}
	var way []int
	for at := came[end]; ; at = came[at] {
		if way = append(way, at.treadle); at == start {
			slices.Reverse(way)
			return way
		}
	}
}
