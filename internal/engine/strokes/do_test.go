package strokes

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/problem"
)

func codesOf(list *problem.List) []string {
	var out []string
	for _, p := range list.All() {
		out = append(out, p.Code)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// threads4 is a straight draft whose ends have the colours 0 1 2 3.
func threads4() *draft.Draft {
	d := twill(4)
	d.Palette = make([]draft.Colour, 4)
	d.Warp.Colours = []int{0, 1, 2, 3}
	return d
}

// TestPutTakesThreadsAlong: what stands in another's place keeps its colour, what is new
// has that of the left neighbour, at the edge of the right one.
func TestPutTakesThreadsAlong(t *testing.T) {
	for _, c := range []struct {
		at, remove int
		put        []int
		shafts     []int
		colours    []int
	}{
		{1, 1, []int{4}, []int{1, 4, 3, 4}, []int{0, 1, 2, 3}},
		{1, 1, []int{4, 4, 4}, []int{1, 4, 4, 4, 3, 4}, []int{0, 1, 1, 1, 2, 3}},
		{2, 0, []int{1}, []int{1, 2, 1, 3, 4}, []int{0, 1, 1, 2, 3}},
		{0, 0, []int{2}, []int{2, 1, 2, 3, 4}, []int{0, 0, 1, 2, 3}},
		{0, 2, nil, []int{3, 4}, []int{2, 3}},
		{0, 2, []int{4}, []int{4, 3, 4}, []int{0, 2, 3}},
		{4, 0, []int{1}, []int{1, 2, 3, 4, 1}, []int{0, 1, 2, 3, 3}},
	} {
		is := made(t, threads4(), Act{Do: Put, Part: Threading, At: c.at, Remove: c.remove, Put: Numbers(c.put...)})
		if !slices.Equal(is.Threading, c.shafts) || !slices.Equal(is.Warp.Colours, c.colours) {
			t.Errorf("%+v: shafts %v, colours %v", c, is.Threading, is.Warp.Colours)
		}
	}
	put := []Act{
		{Do: Put, Part: Threading, At: 2, Put: Numbers(1)},
		{Do: Put, Part: WarpColours, At: 2, Remove: 1, Put: Numbers(3)},
	}
	if is := made(t, threads4(), put...); !slices.Equal(is.Warp.Colours, []int{0, 1, 3, 2, 3}) {
		t.Errorf("with a colour in the same stroke: %v", is.Warp.Colours)
	}
}

// TestStretches holds what the deeds make of a stretch.
func TestStretches(t *testing.T) {
	for _, c := range []struct {
		act     Act
		shafts  []int
		colours []int
	}{
		{Act{Do: Reverse, Part: Threading, From: 0, To: 3}, []int{3, 2, 1, 4}, []int{0, 1, 2, 3}},
		{Act{Do: Reverse, Part: WarpColours, From: 0, To: 3}, []int{1, 2, 3, 4}, []int{2, 1, 0, 3}},
		{Act{Do: Mirror, Part: Threading, From: 0, To: 4}, []int{1, 2, 3, 4, 3, 2, 1}, []int{0, 1, 2, 3, 2, 1, 0}},
		{Act{Do: Mirror, Part: Threading, From: 0, To: 2}, []int{1, 2, 1, 3, 4}, []int{0, 1, 0, 2, 3}},
		{Act{Do: Mirror, Part: WarpColours, From: 1, To: 3}, []int{1, 2, 3, 4}, []int{0, 1, 2, 1}},
		{Act{Do: Repeat, Part: Threading, From: 1, To: 3, Times: 2}, []int{1, 2, 3, 2, 3, 4}, []int{0, 1, 2, 1, 2, 3}},
		{Act{Do: Repeat, Part: WarpColours, From: 0, To: 1, Times: 9}, []int{1, 2, 3, 4}, []int{0, 0, 0, 0}},
		{Act{Do: Delete, Part: Threading, From: 1, To: 3}, []int{1, 4}, []int{0, 3}},
		{Act{Do: Shift, Part: Threading, From: 2, To: 4, By: 1}, []int{1, 2, 4, 1}, []int{0, 1, 2, 3}},
		{Act{Do: Shift, Part: WarpColours, From: 0, To: 4, By: -1}, []int{1, 2, 3, 4}, []int{3, 0, 1, 2}},
		{Act{Do: Rotate, Part: Threading, From: 0, To: 4, By: 1}, []int{4, 1, 2, 3}, []int{0, 1, 2, 3}},
		{Act{Do: Rotate, Part: Threading, From: 1, To: 4, By: -4}, []int{1, 3, 4, 2}, []int{0, 1, 2, 3}},
		{Act{Do: Type, Part: Threading, From: 1, To: 2, Text: "(1 4) x 2"}, []int{1, 1, 4, 1, 4, 3, 4}, []int{0, 1, 1, 1, 1, 2, 3}},
		{Act{Do: Type, Part: Threading, From: 0, To: 4, Text: "1 (3) x fill, 1"}, []int{1, 3, 3, 1}, []int{0, 1, 2, 3}},
		{Act{Do: Type, Part: WarpColours, From: 0, To: 4, Text: "(B 1, A 1) x fill"}, []int{1, 2, 3, 4}, []int{1, 0, 1, 0}},
		{Act{Do: Type, Part: WarpColours, From: 1, To: 4, Names: []string{"ecru", "slate"}, Text: "slate 1, ecru 2"}, []int{1, 2, 3, 4}, []int{0, 1, 0, 0}},
	} {
		if is := made(t, threads4(), c.act); !slices.Equal(is.Threading, c.shafts) || !slices.Equal(is.Warp.Colours, c.colours) {
			t.Errorf("%+v: shafts %v, colours %v", c.act, is.Threading, is.Warp.Colours)
		}
	}
}

func TestStretchesOfSets(t *testing.T) {
	d := twill(4).WithoutTreadles()
	is := made(t, d, Act{Do: Shift, Part: Lifts, From: 0, To: 2, By: 1}, Act{Do: Type, Part: Lifts, From: 2, To: 3, Text: "1+3 2"})
	if want := []draft.Set{draft.Of(2, 3), draft.Of(3, 4), draft.Of(1, 3), draft.Of(2), draft.Of(1, 4)}; !slices.Equal(is.Lifts, want) {
		t.Errorf("got %v", is.Lifts)
	}
	is = made(t, twill(4), Act{Do: Reverse, Part: Ties, From: 0, To: 4}, Act{Do: Mirror, Part: Treadling, From: 0, To: 4})
	if is.Ties[0].Tied != draft.Of(1, 4) || len(is.Treadling) != 7 || is.Treadling[6] != draft.Of(1) {
		t.Errorf("%s", table(is))
	}
}

// TestTwiceIsNothing: a stretch turned twice is as it was, and mirrored one less than
// twice as long.
func TestTwiceIsNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawn(t)
		part := rapid.SampledFrom([]Part{Threading, WarpColours, WeftColours}).Draw(t, "part")
		n := len(Values(d, part))
		from := rapid.IntRange(0, n).Draw(t, "from")
		a := Act{Do: Reverse, Part: part, From: from, To: rapid.IntRange(from, n).Draw(t, "to")}
		if is := made(t, d, a, a); table(is) != table(d) {
			t.Fatalf("%+v twice gives\n%s", a, table(is))
		}
		a.Do, a.Part, a.To = Mirror, Threading, min(a.To, d.Ends())
		if a.From = min(a.From, a.To); a.From < a.To {
			is := made(t, d, a)
			if is.Ends() != d.Ends()+a.To-a.From-1 {
				t.Fatalf("%+v of %d ends makes %d", a, d.Ends(), is.Ends())
			}
		}
	})
}

