package catalogue

import "sley/internal/trade/draft"

func cords() []*Entry {
	return []*Entry{
		{
			ID: "bedford-cord", Family: Textures, Source: memory, make: bedfordCord,
			Params: []Param{evens("ends", 4, 24, 8)},
		},
		{
			ID: "cord-across", Family: Textures, Source: memory, make: cordAcross,
			Params: []Param{evens("ends", 4, 24, 8)},
		},
	}
}

// corded gives the two cords of a Bedford cord, each of so many ends and two more in
// the groove. The weft weaves two picks of plain weave on the face of a cord and then
// floats behind it for two while it weaves the other.
func corded(ends int) func(pick, end int) bool {
	wide := ends + 2
	return func(i, j int) bool {
		groove := j%wide < 2
		behind := i/2%2 != j/wide%2
		return !groove && behind || odd(i+j)
	}
}

func bedfordCord(m *making) *draft.Draft {
	n := m.count("ends")
	return woven(plot(4, 2*(n+2), corded(n)))
}

// cordAcross is the same with warp and weft exchanged: the ends float behind the cords.
func cordAcross(m *making) *draft.Draft {
	n := m.count("ends")
	return woven(plot(4, 2*(n+2), corded(n)).Transpose())
}
