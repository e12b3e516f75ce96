package tieup

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/trade/draft"
	"sley/internal/trade/order"
)

const a, b, c, d = 1, 2, 4, 8 // treadles A to D

// Treadling A B C D C B alternates with A and C left, B and D right; A B C repeated
// cannot (worked project of our own, by hand). The others by hand as well.
func TestFeet(t *testing.T) {
	for _, w := range []struct {
		what  string
		picks []draft.Set
		round bool
		want  Feet
	}{
		{"the towels", []draft.Set{a, b, c, d, c, b}, true, Feet{Left: a | c, Right: b | d}},
		{"a straight treadling", []draft.Set{a, b, c, d}, true, Feet{Left: a | c, Right: b | d}},
		{"three", []draft.Set{a, b, c}, true, Feet{Why: Odd, Ring: []int{1, 2, 3}}},
		{"three, once", []draft.Set{a, b, c}, false, Feet{Left: a | c, Right: b}},
		{"one twice", []draft.Set{a, b, b, a}, false, Feet{Why: Twice, Pick: 1, Ring: []int{2}}},
		{"one twice, at the turn", []draft.Set{a, b, a}, true, Feet{Why: Twice, Pick: 2, Ring: []int{1}}},
		{"one alone", []draft.Set{a}, true, Feet{Why: Twice, Ring: []int{1}}},
		{"both feet busy", []draft.Set{a | b, a, a | b, a}, true, Feet{Left: a, Right: b}},
		{"both feet busy in a ring", []draft.Set{a | b, b | c, a | c}, true, Feet{Why: Odd, Ring: []int{1, 2, 3}}},
		{"three at once", []draft.Set{a, a | b | d}, true, Feet{Why: Many, Pick: 1, Ring: []int{1, 2, 4}}},
		{"rests between", []draft.Set{a, 0, a, 0}, true, Feet{Left: a}},
		{"two that never meet", []draft.Set{a, b, 0, c, d, 0}, true, Feet{Left: a | c, Right: b | d}},
		{"nothing pressed", []draft.Set{0, 0}, true, Feet{Why: Unpressed}},
		{"the shortest ring of two", []draft.Set{d, c, b, a, 16, d, b}, false, Feet{Why: Odd, Ring: []int{4, 2, 3}}},
	} {
		got := FeetOf(Walk{w.picks, w.round})
		if got.Left != w.want.Left || got.Right != w.want.Right || got.Why != w.want.Why || got.Pick != w.want.Pick || !slices.Equal(got.Ring, w.want.Ring) {
			t.Errorf("%s: got %+v, want %+v", w.what, got, w.want)
		}
	}
}

func TestWalkOfAnOrder(t *testing.T) {
	for text, want := range map[string]Walk{
		"1-4":                   {[]draft.Set{a, b, c, d}, true},
		"(1-4) x fill":          {[]draft.Set{a, b, c, d}, true},
		"3, (1 2) x fill, 1+2":  {[]draft.Set{c, a, b, a, b, a | b}, false},
		"4, 1 2, (1+3) x 2, 4 ": {[]draft.Set{d, a, b, a | c, a | c, d}, true},
	} {
		o, faults := order.Parse(text, order.Context{Kind: order.Treadles})
		if got := WalkOf(o); len(faults) > 0 || got.Round != want.Round || !slices.Equal(got.Picks, want.Picks) {
			t.Errorf("%s: %v, want %v %v", text, got, want, faults)
		}
	}
}

// drawWalk draws a walk over up to so many treadles, of which most picks press one.
func drawWalk(t *rapid.T, treadles int) Walk {
	n := rapid.IntRange(1, treadles).Draw(t, "treadles")
	pick := rapid.Custom(func(t *rapid.T) draft.Set {
		set := draft.Of(rapid.IntRange(1, n).Draw(t, "pressed"))
		switch rapid.IntRange(0, 9).Draw(t, "also") {
		case 0:
			set |= draft.Of(rapid.IntRange(1, n).Draw(t, "with"))
		case 1:
			set = 0
		}
		return set
	})
	return Walk{rapid.SliceOfN(pick, 1, 12).Draw(t, "picks"), rapid.Bool().Draw(t, "round")}
}

// fits reports whether the feet can take turns over a walk, treadles with a bit set
// being the right foot's: the obvious look at each pick and the next.
func fits(w Walk, right draft.Set) bool {
	for i, set := range w.Picks {
		if set.Len() == 2 && (set&right).Len() != 1 || set.Len() > 2 {
			return false
		}
		if i+1 == len(w.Picks) && !w.Round {
			break
		}
		next := w.Picks[(i+1)%len(w.Picks)]
		if set.Len() == 1 && next.Len() == 1 && (set&right == 0) == (next&right == 0) {
			return false
		}
	}
	return true
}

// The feet take turns just where one of all ways to share the treadles out does; what is
// given is such a way, and a ring is one.
func TestFeetAgainstEveryShare(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawWalk(t, 7)
		feet := FeetOf(w)
		can := false
		for right := range draft.UpTo(7) + 1 {
			can = can || fits(w, right)
		}
		switch {
		case feet.Why == Unpressed:
			return
		case can != (feet.Why == Alternate):
			t.Fatalf("%+v: can take turns: %v", feet, can)
		case can && (!fits(w, feet.Right) || feet.Left&feet.Right != 0):
			t.Fatalf("%+v do not take turns", feet)
		case feet.Why == Odd:
			ringed(t, w, feet.Ring)
		}
	})
}

