package structure

import (
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/trade/draft"
	"sley/internal/trade/weave"
)

// TestWorkedEdges: a point twill of the lifts 12, 23, 34 and 14, treadled A B C D C B,
// on a point threading whose edge ends are both on shaft 1. With one shuttle each
// side is caught at two of its three turns, so that a floating selvedge is wanted
// there: worked by hand, own computation.
func TestWorkedEdges(t *testing.T) {
	d := &draft.Draft{Shafts: 4, Threading: point4, Lifts: treadled(twoTwo, 1, 2, 3, 4, 3, 2)}
	for _, start := range []Side{Left, Right} {
		e := EdgesOfDraft(d, 13, Weaving{Start: []Side{start}})
		for side, c := range e.Sides {
			if c.Turns != 3 || c.Caught != 2 || c.Run != 1 {
				t.Errorf("from side %d, side %d: %+v", start, side, c)
			}
		}
	}
}

func TestEdgesOfKnownWeaves(t *testing.T) {
	straight := &draft.Draft{Shafts: 4, Threading: s1to4, Lifts: twoTwo}
	plain3 := &draft.Draft{Shafts: 2, Threading: []int{1, 2}, Lifts: []draft.Set{draft.Of(1), draft.Of(2), draft.Of(1)}}
	for _, c := range []struct {
		what   string
		e      *Edges
		caught [2]string // caught / turns, and the longest run of bare ones
		same   int
	}{
		// Of a straight draw 12, 23, 34, 41 the ends on 1 change sides after the first and
		// the third pick, those on 4 after the second and the last.
		{"2/2 twill from the left", EdgesOfDraft(straight, 40, Weaving{}), [2]string{"0/2 run 2", "0/2 run 2"}, 0},
		{"2/2 twill from the right", EdgesOfDraft(straight, 40, Weaving{Start: []Side{Right}}), [2]string{"2/2 run 0", "2/2 run 0"}, 0},
		{"one end less", EdgesOfDraft(straight, 39, Weaving{Start: []Side{Right}}), [2]string{"2/2 run 0", "0/2 run 2"}, 0},
		{"floating selvedges", EdgesOfDraft(straight, 40, Weaving{Floating: [2]bool{true, true}}), [2]string{"2/2 run 0", "2/2 run 0"}, 0},
		{"plain", EdgesOf(weave.Must("#./.#"), Weaving{}), [2]string{"1/1 run 0", "1/1 run 0"}, 0},
		{"three picks, the last in the shed of the first", EdgesOfDraft(plain3, 9, Weaving{}), [2]string{"2/3 run 1", "2/3 run 1"}, 2},
		{"two picks in a shed", EdgesOf(weave.Must("#./#./.#/.#"), Weaving{}), [2]string{"2/2 run 0", "0/2 run 2"}, 2},
		{"basket with two shuttles", EdgesOf(weave.Must("##../##../..##/..##"), Weaving{Shuttles: []int{0, 1, 0, 1}}), [2]string{"2/2 run 0", "2/2 run 0"}, 0},
		{"as narrow as two ends of a longer threading", EdgesOfDraft(straight, 2, Weaving{Start: []Side{Right}}), [2]string{"2/2 run 0", "2/2 run 0"}, 0},
		{"as narrow as one end", EdgesOfDraft(straight, 1, Weaving{}), [2]string{"0/2 run 2", "2/2 run 0"}, 2},
		{"a cloth of four picks", EdgesOf(weave.Must("#./.#").Cloth(4, 2), Weaving{}), [2]string{"1/1 run 0", "2/2 run 0"}, 0},
		{"one pick", EdgesOf(weave.Must("#.").Cloth(1, 2), Weaving{}), [2]string{"0/0 run 0", "0/0 run 0"}, 0},
		{"nothing", EdgesOf(&weave.Weave{}, Weaving{}), [2]string{"0/0 run 0", "0/0 run 0"}, 0},
	} {
		same := 0
		for _, turn := range c.e.Turns {
			if turn.SameShed {
				same++
			}
		}
		var got [2]string
		for side, s := range c.e.Sides {
			got[side] = fmt.Sprintf("%d/%d run %d", s.Caught, s.Turns, s.Run)
			if len(s.Bare) != s.Turns-s.Caught {
				t.Errorf("%s: bare after %v", c.what, s.Bare)
			}
		}
		if got != c.caught || same != c.same {
			t.Errorf("%s: %v, %d in the same shed, want %v, %d", c.what, got, same, c.caught, c.same)
		}
	}
}

// TestFloatingOfADraft: an end in no heddle at an edge floats there.
func TestFloatingOfADraft(t *testing.T) {
	d := &draft.Draft{Shafts: 4, Threading: []int{0, 1, 2, 3, 4}, Lifts: twoTwo}
	e := EdgesOfDraft(d, 5, Weaving{})
	if !e.Sides[Left].All() || e.Sides[Right].Caught != 0 {
		t.Errorf("%+v", e.Sides)
	}
}

