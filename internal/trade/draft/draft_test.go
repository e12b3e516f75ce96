package draft

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/trade/loom"
	"sley/internal/trade/weave"
)

// sheds a draft may be drawn for.
var sheds = []loom.Shed{loom.UnsaidShed, loom.Rising, loom.Sinking, loom.Counterbalance, loom.Countermarch, loom.Table}

// draw draws a draft that is sound: treadled or with a lift plan, with colours.
func draw(t *rapid.T) *Draft {
	d := &Draft{Shafts: rapid.IntRange(1, 8).Draw(t, "shafts"), Shed: rapid.SampledFrom(sheds).Draw(t, "shed")}
	d.Threading = rapid.SliceOfN(rapid.IntRange(0, d.Shafts), 1, 70).Draw(t, "threading")
	set := func(most int, what string) Set { return Set(rapid.Uint64().Draw(t, what)) & UpTo(most) }
	picks := rapid.IntRange(1, 40).Draw(t, "picks")
	if rapid.Bool().Draw(t, "treadled") {
		d.Treadles = rapid.IntRange(1, 6).Draw(t, "treadles")
		for range d.Treadles {
			d.Ties = append(d.Ties, TieFor(d.Shed, set(d.Shafts, "tie"), d.Shafts))
		}
		for range picks {
			d.Treadling = append(d.Treadling, Of(rapid.IntRange(1, d.Treadles).Draw(t, "treadle")))
		}
		if rapid.Bool().Draw(t, "two feet") {
			d.Treadling[0] = set(d.Treadles, "pressed")
		}
	} else {
		for range picks {
			d.Lifts = append(d.Lifts, set(d.Shafts, "lift"))
		}
	}
	d.Palette = []Colour{{255, 255, 255}, {37, 64, 124}}
	d.Warp.Colours = rapid.SliceOfN(rapid.IntRange(0, 1), 0, len(d.Threading)).Draw(t, "warp colours")
	d.Weft.Colour = rapid.IntRange(0, 1).Draw(t, "weft colour")
	return d
}

// slowDrawdown asks of every crossing.
func slowDrawdown(d *Draft) *weave.Weave {
	w := weave.New(d.Picks(), d.Ends())
	for i := range d.Picks() {
		for j := range d.Ends() {
			w.Set(i, j, d.UpAt(i, j))
		}
	}
	return w
}

func TestDrawdownIsItsSlowTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := draw(t)
		got, want := d.Drawdown(), slowDrawdown(d)
		if !got.Equal(want) {
			t.Fatalf("got\n%swant\n%s", got, want)
		}
		end, shaft := rapid.IntRange(0, d.Ends()-1).Draw(t, "end"), rapid.IntRange(0, d.Shafts).Draw(t, "to")
		d.Threading[end] = shaft
		DrawEnd(got, end, shaft, d.LiftPlan())
		if !got.Equal(d.Drawdown()) {
			t.Fatal("an end drawn alone is another than that of the whole")
		}
	})
}

// twill is the draft of the interchange text's example, written by hand: 2/2 twill,
// straight, eight ends (our own fixture).
func twill() *Draft {
	return &Draft{
		Shafts: 4, Treadles: 4, Shed: loom.Rising, Threading: []int{1, 2, 3, 4, 1, 2, 3, 4},
		Ties:      []Tie{{Tied: Of(1, 2)}, {Tied: Of(2, 3)}, {Tied: Of(3, 4)}, {Tied: Of(1, 4)}},
		Treadling: []Set{Of(1), Of(2), Of(3), Of(4)},
	}
}

func TestTwillByHand(t *testing.T) {
	d := twill()
	if want := weave.Must("##..##../.##..##./..##..##/#..##..#"); !d.Drawdown().Equal(want) {
		t.Errorf("got\n%s", d.Drawdown())
	}
	d.Shed = loom.Sinking
	if want := weave.Must("..##..##/#..##..#/##..##../.##..##."); !d.Drawdown().Equal(want) {
		t.Errorf("on a sinking shed:\n%s", d.Drawdown())
	}
}

