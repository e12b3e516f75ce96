package review

import (
	"slices"
	"testing"

	"sley/internal/engine/defaults"
	"sley/internal/engine/structure"
	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
)

// TestManyFloats: the longest are told one by one, and of the others how many there are.
func TestManyFloats(t *testing.T) {
	d := &draft.Draft{Shafts: 2}
	for i := range 200 {
		d.Threading = append(d.Threading, 1+i/20%2)
	}
	for i := range 20 {
		d.Lifts = append(d.Lifts, draft.Of(1+i%2))
	}
	found := Review(d, Context{Use: "scarf"})
	more := found[len(found)-1]
	all := 2 * 20 * 5 // each pick floats five times over twenty ends, on either face
	if countOf(found, LongFloat) != most || more.Topic != MoreFloats || more.Args["more"] != all-most {
		t.Errorf("%d told, %+v", countOf(found, LongFloat), more)
	}
	d.Threading = append(d.Threading, 2, 2, 2) // one longer, which comes first
	if first := Review(d, Context{Use: "scarf"})[0]; first.Args["threads"] != 23 {
		t.Errorf("the first is %+v", first)
	}
}

// TestEdgesCutFloats: in a whole warp nothing stands beside the last end.
func TestEdgesCutFloats(t *testing.T) {
	d := threaded([]int{1, 1, 1, 1, 1, 1, 2, 1, 2, 1, 1, 1, 1, 1}, draft.Of(1), draft.Of(2))
	c := Context{Use: "towel"}
	if n := countOf(Review(d, c), LongFloat); n != 2 {
		t.Errorf("%d floats of the repeat", n)
	}
	c.Ends = len(d.Threading)
	if n := countOf(Review(d, c), LongFloat); n != 0 {
		t.Errorf("%d floats of the warp", n)
	}
}

// TestFillCounts: what fills is repeated between what stands once.
func TestFillCounts(t *testing.T) {
	d := twill(1)
	d.Threading = []int{1, 1, 1, 2, 3, 4, 3, 2, 1, 1, 1}
	c := Context{Ends: 5 + 6*9, Fill: Span{2, 8}, Loom: &loom.Loom{Heddles: []int{14, 18, 18, 8}}}
	found := Review(d, c)
	if n := countOf(found, PartRepeat); n != 0 {
		t.Errorf("nine repeats are no part of one")
	}
	if at := slices.IndexFunc(found, func(f Finding) bool { return f.Topic == LacksHeddles }); at < 0 || found[at].Args["needs"] != 9 || found[at].Args["shaft"] != 4 || countOf(found, LacksHeddles) != 1 {
		t.Errorf("%v", found)
	}
	c.Ends += 2
	if n := countOf(Review(d, c), PartRepeat); n != 1 {
		t.Errorf("two ends more are told %d times", n)
	}
}

// TestLimitsOfUses: each use of the defaults is a use of a review.
func TestLimitsOfUses(t *testing.T) {
	for _, l := range defaults.FloatLimits() {
		long := countOf(Review(lace(l.Threads), Context{Use: l.Use}), LongFloat)
		short := countOf(Review(lace(l.Threads-3), Context{Use: l.Use}), LongFloat)
		if long == 0 || short > 0 {
			t.Errorf("%q: floats of %d threads told %d times, shorter ones %d times", l.Use, l.Threads, long, short)
		}
	}
}

// TestUnsound: what a draft's own check refuses is no matter for a review.
func TestUnsound(t *testing.T) {
	for _, d := range []*draft.Draft{
		{},
		{Shafts: 4, Threading: []int{1}},
		{Shafts: 2, Threading: []int{3}, Lifts: []draft.Set{1}},
		{Shafts: 2, Threading: []int{-1}, Lifts: []draft.Set{1}},
		{Shafts: 70, Threading: []int{70}, Lifts: []draft.Set{1}},
	} {
		if found := Review(d, Context{Ends: 7}); found != nil {
			t.Errorf("%+v: %v", d, found)
		}
	}
	Review(&draft.Draft{Shafts: 2, Threading: []int{0, 0}, Lifts: []draft.Set{1}}, Context{Ends: 2, Start: []structure.Side{0}})
}
