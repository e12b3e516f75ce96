package order

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func shaftRuns(shafts ...int) []Run {
	var out []Run
	for _, s := range shafts {
		out = append(out, Run{Shaft: s, Count: 1})
	}
	return out
}

func TestSpellByHand(t *testing.T) {
	pick := func(sets ...uint64) []Run {
		var out []Run
		for _, s := range sets {
			out = append(out, Run{Set: s, Count: 1})
		}
		return out
	}
	point := []int{1, 2, 3, 4, 3, 2}
	for _, test := range []struct {
		kind Kind
		runs []Run
		want string
	}{
		{Shafts, nil, ""},
		{Shafts, shaftRuns(1, 2, 3, 4), "1-4"},
		{Shafts, shaftRuns(2, 1), "2 1"},
		{Shafts, shaftRuns(1, 2, 3, 4, 1, 2, 3, 4, 1, 2, 3, 4), "(1-4) x 3"},
		{Shafts, shaftRuns(append(slices.Repeat(point, 5), 1)...), "(1-4 3 2) x 5, 1"},
		{Shafts, shaftRuns(1, 1, 1, 1, 3), "1 x 4, 3"},
		{Treadles, pick(1, 2, 1, 2, 1, 2, 5), "(1 2) x 3, 1+3"},
		{Stripes, []Run{{Name: "blue", Count: 12}, {Name: "white", Count: 4}, {Name: "red", Count: 2}, {Name: "white", Count: 4}, {Name: "red", Count: 2}, {Name: "white", Count: 4}, {Name: "red", Count: 2}}, "blue 12, (white 4, red 2) x 3"},
	} {
		if got := Spell(test.kind, test.runs); got != test.want {
			t.Errorf("%v: %q, want %q", test.runs, got, test.want)
		}
	}
}

// What is spelt reads back as the same threads, and is not longer than they are.
func TestSpellReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kind := rapid.SampledFrom([]Kind{Stripes, Shafts, Treadles}).Draw(t, "kind")
		one := rapid.Custom(func(t *rapid.T) Run {
			switch kind {
			case Shafts:
				return Run{Shaft: rapid.IntRange(1, 5).Draw(t, "shaft"), Count: rapid.IntRange(1, 2).Draw(t, "count")}
			case Treadles:
				return Run{Set: rapid.Uint64Range(1, 9).Draw(t, "set"), Count: 1}
			}
			return Run{Name: rapid.SampledFrom([]string{"white", "blue"}).Draw(t, "yarn"), Count: rapid.IntRange(1, 6).Draw(t, "count")}
		})
		unit := rapid.SliceOfN(one, 1, 12).Draw(t, "unit")
		runs := slices.Repeat(unit, rapid.IntRange(1, 5).Draw(t, "times"))
		runs = append(runs, rapid.SliceOfN(one, 0, 6).Draw(t, "rest")...)
		text := Spell(kind, runs)
		o, faults := Parse(text, Context{Kind: kind})
		if len(faults) > 0 || !alike(o.Runs(0), merged(runs)) {
			t.Fatalf("%v: %q, %v", runs, text, faults)
		}
	})
}

// merged joins neighbours that are alike.
func merged(runs []Run) []Run {
	var out []Run
	for _, run := range runs {
		if n := len(out); n > 0 && out[n-1].sort() == run.sort() {
			out[n-1].Count += run.Count
		} else {
			out = append(out, run)
		}
	}
	return out
}

func BenchmarkSpell(b *testing.B) {
	var runs []Run
	for i := range 4000 {
		runs = append(runs, Run{Shaft: 1 + (i*i+i/7)%40, Count: 1})
	}
	for b.Loop() {
		Spell(Shafts, runs)
	}
}
