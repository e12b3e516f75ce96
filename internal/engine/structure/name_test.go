package structure

import (
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/trade/draft"
	"sley/internal/trade/weave"
)

// woven draws a draft down: a threading and lifts, each lift the shafts that are up.
func woven(threading []int, lifts ...draft.Set) *weave.Weave {
	return (&draft.Draft{Shafts: slices.Max(threading), Threading: threading, Lifts: lifts}).Drawdown()
}

// treadled gives the lifts of those treadles, treadle 1 first.
func treadled(ties []draft.Set, treadling ...int) []draft.Set {
	var out []draft.Set
	for _, treadle := range treadling {
		out = append(out, ties[treadle-1])
	}
	return out
}

// twillTies are the lifts of a twill: those shafts, and the same moved on.
func twillTies(n int, up ...int) []draft.Set {
	var out []draft.Set
	for k := range n {
		var s draft.Set
		for _, shaft := range up {
			s = s.With((shaft-1+k)%n + 1)
		}
		out = append(out, s)
	}
	return out
}

var (
	twoTwo  = twillTies(4, 1, 2)
	oneUp   = twillTies(4, 1)
	eight   = twillTies(8, 1, 2, 3, 6)
	fancy   = twillTies(8, 1, 2, 3, 5)
	s1to4   = []int{1, 2, 3, 4}
	s1to8   = []int{1, 2, 3, 4, 5, 6, 7, 8}
	point4  = []int{1, 2, 3, 4, 3, 2}
	point8  = []int{1, 2, 3, 4, 5, 6, 7, 8, 7, 6, 5, 4, 3, 2}
	herring = []int{1, 2, 3, 4, 2, 1, 4, 3}
	clipped = []int{1, 2, 4, 3}
)

