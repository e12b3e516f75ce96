package weave

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// draw draws a weave, often with words that are full or hold one bit.
func draw(t *rapid.T, most int) *Weave {
	ends := rapid.OneOf(rapid.IntRange(1, most), rapid.SampledFrom([]int{1, 63, 64, 65, 128, 130})).Draw(t, "ends")
	picks := rapid.OneOf(rapid.IntRange(1, most), rapid.SampledFrom([]int{1, 63, 64, 65})).Draw(t, "picks")
	return filled(t, picks, ends)
}

func filled(t *rapid.T, picks, ends int) *Weave {
	w := New(picks, ends)
	w.Bounded = rapid.Bool().Draw(t, "bounded")
	seed := rapid.Uint64().Draw(t, "seed")
	for i := range picks {
		for j := range ends {
			seed = seed*6364136223846793005 + 1442695040888963407 // Knuth, MMIX
			w.Set(i, j, seed>>60 < 7)
		}
	}
	return w
}

// by builds a weave crossing by crossing: the slow twin of every change.
func by(w *Weave, picks, ends int, at func(i, j int) bool) *Weave {
	out := w.like(picks, ends)
	for i := range picks {
		for j := range ends {
			out.Set(i, j, at(i, j))
		}
	}
	return out
}

// clean fails where a bit beyond the last end is set.
func clean(t *rapid.T, what string, w *Weave) {
	for i := range w.picks {
		if w.stride > 0 && w.Row(i)[w.stride-1]&^w.last() != 0 {
			t.Fatalf("%s: bits beyond the last end of pick %d", what, i)
		}
	}
}

func TestChangesAreTheirSlowTwins(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := draw(t, 90)
		m, n := w.picks, w.ends
		dp, de := rapid.IntRange(-100, 100).Draw(t, "dp"), rapid.IntRange(-100, 100).Draw(t, "de")
		tp, te := rapid.IntRange(0, 200).Draw(t, "tp"), rapid.IntRange(0, 300).Draw(t, "te")
		cp, ce := rapid.IntRange(0, m).Draw(t, "cp"), rapid.IntRange(0, n).Draw(t, "ce")
		for _, c := range []struct {
			what string
			got  *Weave
			want *Weave
		}{
			{"transpose", w.Transpose(), by(w, n, m, func(i, j int) bool { return w.WarpUp(j, i) })},
			{"complement", w.Complement(), by(w, m, n, func(i, j int) bool { return !w.WarpUp(i, j) })},
			{"reverse", w.Reverse(), by(w, m, n, func(i, j int) bool { return w.WarpUp(i, n-1-j) })},
			{"reverse picks", w.ReversePicks(), by(w, m, n, func(i, j int) bool { return w.WarpUp(m-1-i, j) })},
			{"half", w.Half(), by(w, m, n, func(i, j int) bool { return w.WarpUp(m-1-i, n-1-j) })},
			{"exchange", w.Exchange(), by(w, n, m, func(i, j int) bool { return !w.WarpUp(j, i) })},
			{"turn", w.Turn(), by(w, n, m, func(i, j int) bool { return !w.WarpUp(m-1-j, i) })},
			{"back", w.Back(), by(w, m, n, func(i, j int) bool { return !w.WarpUp(i, n-1-j) })},
			{"shift", w.Shift(dp, de), by(w, m, n, func(i, j int) bool { return w.WarpUp(mod(i+dp, m), mod(j+de, n)) })},
			{"tile", w.Tile(tp, te), by(w, tp, te, func(i, j int) bool { return w.WarpUp(i%m, j%n) })},
			{"crop", w.Crop(cp, ce, m-cp, n-ce), by(w, m-cp, n-ce, func(i, j int) bool { return w.WarpUp(cp+i, ce+j) })},
		} {
			clean(t, c.what, c.got)
			if !c.got.Equal(c.want) {
				t.Fatalf("%s of\n%s(shift %d %d, tile %d %d, crop %d %d) is\n%swant\n%s", c.what, w, dp, de, tp, te, cp, ce, c.got, c.want)
			}
		}
	})
}

func TestChangesUndoThemselves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := draw(t, 70)
		for what, again := range map[string]*Weave{
			"transposed twice": w.Transpose().Transpose(), "complement": w.Complement().Complement(),
			"reversed twice": w.Reverse().Reverse(), "back of the back": w.Back().Back(),
			"four quarters": w.Turn().Turn().Turn().Turn(), "two quarters": w.Turn().Turn().Half(),
			"exchanged twice": w.Exchange().Exchange(), "shifted back": w.Shift(3, 5).Shift(-3, -5),
		} {
			if !again.Equal(w) {
				t.Fatalf("%s:\n%swant\n%s", what, again, w)
			}
		}
		if w.WarpUps()+w.Complement().WarpUps() != w.picks*w.ends {
			t.Fatal("face and back do not share the crossings out")
		}
	})
}

