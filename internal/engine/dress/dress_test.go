package dress

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/trade/qty"
)

func perInch(n int64) qty.Rat { return qty.Frac(n, int64(qty.Inch)) }

func inches(n, d int64) qty.Rat { return qty.Frac(n, d).Mul(qty.Inch.Rat()) }

// four is the warp of our own worked project P1 (shared conventions, not an
// outside check): 505 ends at 24 to the inch.
var four = []Stretch{{Yarn: "white", Places: 505, Each: 1, Density: perInch(24)}}

func TestRaddleOfP1(t *testing.T) {
	got := Runs(Raddle(four, perInch(2)))
	if len(got) != 2 || got[0].Times != 42 || !slices.Equal(got[0].Cycle, []int{12}) || got[1].Times != 1 || !slices.Equal(got[1].Cycle, []int{1}) {
		t.Errorf("got %v, want 42 x 12 + 1", got)
	}
}

func TestSectionsOfP1(t *testing.T) {
	sections := Sections(four, 2*qty.Inch)
	if got, want := sizes(sections), slices.Concat([]int{12}, slices.Repeat([]int{48}, 10), []int{13}); !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
	want := []Package{{"white", 1, 12, 12}, {"white", 13, 13, 11}, {"white", 14, 48, 10}}
	got := Packages(sections)
	if !slices.Equal(got, want) {
		t.Errorf("got %v, want 12 packages for 12 sections, 1 for 11, 35 for 10", got)
	}
	wound := inches(198, 1) // 5 1/2 yd
	all := qty.Rat{}
	for i, yards := range []qty.Rat{qty.Int(66), qty.Frac(121, 2), qty.Int(55)} {
		each := wound.Mul(qty.Int(int64(got[i].Sections)))
		if !each.Equal(yards.Mul(qty.Yard.Rat())) {
			t.Errorf("packages %d to %d hold %s nm, want %s yd", got[i].From, got[i].To, each, yards)
		}
		all = all.Add(each.Mul(qty.Int(int64(got[i].To - got[i].From + 1))))
	}
	if !all.Equal(qty.Frac(5555, 2).Mul(qty.Yard.Rat())) {
		t.Errorf("%s nm in all, want 2777.5 yd", all)
	}
}

func sizes(sections []Section) []int {
	var out []int
	for _, s := range sections {
		out = append(out, s.Ends)
	}
	return out
}

// Doubled edges stand in one place and are counted; ends of another beam take
// their width and are not.
func TestRaddleOfEdgesCrammedAndOtherBeams(t *testing.T) {
	at := func(places, each int, epi int64) Stretch {
		return Stretch{Yarn: "a", Places: places, Each: each, Density: perInch(epi)}
	}
	for _, c := range []struct {
		name string
		list []Stretch
		want []int
	}{
		{"doubled edges", []Stretch{at(2, 2, 10), at(16, 1, 10), at(2, 2, 10)}, []int{12, 12}},
		{"crammed", []Stretch{at(10, 1, 10), at(30, 1, 30), at(10, 1, 10)}, []int{10, 30, 10}},
		{"across a stripe", []Stretch{at(5, 1, 10), at(20, 1, 20)}, []int{15, 10}},
		{"another beam", []Stretch{at(10, 1, 10), at(10, 0, 10), at(10, 1, 10)}, []int{10, 0, 10}},
		{"seven and a half", []Stretch{at(30, 1, 15)}, []int{15, 15}},
	} {
		if got := Raddle(c.list, perInch(1)); !slices.Equal(got, c.want) {
			t.Errorf("%s: got %v, want %v", c.name, got, c.want)
		}
	}
	if got := Raddle([]Stretch{at(30, 1, 15)}, perInch(2)); !slices.Equal(got, []int{8, 7, 8, 7}) {
		t.Errorf("15 in an inch, two spaces: got %v, want 8 7 8 7", got)
	}
}

func TestNarrowAndEvenSections(t *testing.T) {
	narrow := []Stretch{{"a", 20, 1, perInch(24)}}
	if got := Sections(narrow, 2*qty.Inch); !slices.Equal(sizes(got), []int{20}) || got[0].Whole {
		t.Errorf("a warp narrower than a section: %v", got)
	}
	even := []Stretch{{"a", 96, 1, perInch(24)}}
	if got := Sections(even, 2*qty.Inch); !slices.Equal(sizes(got), []int{48, 48}) || !got[0].Whole {
		t.Errorf("two whole sections: %v", got)
	}
}