// TestRules holds rules against orders that are written out.
func TestRules(t *testing.T) {
	rule := func(r Rule, a Act) Act {
		a.Do, a.Part, a.Rule = ByRule, Threading, r
		return a
	}
	for _, c := range []struct {
		act  Act
		want string
	}{
		{rule(Straight, Act{Length: 6}), "1 2 3 4 5 6"},
		{rule(Straight, Act{Length: 6, Last: 4, Start: 3}), "3 4 1 2 3 4"},
		{rule(Straight, Act{Length: 5, First: 5, By: -1}), "8 7 6 5 8"},
		// Wolfensberger 1921, fig. 43: a satin of five binds the ends 1 3 5 2 4.
		{rule(Straight, Act{Length: 5, Last: 5, By: 2}), "1 3 5 2 4"},
		{rule(Point, Act{Length: 7, Last: 4}), "1 2 3 4 3 2 1"},
		{rule(Point, Act{Length: 5, Last: 4, By: -1}), "4 3 2 1 2"},
		{rule(Point, Act{Length: 3, First: 2, Last: 2}), "2 2 2"},
		// From memory: runs of four, each a shaft further.
		{rule(Advancing, Act{Length: 12, Last: 8}), "1 2 3 4 2 3 4 5 3 4 5 6"},
		{rule(Advancing, Act{Length: 9, Last: 4, Run: 3, By: 2}), "1 2 3 3 4 1 1 2 3"},
	} {
		d := made(t, twill(4), Act{Do: Shafts, Number: 8})
		c.act.From, c.act.To = 0, 4
		is := made(t, d, c.act)
		if want := made(t, d, Act{Do: Type, Part: Threading, From: 0, To: 4, Text: c.want}); !slices.Equal(is.Threading, want.Threading) {
			t.Errorf("%+v gives %v, want %s", c.act, is.Threading, c.want)
		}
	}
}

