package wif

import (
	"strconv"
	"strings"

	"sley/internal/trade/draft"
	"sley/internal/trade/qty"
)

// ofThreads says what stands in WARP, WEFT and their lists.
func (s *state) ofThreads(out *said, name string) {
	which, t, n := 0, &s.draft.Warp, len(s.draft.Threading)
	if strings.HasPrefix(name, weftName) {
		which, t, n = 1, &s.draft.Weft, s.draft.Picks()
	}
	u := s.units[which]
	if u.name == "" && hasSizes(t) {
		u = centimetres
	}
	switch name {
	case warpName, weftName:
		s.threads(out, t, u, n)
	case warpName + coloursOf, weftName + coloursOf:
		s.colours(out, t, n)
	case warpName + thicknessOf, weftName + thicknessOf:
		out.sizes(t.Thicks, u, n)
	case warpName + spacingOf, weftName + spacingOf:
		out.sizes(t.Aparts, u, n)
	}
}

// hasSizes reports whether any thread has a size: then it has a unit, and in
// centimetres every size is exact.
func hasSizes(t *draft.Threads) bool {
	any := t.Thick != 0 || t.Apart != 0
	for _, size := range append(t.Thicks[:len(t.Thicks):len(t.Thicks)], t.Aparts...) {
		any = any || size != 0
	}
	return any
}

func (s *state) threads(out *said, t *draft.Threads, u unit, n int) {
	if n == 0 {
		return
	}
	out.base = u.name
	out.add("Threads", strconv.Itoa(n))
	if len(s.draft.Palette) > 0 {
		out.add("Color", strconv.Itoa(t.Colour+1))
		if t.Colour >= 0 && t.Colour < len(s.draft.Palette) { // which may stand beside it
			out.pairs[len(out.pairs)-1].on = eight.text(s.draft.Palette[t.Colour])
		}
	}
	if u.name == "" {
		return
	}
	out.add("Units", u.name)
	if t.Apart != 0 {
		out.add("Spacing", u.text(t.Apart))
	}
	if t.Thick != 0 {
		out.add("Thickness", u.text(t.Thick))
	}
}

// colours says the colour of each thread. What is not listed has the one that most
// have, so that all stand on it.
func (s *state) colours(out *said, t *draft.Threads, n int) {
	if len(s.draft.Palette) == 0 {
		return
	}
	out.base = strconv.Itoa(t.Colour)
	for i, at := range t.Colours[:min(n, len(t.Colours))] {
		out.row(i, strconv.Itoa(at+1))
	}
}

// sizes says the size of each thread that has one of its own.
func (s *said) sizes(list []qty.Length, u unit, n int) {
	s.base = u.name
	texts := map[qty.Length]string{}
	for i, size := range list[:min(n, len(list))] {
		if size == 0 {
			continue
		}
		if texts[size] == "" {
			texts[size] = u.text(size)
		}
		s.row(i, texts[size])
	}
}
