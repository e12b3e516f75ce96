package catalogue

import (
	"slices"

	"sley/internal/trade/draft"
	"sley/internal/trade/order"
)

// colourings are made by the orders of colours, most of them one and one.
func colourings() []*Entry {
	return []*Entry{
		{
			ID: "log-cabin", Family: Colours, Source: cabin, Params: []Param{evens("ends", 4, 48, 8)}, make: logCabin,
		},
		{
			ID: "hairline", Family: Colours, Source: cabin, Params: []Param{choice("lines", "along", "across")}, make: hairline,
		},
		{
			ID: "shadow-weave", Family: Colours, Source: memory, Params: []Param{evens("shafts", 4, 16, 4), hand}, make: shadowWeave,
		},
		{
			ID: "pick-and-pick", Family: Colours, Source: memory, Sett: WeftFaced,
			make: func(m *making) *draft.Draft { return m.coloured(oneOne, []int{light}, []int{dark, light}) },
		},
		{
			ID: "warp-faced-bars", Family: Colours, Source: memory, Sett: WarpFaced, Params: []Param{evens("ends", 4, 48, 8)}, make: warpBars,
		},
		{
			ID: "colour-and-weave", Family: Colours, Source: memory, make: colourAndWeave,
			Params: []Param{ratio("over", "2/2", 2, 16), threads("warp", "dark 2, light 2"), threads("weft", "dark 1, light 1"), hand},
		},
	}
}

func threads(name, otherwise string) Param {
	return Param{Name: name, Kind: Threads, Options: []string{"light", "dark"}, Default: otherwise}
}

// cabined gives two colours in turn, and then in turn from the other: two of one
// colour meet where the stripes do.
func cabined(n int) []int {
	return append(slices.Repeat([]int{dark, light}, n/2), slices.Repeat([]int{light, dark}, n/2)...)
}

func logCabin(m *making) *draft.Draft {
	return m.checked(oneOne, cabined(m.count("ends")))
}

// hairline lifts the dark ends over the light picks, and the light ones over the dark,
// for lines along; for lines across each colour lies over picks of its own.
func hairline(m *making) *draft.Draft {
	weft := []int{light, dark}
	if m.is("lines", "across") {
		weft = []int{dark, light}
	}
	return m.coloured(oneOne, []int{dark, light}, weft)
}

// shadowWeave has dark and light in turn both ways. A light end is up where its dark
// neighbour is not, so that all is plain weave but at the edges of the figure, which a
// twill of as many up as down draws.
func shadowWeave(m *making) *draft.Draft {
	n := m.count("shafts")
	d := woven(plot(2*n, 2*n, func(i, j int) bool {
		up := mod(m.climb(j/2, i/2), n) < n/2
		return up == !odd(i+j)
	}))
	d.Palette = slices.Clone(twoColours)
	d.Warp.Colours, d.Weft.Colours = slices.Repeat([]int{dark, light}, n), slices.Repeat([]int{dark, light}, n)
	return d
}

// warpBars has ends of two colours in turn, so close that each pick shows one of them
// alone; where the turn changes, the bars do.
func warpBars(m *making) *draft.Draft {
	return m.coloured(oneOne, cabined(m.count("ends")), []int{light})
}

func colourAndWeave(m *making) *draft.Draft {
	warp, weft := m.threads("warp"), m.threads("weft")
	if m.list.Failed() {
		return nil
	}
	word := m.word("over")
	for name, list := range map[string][]int{"warp": warp, "weft": weft} {
		if lcm(len(word), len(list)) > mostThreads {
			m.fail("catalogue.long", name, map[string]any{"most": mostThreads})
		}
	}
	if m.list.Failed() {
		return nil
	}
	return m.coloured(word, warp, weft)
}

// mostThreads is how many ends or picks an order of colours makes at most.
const mostThreads = 4096

// threads reads an order of colours.
func (m *making) threads(name string) []int {
	names := []string{"light", "dark"}
	o, faults := order.Parse(m.text(name), order.Context{Kind: order.Stripes, Names: names})
	for _, f := range faults {
		m.list.Fail(f.Code, name, f.Read, f.Args)
	}
	if len(faults) == 0 && o.Total(1) > mostThreads {
		m.fail("catalogue.long", name, map[string]any{"most": mostThreads})
		return nil
	}
	var out []int
	for _, run := range o.Runs(1) {
		out = append(out, each([]int{slices.Index(names, run.Name)}, run.Count)...)
	}
	return out
}
