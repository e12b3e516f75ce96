package tieup

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
)

var sheds = []loom.Shed{loom.UnsaidShed, loom.Rising, loom.Sinking, loom.Counterbalance, loom.Countermarch, loom.Table}

// twill is a draft of four shafts whose treadles A to D put 1 2, 2 3, 3 4 and 1 4 on
// top, the tie-up of our worked project of four towels.
func twill(shed loom.Shed, treadling ...draft.Set) *draft.Draft {
	d := &draft.Draft{Shafts: 4, Treadles: 4, Shed: shed, Threading: []int{1, 2, 3, 4, 3, 2}, Treadling: treadling}
	for _, up := range []draft.Set{draft.Of(1, 2), draft.Of(2, 3), draft.Of(3, 4), draft.Of(1, 4)} {
		d.Ties = append(d.Ties, draft.TieFor(shed, up, 4))
	}
	return d
}

// The cords of A: rising, raised 1 and 2; sinking and counterbalance, lowered 3 and 4;
// countermarch, raised 1 and 2 and lowered 3 and 4 (worked project of our own, by hand).
func TestCordsOfATreadle(t *testing.T) {
	for shed, want := range map[loom.Shed]Cords{
		loom.Rising: {Raises: draft.Of(1, 2)}, loom.Table: {Raises: draft.Of(1, 2)}, loom.UnsaidShed: {Raises: draft.Of(1, 2)},
		loom.Sinking: {Lowers: draft.Of(3, 4)}, loom.Counterbalance: {Lowers: draft.Of(3, 4)},
		loom.Countermarch: {Raises: draft.Of(1, 2), Lowers: draft.Of(3, 4)},
	} {
		if got := ByTreadle(twill(shed))[0]; got != want {
			t.Errorf("%s: A is tied %+v, want %+v", shed, got, want)
		}
	}
	want := Cords{Raises: draft.Of(1, 4), Lowers: draft.Of(2, 3)}
	if got := ByShaft(twill(loom.Countermarch))[0]; got != want {
		t.Errorf("shaft 1 hangs from %+v, want %+v", got, want)
	}
}

// drawTied draws a draft of up to six shafts and treadles for any loom, of which picks
// press one treadle, or two.
func drawTied(t *rapid.T) *draft.Draft {
	d := &draft.Draft{Shafts: rapid.IntRange(1, 6).Draw(t, "shafts"), Shed: rapid.SampledFrom(sheds).Draw(t, "shed")}
	d.Treadles = rapid.IntRange(1, 6).Draw(t, "treadles")
	set := func(of int, what string) draft.Set {
		return draft.Set(rapid.Uint64Range(0, uint64(draft.UpTo(of))).Draw(t, what))
	}
	for range d.Treadles {
		tie := draft.TieFor(d.Shed, set(d.Shafts, "up"), d.Shafts)
		tie.Lowered &= set(d.Shafts, "cords that are there")
		d.Ties = append(d.Ties, tie)
	}
	d.Threading = rapid.SliceOfN(rapid.IntRange(0, d.Shafts), 1, 20).Draw(t, "threading")
	for range rapid.IntRange(1, 12).Draw(t, "picks") {
		d.Treadling = append(d.Treadling, set(d.Treadles, "pressed"))
	}
	return d
}

// Each cord is told once by its treadle and once by its shaft, and of the kinds that the
// loom has.
func TestCordsFromBothEnds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawTied(t)
		raise, lower := Kinds(d.Shed)
		shafts := ByShaft(d)
		for i, c := range ByTreadle(d) {
			if c.Raises != 0 && !raise || c.Lowers != 0 && !lower || c.Raises|c.Lowers != d.Ties[i].Tied|d.Ties[i].Lowered {
				t.Fatalf("treadle %d has the cords %+v, tied %+v", i+1, c, d.Ties[i])
			}
			for s := range shafts {
				if c.Raises.Has(s+1) != shafts[s].Raises.Has(i+1) || c.Lowers.Has(s+1) != shafts[s].Lowers.Has(i+1) {
					t.Fatalf("treadle %d %+v, shaft %d %+v", i+1, c, s+1, shafts[s])
				}
			}
		}
	})
}

