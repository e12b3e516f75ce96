package app

import (
	"slices"
	"strings"
	"testing"

	"sley/internal/engine/draw/drafting"
	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
)

// changing is a twill that every change can be made of as its listing writes it.
func changing() *Drafted {
	d := &draft.Draft{
		Shafts: 4, Treadles: 4, Shed: loom.Rising, Threading: []int{1, 2, 3, 4, 1, 2, 3, 4},
		Ties:      []draft.Tie{{Tied: 3}, {Tied: 6}, {Tied: 12}, {Tied: 9}},
		Treadling: []draft.Set{1, 2, 4, 8},
	}
	return &Drafted{Draft: d}
}

// Every change is made of a sound draft as its listing says, gives a sound draft, and
// leaves the one it was made of as it was.
func TestEveryChangeCanBeMade(t *testing.T) {
	for _, c := range Changes() {
		d, text := changing(), c.Name
		switch {
		case c.Name == "treadles-renumbered":
			text += "=4 1 2 3"
		case c.Takes != "":
			text += "=" + c.Takes
		}
		made, err := ChangeDraft(d, []string{text})
		if err != nil {
			t.Errorf("%s: %v", text, err)
			continue
		}
		if list := made.Draft.Check(); list.Failed() {
			t.Errorf("%s: %v", text, list.All())
		}
		if !d.Draft.Equal(changing().Draft) {
			t.Errorf("%s changes the draft it is made of", text)
		}
	}
}

func TestChangesThatCannotBeMade(t *testing.T) {
	for text, want := range map[string]string{
		"inside-out": "there is no change", "turned=2": "is written turned", "ends-times": `is written "ends-times=3"`,
		"ends-times=0": "not what it takes", "ends-times=9999999": "more shafts, treadles or threads",
		"ends-advanced=3": "not what it takes", "ends-deleted=4-2": "not what it takes", "picks-deleted=x": "not what it takes",
		"ends-inserted=1: 9": "not what it takes", "ends-inserted=1 2": "not what it takes", "picks-inserted=1: 1+7": "not what it takes",
		"shafts-renumbered=1 2 3": "not what it takes", "treadles-renumbered=1 1 2 3": "not what it takes", "shafts-shifted=up": "not what it takes",
	} {
		if made, err := ChangeDraft(changing(), []string{"used", text}); err == nil || made != nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %q", text, err, want)
		}
	}
	few := changing()
	few.Draft.Ties, few.Draft.Treadles, few.Draft.Treadling = few.Draft.Ties[:2], 2, []draft.Set{1, 2}
	if _, err := ChangeDraft(few, []string{"as-drawn-in"}); err == nil || !strings.Contains(err.Error(), "no treadle of its number") {
		t.Errorf("as drawn in on two treadles: %v", err)
	}
}

// Treadles are ordered for the feet wherever they stand: the lifts stay what they are. A
// last pick that is the first again is no pick twice running.
func TestTreadlesForTheFeet(t *testing.T) {
	for _, picks := range [][]draft.Set{{1, 2, 4, 8}, {1, 2, 4, 8, 4, 2, 1}} {
		d := changing()
		d.Draft.Treadling = picks
		made, err := ChangeDraft(d, []string{forFeetName})
		if err != nil {
			t.Fatal(err)
		}
		if got := made.Draft.Treadling[:4]; !slices.Equal(got, []draft.Set{1, 8, 2, 4}) {
			t.Errorf("%v is treadled %v", picks, got)
		}
		if !slices.Equal(made.Draft.LiftPlan(), d.Draft.LiftPlan()) {
			t.Errorf("%v lifts %v", picks, made.Draft.LiftPlan())
		}
	}
}

// What keeps feet from taking turns is told, each by its code.
func TestFeetThatCannotTakeTurns(t *testing.T) {
	for _, c := range []struct {
		picks      []draft.Set
		code, says string
	}{
		{[]draft.Set{1, 2, 4}, "feet.ring", "treadles 1 2 3 follow one another"},
		{[]draft.Set{1, 2, 2, 4}, "feet.twice", "treadle 2 is pressed twice"},
		{[]draft.Set{1, 2 | 4 | 8}, "feet.many", "pick 2 presses more than two"},
		{[]draft.Set{0}, "feet.none", "no pick presses"},
		{[]draft.Set{16, 1}, "feet.none", "no pick presses"},
	} {
		d := changing()
		d.Draft.Treadling = c.picks
		_, err := ChangeDraft(d, []string{forFeetName})
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%v: %v", c.picks, err)
			continue
		}
		if p := notMade(0, err).All()[0]; p.Code != c.code || p.Path != "changes[0]" {
			t.Errorf("%v: %s at %s", c.picks, p.Code, p.Path)
		}
	}
}

// A floating selvedge stands before the first end of the analysis, and floats are
// drawn where they lie in the draft.
func TestLongFloats(t *testing.T) {
	d := &draft.Draft{Shafts: 4, Threading: []int{0, 1, 2, 3, 4}, Lifts: []draft.Set{1, 2, 4, 8}}
	floats := LongFloats(d, 3)
	want := drafting.Float{Pick: 0, End: 2, Long: 3}
	if len(floats) != 8 || !slices.Contains(floats, want) {
		t.Errorf("%d floats %v, want eight with %v", len(floats), floats, want)
	}
	if none := LongFloats(d, 4); len(none) != 0 {
		t.Errorf("floats of four in a 1/3 twill: %v", none)
	}
}

// Of two shuttles the edges are judged over as many picks as both orders need.
func TestShuttles(t *testing.T) {
	judged, err := JudgeWoven(changing(), Shuttles{Order: "1 1 2 2 1 2", Starts: []string{"left", "right"}})
	if err != nil || judged.Edges.Picks%12 != 0 {
		t.Errorf("judged over %d picks: %v", judged.Edges.Picks, err)
	}
}
