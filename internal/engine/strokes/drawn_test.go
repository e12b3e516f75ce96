package strokes

import (
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
)

var sheds = []loom.Shed{loom.UnsaidShed, loom.Rising, loom.Sinking, loom.Counterbalance, loom.Countermarch, loom.Table}

// drawn draws a sound draft: treadled or with a lift plan, with colours and sizes.
func drawn(t *rapid.T) *draft.Draft {
	d := &draft.Draft{Shafts: rapid.IntRange(1, 8).Draw(t, "shafts"), Shed: rapid.SampledFrom(sheds).Draw(t, "shed")}
	d.Threading = rapid.SliceOfN(rapid.IntRange(0, d.Shafts), 1, 40).Draw(t, "threading")
	set := func(most int, what string) draft.Set {
		return draft.Set(rapid.Uint64().Draw(t, what)) & draft.UpTo(most)
	}
	picks := rapid.IntRange(1, 70).Draw(t, "picks")
	treadled := d.Shed != loom.Table && rapid.Bool().Draw(t, "treadled")
	if treadled {
		d.Treadles = rapid.IntRange(1, 6).Draw(t, "treadles")
		for range rapid.IntRange(0, d.Treadles).Draw(t, "ties") {
			d.Ties = append(d.Ties, draft.TieFor(d.Shed, set(d.Shafts, "tie"), d.Shafts))
		}
	}
	for range picks {
		if treadled {
			d.Treadling = append(d.Treadling, draft.Of(rapid.IntRange(1, d.Treadles).Draw(t, "treadle")))
		} else {
			d.Lifts = append(d.Lifts, set(d.Shafts, "lift"))
		}
	}
	if treadled && rapid.Bool().Draw(t, "two feet") {
		d.Treadling[0] = set(d.Treadles, "pressed")
	}
	d.Palette = []draft.Colour{{R: 255, G: 255, B: 255}, {R: 37, G: 64, B: 124}}
	d.Warp.Colours = rapid.SliceOfN(rapid.IntRange(0, 1), 0, len(d.Threading)).Draw(t, "warp colours")
	d.Weft.Colour = rapid.IntRange(0, 1).Draw(t, "weft colour")
	d.Warp.Thick = qty.Length(rapid.IntRange(0, 1).Draw(t, "thick")) * qty.Millimetre
	d.Weft.Aparts = make([]qty.Length, rapid.IntRange(0, picks).Draw(t, "apart"))
	for i := range d.Weft.Aparts {
		d.Weft.Aparts[i] = qty.Length(i%3) * qty.Millimetre
	}
	return d
}

// acted draws an act, most of the time one that can be made of the draft.
func acted(t *rapid.T, d *draft.Draft) Act {
	a := Act{Do: rapid.SampledFrom(Deeds()).Draw(t, "do"), Part: rapid.SampledFrom(Parts()).Draw(t, "part")}
	n := len(Values(d, a.Part))
	a.From = rapid.IntRange(0, n).Draw(t, "from")
	a.To = rapid.IntRange(a.From, n).Draw(t, "to")
	a.At, a.Remove = a.From, a.To-a.From
	a.Put = rapid.SliceOfN(value(a.Part, d), 0, 4).Draw(t, "put")
	if rapid.Bool().Draw(t, "as long") {
		a.Put = rapid.SliceOfN(value(a.Part, d), a.Remove, a.Remove).Draw(t, "exchanged")
	}
	a.By, a.Times = rapid.IntRange(-9, 9).Draw(t, "by"), rapid.IntRange(1, 3).Draw(t, "times")
	a.Rule = rapid.SampledFrom(Rules()).Draw(t, "rule")
	a.Text = rapid.SampledFrom([]string{"1", "1-2", "(1 2) x 3", "1 x fill", "1+2 1", "white 2, blue 1"}).Draw(t, "text")
	a.Names = []string{"white", "blue"}
	a.Number = rapid.IntRange(1, 9).Draw(t, "number")
	a.Shed = rapid.SampledFrom(sheds).Draw(t, "new shed")
	a.Up = rapid.Bool().Draw(t, "up")
	for range rapid.IntRange(1, 6).Draw(t, "cells") {
		a.Cells = append(a.Cells, Cell{rapid.IntRange(0, d.Picks()-1).Draw(t, "pick"), rapid.IntRange(0, d.Ends()-1).Draw(t, "end")})
	}
	return a
}

