package catalogue

import (
	"slices"

	"sley/internal/trade/draft"
)

// The palettes: undyed, indigo and madder. A colour of a thread is its place there.
var (
	twoColours   = []draft.Colour{{R: 0xf0, G: 0xe8, B: 0xd6}, {R: 0x2b, G: 0x3f, B: 0x66}}
	threeColours = append(slices.Clone(twoColours), draft.Colour{R: 0x9c, G: 0x3b, B: 0x2e})
)

const (
	light = iota
	dark
	third
)

const (
	shepherd = "2/2 twill in fours each way, 32 of 64 crossings dark: the usual figure, worked out anew"
	cabin    = "plain weave in two colours in turn: lines across where the phases agree, along where they do not, worked out anew"
)

// checks are of stripes both ways on a plain weave or a twill.
func checks() []*Entry {
	return []*Entry{
		{
			ID: "houndstooth", Family: Colours, Source: shepherd, Params: []Param{hand},
			make: func(m *making) *draft.Draft { return m.checked(twoTwo, stripes(4, dark, light)) },
		},
		{
			ID: "shepherds-check", Family: Colours, Source: memory, Params: []Param{evens("ends", 4, 24, 6), hand},
			make: func(m *making) *draft.Draft { return m.checked(twoTwo, stripes(m.count("ends"), dark, light)) },
		},
		{
			ID: "gun-club-check", Family: Colours, Source: memory, Params: []Param{evens("ends", 4, 16, 4), hand},
			make: func(m *making) *draft.Draft {
				d := m.checked(twoTwo, stripes(m.count("ends"), dark, light, third, light))
				d.Palette = slices.Clone(threeColours)
				return d
			},
		},
		{
			ID: "glen-check", Family: Colours, Source: memory, Params: []Param{count("times", 1, 8, 4), hand}, make: glenCheck,
		},
		{
			ID: "birds-eye", Family: Colours, Source: memory, Params: []Param{hand},
			make: func(m *making) *draft.Draft { return m.checked(twoTwo, stripes(2, dark, light)) },
		},
		{
			ID: "step-pattern", Family: Colours, Source: memory, Params: []Param{hand},
			make: func(m *making) *draft.Draft { return m.checked(twoTwo, stripes(1, dark, light)) },
		},
		{
			ID: "gingham", Family: Colours, Source: memory, Params: []Param{evens("ends", 4, 48, 8)},
			make: func(m *making) *draft.Draft { return m.checked(oneOne, stripes(m.count("ends"), dark, light)) },
		},
		{
			ID: "windowpane-check", Family: Colours, Source: memory, Params: []Param{evens("ends", 4, 48, 14), count("line", 1, 4, 2), choice("ground", "plain", "twill")},
			make: windowpane,
		},
	}
}

var (
	oneOne = []bool{true, false}
	twoTwo = []bool{true, true, false, false}
)

// stripes gives a stripe of so many threads of each colour in turn.
func stripes(threads int, colours ...int) []int { return each(colours, threads) }

// checked gives a straight twill, or plain weave, with the same order of colours both
// ways.
func (m *making) checked(word []bool, order []int) *draft.Draft {
	return m.coloured(word, order, order)
}

// coloured gives a straight twill, or plain weave, with orders of colours, repeated
// until weave and order come round together.
func (m *making) coloured(word []bool, warp, weft []int) *draft.Draft {
	n := len(word)
	ends, picks := lcm(n, len(warp)), lcm(n, len(weft))
	threading, treadling := slices.Repeat(straight(n), ends/n), slices.Repeat(straight(n), picks/n)
	if m.leftHanded() {
		slices.Reverse(treadling)
	}
	d := drawn(threading, twillTies(word), treadling)
	d.Palette = slices.Clone(twoColours)
	d.Warp.Colours = slices.Repeat(warp, ends/len(warp))
	d.Weft.Colours = slices.Repeat(weft, picks/len(weft))
	return d
}

// glenCheck has squares of fours and squares of twos.
func glenCheck(m *making) *draft.Draft {
	times := m.count("times")
	order := append(slices.Repeat(stripes(4, dark, light), times), slices.Repeat(stripes(2, dark, light), 2*times)...)
	return m.checked(twoTwo, order)
}

// windowpane has thin lines far apart.
func windowpane(m *making) *draft.Draft {
	word := oneOne
	if m.is("ground", "twill") {
		word = twoTwo
	}
	return m.checked(word, append(stripes(m.count("ends"), dark), stripes(m.count("line"), light)...))
}
