package dress

import (
	"slices"

	"sley/internal/trade/qty"
)

// Path is a way of the warp over a board.
type Path struct {
	Pegs    []int // indices into the board's pegs, the start first
	Length  qty.Length
	Reaches bool // at least as long as asked; otherwise the longest way there is
	Best    bool // false where the budget ran out before every way was looked at
}

// Budget is how many steps a search of the path usually takes at most.
const Budget = 100_000

// Path finds the way of at least the wound length with the least left over,
// then with the fewest pegs, then the first in the order of the pegs. It begins
// at the first three pegs and comes to no peg twice; no span crosses another or
// runs over a peg. Where no way is long enough it gives the longest. The budget
// is the most steps of either search.
func (b Board) Path(wound qty.Length, budget int) Path {
	g := newGround(b)
	best := g.search(wound, budget)
	if best.Reaches {
		return best
	}
	longest := g.search(unreached, budget)
	longest.Reaches = longest.Length >= wound
	longest.Best = longest.Best && best.Best
	return longest
}

// unreached is longer than any way over a board.
const unreached = 1000 * qty.Kilometre

// search is a search under way.
type search struct {
	*ground
	wound   qty.Length
	steps   int // left
	path    []int
	length  qty.Length
	used    []bool
	reach   qty.Length // no way on from here is longer than this
	best    Path
	longest bool // wanted is the longest way
}

// search looks at every way, leaving out those that cannot become the best.
func (g *ground) search(wound qty.Length, budget int) Path {
	s := &search{ground: g, wound: wound, steps: budget, used: make([]bool, len(g.pegs)), longest: wound == unreached}
	for p, far := range g.far {
		if p > 2 {
			s.reach += far
		}
	}
	s.length = Span(g.pegs[0], g.pegs[1]) + Span(g.pegs[1], g.pegs[2])
	s.path, s.used[0], s.used[1], s.used[2] = []int{0, 1, 2}, true, true, true
	s.look()
	s.best.Best = s.steps > 0
	return s.best
}

// look judges the way so far and goes on from its end.
func (s *search) look() {
	if s.steps == 0 {
		return
	}
	s.steps--
	if s.judge(); s.length >= s.wound || s.hopeless() {
		return
	}
	from := s.path[len(s.path)-1]
	for to, span := range s.span[from] {
		if span > 0 && !s.used[to] && !s.crossed(from, to) {
			s.step(to, span)
		}
	}
}

// step goes to a peg, looks on from there, and comes back.
func (s *search) step(to int, span qty.Length) {
	s.path, s.used[to] = append(s.path, to), true
	s.length, s.reach = s.length+span, s.reach-s.far[to]
	s.look()
	s.length, s.reach = s.length-span, s.reach+s.far[to]
	s.path, s.used[to] = s.path[:len(s.path)-1], false
}

// judge keeps the way so far where it is better than the best.
func (s *search) judge() {
	if reaches := s.length >= s.wound; reaches && s.better() || s.longest && s.length > s.best.Length {
		s.best = Path{Pegs: slices.Clone(s.path), Length: s.length, Reaches: reaches}
	}
}

func (s *search) better() bool {
	if !s.best.Reaches || s.length != s.best.Length {
		return !s.best.Reaches || s.length < s.best.Length
	}
	return len(s.path) < len(s.best.Pegs)
}

// hopeless reports whether no way on from here can be better than the best.
func (s *search) hopeless() bool {
	if s.longest {
		return s.length+s.reach <= s.best.Length
	}
	perfect := s.best.Reaches && s.best.Length == s.wound
	return s.length+s.reach < s.wound || perfect && len(s.path)+1 >= len(s.best.Pegs)
}

// crossed reports whether a span to the peg would cross the way so far.
func (s *search) crossed(from, to int) bool {
	for i := range len(s.path) - 2 {
		if s.cross(s.path[i], s.path[i+1], from, to) {
			return true
		}
	}
	return false
}