// value draws an entry that the part can have.
func value(part Part, d *draft.Draft) *rapid.Generator[Value] {
	switch part {
	case Threading:
		return rapid.Map(rapid.IntRange(0, d.Shafts), func(n int) Value { return Value(n) })
	case WarpColours, WeftColours:
		return rapid.Map(rapid.IntRange(0, max(len(d.Palette)-1, 0)), func(n int) Value { return Value(n) })
	case Palette:
		return rapid.Map(rapid.Uint64Range(0, 0xffffff), func(n uint64) Value { return Value(n) })
	case Treadling:
		return rapid.Map(rapid.Uint64(), func(n uint64) Value { return Value(n) & Value(draft.UpTo(d.Treadles)) })
	}
	return rapid.Map(rapid.Uint64(), func(n uint64) Value { return Value(n) & Value(draft.UpTo(d.Shafts)) })
}

// table is all that the parts of a draft say.
func table(d *draft.Draft) string {
	text := fmt.Sprint(d.Shafts, d.Shed)
	for _, part := range Parts() {
		if list := Values(d, part); part != Lowered || !nothing(list) {
			text += fmt.Sprintf("\n%s %v", part, list)
		}
	}
	return text
}

// made makes acts that must succeed.
func made(t rapid.TB, d *draft.Draft, acts ...Act) *draft.Draft {
	t.Helper()
	out, list := Do(d, acts)
	if out == nil {
		t.Fatalf("%+v: %v", acts, list.All())
	}
	return out
}

// wrong reports whether acts must not make a draft with that problem. Treadles that a
// weaver ties and presses may pull against one another.
func wrong(p problem.Problem, a Act) bool {
	return p.Severity == problem.Error && (p.Code != "draft.locked" || a.Do == ForShed)
}

func TestSplicesLeadToTheNewDraft(t *testing.T) {
	tried, done := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		was := drawn(t)
		before := was.Clone()
		is := was
		for range rapid.IntRange(1, 4).Draw(t, "acts") {
			tried++
			a := acted(t, is)
			out, list := Do(is, []Act{a})
			if (out == nil) != list.Failed() {
				t.Fatalf("%+v: %v, %v", a, out, list.All())
			}
			if out == nil {
				continue
			}
			done++
			is = out
			if faults := is.Check(); slices.ContainsFunc(faults.All(), func(p problem.Problem) bool { return wrong(p, a) }) {
				t.Fatalf("%+v made of\n%s\nmakes\n%s\n%v", a, table(was), table(is), faults.All())
			}
		}
		if !was.Equal(before) {
			t.Fatal("the draft that acts were made of is another one")
		}
		there := Apply(was, Between(was, is))
		there.Shafts, there.Shed = is.Shafts, is.Shed
		if table(there) != table(is) || !there.Drawdown().Equal(is.Drawdown()) {
			t.Fatalf("the splices lead to\n%s\nwant\n%s", table(there), table(is))
		}
		back := Apply(is, Between(is, was))
		if back.Shafts, back.Shed = was.Shafts, was.Shed; table(back) != table(was) {
			t.Fatalf("the splices lead back to\n%s\nwant\n%s", table(back), table(was))
		}
	})
	if done < tried/4 {
		t.Errorf("only %d of %d acts could be made", done, tried)
	}
}

// TestSplicesAreTheSmallest tries every smaller one.
func TestSplicesAreTheSmallest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := rapid.SliceOfN(rapid.Map(rapid.IntRange(1, 2), func(n int) Value { return Value(n) }), 0, 8)
		a, b := list.Draw(t, "a"), list.Draw(t, "b")
		s, differ := splice(a, b)
		if differ == slices.Equal(a, b) {
			t.Fatalf("%v and %v differ: %v", a, b, differ)
		}
		if got := slices.Replace(slices.Clone(a), s.At, s.At+s.Remove, s.Put...); !slices.Equal(got, b) {
			t.Fatalf("%+v of %v gives %v, want %v", s, a, got, b)
		}
		for at := range len(a) + 1 {
			for end := at; end < len(a)+1 && end-at < s.Remove; end++ {
				if put := len(b) - len(a) + end - at; put >= 0 && slices.Equal(a[:at], b[:min(at, len(b))]) && at+put <= len(b) && slices.Equal(a[end:], b[at+put:]) {
					t.Fatalf("%+v leads from %v to %v, and so does one at %d of %d", s, a, b, at, end-at)
				}
			}
		}
	})
}
