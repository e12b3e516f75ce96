package strokes

import (
	"slices"

	"sley/internal/trade/draft"
	"sley/internal/trade/qty"
)

// form is how a part is read from a draft and laid into one.
type form struct {
	of  func(*draft.Draft) []Value
	lay func(*draft.Draft, []Value)
}

// forms are those of all parts, in the order they are laid.
var forms = []struct {
	part Part
	form
}{
	{Threading, form{threadingOf, layThreading}},
	{Ties, form{tiesOf, layTies}},
	{Lowered, form{loweredOf, layLowered}},
	{Treadling, form{func(d *draft.Draft) []Value { return Sets(d.Treadling...) }, layTreadling}},
	{Lifts, form{liftsOf, layLifts}},
	{WarpColours, coloured(warpOf, (*draft.Draft).Ends)},
	{WeftColours, coloured(weftOf, (*draft.Draft).Picks)},
	{Palette, form{paletteOf, layPalette}},
	{WarpThick, sized(warpOf, (*draft.Draft).Ends, thickness)},
	{WarpApart, sized(warpOf, (*draft.Draft).Ends, spacing)},
	{WeftThick, sized(weftOf, (*draft.Draft).Picks, thickness)},
	{WeftApart, sized(weftOf, (*draft.Draft).Picks, spacing)},
}

// Parts lists all parts, sizes last.
func Parts() []Part {
	var out []Part
	for _, f := range forms {
		out = append(out, f.part)
	}
	return out
}

// Values gives the entries of a part: of the ties one for each treadle, of the colours
// one for each thread. It gives none of a part that there is not.
func Values(d *draft.Draft, part Part) []Value {
	for _, f := range forms {
		if f.part == part {
			return f.of(d)
		}
	}
	return nil
}

func warpOf(d *draft.Draft) *draft.Threads { return &d.Warp }
func weftOf(d *draft.Draft) *draft.Threads { return &d.Weft }

func threadingOf(d *draft.Draft) []Value { return Numbers(d.Threading...) }

func layThreading(d *draft.Draft, list []Value) {
	d.Threading = make([]int, len(list))
	for i, v := range list {
		d.Threading[i] = int(v)
	}
}

// treadles is how many treadles a draft has, those with ties beyond its number among them.
func treadles(d *draft.Draft) int { return max(d.Treadles, len(d.Ties)) }

func tiesOf(d *draft.Draft) []Value {
	out := make([]Value, treadles(d))
	for i, tie := range d.Ties {
		out[i] = Value(tie.Tied)
	}
	return out
}

func loweredOf(d *draft.Draft) []Value {
	out := make([]Value, treadles(d))
	for i, tie := range d.Ties {
		out[i] = Value(tie.Lowered)
	}
	return out
}

// layTies lays one tie for each treadle, of which there then are so many.
func layTies(d *draft.Draft, list []Value) {
	ties := make([]draft.Tie, len(list))
	copy(ties, d.Ties)
	for i, v := range list {
		ties[i].Tied = draft.Set(v)
	}
	d.Ties, d.Treadles = ties, len(ties)
	forgetLifts(d)
}

func layLowered(d *draft.Draft, list []Value) {
	ties := make([]draft.Tie, max(len(list), len(d.Ties)))
	copy(ties, d.Ties)
	for i, v := range list {
		ties[i].Lowered = draft.Set(v)
	}
	d.Ties = ties
	forgetLifts(d)
}

func sets(list []Value) []draft.Set {
	if len(list) == 0 {
		return nil
	}
	out := make([]draft.Set, len(list))
	for i, v := range list {
		out[i] = draft.Set(v)
	}
	return out
}

func layTreadling(d *draft.Draft, list []Value) {
	forgetLifts(d)
	d.Treadling = sets(list)
}

// forgetLifts leaves out a lift plan that stands beside a treadling, and says what the
// treadles did before they changed.
func forgetLifts(d *draft.Draft) {
	if d.Treadled() {
		d.Lifts = nil
	}
}

// liftsOf gives none where the draft is treadled: the treadles say them.
func liftsOf(d *draft.Draft) []Value {
	if d.Treadled() {
		return nil
	}
	return Sets(d.Lifts...)
}

func layLifts(d *draft.Draft, list []Value) { d.Lifts = sets(list) }

func coloured(threads func(*draft.Draft) *draft.Threads, number func(*draft.Draft) int) form {
	return form{
		of: func(d *draft.Draft) []Value {
			out := make([]Value, number(d))
			for i := range out {
				out[i] = Value(threads(d).ColourOf(i))
			}
			return out
		},
		lay: func(d *draft.Draft, list []Value) {
			threads(d).Colours = make([]int, len(list))
			for i, v := range list {
				threads(d).Colours[i] = int(v)
			}
		},
	}
}

func paletteOf(d *draft.Draft) []Value {
	out := make([]Value, len(d.Palette))
	for i, c := range d.Palette {
		out[i] = Value(c.R)<<16 | Value(c.G)<<8 | Value(c.B)
	}
	return out
}

func layPalette(d *draft.Draft, list []Value) {
	d.Palette = make([]draft.Colour, len(list))
	for i, v := range list {
		d.Palette[i] = draft.Colour{R: uint8(v >> 16), G: uint8(v >> 8), B: uint8(v)}
	}
}

// size is one of the two sizes of threads.
type size func(t *draft.Threads) (each *[]qty.Length, all qty.Length, of func(int) qty.Length)

func thickness(t *draft.Threads) (*[]qty.Length, qty.Length, func(int) qty.Length) {
	return &t.Thicks, t.Thick, t.ThickOf
}

func spacing(t *draft.Threads) (*[]qty.Length, qty.Length, func(int) qty.Length) {
	return &t.Aparts, t.Apart, t.ApartOf
}

func sized(threads func(*draft.Draft) *draft.Threads, number func(*draft.Draft) int, of size) form {
	return form{
		of: func(d *draft.Draft) []Value {
			each, all, one := of(threads(d))
			if all == 0 && !slices.ContainsFunc(*each, func(l qty.Length) bool { return l != 0 }) {
				return nil
			}
			out := make([]Value, number(d))
			for i := range out {
				out[i] = Value(one(i))
			}
			return out
		},
		lay: func(d *draft.Draft, list []Value) {
			each, _, _ := of(threads(d))
			*each = make([]qty.Length, len(list))
			for i, v := range list {
				(*each)[i] = qty.Length(v) // it was nanometres before
			}
		},
	}
}