// namedWeaves are weaves as handbooks draft them: common practice, no source.
var namedWeaves = []struct {
	what  string
	weave *weave.Weave
	want  Name
}{
	{"plain", weave.Must("#./.#"), Name{Kind: Plain}},
	{"plain on four shafts", woven(s1to4, draft.Of(1, 3), draft.Of(2, 4)), Name{Kind: Plain}},
	{"2/2 basket", weave.Must("##../##../..##/..##"), Name{Kind: Basket, EndGroups: []int{2}, PickGroups: []int{2}}},
	{"3/3 basket", weave.Must("###.../###.../###.../...###/...###/...###"), Name{Kind: Basket, EndGroups: []int{3}, PickGroups: []int{3}}},
	{"irregular basket", weave.Must("###.../###.../...###/...###"), Name{Kind: Basket, EndGroups: []int{3}, PickGroups: []int{2}}},
	{"uneven basket", weave.Must("##./##./..#"), Name{Kind: Basket, Face: WarpFaced, EndGroups: []int{2, 1}, PickGroups: []int{2, 1}}},
	{"basket threaded, one pick in a shed", weave.Must("##../..##"), Name{Kind: WeftRib, EndGroups: []int{2}, PickGroups: []int{1}}},
	{"3/1 weft rib", weave.Must("###./...#"), Name{Kind: WeftRib, EndGroups: []int{3, 1}, PickGroups: []int{1}}},
	{"2/2 warp rib", weave.Must("#./#./.#/.#"), Name{Kind: WarpRib, EndGroups: []int{1}, PickGroups: []int{2}}},
	{"2/1/1 warp rib", weave.Must("#./#./.#/#./.#/.#/#./.#"), Name{Kind: WarpRib, EndGroups: []int{1}, PickGroups: []int{2, 1, 1}}},

	{"2/2 twill, right", woven(s1to4, treadled(twoTwo, 1, 2, 3, 4)...), Name{Kind: Twill, Hand: RightHand, Over: []int{2, 2}}},
	{"2/2 twill, left", woven(s1to4, treadled(twoTwo, 4, 3, 2, 1)...), Name{Kind: Twill, Hand: LeftHand, Over: []int{2, 2}}},
	{"1/3 twill", woven(s1to4, oneUp...), Name{Kind: Twill, Face: WeftFaced, Hand: RightHand, Over: []int{1, 3}}},
	{"2/1 twill", weave.Must("##./.##/#.#"), Name{Kind: Twill, Face: WarpFaced, Hand: RightHand, Over: []int{2, 1}}},
	{"3/2/1/2 twill", woven(s1to8, eight...), Name{Kind: Twill, Hand: RightHand, Over: []int{3, 2, 1, 2}}},
	{"3/3/1/1 twill", woven(s1to8, fancy...), Name{Kind: Twill, Hand: RightHand, Over: []int{3, 3, 1, 1}}},
	{"treadled back", woven(s1to4, treadled(twoTwo, 1, 2, 3, 4, 3, 2)...), Name{Kind: PointTwill, Over: []int{2, 2}, Turned: Weft}},
	{"point threading", woven(point4, twoTwo...), Name{Kind: PointTwill, Over: []int{2, 2}, Turned: Warp}},
	{"point both ways", woven(point8, treadled(eight, point8...)...), Name{Kind: Diamond, Over: []int{3, 2, 1, 2}}},
	{"herringbone threading", woven(herring, twoTwo...), Name{Kind: Herringbone, Over: []int{2, 2}, Turned: Warp}},
	{"herringbone treadling", woven(s1to4, treadled(twoTwo, herring...)...), Name{Kind: Herringbone, Over: []int{2, 2}, Turned: Weft}},
	{"broken 2/2 twill", woven(s1to4, treadled(twoTwo, clipped...)...), Name{Kind: BrokenTwill, Over: []int{2, 2}, Turned: Weft}},
	{"broken one way", woven(s1to4, treadled(twoTwo, 1, 2, 3, 4, 2, 3, 4, 1, 3, 4, 1, 2, 4, 1, 2, 3)...), Name{Kind: BrokenTwill, Hand: RightHand, Over: []int{2, 2}, Turned: Weft}},
	{"broken threading", woven(clipped, twoTwo...), Name{Kind: BrokenTwill, Over: []int{2, 2}, Turned: Warp}},

	{"satin on five, move 2", weave.Must("#..../..#../....#/.#.../...#."), Name{Kind: Satin, Face: WeftFaced, Hand: RightHand, Size: 5, Move: 2}},
	{"broken 1/3 twill", woven(s1to4, treadled(oneUp, clipped...)...), Name{Kind: IrregularSatin, Face: WeftFaced, Size: 4}},
	{"broken 3/1 twill", woven(s1to4, treadled(twillTies(4, 1, 2, 3), clipped...)...), Name{Kind: IrregularSatin, Face: WarpFaced, Size: 4}},
	{"irregular satin on six", weave.Must("#...../..#.../....#./.#..../.....#/...#.."), Name{Kind: IrregularSatin, Face: WeftFaced, Size: 6}},
	{"double cloth", weave.Must("#.../###./..#./#.##"), Name{Kind: DoubleCloth}},
	{"double cloth, otherwise ordered", weave.Must("#.../###./.#../##.#"), Name{Kind: DoubleCloth}},

	{"double cloth whose upper ends stand in pairs", rowsAt(weave.Must("#.../###./..#./#.##").Transpose(), []int{0, 0, 1, 2, 2, 3}).Transpose(), Name{}},
	{"double cloth whose lower picks lie in pairs", rowsAt(weave.Must("#.../###./..#./#.##"), []int{0, 1, 1, 2, 3, 3}), Name{}},
	{"stitched double cloth", weave.Must("#.../###./.##./#.##"), Name{}},
	{"triple cloth", weave.Must("#...../##.#../#####./...#../#..##./##.###"), Name{}},
	{"loose threads", weave.Must("##./#.#/#.."), Name{}},
	{"2/2 twill with every end doubled", woven([]int{1, 1, 2, 2, 3, 3, 4, 4}, twoTwo...), Name{}},
	{"a block weave", woven([]int{1, 2, 1, 2, 3, 4, 3, 4}, draft.Of(1, 3), draft.Of(2, 4), draft.Of(1, 4), draft.Of(2, 3)), Name{}},
}

