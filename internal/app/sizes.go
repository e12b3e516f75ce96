package app

import (
	"slices"

	"sley/internal/engine/reckon"
	"sley/internal/trade/draft"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
)

// wovenWhole is every end and every pick of the first piece of a warp, as woven is, with the
// sizes of its threads. Where it is not known how it interlaces the list says so.
func wovenWhole(r *reckon.Result, list *problem.List) (*draft.Draft, []string) {
	d, names := woven(r, mostTable)
	if d == nil {
		list.Fail("draft.none", "draft", "", nil)
		return nil, nil
	}
	sized(d, names, r)
	return d, names
}

// sized says of a whole draft, whose palette is the yarns of those names, how thick its
// threads are, as far as their grists tell (Ashenhurst's diameters), and how far apart they
// lie: ends as they are sleyed, picks as they are wanted.
func sized(d *draft.Draft, names []string, r *reckon.Result) {
	thick := make([]qty.Length, len(names))
	for i, name := range names {
		if y, ok := r.Plan.YarnNamed(name); ok {
			thick[i] = lengthOf(qty.Inch.Rat(), y.Diameters())
		}
	}
	d.Warp.Thicks, d.Weft.Thicks = thickOf(thick, d.Warp.Colours), thickOf(thick, d.Weft.Colours)
	for _, s := range r.Stripes {
		apart := lengthOf(qty.Int(1), s.Density)
		d.Warp.Aparts = append(d.Warp.Aparts, slices.Repeat([]qty.Length{apart}, s.Ends.Count(qty.Nearest))...)
	}
	d.Warp.Aparts = d.Warp.Aparts[:min(len(d.Warp.Aparts), d.Ends())]
	if n, ok := r.Node("picks.wanted"); ok && n.Kind == reckon.Density {
		d.Weft.Apart = lengthOf(qty.Int(1), n.Is)
	}
}

// lengthOf is a length in nanometres shared by so many threads; 0 where there are none.
func lengthOf(long, threads qty.Rat) qty.Length {
	if threads.Sign() <= 0 {
		return 0
	}
	return qty.Length(long.Div(threads).Count(qty.Nearest))
}

// thickOf is how thick each thread is; nil where none is known.
func thickOf(thick []qty.Length, colours []int) []qty.Length {
	out := make([]qty.Length, len(colours))
	known := false
	for i, at := range colours {
		if at < len(thick) {
			out[i] = thick[at]
			known = known || thick[at] > 0
		}
	}
	if !known {
		return nil
	}
	return out
}
