package loomside

import (
	"testing"

	"pgregory.net/rapid"

	"sley/internal/engine/reckon"
	"sley/internal/trade/qty"
)

// drawTold draws what was said at the loom of a warp.
func drawTold(t *rapid.T, w *Weaving) Told {
	told := Told{Pick: rapid.IntRange(0, w.Total).Draw(t, "woven"), Left: map[string]Scale{}, Stock: map[string]qty.Rat{}}
	for _, yarn := range w.Yarns {
		if rapid.Bool().Draw(t, "weighed") {
			told.Left[yarn] = Scale{rapid.IntRange(0, told.Pick).Draw(t, "weighed at"), (qty.Metre * qty.Length(rapid.IntRange(0, 5000).Draw(t, "metres"))).Rat()}
		}
		if rapid.Bool().Draw(t, "in stock") {
			told.Stock[yarn] = (qty.Metre * qty.Length(rapid.IntRange(0, 9000).Draw(t, "stock"))).Rat()
		}
	}
	at := 0
	for range rapid.IntRange(0, 4).Draw(t, "readings") {
		at = rapid.IntRange(at, told.Pick).Draw(t, "read at")
		in := at - w.Pieces[w.At(max(at-1, 0))].Before
		if in > 0 {
			beat := rapid.IntRange(2, 20).Draw(t, "picks per cm")
			told.Readings = append(told.Readings, Reading{at, qty.Length(in) * qty.Centimetre / qty.Length(beat)})
		}
	}
	return told
}

// A forecast conserves length and yarn: what is used, what is left and what cannot be
// woven come to the warp that was wound; picks woven and to go come to all; a yarn's need
// for the picks to go and its need for those woven come to that for all.
func TestForecastConserves(t *testing.T) {
	for _, name := range demos {
		r := demo(t, name)
		w := woven(t, r, nil)
		rapid.Check(t, func(t *rapid.T) {
			told := drawTold(t, w)
			f := w.Look(r, told)
			if f.Pick+f.Left != w.Total || f.InPiece < 0 || f.InPiece > w.Kinds[w.Pieces[f.Piece].Kind].Picks() {
				t.Fatalf("%d woven, %d to go of %d, %d in the piece", f.Pick, f.Left, w.Total, f.InPiece)
			}
			if f.Warp != nil {
				seeWarp(t, r, f)
			}
			sum := 0
			for _, y := range f.Weft {
				sum += y.Picks
				if !y.Needs.Equal(y.Pick.Mul(qty.Int(int64(y.Picks)))) {
					t.Fatalf("%s needs %s for %d picks", y.Yarn, y.Needs, y.Picks)
				}
				if y.Lasts != nil && y.Pick.Mul(qty.Int(int64(*y.Lasts))).Cmp(*y.Left) > 0 {
					t.Fatalf("%s lasts for more than there is", y.Yarn)
				}
			}
			if sum != f.Left {
				t.Fatalf("yarns have %d picks to go of %d", sum, f.Left)
			}
			for _, one := range w.Remedies(f) {
				if one.Is.Sign() < 0 {
					t.Fatalf("a remedy below nothing: %+v", one)
				}
			}
		})
	}
}

func seeWarp(t *rapid.T, r *reckon.Result, f Forecast) {
	wound, _ := r.Node("warp.wound")
	if got := f.Warp.Used.Add(f.Warp.Left).Add(f.Warp.Waste); !got.Equal(wound.Is) {
		t.Fatalf("%s used, %s left, %s waste come to %s, wound %s", f.Warp.Used, f.Warp.Left, f.Warp.Waste, got, wound.Is)
	}
	if f.Warp.Left.Sign() < 0 || f.Warp.Needs.Sign() < 0 || !f.Warp.Spare.Equal(f.Warp.Left.Sub(f.Warp.Needs)) {
		t.Fatalf("%+v", f.Warp)
	}
}

