package loomside

import (
	"cmp"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/engine/reckon"
)

func dentsOf(t testing.TB, r *reckon.Result, side Side) []Dent {
	t.Helper()
	var out []Dent
	for _, p := range stepOf(t, Dressing(r, Asked{Sides: map[string]Side{Sleying: side}}), Sleying).Parts {
		out = append(out, p.Dents...)
	}
	return out
}

// The sleying fills exactly the dents that were reckoned, with every end, from every side.
func TestSleyingFillsTheDents(t *testing.T) {
	for _, name := range []string{"galley-towels", "berth-blanket", "lace-curtain", "bookmark-class"} {
		r := demo(t, name)
		left := dentsOf(t, r, Left)
		if len(left) != count(r, "dents") {
			t.Fatalf("%s: %d dents filled, %d reckoned", name, len(left), count(r, "dents"))
		}
		ends := 0
		for i, d := range left {
			ends += d.Ends
			if d.At != i+1 || d.Reed != 0 && d.Reed != count(r, "dents.first")+i {
				t.Errorf("%s: dent %d is number %d, in the reed %d", name, i+1, d.At, d.Reed)
			}
			if d.Float != (r.Plan.Warp.Floats > 0 && (i == 0 || i == len(left)-1)) {
				t.Errorf("%s: dent %d a floating selvedge: %v", name, i+1, d.Float)
			}
		}
		if want := count(r, "ends.wound"); ends != want && want > 0 {
			t.Errorf("%s: %d ends sleyed of %d", name, ends, want)
		}
		for _, side := range []Side{Right, Centre} {
			got := dentsOf(t, r, side)
			slices.SortFunc(got, func(a, b Dent) int { return cmp.Compare(a.At, b.At) })
			if !slices.Equal(got, left) {
				t.Errorf("%s from the %s: other dents", name, side)
			}
		}
	}
}

// P1, acceptance 4: 252 full dents, 1 single and 2 floating selvedges, 255 in all. In a
// reed of 24 in with 288 dents 127 stand left of its middle: the first is 144 − 127 + 1.
func TestDentsOfP1(t *testing.T) {
	dents := dentsOf(t, solved(t, p1), Left)
	full, single := 0, 0
	for _, d := range dents[1 : len(dents)-1] {
		switch d.Ends {
		case 2:
			full++
		case 1:
			single++
		}
	}
	if len(dents) != 255 || full != 252 || single != 1 || dents[0].Reed != 18 || dents[254].Reed != 272 {
		t.Errorf("%d dents, %d full, %d single, from %d to %d", len(dents), full, single, dents[0].Reed, dents[254].Reed)
	}
	if from := dentsOf(t, solved(t, p1), Centre)[0]; from.At != 128 {
		t.Errorf("from the centre the first is %d", from.At)
	}
}

// Doubled edges share the dents of their neighbours.
func TestDoubledEdges(t *testing.T) {
	r := solved(t, set(p1, "floating-selvedges = { ends = 2, yarn = \"white\" }", "doubled-edges = 2"))
	dents := dentsOf(t, r, Left)
	if dents[0].Ends != 4 || dents[1].Ends != 2 || dents[len(dents)-1].Ends+dents[len(dents)-2].Ends != 1+1+2+1 {
		t.Errorf("%+v ... %+v", dents[:2], dents[len(dents)-2:])
	}
	sum := 0
	for _, d := range dents {
		sum += d.Ends
	}
	if sum != 505+4 {
		t.Errorf("%d ends sleyed of 509", sum)
	}
}

func TestSided(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := rapid.SliceOfN(rapid.IntRange(0, 3), 0, 30).Draw(t, "list")
		for _, side := range []Side{Left, Right, Centre} {
			n := 0
			for _, run := range sided(list, side) {
				n += len(run)
			}
			if n != len(list) {
				t.Fatalf("from the %s: %d of %d", side, n, len(list))
			}
		}
	})
}