// ringed holds a ring against the walk: odd, no treadle twice, each beside the next.
func ringed(t *rapid.T, w Walk, ring []int) {
	if len(ring)%2 == 0 || len(ring) < 3 || draft.Of(ring...).Len() != len(ring) {
		t.Fatalf("%v is no ring", ring)
	}
	beside := map[[2]int]bool{}
	for i, set := range w.Picks {
		if list := set.List(); len(list) == 2 {
			beside[[2]int{list[0], list[1]}], beside[[2]int{list[1], list[0]}] = true, true
		}
		if x, y, ok := w.step(i); ok {
			beside[[2]int{x, y}], beside[[2]int{y, x}] = true, true
		}
	}
	for i, x := range ring {
		if !beside[[2]int{x, ring[(i+1)%len(ring)]}] {
			t.Fatalf("in the ring %v nothing leads on from %d", ring, x)
		}
	}
}

// A straight treadling lies 1 3 4 2, walked from the outside inwards by turns; a point
// too; of six 1 3 5 6 4 2.
func TestOrderForTheFeet(t *testing.T) {
	for _, w := range []struct {
		what     string
		picks    []draft.Set
		treadles int
		want     []int
	}{
		{"straight", []draft.Set{a, b, c, d}, 4, []int{1, 4, 2, 3}},
		{"the towels", []draft.Set{a, b, c, d, c, b}, 4, []int{1, 4, 2, 3}},
		{"six", []draft.Set{a, b, c, d, 16, 32}, 6, []int{1, 6, 2, 5, 3, 4}},
		{"tabby last", []draft.Set{b, c}, 3, []int{3, 1, 2}},
		{"begun with the last", []draft.Set{d, c, b, a}, 4, []int{3, 2, 4, 1}},
	} {
		if got, ok := Order(Walk{w.picks, true}, w.treadles); !ok || !slices.Equal(got, w.want) {
			t.Errorf("%s: %v, want %v", w.what, got, w.want)
		}
	}
	if _, ok := Order(Walk{[]draft.Set{a, b, c}, true}, 3); ok {
		t.Error("treadles in a ring of three are ordered")
	}
	if _, ok := Order(Walk{[]draft.Set{a, d}, true}, 3); ok {
		t.Error("a treadle that is not there is ordered")
	}
}

// travel is how far the two feet go over a walk, in treadles, with the treadles under
// those numbers, of treadle 1 first.
func travel(w Walk, feet Feet, numbers []int) int {
	sum := 0
	for _, foot := range []draft.Set{feet.Left, feet.Right} {
		presses := w.presses(foot)
		for i, t := range presses {
			if next, ok := w.after(presses, i); ok {
				sum += uneven(numbers[t-1], numbers[next-1])
			}
		}
	}
	return sum
}

// orders calls see for every order of a list.
func orders(list []int, at int, see func()) {
	if at == len(list) {
		see()
		return
	}
	for i := at; i < len(list); i++ {
		list[at], list[i] = list[i], list[at]
		orders(list, at+1, see)
		list[at], list[i] = list[i], list[at]
	}
}

// The order is one of all treadles, left before right before those never pressed, and no
// other order of either foot is a shorter way.
func TestOrderGoesTheLeastWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawWalk(t, 7)
		numbers, ok := Order(w, 8)
		feet := FeetOf(w)
		if ok != (feet.Why == Alternate) {
			t.Fatalf("ordered: %v, feet %+v", ok, feet)
		}
		if !ok {
			return
		}
		var at draft.Set
		for i, n := range numbers {
			at = at.With(n)
			left := feet.Left.Len()
			if isLeft, pressed := feet.Left.Has(i+1), (feet.Left | feet.Right).Has(i+1); isLeft != (n <= left) || pressed != (n <= left+feet.Right.Len()) {
				t.Fatalf("treadle %d lies at %d, feet %+v", i+1, n, feet)
			}
		}
		if at != draft.UpTo(8) {
			t.Fatalf("%v are not all numbers", numbers)
		}
		best := travel(w, feet, numbers)
		for _, foot := range []draft.Set{feet.Left, feet.Right} {
			list, other := foot.List(), slices.Clone(numbers)
			from := slices.Clone(list)
			for i, treadle := range from {
				from[i] = numbers[treadle-1]
			}
			slices.Sort(from)
			orders(list, 0, func() {
				for i, treadle := range list {
					other[treadle-1] = from[i]
				}
				if way := travel(w, feet, other); way < best {
					t.Fatalf("%v goes %d, %v only %d", numbers, best, other, way)
				}
			})
		}
	})
}

// The order of feet with many treadles is never a longer way than the order in which
// they are pressed, and no exchange of two shortens it.
func TestManyTreadlesAreBettered(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 16).Draw(t, "treadles")
		s := newSteps(n)
		for range rapid.IntRange(0, 40).Draw(t, "steps") {
			s.add(rapid.IntRange(0, n-1).Draw(t, "from"), rapid.IntRange(0, n-1).Draw(t, "to"))
		}
		order := s.bettered()
		way := s.way(order)
		for i := range order {
			for k := range i {
				order[i], order[k] = order[k], order[i]
				if s.way(order) < way {
					t.Fatalf("an exchange in %v shortens it", order)
				}
				order[i], order[k] = order[k], order[i]
			}
		}
		if n <= mostExact && s.way(s.least()) > way {
			t.Fatalf("the least way of %v is longer than %d", s, way)
		}
	})
}

// Sixty-four treadles by turns are ordered, all of them.
func TestSixtyFourTreadles(t *testing.T) {
	var w Walk
	for i := range draft.MostTreadles {
		w.Picks = append(w.Picks, draft.Of(i+1))
	}
	w.Round = true
	numbers, ok := Order(w, draft.MostTreadles)
	if !ok || draft.Of(numbers...) != draft.UpTo(draft.MostTreadles) {
		t.Errorf("got %v", numbers)
	}
}