// Woven as planned, everything comes out as planned: what is to spare is what the
// reckoning says, at every pick.
func TestAsPlannedItComesOut(t *testing.T) {
	for _, name := range []string{"galley-towels", "berth-blanket"} {
		r := demo(t, name)
		w := woven(t, r, nil)
		spare, _ := r.Node("warp.spare")
		for _, pick := range []int{0, 1, w.Total / 3, w.Total - 1} {
			f := w.Look(r, Told{Pick: pick})
			if f.Warp == nil || f.Warp.Spare.Sub(spare.Is).Abs().Cmp(qty.Millimetre.Rat()) > 0 {
				t.Errorf("%s at pick %d: spare %+v, reckoned %s", name, pick, f.Warp, spare.Is)
			}
			if f.Finished == nil || !f.Finished.Equal(*f.Wanted) || f.PicksTo != nil {
				t.Errorf("%s at pick %d comes out at %v", name, pick, f.Finished)
			}
		}
	}
}

// A tape read 10 % long at half the picks: the piece will be 10 % longer on the loom, and
// a tenth fewer picks would do.
func TestBeatenLooser(t *testing.T) {
	r := solved(t, p1)
	w := woven(t, r, nil)
	half := w.Kinds[0].Picks() / 2
	planned := w.Kinds[0].OnLoom
	is, _ := qty.LengthOf(planned.Mul(qty.Frac(int64(half)*11, int64(w.Kinds[0].Picks())*10)), qty.Nearest)
	f := w.Look(r, Told{Pick: half, Readings: []Reading{{half, is}}})
	if got := f.OnLoom.Div(planned).Sub(qty.Frac(11, 10)).Abs(); got.Cmp(qty.Frac(1, 1_000_000)) > 0 {
		t.Errorf("it will read %s of the planned", f.OnLoom.Div(planned))
	}
	if *f.PicksTo != 688 { // 757 ÷ 1.1 = 688.2
		t.Errorf("%d picks make the planned length", *f.PicksTo)
	}
}

// An inch of cloth does not say how she beats.
func TestALittleClothSaysLittle(t *testing.T) {
	r := solved(t, p1)
	w := woven(t, r, nil)
	f := w.Look(r, Told{Pick: 25, Readings: []Reading{{25, qty.Inch * 11 / 8}}})
	if f.Reads == nil || f.Beat != nil || len(w.Remedies(f)) > 0 || !f.OnLoom.Equal(w.Kinds[0].OnLoom) {
		t.Errorf("%+v", f)
	}
}

// Of a warp that is too short by half a piece one piece fewer is woven whole, and the last
// is as long as what is left allows; the blanket's weft, weighed at half of what it needs,
// lasts for half its picks.
func TestWhatCanStillBeChanged(t *testing.T) {
	r := solved(t, set(p1, "[warp]\n", "[warp]\nwound = \"170 in\"\n"))
	w := woven(t, r, nil)
	f := w.Look(r, Told{})
	kinds := map[string]Remedy{}
	for _, one := range w.Remedies(f) {
		kinds[one.Kind] = one
	}
	if f.Warp.Spare.Sign() >= 0 || f.Warp.Pieces != 3 || kinds[Fewer].Pieces != 3 || kinds[ShorterEach].Pieces != 4 {
		t.Errorf("%+v, %+v", f.Warp, kinds)
	}
	if last := kinds[ShorterLast].Is; last.Sign() <= 0 || !last.Less(w.Kinds[0].OnLoom) {
		t.Errorf("the last can be %s", last)
	}
	b := demo(t, "berth-blanket")
	w = woven(t, b, nil)
	need := w.Look(b, Told{}).Weft[0].Needs
	f = w.Look(b, Told{Left: map[string]Scale{"handspun": {0, need.Div(qty.Int(2))}}})
	if got := *f.Weft[0].Lasts; got < w.Total/2-1 || got > w.Total/2+1 {
		t.Errorf("half the yarn lasts for %d of %d picks", got, w.Total)
	}
}
