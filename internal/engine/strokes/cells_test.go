package strokes

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/trade/draft"
	"sley/internal/trade/weave"
)

// wanted is the drawdown that an act asks for, crossing by crossing.
func wanted(d *draft.Draft, a Act) *weave.Weave {
	w := weave.New(d.Picks(), d.Ends())
	for pick := range d.Picks() {
		for end := range d.Ends() {
			w.Set(pick, end, d.UpAt(pick, end))
		}
	}
	for _, c := range a.Cells {
		w.Set(c.Pick, c.End, a.Up)
	}
	return w
}

// touched gives the ends and the picks in which two weaves of one size differ.
func touched(a, b *weave.Weave) (ends, picks map[int]bool) {
	ends, picks = map[int]bool{}, map[int]bool{}
	for pick := range a.Picks() {
		for end := range a.Ends() {
			if a.WarpUp(pick, end) != b.WarpUp(pick, end) {
				ends[end], picks[pick] = true, true
			}
		}
	}
	return ends, picks
}

// TestCellsGiveTheDrawdown: just what was wanted, with ends and picks that did not change
// where they were, and no more shafts than differ, if no two were alike before.
func TestCellsGiveTheDrawdown(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawn(t)
		a := acted(t, d)
		a.Do = Cells
		want := wanted(d, a)
		is := made(t, d, a)
		if got := is.Drawdown(); !got.Equal(want) {
			t.Fatalf("got\n%swant\n%s", got, want)
		}
		ends, picks := touched(d.Drawdown(), want)
		for end, shaft := range d.Threading {
			if !ends[end] && is.Threading[end] != shaft {
				t.Fatalf("end %d was on shaft %d and is on %d, and nothing of it changed", end, shaft, is.Threading[end])
			}
		}
		for pick, pressed := range d.Treadling {
			if !picks[pick] && pressed != 0 && is.Treadling[pick] != pressed {
				t.Fatalf("pick %d pressed %s and presses %s, and nothing of it changed", pick, pressed, is.Treadling[pick])
			}
		}
		fewest(t, d, is)
	})
}

// fewest compares the shafts that are used with the columns that differ.
func fewest(t *rapid.T, was, is *draft.Draft) {
	if usedShafts(was).Len() > was.Fewest().Shafts || slices.Contains(was.Threading, 0) || slices.Contains(is.Threading, 0) {
		return
	}
	if _, differ := is.Drawdown().EndClasses(); usedShafts(is).Len() != differ {
		t.Fatalf("%d shafts weave %d ends that differ: %v", usedShafts(is).Len(), differ, is.Threading)
	}
}

// twill is a 2/2 twill of four shafts, on so many ends.
func twill(ends int) *draft.Draft {
	d := &draft.Draft{Shafts: 4, Treadles: 4, Palette: []draft.Colour{{R: 255, G: 255, B: 255}, {R: 37, G: 64, B: 124}}}
	for i := range ends {
		d.Threading = append(d.Threading, i%4+1)
		d.Treadling = append(d.Treadling, draft.Of(i%4+1))
	}
	for k := range 4 {
		d.Ties = append(d.Ties, draft.Tie{Tied: draft.Of(k+1, (k+1)%4+1)})
	}
	return d
}

// TestOneCellAndBack: a cell takes a shaft and a treadle more, and set back, both ends and
// picks are where they were.
func TestOneCellAndBack(t *testing.T) {
	d := twill(8)
	a := Act{Do: Cells, Cells: []Cell{{Pick: 2, End: 0}}, Up: true}
	is, list := Do(d, []Act{a})
	if is.Threading[0] != 5 || is.Shafts != 5 || is.Treadles != 5 || is.Treadling[2] != draft.Of(5) {
		t.Fatalf("%s", table(is))
	}
	if codes := codesOf(list); !slices.Equal(codes, []string{"stroke.more-shafts", "stroke.more-treadles"}) || list.Failed() {
		t.Errorf("told %v", codes)
	}
	a.Up = false
	back := made(t, is, a)
	if !slices.Equal(back.Threading, d.Threading) || !slices.Equal(back.Treadling, d.Treadling) {
		t.Errorf("back to %s", table(back))
	}
}

// TestAWholeShaftKeepsItsNumber: when all ends of a shaft change alike, the treadle is tied
// anew and nothing else changes.
func TestAWholeShaftKeepsItsNumber(t *testing.T) {
	d := twill(4)
	is := made(t, d, Act{Do: Cells, Cells: []Cell{{Pick: 2, End: 0}}, Up: true})
	if !slices.Equal(is.Threading, d.Threading) || !slices.Equal(is.Treadling, d.Treadling) || is.Ties[2].Tied != draft.Of(1, 3, 4) {
		t.Errorf("%s", table(is))
	}
}

func TestTooManyShaftsAndTreadles(t *testing.T) {
	d := twill(200)
	var cells []Cell
	for i := range 61 {
		cells = append(cells, Cell{Pick: i + 1, End: i}) // each up where none of its shaft is
	}
	out, list := Do(d, []Act{{Do: Cells, Cells: cells, Up: true}})
	if out != nil || !slices.Contains(codesOf(list), "stroke.too-many-shafts") {
		t.Errorf("61 ends that all differ: %v", list.All())
	}
	d = twill(4)
	for i := 4; i < 70; i++ {
		d.Treadling = append(d.Treadling, draft.Of(i%4+1))
	}
	out, list = Do(d.WithoutTreadles(), []Act{{Do: Cells, Cells: []Cell{{Pick: 2, End: 0}}, Up: true}})
	if out == nil || list.Failed() {
		t.Errorf("a lift plan: %v", list.All())
	}
	lifts := manyLifts()
	out, list = Do(lifts, []Act{{Do: Cells, Cells: []Cell{{Pick: 0, End: 0}}, Up: true}})
	if out != nil || !slices.Contains(codesOf(list), "stroke.too-many-treadles") {
		t.Errorf("a 65th treadle: %v, %v", out, list.All())
	}
}

// manyLifts is a draft with a treadle for each lift of six shafts, each pressed twice.
func manyLifts() *draft.Draft {
	d := &draft.Draft{Shafts: 6, Treadles: 64}
	for i := range 12 {
		d.Threading = append(d.Threading, i%6+1)
	}
	for k := range 64 {
		d.Ties = append(d.Ties, draft.Tie{Tied: draft.Set(k)})
	}
	for k := range 128 {
		d.Treadling = append(d.Treadling, draft.Of(k%64+1))
	}
	return d
}
