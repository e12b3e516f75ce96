package loomside

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/engine/reckon"
	"sley/internal/trade/draft"
	"sley/internal/trade/order"
)

var demos = []string{"galley-towels", "berth-blanket", "lace-curtain", "bookmark-class", "tea-mats-finished", "hatch-runner-finished"}

func woven(t testing.TB, r *reckon.Result, ends map[int]int) *Weaving {
	t.Helper()
	w, ok := Weave(r, ends)
	if !ok {
		t.Fatal("not woven")
	}
	return w
}

// pressedAt is the slow obvious way to a pick's treadles: the order's fixed parts at both
// ends, and between them the group that fills, again and again.
func pressedAt(o order.Order, pick, picks int) draft.Set {
	before, fill, after := draft.SetsOf(o.Before()), draft.SetsOf(o.FillRuns()), draft.SetsOf(o.After())
	if len(fill) == 0 {
		before, fill = nil, before
	}
	switch from := picks - len(after); {
	case pick < len(before):
		return before[pick]
	case pick >= from && len(before) <= from:
		return after[pick-from]
	default:
		return fill[(pick-len(before))%len(fill)]
	}
}

// The pick list is the treadling, in every piece, whatever it ended at; it has every pick
// once, and every piece begins anew.
func TestPickListIsTheTreadling(t *testing.T) {
	for _, name := range demos {
		r := demo(t, name)
		planned := woven(t, r, nil)
		if planned.Total != count(r, "weft.picks") {
			t.Errorf("%s: %d picks, %d reckoned", name, planned.Total, count(r, "weft.picks"))
		}
		rapid.Check(t, func(rt *rapid.T) {
			ends := map[int]int{}
			if rapid.Bool().Draw(rt, "otherwise") {
				ends[1] = rapid.IntRange(1, planned.Total).Draw(rt, "first ends at")
			}
			w := woven(t, r, ends)
			at := 0
			for i, p := range w.Pieces {
				k := w.Kinds[p.Kind]
				if p.Before != at {
					rt.Fatalf("piece %d begins after %d picks, want %d", i+1, p.Before, at)
				}
				at += k.Picks()
				if end, ok := ends[i+1]; ok && at != end {
					rt.Fatalf("piece %d ends at %d, was said to end at %d", i+1, at, end)
				}
				seePicks(rt, r, w, k)
			}
			if at != w.Total {
				rt.Fatalf("%d picks in pieces of %d", at, w.Total)
			}
		})
	}
}

func seePicks(t *rapid.T, r *reckon.Result, w *Weaving, k Kind) {
	o := r.Plan.Drafting.Picked()
	if o.IsZero() != (k.Presses == nil) || k.Presses != nil && len(k.Presses) != k.Picks() {
		t.Fatalf("%d presses for %d picks", len(k.Presses), k.Picks())
	}
	for pick, at := range k.Presses {
		if got, want := w.Presses[at].Treadles, pressedAt(o, pick, k.Picks()); got != want {
			t.Fatalf("pick %d of %d presses %s, want %s", pick+1, k.Picks(), got, want)
		}
	}
	to := 0
	for _, s := range k.Stretches {
		if s.From != to || s.To <= s.From || len(s.Parts) == 0 {
			t.Fatalf("stretch %+v after %d", s, to)
		}
		to = s.To
	}
	if to != k.Picks() {
		t.Fatalf("stretches come to %d of %d picks", to, k.Picks())
	}
	left := map[int]bool{}
	for i, yarn := range k.Weft {
		if was, thrown := left[yarn]; thrown && was == k.FromRight[i] || !thrown && k.FromRight[i] {
			t.Fatalf("pick %d: the shuttle of yarn %d comes from a side where it is not", i+1, yarn)
		}
		left[yarn] = k.FromRight[i]
	}
}

// The towels: hems of 6 and 25 picks by the reckoning's marks, borders of 52 picks with
// blue in them, 126 motifs of 6 and a balancing pick; the far end mirrors the near one.
func TestTowelsPickByPick(t *testing.T) {
	w := woven(t, demo(t, "galley-towels"), nil)
	k := w.Kinds[0]
	if len(w.Kinds) != 1 || len(w.Pieces) != 6 || k.Picks() != 757 || w.Total != 4542 {
		t.Fatalf("%d kinds, %d pieces, %d picks", len(w.Kinds), len(w.Pieces), k.Picks())
	}
	want := []Stretch{
		{0, 6, []string{PartTurnIn, PartBorder}},
		{6, 31, []string{PartHem, PartBorder}},
		{31, 52, []string{PartBorder}},
		{52, 705, []string{PartBody}},
		{705, 726, []string{PartBorder}},
		{726, 751, []string{PartHem, PartBorder}},
		{751, 757, []string{PartTurnIn, PartBorder}},
	}
	if !slices.EqualFunc(k.Stretches, want, func(a, b Stretch) bool {
		return a.From == b.From && a.To == b.To && slices.Equal(a.Parts, b.Parts)
	}) {
		t.Errorf("stretches %+v", k.Stretches)
	}
	if k.Motif != (Motif{0, 6, 126}) || w.Yarns[k.Weft[24]] != "blue" || w.Yarns[k.Weft[23]] != "white" {
		t.Errorf("motif %+v, yarn of pick 25 %s", k.Motif, w.Yarns[k.Weft[24]])
	}
	for i := range k.Weft {
		if k.Weft[i] != k.Weft[len(k.Weft)-1-i] {
			t.Fatalf("pick %d is not mirrored", i+1)
		}
	}
	if up := w.Presses[k.Presses[0]].Up; up != draft.Of(1, 2) {
		t.Errorf("on top at the first pick: %s", up)
	}
}

// The blanket leaves a fringe and is hemstitched at both ends.
func TestBlanketEnds(t *testing.T) {
	w := woven(t, demo(t, "berth-blanket"), nil)
	p := w.Pieces[0]
	if len(w.Pieces) != 1 || !p.First.Hemstitch || !p.Last.Hemstitch || p.First.Fringe == nil || w.Sampling == nil {
		t.Errorf("%+v", p)
	}
}

func TestFractionsOfPicksAreNotLaidOut(t *testing.T) {
	text := set(p1, "sley = 1\n", "sley = 1\nrounding = { off = true }\n")
	if _, ok := Weave(solved(t, text), nil); ok {
		t.Error("fractions of picks are laid out")
	}
}
