package strokes

import (
	"slices"
	"strconv"

	"sley/internal/trade/draft"
	"sley/internal/trade/problem"
)

var (
	// threads are the parts with an entry for each thread.
	threads = []Part{Threading, Treadling, Lifts, WarpColours, WeftColours}
	// listed are those whose entries can change places, or be laid again.
	listed = append(slices.Clone(threads), Ties)
	// deleted are those of which entries can be left out.
	deleted = []Part{Threading, Treadling, Lifts, Ties}
)

func (s *stroke) reverse(a *Act) {
	if list, ok := s.stretch(a, listed...); ok {
		put := slices.Clone(list[a.From:a.To])
		slices.Reverse(put)
		s.lay(a.Part, "from", exchange(a.From, len(put), put))
	}
}

func (s *stroke) rotate(a *Act) {
	list, ok := s.stretch(a, listed...)
	if !ok || a.From == a.To {
		return
	}
	n := a.To - a.From
	put := make([]Value, n)
	for i := range put {
		put[(i+mod(a.By, n))%n] = list[a.From+i]
	}
	s.lay(a.Part, "from", exchange(a.From, n, put))
}

func mod(n, of int) int { return (n%of + of) % of }

func (s *stroke) remove(a *Act) {
	if _, ok := s.stretch(a, deleted...); ok {
		s.lay(a.Part, "from", laying{Splice: Splice{a.From, a.To - a.From, nil}})
	}
}

// mirror lays the way back behind the stretch, the turn once.
func (s *stroke) mirror(a *Act) {
	if list, ok := s.stretch(a, listed...); ok {
		var from []int
		for i := a.To - 2; i >= a.From; i-- {
			from = append(from, i)
		}
		s.behind(a, "to", list, from)
	}
}

func (s *stroke) repeat(a *Act) {
	list, ok := s.stretch(a, listed...)
	if !ok {
		return
	}
	n := a.To - a.From
	switch {
	case a.Times < 1:
		s.fail("stroke.times", "times", strconv.Itoa(a.Times), nil)
		return
	case n > 0 && a.Times > MostThreads/n:
		s.fail("stroke.large", "times", strconv.Itoa(a.Times), problem.Args{"most": MostThreads})
		return
	}
	from := make([]int, 0, n*(a.Times-1))
	for range a.Times - 1 {
		for i := range n {
			from = append(from, a.From+i)
		}
	}
	s.behind(a, "times", list, from)
}

// behind lays threads behind the stretch, each as the one it is from. Colours are laid
// over the threads that follow, as far as there are any.
func (s *stroke) behind(a *Act, field string, list []Value, from []int) {
	if a.Part == WarpColours || a.Part == WeftColours {
		from = from[:min(len(from), len(list)-a.To)]
	}
	put := make([]Value, len(from))
	for i, at := range from {
		put[i] = list[at]
	}
	if a.Part == WarpColours || a.Part == WeftColours {
		s.lay(a.Part, field, exchange(a.To, len(put), put))
		return
	}
	s.lay(a.Part, field, laying{Splice{a.To, 0, put}, from})
}

// shift moves shafts, treadles or colours round.
func (s *stroke) shift(a *Act) {
	list, ok := s.stretch(a, listed...)
	if !ok {
		return
	}
	put := slices.Clone(list[a.From:a.To])
	for i, v := range put {
		put[i] = s.further(a.Part, v, a.By)
	}
	s.lay(a.Part, "from", exchange(a.From, len(put), put))
}

// further gives a value so much further, round what there is of its kind. What is in no
// heddle stays there.
func (s *stroke) further(part Part, v Value, by int) Value {
	switch part {
	case Threading:
		if v == 0 || s.Shafts < 1 {
			return v
		}
		return Value(mod(int(v)-1+by%s.Shafts, s.Shafts) + 1)
	case WarpColours, WeftColours:
		if n := len(s.Draft.Palette); n > 0 {
			return Value(mod(int(v)+by%n, n))
		}
		return v
	}
	return Value(roundSet(draft.Set(v), by, s.kinds(part)))
}

// kinds is how many shafts, or treadles, a part of sets is of.
func (s *stroke) kinds(part Part) int {
	if part == Treadling {
		return min(treadles(s.Draft), draft.MostTreadles)
	}
	return min(s.Shafts, draft.MostShafts)
}

func roundSet(set draft.Set, by, of int) draft.Set {
	if of < 1 {
		return set
	}
	var out draft.Set
	for _, n := range set.List() {
		out = out.With(mod(n-1+by%of, of) + 1)
	}
	return out
}
