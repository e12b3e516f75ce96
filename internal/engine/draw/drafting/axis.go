package drafting

import (
	"slices"

	"sley/internal/trade/draft"
	"sley/internal/trade/qty"
)

// axis is where threads lie across the drawing, in mm from the first of it on; its
// order is that of the page, not of the draft.
type axis struct {
	edges []float64 // one more than threads
	thick []float64 // of each thread within its place, as a share of it; nil: all of it
}

func (a axis) n() int                    { return len(a.edges) - 1 }
func (a axis) long(from, to int) float64 { return a.edges[to] - a.edges[from] }

// even is threads all as far apart.
func even(n int, cell float64) axis {
	a := axis{edges: make([]float64, n+1)}
	for i := range a.edges {
		a.edges[i] = float64(i) * cell
	}
	return a
}

// places are how far apart threads stand, in nanometres; 0 is unsaid.
func places(t *draft.Threads, n int) []qty.Length {
	out := make([]qty.Length, n)
	for i := range out {
		out[i] = max(t.ApartOf(i), 0)
		if out[i] == 0 {
			out[i] = max(t.ThickOf(i), 0)
		}
	}
	return out
}

// mean is the mean of what is said, 0 where nothing is.
func mean(lists ...[]qty.Length) float64 {
	sum, n := 0.0, 0
	for _, list := range lists {
		for _, v := range list {
			if v > 0 {
				sum, n = sum+float64(v), n+1
			}
		}
	}
	if n == 0 {
		return 0
	}
	return sum / float64(n)
}

// thinnest is the least that a thread is drawn of the mean: a place that is narrower
// could not be read.
const thinnest = 0.3

// scaled is the axes of warp and weft to one scale, on which the mean of all places
// is cell mm. A thread that says nothing is as its fellows are, or as all are.
func scaled(d *draft.Draft, cell float64) (ends, picks axis) {
	warp, weft := places(&d.Warp, d.Ends()), places(&d.Weft, d.Picks())
	all := mean(warp, weft)
	if all == 0 {
		return even(d.Ends(), cell), even(d.Picks(), cell)
	}
	return along(&d.Warp, warp, all, cell), along(&d.Weft, weft, all, cell)
}

func along(t *draft.Threads, list []qty.Length, all, cell float64) axis {
	own := mean(list)
	if own == 0 {
		own = all
	}
	a := axis{edges: []float64{0}}
	for i, v := range list {
		place := float64(v)
		if v == 0 {
			place = own
		}
		thick := 1.0
		if t.ThickOf(i) > 0 {
			thick = min(float64(t.ThickOf(i))/place, 1)
		}
		a.edges = append(a.edges, a.edges[i]+cell*max(place/all, thinnest))
		a.thick = append(a.thick, thick)
	}
	return a
}

// reversed is the axis from its other end.
func (a axis) reversed() axis {
	out := axis{edges: make([]float64, len(a.edges)), thick: slices.Clone(a.thick)}
	whole := a.edges[len(a.edges)-1]
	for i, e := range a.edges {
		out.edges[len(a.edges)-1-i] = whole - e
	}
	slices.Reverse(out.thick)
	return out
}