// TestPointDraw: on n shafts it repeats on 2n - 2 ends, 22 on twelve (A. Wolfensberger,
// Theory of Silk Weaving, 2nd ed. 1921, p. 11).
func TestPointDraw(t *testing.T) {
	for shafts, want := range map[int]int{4: 6, 12: 22} {
		d := &draft.Draft{Shafts: shafts, Threading: []int{1}, Lifts: []draft.Set{1}}
		is := made(t, d, Act{Do: ByRule, Part: Threading, To: 1, Rule: Point, Length: 2 * want})
		for p := 1; p <= want; p++ {
			if again := slices.Equal(is.Threading[p:], is.Threading[:2*want-p]); again != (p == want) {
				t.Errorf("a point draw on %d shafts comes again after %d ends: %v", shafts, p, again)
			}
		}
	}
	is := made(t, twill(4), Act{Do: ByRule, Part: Treadling, From: 0, To: 4, Rule: Point, Length: 6})
	if !slices.Equal(is.Treadling, []draft.Set{1, 2, 4, 8, 4, 2}) {
		t.Errorf("treadled %v", is.Treadling)
	}
}

// TestTreadlesMove: picks press the treadles they pressed, whatever number those have.
func TestTreadlesMove(t *testing.T) {
	d := twill(8)
	is := made(t, d, Act{Do: Put, Part: Ties, At: 1, Put: Sets(draft.Of(1, 3), draft.Of(2, 4))})
	if is.Treadles != 6 || is.Treadling[1] != draft.Of(4) || !is.Drawdown().Equal(d.Drawdown()) {
		t.Errorf("%s", table(is))
	}
	if back := made(t, is, Act{Do: Put, Part: Ties, At: 1, Remove: 2}); table(back) != table(d) {
		t.Errorf("%s", table(back))
	}
	up := made(t, d, Act{Do: ForShed, Shed: loom.Countermarch}, Act{Do: Put, Part: Lowered, At: 0, Remove: 1, Put: Sets(draft.Of(1, 3, 4))})
	if up.Ties[0].Tied != draft.Of(2) {
		t.Errorf("a shaft tied to sink is still tied to rise: %v", up.Ties[0])
	}
}

func TestSheds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawn(t)
		a := Act{Do: ForShed, Shed: rapid.SampledFrom(sheds).Draw(t, "for")}
		is, list := Do(d, []Act{a})
		if is == nil {
			t.Fatalf("%v", list.All())
		}
		if !is.Drawdown().Equal(d.Drawdown()) || is.Shed != a.Shed {
			t.Fatalf("for %s\n%s\nmakes\n%s", a.Shed, table(d), table(is))
		}
	})
}

// The shafts of treadles are typed as those of a lift plan are.
func TestTiesAreTyped(t *testing.T) {
	d := twill(4)
	is := made(t, d, Act{Do: Type, Part: Ties, From: 0, To: 2, Text: "2 1+3"})
	if is.Ties[0].Tied != draft.Of(2) || is.Ties[1].Tied != draft.Of(1, 3) {
		t.Errorf("%v", is.Ties)
	}
	if _, list := Do(d, []Act{{Do: Type, Part: Ties, From: 0, To: 1, Text: "1+7"}}); !list.Failed() {
		t.Errorf("shaft 7 of %d was tied", d.Shafts)
	}
}

// Colours without names are called by letters, as many as there are.
func TestLetters(t *testing.T) {
	all := Letters(800)
	for i, want := range map[int]string{0: "A", 25: "Z", 26: "AA", 51: "AZ", 52: "BA", 701: "ZZ", 702: "AAA"} {
		if all[i] != want {
			t.Errorf("colour %d is %s, want %s", i, all[i], want)
		}
	}
}