// slowTurns walks each shuttle by itself, pick after pick, over as many repeats as
// bring every one back to its side.
func slowTurns(w *weave.Weave, s Weaving) (turns, caught [2]int) {
	m, times := w.Picks(), 1
	if !w.Bounded {
		times = 4 // enough for every shuttle to come back twice: counted by half below
	}
	for shuttle := range 5 {
		side, before := s.start(shuttle), -1
		for k := range m * times * 2 {
			pick := k % m
			if s.shuttle(pick) != shuttle || w.Bounded && k >= m {
				continue
			}
			if before >= 0 && (w.Bounded || k >= m*times) {
				end := map[Side]int{Left: 0, Right: w.Ends() - 1}[side]
				turns[side]++
				if s.Floating[side] || w.WarpUp(before, end) != w.WarpUp(pick, end) {
					caught[side]++
				}
			}
			side, before = side.Other(), pick
		}
	}
	return turns, caught
}

func TestEdgesAreTheirSlowTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s := drawn(t), weaving(t)
		e := EdgesOf(w, s)
		turns, caught := slowTurns(w, s)
		repeats := 1
		if !w.Bounded {
			repeats = 4 * w.Picks() / e.Picks
		}
		for side, c := range e.Sides {
			if c.Turns*repeats != turns[side] || c.Caught*repeats != caught[side] {
				t.Fatalf("side %d: %+v, want %d of %d over %d\n%+v\n%s", side, c, caught[side], turns[side], repeats, s, w)
			}
		}
		for side, c := range e.Sides {
			if run := slowRun(e.Turns, Side(side), !w.Bounded); c.Run != run {
				t.Fatalf("side %d: %d bare in a row, want %d\n%+v", side, c.Run, run, e.Turns)
			}
		}
		checkFixes(t, w, s, e)
	})
}

// slowRun tries every turn of a side as the first of a run that is not caught.
func slowRun(turns []Turn, side Side, round bool) int {
	turns = slices.DeleteFunc(slices.Clone(turns), func(t Turn) bool { return t.Side != side })
	longest := 0
	for from := range turns {
		long := 0
		for long < len(turns) && (round || from+long < len(turns)) && !turns[(from+long)%len(turns)].Caught {
			long++
		}
		longest = max(longest, long)
	}
	return longest
}

func weaving(t *rapid.T) Weaving {
	side := rapid.SampledFrom([]Side{Left, Right})
	return Weaving{
		Shuttles: rapid.SliceOfN(rapid.IntRange(0, 4), 0, 20).Draw(t, "shuttles"),
		Start:    rapid.SliceOfN(side, 0, 5).Draw(t, "start"),
		Floating: [2]bool{rapid.Bool().Draw(t, "floating left"), rapid.Bool().Draw(t, "floating right")},
	}
}

// checkFixes weaves each fix: it must catch what it says, more than the fix before.
func checkFixes(t *rapid.T, w *weave.Weave, s Weaving, e *Edges) {
	least := bare(e)
	if least > 0 && len(e.Fixes) == 0 {
		t.Fatal("no fix")
	}
	for i, f := range e.Fixes {
		fixed := EdgesOf(widened(w, f.Ends), restarted(s, f))
		got := [2]int{fixed.Sides[Left].Caught, fixed.Sides[Right].Caught}
		if got != f.Caught || bare(fixed) >= least {
			t.Fatalf("fix %+v catches %v\n%s", f, got, w)
		}
		if last := i == len(e.Fixes)-1; f.All() != last {
			t.Fatalf("fixes %+v: only the last catches all", e.Fixes)
		}
		least = bare(fixed)
	}
}

func restarted(s Weaving, f Fix) Weaving {
	start := make([]Side, 5)
	for shuttle := range start {
		start[shuttle] = s.start(shuttle)
		if slices.Contains(f.Swap, shuttle) {
			start[shuttle] = start[shuttle].Other()
		}
	}
	s.Start = start
	for side, hung := range f.Floating {
		s.Floating[side] = s.Floating[side] || hung
	}
	return s
}

// widened adds ends at both sides as the threading goes on.
func widened(w *weave.Weave, ends [2]int) *weave.Weave {
	n, period := w.Ends()+ends[Left]+ends[Right], w.EndPeriod()
	out := weave.New(w.Picks(), n)
	out.Bounded = w.Bounded
	for i := range w.Picks() {
		for j := range n {
			out.Set(i, j, w.WarpUp(i, mod(j-ends[Left], period)))
		}
	}
	return out
}

// TestFixes: the other start is enough for a straight twill; where the edges want
// different starts, an end is left out.
func TestFixes(t *testing.T) {
	d := &draft.Draft{Shafts: 4, Threading: s1to4, Lifts: twoTwo}
	e := EdgesOfDraft(d, 40, Weaving{})
	if len(e.Fixes) != 1 || !slices.Equal(e.Fixes[0].Swap, []int{0}) || e.Fixes[0].Ends != [2]int{} || !e.Fixes[0].All() {
		t.Errorf("begun from the wrong side: %+v", e.Fixes)
	}
	e = EdgesOfDraft(d, 41, Weaving{Start: []Side{Right}})
	if len(e.Fixes) != 1 || e.Fixes[0].Ends != [2]int{0, -1} || len(e.Fixes[0].Swap) != 0 || !e.Fixes[0].All() {
		t.Errorf("an end too many: %+v", e.Fixes)
	}
	e = EdgesOfDraft(&draft.Draft{Shafts: 4, Threading: point4, Lifts: treadled(twoTwo, 1, 2, 3, 4, 3, 2)}, 13, Weaving{})
	last := e.Fixes[len(e.Fixes)-1]
	if last.Floating != [2]bool{true, true} || !last.All() {
		t.Errorf("point twill: %+v", e.Fixes)
	}
}