// A and B together: rising, 1 2 3 up; sinking, only 2 up; countermarch, 1 and 3 are
// drawn both ways (worked project of our own, by hand).
func TestTwoTreadlesAtOnce(t *testing.T) {
	together := draft.Of(1, 2)
	for shed, want := range map[loom.Shed]Shed{
		loom.Rising:         {Up: draft.Of(1, 2, 3), Down: draft.Of(4)},
		loom.Sinking:        {Up: draft.Of(2), Down: draft.Of(1, 3, 4)},
		loom.Counterbalance: {Up: draft.Of(2), Down: draft.Of(1, 3, 4), Opens: Unevenly},
		loom.Countermarch:   {Up: draft.Of(2), Down: draft.Of(4), Locked: draft.Of(1, 3), Opens: Locked},
	} {
		want.Pressed, want.Woven = together, true
		all := Sheds(twill(shed, draft.Of(1), together, draft.Of(1), together))
		if got := all[len(all)-1]; got != want || len(all) != 4 {
			t.Errorf("%s: %+v, want %+v after A, C and D", shed, got, want)
		}
	}
}

// On a counterbalance loom one against three opens badly, two against two well; every
// other loom opens both. Treadles that are tied and not pressed are looked at as well.
func TestPoorSheds(t *testing.T) {
	d := twill(loom.Counterbalance, draft.Of(1), draft.Of(5))
	d.Treadles, d.Ties = 6, append(d.Ties, draft.TieFor(d.Shed, draft.Of(4), 4), draft.Tie{})
	want := Shed{Pressed: draft.Of(5), Up: draft.Of(4), Down: draft.Of(1, 2, 3), Opens: Unevenly, Woven: true}
	if got := Poor(d); len(got) != 1 || got[0] != want {
		t.Errorf("poor are %+v, want %+v", got, want)
	}
	if all := Sheds(d); len(all) != 5 || all[1].Woven || !all[0].Woven {
		t.Errorf("the sheds are %+v", all)
	}
	for _, shed := range []loom.Shed{loom.Rising, loom.Sinking, loom.Countermarch} {
		d.Shed = shed
		d.Ties = twill(shed).Ties
		d.Ties = append(d.Ties, draft.TieFor(shed, draft.Of(4), 4))
		if got := Poor(d); len(got) != 0 {
			t.Errorf("%s: poor are %+v", shed, got)
		}
	}
	lifts := &draft.Draft{Shafts: 2, Threading: []int{1, 2}, Lifts: []draft.Set{1, 3, 0, 2}}
	if got := Poor(lifts); len(got) != 2 || got[0].Opens != AllUp || got[1].Opens != NoneUp {
		t.Errorf("of a lift plan: %+v", got)
	}
}

// What is told of the sheds that are woven is what the check of a draft tells.
func TestPoorShedsAreThoseOfTheCheck(t *testing.T) {
	codes := map[string]Opening{"draft.locked": Locked, "draft.free": Hanging, "draft.none-up": NoneUp, "draft.all-up": AllUp, "draft.uneven-shed": Unevenly}
	rapid.Check(t, func(t *rapid.T) {
		d := drawTied(t)
		if used, _ := d.Used(); used == 0 {
			return
		}
		want, got := map[draft.Set]Opening{}, map[draft.Set]Opening{}
		for _, p := range d.Check().All() {
			if opening, ok := codes[p.Code]; ok {
				pressed := d.Treadling[p.Args["pick"].(int)-1]
				want[pressed] = worse(want[pressed], opening)
			}
		}
		for _, s := range Poor(d) {
			if s.Woven {
				got[s.Pressed] = s.Opens
			}
		}
		for pressed, opening := range want {
			if got[pressed] != opening {
				t.Fatalf("pressed %s opens %d, the check says %d", pressed, got[pressed], opening)
			}
		}
		if len(got) != len(want) {
			t.Fatalf("%v is poor, the check says %v", got, want)
		}
	})
}

// worse is the one that is told of two: shafts that hang before ends that are all down.
func worse(a, b Opening) Opening {
	if a == Evenly || b == Hanging {
		return b
	}
	return a
}

func TestLiftsThatDiffer(t *testing.T) {
	d := twill(loom.Rising, draft.Of(1), draft.Of(2), draft.Of(1, 2), draft.Of(1))
	if got := Lifts(d); !slices.Equal(got, []draft.Set{draft.Of(1, 2), draft.Of(2, 3), draft.Of(1, 2, 3)}) {
		t.Errorf("the lifts are %v", got)
	}
	for _, c := range []struct {
		treadles int
		shed     loom.Shed
		want     bool
	}{{2, loom.Rising, true}, {3, loom.Rising, false}, {0, loom.Rising, false}, {2, loom.Table, false}} {
		d.Shed = c.shed
		if lifts, needed := TwoFooted(d, c.treadles); lifts != 3 || needed != c.want {
			t.Errorf("%d treadles, %s: %d lifts, two-footed %v", c.treadles, c.shed, lifts, needed)
		}
	}
}