func TestNames(t *testing.T) {
	for _, c := range namedWeaves {
		if got := Of(c.weave).Name; fmt.Sprint(got) != fmt.Sprint(c.want) {
			t.Errorf("%s: %+v, want %+v\n%s", c.what, got, c.want, c.weave)
		}
	}
}

// other gives the hand of the mirrored weave.
func other(hand Hand) Hand {
	return map[Hand]Hand{NoHand: NoHand, LeftHand: RightHand, RightHand: LeftHand}[hand]
}

// TestNamesStay wherever a repeat begins, however often it is written down, and as a
// cloth; mirrored the hand changes, turned over the face, exchanged warp and weft.
func TestNamesStay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.SampledFrom(namedWeaves).Draw(t, "weave")
		w := c.weave.Shift(rapid.IntRange(0, 20).Draw(t, "picks"), rapid.IntRange(0, 20).Draw(t, "ends"))
		least := 1
		w.Bounded = rapid.Bool().Draw(t, "bounded")
		if w.Bounded {
			least = 2 // of a single repeat with edges nobody can tell how it goes on
		}
		w = w.Tile(rapid.IntRange(least, 3).Draw(t, "m")*w.Picks(), rapid.IntRange(least, 3).Draw(t, "n")*w.Ends())
		want := Of(w).Name
		if got := fmt.Sprint(want); got != fmt.Sprint(c.want) {
			t.Fatalf("%s begun elsewhere: %s, want %+v", c.what, got, c.want)
		}
		mirrored := want
		mirrored.Hand = other(want.Hand)
		for what, pair := range map[string][2]Name{
			"mirrored":                {Of(w.Reverse()).Name, mirrored},
			"woven from the last":     {Of(w.ReversePicks()).Name, mirrored},
			"seen from the other end": {Of(w.Half()).Name, want},
		} {
			if fmt.Sprint(pair[0]) != fmt.Sprint(pair[1]) {
				t.Fatalf("%s, %s: %+v, want %+v", c.what, what, pair[0], pair[1])
			}
		}
		back, turned := Of(w.Complement()).Name, Of(w.Exchange()).Name
		if back.Kind != want.Kind || back.Face != turnedOver(want.Face) || turned.Kind != exchanged(want.Kind) || turned.Face != turnedOver(want.Face) {
			t.Fatalf("%s: %+v, its back %+v, exchanged %+v", c.what, want, back, turned)
		}
	})
}

func turnedOver(face Balance) Balance {
	return map[Balance]Balance{Even: Even, WarpFaced: WeftFaced, WeftFaced: WarpFaced}[face]
}

func exchanged(k Kind) Kind {
	switch k {
	case WarpRib:
		return WeftRib
	case WeftRib:
		return WarpRib
	}
	return k
}

// TestBroken4 names every way to order four ends of which each pick lifts one:
// sixteen of the 24 are the irregular satin, the others twills.
func TestBroken4(t *testing.T) {
	got := map[Kind]int{}
	for k := range 256 {
		list := []uint64{1 << (k & 3), 1 << (k >> 2 & 3), 1 << (k >> 4 & 3), 1 << (k >> 6)}
		if list[0]|list[1]|list[2]|list[3] == 15 {
			got[Of(lifts(4, list...)).Name.Kind]++
		}
	}
	if got[IrregularSatin] != 16 || got[Twill] != 8 || len(got) != 2 {
		t.Errorf("%v", got)
	}
}

// TestOfDraft leaves floating selvedges out, and nothing else.
func TestOfDraft(t *testing.T) {
	d := &draft.Draft{Shafts: 4, Threading: []int{0, 1, 2, 3, 4, 0, 0}, Lifts: twoTwo}
	a := OfDraft(d)
	if a.Floating != [2]int{1, 2} || a.Ends != 4 || a.Name.Kind != Twill || !a.HangsTogether() {
		t.Errorf("%+v", a)
	}
	if a := OfDraft(&draft.Draft{Shafts: 1, Threading: []int{0, 0}, Lifts: []draft.Set{draft.Of(1)}}); a.Ends != 2 || a.HangsTogether() {
		t.Errorf("no end in a heddle: %+v", a)
	}
}
