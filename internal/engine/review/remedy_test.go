package review

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/engine/strokes"
	"sley/internal/engine/structure"
	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/qty"
)

// drawn draws a draft that may be as clumsy as drafts can be.
func drawn(t *rapid.T) *draft.Draft {
	sheds := []loom.Shed{loom.UnsaidShed, loom.Rising, loom.Sinking, loom.Counterbalance, loom.Countermarch}
	d := &draft.Draft{Shafts: rapid.IntRange(2, 8).Draw(t, "shafts"), Shed: rapid.SampledFrom(sheds).Draw(t, "shed")}
	d.Threading = rapid.SliceOfN(rapid.IntRange(0, d.Shafts), 1, 8).Draw(t, "threading")
	d.Threading = slices.Repeat(d.Threading, rapid.IntRange(1, 4).Draw(t, "times"))
	d.Threading = append(d.Threading, d.Threading[:rapid.IntRange(0, len(d.Threading)).Draw(t, "more")]...)
	set := func(most int, what string) draft.Set {
		return draft.Set(rapid.Uint64().Draw(t, what)) & draft.UpTo(most)
	}
	picks := rapid.IntRange(1, 24).Draw(t, "picks")
	if rapid.Bool().Draw(t, "lift plan") {
		for range picks {
			d.Lifts = append(d.Lifts, set(d.Shafts, "lift"))
		}
		return d
	}
	d.Treadles = rapid.IntRange(1, 6).Draw(t, "treadles")
	for range d.Treadles {
		tie := draft.TieFor(d.Shed, set(d.Shafts, "tie"), d.Shafts)
		if rapid.Bool().Draw(t, "loosely") {
			tie.Lowered &= set(d.Shafts, "lowered")
		}
		d.Ties = append(d.Ties, tie)
	}
	for range picks {
		d.Treadling = append(d.Treadling, draft.Of(rapid.IntRange(1, d.Treadles).Draw(t, "treadle")))
	}
	return d
}

// asked draws what a draft is looked over for.
func asked(t *rapid.T, d *draft.Draft) Context {
	c := Context{Use: rapid.SampledFrom([]string{"", "towel", "rug"}).Draw(t, "use")}
	if rapid.Bool().Draw(t, "dense") {
		c.Sett = qty.Density{Threads: qty.Int(int64(rapid.IntRange(2, 8).Draw(t, "sett"))), Over: qty.Centimetre}
		c.Picks = c.Sett
	}
	c.Loom = &loom.Loom{Shafts: rapid.IntRange(0, 8).Draw(t, "has"), Treadles: rapid.IntRange(0, 4).Draw(t, "feet")}
	c.Loom.Shed = loom.Shed(rapid.IntRange(0, 5).Draw(t, "shed of the loom"))
	if rapid.Bool().Draw(t, "whole") {
		c.Ends = d.Ends()
	} else {
		c.Ends = rapid.IntRange(0, 60).Draw(t, "ends")
	}
	for range rapid.IntRange(0, 2).Draw(t, "starts") {
		c.Start = append(c.Start, structure.Side(rapid.IntRange(0, 1).Draw(t, "start")))
	}
	c.Shuttles = rapid.SliceOfN(rapid.IntRange(0, 1), 0, d.Picks()).Draw(t, "shuttles")
	return c
}

// mend applies a remedy to the draft and to what it is looked over for.
func mend(t rapid.TB, d *draft.Draft, c Context, m Remedy) (*draft.Draft, Context) {
	t.Helper()
	is, list := strokes.Do(d, m.Acts)
	if is == nil {
		t.Fatalf("%+v cannot be made: %v", m, list.All())
	}
	for _, name := range m.Changes {
		is = map[string]func(*draft.Draft) *draft.Draft{
			"used": (*draft.Draft).DropUnused, "fewest": (*draft.Draft).Fewest, "lift-plan": (*draft.Draft).WithoutTreadles,
		}[name](is)
	}
	if c.Ends > 0 {
		c.Ends += m.Ends
	}
	start := slices.Clone(c.Start)
	for _, shuttle := range m.Swap {
		for len(start) <= shuttle {
			start = append(start, structure.Left)
		}
		start[shuttle] = start[shuttle].Other()
	}
	c.Start = start
	for side := range m.Floating {
		c.Floating[side] = c.Floating[side] || m.Floating[side]
	}
	return is, c
}

// same reports whether a finding is the one that was to be mended.
func same(was, is Finding) bool {
	if was.Topic != is.Topic {
		return false
	}
	if was.Topic == LongFloat {
		meet := func(a, b Span) bool { return a.From < b.To && b.From < a.To }
		return was.Args["way"] == is.Args["way"] && was.Args["face"] == is.Args["face"] && meet(was.Place.Ends, is.Place.Ends) && meet(was.Place.Picks, is.Place.Picks)
	}
	if was.Topic == PartRepeat {
		return was.Args["repeat"] == is.Args["repeat"] // the same ends may hold another
	}
	return !inRuns[was.Topic] &&
		slices.Equal(was.Place.Numbers, is.Place.Numbers) && was.Place.Picks == is.Place.Picks
}

func countOf(list []Finding, topic Topic) int {
	n := 0
	for _, f := range list {
		if f.Topic == topic {
			n++
		}
	}
	return n
}

// mendAll tries every remedy of a draft on its own, and gives what was told and tried.
func mendAll(t rapid.TB, d *draft.Draft, c Context) (found []Finding, tried []Topic) {
	t.Helper()
	found = Review(d, c)
	for _, f := range found {
		for _, m := range f.Remedies {
			is, then := mend(t, d, c, m)
			left := Review(is, then)
			if slices.ContainsFunc(left, func(g Finding) bool { return same(f, g) }) {
				t.Fatalf("%+v is still told after %+v\nof %v %v %v", f, m, d.Threading, d.LiftPlan(), is.Threading)
			}
			if inRuns[f.Topic] && countOf(left, f.Topic) >= countOf(found, f.Topic) {
				t.Fatalf("%s is told as often after %+v\nof %v %v", f.Topic, m, d.Threading, d.LiftPlan())
			}
			tried = append(tried, m.Topic)
		}
	}
	return found, tried
}

// inRuns are findings of which there may be several alike: a remedy takes one away.
var inRuns = map[Topic]bool{NoEndUp: true, AllEndsUp: true, InNoHeddle: true}

// TestRemediesMend: each remedy takes its finding away.
func TestRemediesMend(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawn(t)
		c := asked(t, d)
		before := d.Clone()
		mendAll(t, d, c)
		if !d.Equal(before) {
			t.Fatal("the draft that was looked over is another one")
		}
	})
}

// TestWildContexts: whatever a draft is looked over for, it is looked over.
func TestWildContexts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawn(t)
		c := asked(t, d)
		number := rapid.IntRange(-3, 90)
		c.Ends = rapid.OneOf(number, rapid.Int()).Draw(t, "any ends")
		c.Fill = Span{number.Draw(t, "from"), number.Draw(t, "to")}
		c.Shuttles = rapid.SliceOfN(number, 0, 90).Draw(t, "any shuttles")
		c.Loom.Heddles = rapid.SliceOfN(number, 0, 90).Draw(t, "heddles")
		c.Layers = number.Draw(t, "layers")
		for _, f := range Review(d, c) {
			if f.Severity.rank() < 0 || !slices.Contains(Topics(), f.Topic) {
				t.Fatalf("%+v", f)
			}
			for _, m := range f.Remedies {
				if is, list := strokes.Do(d, m.Acts); is == nil {
					t.Fatalf("%+v: %v", m, list.All())
				}
			}
		}
	})
}
