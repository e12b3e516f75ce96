package strokes

import (
	"fmt"
	"slices"
	"strconv"

	"sley/internal/trade/draft"
	"sley/internal/trade/problem"
)

// editable are the parts that can be put, all but sizes.
var editable = []Part{Threading, Ties, Lowered, Treadling, Lifts, WarpColours, WeftColours, Palette}

func (s *stroke) put(a *Act) {
	if !s.has(a, editable...) {
		return
	}
	list := Values(s.Draft, a.Part)
	if a.At < 0 || a.Remove < 0 || a.At > len(list) || a.Remove > len(list)-a.At {
		s.fail("stroke.stretch", "at", fmt.Sprintf("%d-%d", a.At, a.At+max(a.Remove, 0)), problem.Args{"part": string(a.Part), "has": len(list)})
		return
	}
	for i, v := range a.Put {
		s.judge(a.Part, a.At+i, v, "put["+strconv.Itoa(i)+"]")
	}
	s.lay(a.Part, "put", exchange(a.At, a.Remove, a.Put))
}

// laying is a splice of a part, and from which thread each entry takes colour and sizes;
// below 0 the thread beside it.
type laying struct {
	Splice
	from []int
}

// exchange is a splice whose first threads stand where others stood, and keep what
// belongs to the place.
func exchange(at, remove int, put []Value) laying {
	l := laying{Splice{at, remove, put}, make([]int, len(put))}
	for i := range l.from {
		if l.from[i] = at + i; i >= remove {
			l.from[i] = -1
		}
	}
	return l
}

// lay makes a splice, unless something is wrong with it.
func (s *stroke) lay(part Part, field string, l laying) {
	list := Values(s.Draft, part)
	ends, picks := threaded(part)
	n := len(list) - l.Remove + len(l.Put)
	switch longer := len(l.Put) - l.Remove; {
	case n > MostThreads:
		s.fail("stroke.large", field, strconv.Itoa(n), problem.Args{"most": MostThreads})
	case n == 0 && ends:
		s.fail("draft.no-ends", field, "", nil)
	case n == 0 && picks:
		s.fail("draft.no-picks", field, "", nil)
	case longer != 0 && (part == Lowered || part == WarpColours || part == WeftColours):
		s.fail("stroke.length", field, strconv.Itoa(len(l.Put)), problem.Args{"part": string(part), "remove": l.Remove})
	case longer != 0 && part == Ties:
		s.judgeTreadles(field, l)
	case part == Palette:
		s.keepColours(field, n)
	}
	if s.failed() {
		return
	}
	if part == Ties {
		s.moveTreadles(l)
	}
	s.follow(part, l, len(list))
	s.write(part, slices.Replace(list, l.At, l.At+l.Remove, l.Put...))
}

// write lays the whole of a part.
func (s *stroke) write(part Part, list []Value) {
	for _, f := range forms {
		if f.part == part {
			f.lay(s.Draft, list)
		}
	}
	s.drawnOneWay(part)
}

// drawnOneWay unties a shaft of a countermarch that was tied the other way.
func (s *stroke) drawnOneWay(part Part) {
	for i, tie := range s.Ties {
		switch part {
		case Ties:
			s.Ties[i].Lowered &^= tie.Tied
		case Lowered:
			s.Ties[i].Tied &^= tie.Lowered
		}
	}
}

// follow gives threads that are new the colours and sizes they take along.
func (s *stroke) follow(part Part, l laying, had int) {
	of, tied := map[Part]*draft.Threads{Threading: &s.Warp, Treadling: &s.Weft, Lifts: &s.Weft}[part]
	if !tied || isUpTo(l, had) {
		return
	}
	beside := l.At - 1
	if l.kept() > l.At {
		beside = l.kept() - 1
	}
	if beside < 0 && l.At+l.Remove < had {
		beside = l.At + l.Remove
	}
	*of = of.Picked(places(l, had, beside))
}

// isUpTo reports whether every thread stays where it is.
func isUpTo(l laying, had int) bool {
	if len(l.Put) != l.Remove || l.At+l.Remove > had {
		return false
	}
	for i, from := range l.from {
		if from != l.At+i {
			return false
		}
	}
	return true
}

// places gives, for each thread there then is, the one it was or takes after.
func places(l laying, had, beside int) []int {
	out := make([]int, 0, had-l.Remove+len(l.Put))
	for i := range l.At {
		out = append(out, i)
	}
	for _, from := range l.from {
		if from < 0 {
			from = beside
		}
		out = append(out, from)
	}
	for i := l.At + l.Remove; i < had; i++ {
		out = append(out, i)
	}
	return out
}

// judgeTreadles tells when treadles cannot be made, or left out.
func (s *stroke) judgeTreadles(field string, l laying) {
	if n := treadles(s.Draft) + len(l.Put) - l.Remove; n > draft.MostTreadles {
		s.fail("draft.treadles", field, strconv.Itoa(n), problem.Args{"most": draft.MostTreadles})
	}
	gone := draft.UpTo(l.At+l.Remove) &^ draft.UpTo(l.kept())
	if pressed := s.pressed() & gone; pressed != 0 {
		s.fail("stroke.treadles-used", field, pressed.String(), problem.Args{"used": pressed.Most()})
	}
}

// kept is up to where entries are only exchanged: those behind are new, or go.
func (l *laying) kept() int { return l.At + min(l.Remove, len(l.Put)) }

// moveTreadles makes room for treadles, or leaves some out that no pick presses.
func (s *stroke) moveTreadles(l laying) {
	at, longer := l.kept(), len(l.Put)-l.Remove
	for i, set := range s.Treadling {
		low := set & draft.UpTo(at)
		s.Treadling[i] = low | moved(set&^low, longer)
	}
	ties := slices.Clone(s.Ties)
	ties = append(ties, make([]draft.Tie, treadles(s.Draft)-len(ties))...)
	if longer < 0 {
		s.Ties = slices.Delete(ties, at, at-longer)
		return
	}
	s.Ties = slices.Insert(ties, at, make([]draft.Tie, longer)...)
}

// moved gives a set with all its numbers so much higher.
func moved(set draft.Set, by int) draft.Set {
	if by < 0 {
		return set >> -by
	}
	return set << by
}

func (s *stroke) pressed() draft.Set {
	_, pressed := s.Used()
	return pressed
}

// keepColours refuses a palette without colours that threads have.
func (s *stroke) keepColours(field string, n int) {
	most := max(s.Warp.Colour, s.Weft.Colour)
	for _, list := range [][]int{s.Warp.Colours, s.Weft.Colours} {
		for _, at := range list {
			most = max(most, at)
		}
	}
	if most >= n && n < len(s.Draft.Palette) {
		s.fail("stroke.colours-used", field, strconv.Itoa(n), problem.Args{"used": most + 1})
	}
}
