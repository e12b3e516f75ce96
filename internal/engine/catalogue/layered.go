package catalogue

import (
	"sley/internal/trade/draft"
	"sley/internal/trade/weave"
)

func layered() []*Entry {
	return []*Entry{
		{
			ID: "double-cloth", Family: Layers, Layered: true, Sett: Layer, Source: memory,
			make: func(*making) *draft.Draft { return inOrder(plainLayers(2), 0, 2, 1, 3) },
		},
		{
			ID: "tube", Family: Layers, Layered: true, Sett: Layer, Source: memory,
			make: func(*making) *draft.Draft { return inOrder(plainLayers(2), 0, 1, 2, 3) },
		},
		{
			ID: "double-width", Family: Layers, Layered: true, Sett: Layer, Source: memory,
			make: func(*making) *draft.Draft { return inOrder(plainLayers(2), 0, 1, 3, 2) },
		},
		{
			ID: "many-layers", Family: Layers, Layered: true, Sett: Layer, Source: memory, Params: []Param{count("layers", 3, 16, 3)},
			make: func(m *making) *draft.Draft { return woven(plainLayers(m.count("layers"))) },
		},
		{
			ID: "double-twill", Family: Layers, Layered: true, Sett: Layer, Source: memory, Params: []Param{over("2/2"), hand},
			make: doubleTwill,
		},
		{
			ID: "stitched-double-cloth", Family: Layers, Sett: TwoLayers, Source: memory, Params: []Param{evens("apart", 2, 16, 4)},
			make: func(m *making) *draft.Draft { return woven(stitched(m.count("apart"))) },
		},
	}
}

// stack gives layers one on another, each of the same weave: end and pick k lie in
// layer k round the layers, the first on top. Ends of layers above are lifted out of the
// way of a pick, those below stay down.
func stack(layers, picks, ends int, up func(pick, end int) bool) *weave.Weave {
	return plot(layers*picks, layers*ends, func(i, j int) bool {
		of, under := j%layers, i%layers
		if of != under {
			return of < under
		}
		return up(i/layers, j/layers)
	})
}

func plainLayers(layers int) *weave.Weave {
	return stack(layers, 2, 2, func(i, j int) bool { return i == j })
}

// inOrder gives the draft of a weave with its picks in another order: that in which
// the shuttle goes from layer to layer.
func inOrder(w *weave.Weave, picks ...int) *draft.Draft {
	return woven(plot(len(picks), w.Ends(), func(i, j int) bool { return w.WarpUp(picks[i], j) }))
}

func doubleTwill(m *making) *draft.Draft {
	word := m.word("over")
	n := len(word)
	return woven(stack(2, n, n, func(i, j int) bool { return word[mod(m.climb(j, i), n)] }))
}

// stitched is double cloth in whose repeat two ends of the layer beneath are lifted
// over a pick of the layer on top.
func stitched(apart int) *weave.Weave {
	w := stack(2, apart, apart, func(i, j int) bool { return !odd(i + j) })
	for _, k := range []int{0, apart / 2} {
		w.Set(2*k, 2*k+1, true)
	}
	return w
}
