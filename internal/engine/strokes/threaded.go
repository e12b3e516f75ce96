package strokes

import (
	"slices"

	"sley/internal/trade/draft"
)

// Threaded gives a draft with another in the place of a stretch of its threading, from
// one end to another, that one left out; a profile written out in blocks, for instance.
// There are as many shafts as both need. Where the stretch is the whole threading, it is
// woven as the other is: its ties, treadling and lifts, its shed and its weft, whose
// colours are added to the palette. Else the picks stay what they are, and the new ends
// follow them by their shafts. It reports false where the stretch does not lie in the
// threading, where the other has no ends, or where there would be more than MostThreads.
func Threaded(d, made *draft.Draft, from, to int) (*draft.Draft, bool) {
	if from < 0 || to < from || to > d.Ends() || made.Ends() == 0 || d.Ends()-to+from+made.Ends() > MostThreads {
		return nil, false
	}
	s := &stroke{Draft: d.Clone()}
	s.Shafts = max(d.Shafts, made.Shafts)
	s.lay(Threading, "", exchange(from, to-from, Numbers(made.Threading...)))
	if to-from == d.Ends() {
		s.wovenAs(made.Clone())
	}
	return s.Draft, true
}

// wovenAs takes all that makes the picks of another draft.
func (s *stroke) wovenAs(made *draft.Draft) {
	s.Shafts, s.Shed, s.Draft.Treadles = made.Shafts, made.Shed, made.Treadles
	s.Ties, s.Treadling, s.Lifts = made.Ties, made.Treadling, made.Lifts
	s.Weft = made.Weft
	for i, at := range s.Weft.Colours {
		s.Weft.Colours[i] = s.inPalette(made, at)
	}
	s.Weft.Colour = s.inPalette(made, s.Weft.Colour)
}

// inPalette gives the number that a colour of another draft has here, and adds it where
// it has none.
func (s *stroke) inPalette(made *draft.Draft, at int) int {
	if at < 0 || at >= len(made.Palette) {
		return 0
	}
	if here := slices.Index(s.Draft.Palette, made.Palette[at]); here >= 0 {
		return here
	}
	s.Draft.Palette = append(s.Draft.Palette, made.Palette[at])
	return len(s.Draft.Palette) - 1
}