// slowPeriod tries every period, crossing by crossing.
func slowPeriod(w *Weave, n int, same func(i, j int) bool) int {
	for p := 1; p < n; p++ {
		if !w.Bounded && n%p != 0 {
			continue
		}
		ok := true
		for i := p; i < n && ok; i++ {
			ok = same(i, i-p)
		}
		if ok {
			return p
		}
	}
	return n
}

func TestRepeatIsTheSmallest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		unit := filled(t, rapid.IntRange(1, 6).Draw(t, "up"), rapid.IntRange(1, 6).Draw(t, "ue"))
		w := unit.Tile(unit.picks*rapid.IntRange(1, 12).Draw(t, "tp"), unit.ends*rapid.IntRange(1, 30).Draw(t, "te"))
		if w.Bounded {
			w = w.Crop(0, 0, w.picks-rapid.IntRange(0, unit.picks-1).Draw(t, "cp"), w.ends-rapid.IntRange(0, unit.ends-1).Draw(t, "ce"))
		}
		col := func(j int) []bool {
			out := make([]bool, w.picks)
			for i := range out {
				out[i] = w.WarpUp(i, j)
			}
			return out
		}
		picks := slowPeriod(w, w.picks, func(i, j int) bool { return slices.Equal(w.Row(i), w.Row(j)) })
		ends := slowPeriod(w, w.ends, func(i, j int) bool { return slices.Equal(col(i), col(j)) })
		r := w.Repeat()
		if r.picks != picks || r.ends != ends {
			t.Fatalf("repeat of\n%s%d x %d, want %d x %d", w, r.picks, r.ends, picks, ends)
		}
		again := r.Tile(w.picks, w.ends)
		if again.Bounded = w.Bounded; !again.Equal(w) {
			t.Fatalf("the repeat\n%sdoes not give\n%s", r, w)
		}
	})
}

func TestPeriod(t *testing.T) {
	for _, c := range []struct {
		list          []int
		cut, dividing int
	}{
		{nil, 0, 0},
		{[]int{7}, 1, 1},
		{[]int{1, 1, 1}, 1, 1},
		{[]int{1, 2, 1, 2}, 2, 2},
		{[]int{1, 2, 1}, 2, 3},
		{[]int{1, 2, 3, 1}, 3, 4},
		{[]int{1, 2, 3}, 3, 3},
	} {
		if cut, dividing := Period(c.list, false), Period(c.list, true); cut != c.cut || dividing != c.dividing {
			t.Errorf("%v: %d and %d, want %d and %d", c.list, cut, dividing, c.cut, c.dividing)
		}
	}
}

func TestTextRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := draw(t, 40)
		w.Bounded = false
		got, faults := Parse(w.String())
		if len(faults) > 0 || !got.Equal(w) {
			t.Fatalf("%v: %s", faults, w)
		}
		if got.Hash() != w.Hash() {
			t.Fatal("equal weaves have two hashes")
		}
	})
}

func TestFaultyTexts(t *testing.T) {
	for _, c := range []struct {
		text  string
		codes []string
		at    []int
	}{
		{"", []string{codeEmpty}, []int{0}},
		{" / \n/", []string{codeEmpty}, []int{0}},
		{"#.\n#x\n.q", []string{codeSign, codeSign}, []int{4, 7}},
		{"##/#/##/###", []string{codeUneven, codeUneven}, []int{3, 8}},
	} {
		w, faults := Parse(c.text)
		var codes []string
		var at []int
		for _, f := range faults {
			codes, at = append(codes, f.Code), append(at, f.At)
		}
		if w != nil || !slices.Equal(codes, c.codes) || !slices.Equal(at, c.at) {
			t.Errorf("%q: %v at %v, want %v at %v", c.text, codes, at, c.codes, c.at)
		}
	}
	if w := Must("#. / .#"); w.picks != 2 || w.ends != 2 || !w.WarpUp(0, 0) || w.WarpUp(0, 1) {
		t.Errorf("got\n%s", w)
	}
}

func FuzzParse(f *testing.F) {
	for _, seed := range []string{"#.\n.#\n", "##../.##./..##/#..#", "", "#", "é#", "#\r\n.", "##\n#"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		w, faults := Parse(text)
		if (w == nil) == (len(faults) == 0) {
			t.Fatalf("%q: weave %v, faults %v", text, w, faults)
		}
		if w == nil {
			return
		}
		again, faults := Parse(w.String())
		if len(faults) > 0 || !again.Equal(w) {
			t.Fatalf("%q is not read back: %v", w, faults)
		}
	})
}

func TestCycle(t *testing.T) {
	for _, c := range []struct {
		list []int
		want int
	}{
		{nil, 0},
		{[]int{1}, 1},
		{[]int{1, 1}, 1},
		{[]int{1, 2, 3, 2, 1}, 4},
		{[]int{1, 2, 1, 2, 1}, 2},
		{[]int{1, 2, 3, 1, 2}, 5},
		{[]int{1, 2, 3, 1, 2, 3, 1, 2}, 3},
		{[]int{1, 2, 3}, 3},
	} {
		if got := Cycle(c.list); got != c.want {
			t.Errorf("%v: %d, want %d", c.list, got, c.want)
		}
	}
}