func TestPackagesOfTwoYarns(t *testing.T) {
	list := []Stretch{{"a", 3, 1, perInch(4)}, {"b", 3, 1, perInch(4)}, {"a", 2, 1, perInch(4)}}
	got := Packages(Sections(list, qty.Inch))
	want := []Package{{"a", 1, 2, 2}, {"a", 3, 3, 1}, {"b", 1, 1, 2}, {"b", 2, 2, 1}}
	if !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

// Brooks counts a measuring wheel of 132 teeth, 27 yd each: 4 wraps and 7 teeth
// are 14 445 yd (C. P. Brooks, Cotton Manufacturing, 3rd ed. 1892, E167 of our
// worked examples: https://bitlit.ru/page/en/christopher-parkinson-brooks/cotton-manufacturing/20).
func TestBrooksMeasuringWheel(t *testing.T) {
	turns, over := Turns(qty.Int(14445).Mul(qty.Yard.Rat()), 132*27*qty.Yard)
	if teeth := over.Div(qty.Yard.Rat()); turns != 4 || !teeth.Equal(qty.Int(7*27)) {
		t.Errorf("got %d wraps and %s yd, want 4 and 7 teeth of 27 yd", turns, teeth)
	}
}

func TestTurns(t *testing.T) {
	for _, c := range []struct {
		wound, over qty.Rat
		girth       qty.Length
		turns       int
	}{
		{inches(198, 1), inches(54, 1), 2 * qty.Yard, 2},
		{inches(216, 1), qty.Rat{}, 2 * qty.Yard, 3},
		{inches(10, 1), inches(10, 1), qty.Yard, 0},
	} {
		turns, over := Turns(c.wound, c.girth)
		if turns != c.turns || !over.Equal(c.over) {
			t.Errorf("%s on %s: got %d turns and %s", c.wound, c.girth, turns, over)
		}
	}
}

func TestRunsSayTheList(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := rapid.SliceOfN(rapid.IntRange(0, 2), 0, 40).Draw(t, "list")
		var said []int
		for _, r := range Runs(list) {
			said = append(said, slices.Repeat(r.Cycle, r.Times)...)
		}
		if !slices.Equal(said, list) {
			t.Fatalf("%v is said as %v", list, Runs(list))
		}
	})
	if got := Runs([]int{8, 7, 8, 7, 8, 7, 3}); len(got) != 2 || got[0].Times != 3 {
		t.Errorf("8-7 three times and 3: got %v", got)
	}
}

// drawWarp draws a warp of several yarns, densities, doubled ends and beams.
func drawWarp(t *rapid.T) []Stretch {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Stretch {
		return Stretch{
			Yarn:    rapid.SampledFrom([]string{"white", "blue", "sand"}).Draw(t, "yarn"),
			Places:  rapid.IntRange(1, 60).Draw(t, "places"),
			Each:    rapid.SampledFrom([]int{1, 1, 1, 2, 0}).Draw(t, "each"),
			Density: qty.Frac(rapid.Int64Range(4, 90).Draw(t, "density"), 3*int64(qty.Inch)),
		}
	}), 1, 8).Draw(t, "warp")
}

// endByEnd puts every end into its space alone: the slow twin of the raddle.
func endByEnd(list []Stretch, spaces qty.Rat) []int {
	var out []int
	at := qty.Rat{}
	for _, s := range list {
		for range s.Places {
			space := at.Mul(spaces).Floor().Count(qty.Down)
			for len(out) <= space {
				out = append(out, 0)
			}
			out[space] += s.Each
			at = at.Add(s.Density.Inv())
		}
	}
	return out
}

func TestRaddleIsThatOfEveryEnd(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := drawWarp(t)
		spaces := qty.Frac(rapid.Int64Range(1, 12).Draw(t, "spaces"), 3*int64(qty.Inch))
		got, want := Raddle(list, spaces), endByEnd(list, spaces)
		if !slices.Equal(got, want) {
			t.Fatalf("got %v, want %v", got, want)
		}
	})
}

func TestSectionsAndPackagesAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := drawWarp(t)
		sections := Sections(list, qty.Length(rapid.IntRange(1, 6).Draw(t, "section"))*qty.Inch/2)
		all := 0
		for _, n := range sizes(sections) {
			all += n
		}
		used := 0
		for _, p := range Packages(sections) {
			used += (p.To - p.From + 1) * p.Sections
		}
		if all != Ends(list) || used != all {
			t.Fatalf("%d ends in sections, %d from packages, want %d", all, used, Ends(list))
		}
	})
}

// Of a warp alike throughout, the two part sections differ by one end at most
// and the whole ones too.
func TestSectionsAreEven(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		epi := rapid.Int64Range(4, 40).Draw(t, "epi")
		n := rapid.IntRange(1, 900).Draw(t, "ends")
		sections := Sections([]Stretch{{"a", n, 1, perInch(epi)}}, 2*qty.Inch)
		var whole, part []int
		for _, s := range sections {
			if s.Whole {
				whole = append(whole, s.Ends)
			} else {
				part = append(part, s.Ends)
			}
		}
		if len(part) == 2 && (part[1] < part[0] || part[1]-part[0] > 1) || len(part) > 2 {
			t.Fatalf("part sections of %v", part)
		}
		if len(whole) > 0 && (slices.Min(whole) != slices.Max(whole) || slices.Max(whole) != int(2*epi)) {
			t.Fatalf("whole sections of %v at %d", whole, epi)
		}
	})
}