// Worked project P1 of our own conventions, part 7: treadles A to D put 12, 23, 34,
// 14 on top; what A is tied to, and A and B together.
func TestShedsOfP1(t *testing.T) {
	ups := []Set{Of(1, 2), Of(2, 3), Of(3, 4), Of(1, 4)}
	for _, c := range []struct {
		shed       loom.Shed
		a          Tie
		up, locked Set
	}{
		{loom.Rising, Tie{Tied: Of(1, 2)}, Of(1, 2, 3), 0},
		{loom.Sinking, Tie{Tied: Of(3, 4)}, Of(2), 0},
		{loom.Countermarch, Tie{Tied: Of(1, 2), Lowered: Of(3, 4)}, Of(2), Of(1, 3)},
	} {
		d := &Draft{Shafts: 4, Treadles: 4, Shed: c.shed}
		for _, up := range ups {
			d.Ties = append(d.Ties, TieFor(c.shed, up, 4))
		}
		if d.Ties[0] != c.a {
			t.Errorf("%s: A is tied %v, want %v", c.shed, d.Ties[0], c.a)
		}
		if s := d.Open(Of(1, 2)); s.Up != c.up || s.Locked != c.locked {
			t.Errorf("%s: A and B open %v locked %v, want %v and %v", c.shed, s.Up, s.Locked, c.up, c.locked)
		}
	}
}

// Two against two opens cleanly on a counterbalance loom, one against three does not.
func TestCounterbalanceOpens(t *testing.T) {
	for up, want := range map[Set]Opening{Of(1, 2): Clean, Of(1, 3): Clean, Of(2): Uneven, Of(1, 2, 4): Uneven, 0: Shut, Of(1, 2, 3, 4): Shut} {
		if got := Opens(loom.Counterbalance, up, 4); got != want {
			t.Errorf("%s up: %d, want %d", up, got, want)
		}
	}
	if Opens(loom.Rising, Of(2), 4) != Clean {
		t.Error("a rising shed opens one against three")
	}
}

// However lifts are said and shafts numbered, the cloth is the same.
func TestConversionsKeepTheCloth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := draw(t)
		want := d.Drawdown()
		check := func(what string, c *Draft) {
			if !c.Drawdown().Equal(want) {
				t.Fatalf("%s weaves\n%swant\n%s", what, c.Drawdown(), want)
			}
		}
		check("the lift plan", d.WithoutTreadles())
		for _, shed := range sheds {
			c, ok := d.WithTreadles(shed)
			if !ok {
				t.Fatal("too many treadles for forty picks")
			}
			check("one-foot on "+shed.String(), c)
			lifts := map[Set]bool{}
			for _, up := range d.LiftPlan() {
				lifts[up] = true
			}
			if c.Treadles != len(lifts) {
				t.Fatalf("%d treadles for %d lifts", c.Treadles, len(lifts))
			}
			if tied, same := d.OnLoom(shed); same {
				check("tied anew for "+shed.String(), tied)
			}
		}
		check("fewest", d.Fewest())
		check("without what is unused", d.DropUnused())
		made, ok := FromWeave(want)
		if !ok {
			t.Fatal("more than 64 kinds of ends on 8 shafts")
		}
		check("made from the cloth", made)
		if made.Shafts > d.Shafts+1 { // ends in no heddle are one more kind
			t.Fatalf("%d shafts from a cloth of %d", made.Shafts, d.Shafts)
		}
	})
}

