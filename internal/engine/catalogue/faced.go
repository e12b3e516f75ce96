package catalogue

import (
	"slices"

	"sley/internal/trade/draft"
)

// faced are weft-faced: the ends stand apart and the weft is beaten until it covers
// them.
func faced() []*Entry {
	return []*Entry{
		{
			ID: "weft-faced-plain", Family: Faced, Source: memory, Sett: WeftFaced, Params: []Param{count("picks", 1, 12, 4)},
			make: weftFaced,
		},
		{
			ID: "krokbragd", Family: Faced, Source: memory, Sett: WeftFaced, Params: []Param{count("times", 1, 12, 4)},
			make: krokbragd,
		},
		{
			ID: "boundweave", Family: Faced, Source: memory, Sett: WeftFaced, Params: []Param{count("times", 1, 12, 4)},
			make: boundweave,
		},
		{
			ID: "weft-faced-twill", Family: Faced, Source: memory, Sett: WeftFaced, Params: []Param{over("2/2"), hand},
			make: func(m *making) *draft.Draft { return m.twilled(straight, straight) },
		},
	}
}

// weftFaced is plain weave with bands of two colours.
func weftFaced(m *making) *draft.Draft {
	n := 2 * m.count("picks")
	d := drawn([]int{0, 1}, []draft.Set{draft.Of(1), draft.Of(2)}, slices.Repeat([]int{0, 1}, n))
	d.Palette = slices.Clone(twoColours)
	d.Weft.Colours = append(each([]int{0}, n), each([]int{1}, n)...)
	return d
}

// krokbragd is on a point of three shafts. Each of three picks covers the ends of one
// shaft and shows its colour there.
func krokbragd(m *making) *draft.Draft {
	times := m.count("times")
	ties := []draft.Set{draft.Of(2, 3), draft.Of(1, 3), draft.Of(1, 2)}
	d := drawn([]int{0, 1, 2, 1}, ties, slices.Repeat([]int{0, 1, 2}, times))
	d.Palette = slices.Clone(threeColours)
	d.Weft.Colours = slices.Repeat([]int{0, 1, 2}, times)
	return d
}

// boundweave is on the draw of rosepath. Each shed of a 2/2 twill is followed by the
// opposite one in the other colour.
func boundweave(m *making) *draft.Draft {
	ties := []draft.Set{draft.Of(1, 2), draft.Of(3, 4), draft.Of(2, 3), draft.Of(1, 4)}
	var picks []int
	for _, pair := range [][]int{{0, 1}, {2, 3}, {1, 0}, {3, 2}} {
		picks = append(picks, slices.Repeat(pair, m.count("times"))...)
	}
	d := drawn(rosy(4), ties, picks)
	d.Palette = slices.Clone(twoColours)
	d.Weft.Colours = slices.Repeat([]int{0, 1}, len(picks)/2)
	return d
}
