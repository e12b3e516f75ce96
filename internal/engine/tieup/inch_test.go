package tieup

import (
	"math/bits"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
)

// On four shafts two lifts tell all apart: 1-2 and 1-3.
func TestTellingOnFourShafts(t *testing.T) {
	for shafts, want := range map[draft.Set][]draft.Set{
		draft.UpTo(4):     {draft.Of(1, 2), draft.Of(1, 3)},
		draft.UpTo(2):     {draft.Of(1)},
		draft.UpTo(1):     nil,
		draft.UpTo(8):     {draft.Of(1, 2, 3, 4), draft.Of(1, 2, 5, 6), draft.Of(1, 3, 5, 7)},
		draft.Of(2, 5, 7): {draft.Of(2, 5), draft.Of(2)},
	} {
		if got := Telling(shafts); !slices.Equal(got, want) {
			t.Errorf("shafts %s: %v, want %v", shafts, got, want)
		}
	}
}

// apart reports whether lifts tell shafts apart: the slow look at every two.
func apart(lifts []draft.Set, shafts []int) bool {
	for i, s := range shafts {
		for _, other := range shafts[:i] {
			if !slices.ContainsFunc(lifts, func(up draft.Set) bool { return up.Has(s) != up.Has(other) }) {
				return false
			}
		}
	}
	return true
}

// As few lifts as can, each with half of the shafts, tell all of them apart.
func TestTellingTellsApart(t *testing.T) {
	for n := 2; n <= draft.MostShafts; n++ {
		all := draft.UpTo(n)
		lifts := Telling(all)
		if len(lifts) != bits.Len(uint(n-1)) || !apart(lifts, all.List()) {
			t.Errorf("%d shafts: %v", n, lifts)
		}
		for _, up := range lifts {
			if k := up.Len(); k != n/2 && k != (n+1)/2 {
				t.Errorf("%d shafts: %s is not balanced", n, up)
			}
			if n%2 == 0 && draft.Opens(loom.Counterbalance, up, n) != draft.Clean {
				t.Errorf("%d shafts: %s opens badly on a counterbalance loom", n, up)
			}
		}
	}
}

// unread gives the ends of a reading again: up or down, one by one.
func unread(across []int) []bool {
	var out []bool
	for _, n := range across {
		out = append(out, slices.Repeat([]bool{n > 0}, max(n, -n))...)
	}
	return out
}

// The reading is that of every end; one end on another shaft, or two neighbours
// exchanged, changes it in at least one lift.
func TestAnErrorIsRead(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 16).Draw(t, "shafts")
		right := rapid.SliceOfN(rapid.IntRange(1, n), 1, 60).Draw(t, "threading")
		lifts := Telling(draft.UpTo(n))
		for _, up := range lifts {
			var want []bool
			for _, shaft := range right {
				want = append(want, up.Has(shaft))
			}
			if got := unread(Across(right, up)); !slices.Equal(got, want) {
				t.Fatalf("%s over %v reads %v", up, right, got)
			}
		}
		wrong := slices.Clone(right)
		at := rapid.IntRange(0, len(right)-1).Draw(t, "end")
		if at > 0 && rapid.Bool().Draw(t, "exchanged") {
			wrong[at], wrong[at-1] = wrong[at-1], wrong[at]
		} else {
			wrong[at] = rapid.IntRange(1, n).Draw(t, "on")
		}
		read := slices.ContainsFunc(lifts, func(up draft.Set) bool { return !slices.Equal(Across(right, up), Across(wrong, up)) })
		if read == slices.Equal(right, wrong) {
			t.Fatalf("%v for %v is read: %v", wrong, right, read)
		}
	})
}

func TestAcrossLeavesFloatsOut(t *testing.T) {
	if got := Across([]int{0, 1, 2, 3, 4, 1, 2, 0}, draft.Of(1, 2)); !slices.Equal(got, []int{2, -2, 2}) {
		t.Errorf("got %v", got)
	}
}

// Where two treadles of a twill tell the four shafts apart, they are pressed; 1-3 has no
// treadle there. With one for each, 1-2 and 1-3 are pressed; without treadles they are
// lifted by hand.
func TestFirstInch(t *testing.T) {
	tabby := twill(loom.Rising, 1, 2, 4, 8)
	tabby.Ties = append(tabby.Ties, draft.Tie{Tied: draft.Of(1, 3)})
	hand := &draft.Draft{Shafts: 4, Threading: []int{1, 2, 3, 4}, Lifts: []draft.Set{1, 2, 4, 8}, Shed: loom.Table}
	pairs := twill(loom.Rising, 1, 2)
	pairs.Ties = []draft.Tie{{Tied: 1}, {Tied: 2}, {Tied: 4}, {Tied: 8}}
	few := twill(loom.Countermarch, 1, 2)
	few.Ties = few.Ties[:1]
	for what, c := range map[string]struct {
		d    *draft.Draft
		want []Opened
	}{
		"a twill":            {twill(loom.Countermarch, 1, 2, 4, 8), []Opened{{draft.Of(1, 2), 1}, {draft.Of(2, 3), 2}}},
		"a twill with tabby": {tabby, []Opened{{draft.Of(1, 2), 1}, {draft.Of(1, 3), 16}}},
		"a lift plan":        {hand, []Opened{{Up: draft.Of(1, 2)}, {Up: draft.Of(1, 3)}}},
		"a shaft to each":    {pairs, []Opened{{draft.Of(1, 2), 3}, {draft.Of(1, 3), 5}}},
		"too few treadles":   {few, []Opened{{draft.Of(1, 2), 1}, {Up: draft.Of(1, 3)}}},
	} {
		if got := FirstInch(c.d); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", what, got, c.want)
		}
	}
}

// Whatever the tie-up, as few lifts as can tell the shafts with ends apart, none empty or
// full, and treadles open what they are given for.
func TestFirstInchTellsApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawTied(t)
		used, _ := d.Used()
		var lifts []draft.Set
		for _, o := range FirstInch(d) {
			lifts = append(lifts, o.Up)
			if s := d.Open(o.Pressed); o.Pressed != 0 && (s.Up&used != o.Up || (s.Locked|s.Free)&used != 0) {
				t.Fatalf("%s opens %+v, wanted %s", o.Pressed, s, o.Up)
			}
			if o.Up == 0 || o.Up == used || o.Up&^used != 0 {
				t.Fatalf("%s of the shafts %s", o.Up, used)
			}
		}
		if len(lifts) != len(Telling(used)) || !apart(lifts, used.List()) {
			t.Fatalf("%v do not tell %s apart", lifts, used)
		}
	})
}