func TestEditsAreThoseOfTheCloth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := draw(t)
		w := d.Drawdown()
		m, n := w.Picks(), w.Ends()
		at, k := rapid.IntRange(0, n).Draw(t, "at"), rapid.IntRange(0, n).Draw(t, "n")
		cut := min(k, n-at)
		for _, c := range []struct {
			what string
			got  *Draft
			want *weave.Weave
		}{
			{"ends repeated", d.RepeatEnds(3), w.Tile(m, 3*n)},
			{"picks repeated", d.RepeatPicks(3), w.Tile(3*m, n)},
			{"ends backwards", d.ReverseEnds(), w.Reverse()},
			{"picks backwards", d.ReversePicks(), w.ReversePicks()},
			{"other face", d.OtherFace(), complementIn(d)},
		} {
			if !c.got.Drawdown().Equal(c.want) {
				t.Fatalf("%s:\n%swant\n%s", c.what, c.got.Drawdown(), c.want)
			}
		}
		point := d.MirrorEnds()
		if point.Ends() != 2*n-1 || !slices.Equal(point.Threading[n-1:], point.ReverseEnds().Threading[n-1:]) {
			t.Fatalf("a point of %d ends: %v", n, point.Threading)
		}
		gone := d.DeleteEnds(at, k)
		back := gone.InsertEnds(at, d.Threading[at:at+cut]...)
		if !slices.Equal(back.Threading, d.Threading) || gone.Ends() != n-cut {
			t.Fatalf("%v without %d at %d is %v, and with them again %v", d.Threading, k, at, gone.Threading, back.Threading)
		}
		if len(gone.Warp.Colours) > 0 && len(gone.Warp.Colours) != gone.Ends() {
			t.Fatal("the colours do not go with the ends")
		}
	})
}

// complementIn is the other face: the other thread on top wherever the end is in a
// heddle.
func complementIn(d *Draft) *weave.Weave {
	w := d.Drawdown()
	for i := range w.Picks() {
		for j := range w.Ends() {
			w.Set(i, j, !w.WarpUp(i, j) && d.Threading[j] != 0)
		}
	}
	return w
}

func TestTurnedTwiceIsItself(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := draw(t)
		once, ok := d.Turned()
		if !ok {
			t.Fatal("more than 64 lifts in forty picks")
		}
		if want := d.Drawdown().Exchange(); !once.Drawdown().Equal(want) {
			t.Fatalf("turned:\n%swant\n%s", once.Drawdown(), want)
		}
		twice, ok := once.Turned()
		if !ok || !twice.Drawdown().Equal(d.Drawdown()) {
			t.Fatalf("turned twice:\n%swant\n%s", twice.Drawdown(), d.Drawdown())
		}
		if once.Weft.Colour != d.Warp.Colour || !slices.Equal(once.Weft.Colours, d.Warp.Colours) {
			t.Fatal("the colours are not exchanged")
		}
	})
	d := twill()
	once, _ := d.Turned()
	if twice, _ := once.Turned(); !twice.Equal(d) {
		t.Errorf("turned twice: %+v", twice)
	}
}

func TestAsDrawnIn(t *testing.T) {
	d := twill()
	d.Threading = []int{1, 2, 3, 4, 3, 2, 0}
	c, ok := d.AsDrawnIn()
	if !ok || !slices.Equal(c.Treadling, []Set{Of(1), Of(2), Of(3), Of(4), Of(3), Of(2)}) {
		t.Errorf("got %v", c.Treadling)
	}
	d.Ties = d.Ties[:3]
	if _, ok := d.AsDrawnIn(); ok {
		t.Error("treadled by a treadle that there is not")
	}
}

func TestAdvance(t *testing.T) {
	d := &Draft{Shafts: 8, Threading: []int{1, 2, 3}, Lifts: []Set{Of(1)}}
	if got := d.AdvanceEnds(3, 1).Threading; !slices.Equal(got, []int{1, 2, 3, 2, 3, 4, 3, 4, 5}) {
		t.Errorf("advancing by one: %v", got)
	}
	if got := d.ShiftShafts(-1).Threading; !slices.Equal(got, []int{8, 1, 2}) {
		t.Errorf("shifted: %v", got)
	}
	if got := d.AdvancePicks(2, 7).Lifts; !slices.Equal(got, []Set{Of(1), Of(8)}) {
		t.Errorf("picks advancing: %v", got)
	}
}

// Cloths repeat the draft from their first end and pick on.
func TestCloth(t *testing.T) {
	w := twill().Cloth(6, 10)
	if !w.Bounded || !w.Equal(weave.Must("##..##../.##..##./..##..##/#..##..#").Cloth(6, 10)) {
		t.Errorf("got\n%s", w)
	}
	if w := (&Draft{Shafts: 4}).Cloth(2, 3); w.Picks() != 2 || w.WarpUps() != 0 {
		t.Error("a draft without threads weaves something")
	}
}
