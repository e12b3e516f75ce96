package strokes

import (
	"fmt"
	"maps"
	"slices"
	"strconv"

	"sley/internal/trade/draft"
	"sley/internal/trade/problem"
)

// Do makes acts one after another and gives the new draft; d stays as it is. Problems
// are at acts[i], or at a field of it as acts[i].put[3]; with an error among them the
// draft is nil. An act that could not be made is passed over, so that what is wrong with
// those behind it is told as well. Of a draft with more shafts or treadles than there can
// be nothing is made.
func Do(d *draft.Draft, acts []Act) (*draft.Draft, *problem.List) {
	s := &stroke{Draft: d.Clone()}
	if d.Shafts > draft.MostShafts {
		s.list.Fail("draft.shafts", "shafts", strconv.Itoa(d.Shafts), problem.Args{"most": draft.MostShafts})
	}
	if n := treadles(d); n > draft.MostTreadles {
		s.list.Fail("draft.treadles", "treadles", strconv.Itoa(n), problem.Args{"most": draft.MostTreadles})
	}
	if s.list.Failed() {
		return nil, &s.list
	}
	for i := range acts {
		s.act(i, &acts[i])
	}
	if s.list.Failed() {
		return nil, &s.list
	}
	return s.Draft, &s.list
}

// stroke is acts being made. A deed leaves the draft as it was when it fails.
type stroke struct {
	*draft.Draft
	list problem.List
	at   int            // the act that is made
	told map[string]int // problems of the act, by their code
}

// deeds are how acts are made.
var deeds = map[Deed]func(*stroke, *Act){
	Put: (*stroke).put, Reverse: (*stroke).reverse, Mirror: (*stroke).mirror,
	Delete: (*stroke).remove, Repeat: (*stroke).repeat, Shift: (*stroke).shift,
	Rotate: (*stroke).rotate, ByRule: (*stroke).rule, Type: (*stroke).typed,
	Cells: (*stroke).cells, Shafts: (*stroke).shafts, Treadles: (*stroke).treadles,
	ForShed: (*stroke).shed,
}

// Deeds lists what acts can do, in the order of their names.
func Deeds() []Deed { return slices.Sorted(maps.Keys(deeds)) }

func (s *stroke) act(i int, a *Act) {
	s.at, s.told = i, map[string]int{}
	do, ok := deeds[a.Do]
	if !ok {
		s.fail("stroke.act", "do", string(a.Do), problem.Args{"valid": texts(Deeds())})
		return
	}
	do(s, a)
	for _, code := range slices.Sorted(maps.Keys(s.told)) {
		if n := s.told[code]; n > mostOfAKind {
			s.list.Tell("draft.more", s.path(""), "", problem.Args{"more": n - mostOfAKind, "code": code})
		}
	}
}

func texts[T ~string](list []T) []string {
	out := make([]string, len(list))
	for i, t := range list {
		out[i] = string(t)
	}
	return out
}

// mostOfAKind is how many problems of one kind are told one by one of an act.
const mostOfAKind = 20

// path is that of a field of the act.
func (s *stroke) path(field string) string {
	at := fmt.Sprintf("acts[%d]", s.at)
	if field == "" {
		return at
	}
	return at + "." + field
}

func (s *stroke) fail(code, field, read string, args problem.Args) {
	if s.told[code]++; s.told[code] <= mostOfAKind {
		s.list.Fail(code, s.path(field), read, args)
	}
}

func (s *stroke) warn(code, field, read string, args problem.Args) {
	s.list.Warn(code, s.path(field), read, args)
}

// failed reports whether the act has been told to be wrong.
func (s *stroke) failed() bool { return len(s.told) > 0 }

// threaded reports of which threads a part has an entry each: of ends, of picks, or of
// neither.
func threaded(part Part) (ends, picks bool) {
	return part == Threading || part == WarpColours, part == Treadling || part == Lifts || part == WeftColours
}

// has checks that the deed can be done to the part, which is one of those given, and
// that the draft has that part.
func (s *stroke) has(a *Act, of ...Part) bool {
	treadled := s.Treadled() || len(s.Lifts) == 0 && s.Draft.Treadles > 0
	switch by := slices.Contains([]Part{Ties, Lowered, Treadling}, a.Part); {
	case !slices.Contains(of, a.Part):
		s.fail("stroke.part", "part", string(a.Part), problem.Args{"do": string(a.Do), "valid": texts(of)})
	case by && !treadled:
		s.fail("stroke.lift-plan", "part", string(a.Part), nil)
	case a.Part == Lifts && treadled:
		s.fail("stroke.treadled", "part", string(a.Part), nil)
	}
	return !s.failed()
}

// stretch gives the part's entries, if the stretch of the act lies among them.
func (s *stroke) stretch(a *Act, of ...Part) ([]Value, bool) {
	if !s.has(a, of...) {
		return nil, false
	}
	list := Values(s.Draft, a.Part)
	if a.From < 0 || a.To < a.From || a.To > len(list) {
		s.fail("stroke.stretch", "from", fmt.Sprintf("%d-%d", a.From, a.To), problem.Args{"part": string(a.Part), "has": len(list)})
		return nil, false
	}
	return list, true
}
