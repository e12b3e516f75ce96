package reckon

import (
	"testing"

	"pgregory.net/rapid"

	"sley/internal/engine/dress"
	"sley/internal/trade/qty"
)

// The picks that are laid out one by one are those that were reckoned: in all, and of
// each yarn.
func TestLaidPicksAreTheReckoned(t *testing.T) {
	laidOnce, byYarn := false, false
	rapid.Check(t, func(t *rapid.T) {
		plan := drawPlan(t)
		r := Reckon(plan, Options{})
		kinds, ok := r.Laid()
		all, known := r.Node("weft.picks")
		if !ok || !known {
			return
		}
		laidOnce = true
		sum, of := 0, map[string]int{}
		for _, k := range kinds {
			for _, picks := range append(k.Woven, repeated(k.Picks, k.Count)...) {
				sum += picks
				laid := 0
				for _, run := range k.Yarns(picks) {
					of[run.Name] += run.Count
					laid += run.Count
				}
				if laid != picks {
					t.Fatalf("of a piece of %d picks %d are laid out", picks, laid)
				}
			}
		}
		if sum != all.Is.Count(qty.Nearest) {
			t.Fatalf("%d picks are laid out, %s reckoned", sum, all.Is)
		}
		if len(plan.Weft.Shares) > 0 || plan.Warp.Layers > 1 {
			return
		}
		for yarn, n := range of {
			if node, ok := r.Node("yarns[" + yarn + "].picks"); ok {
				byYarn = true
				if node.Is.Count(qty.Nearest) != n {
					t.Fatalf("%s: %d picks laid out, %s reckoned", yarn, n, node.Is)
				}
			}
		}
	})
	if !laidOnce || !byYarn {
		t.Error("nothing was laid out: the drawing shows too little")
	}
}

func repeated(n, times int) []int {
	var out []int
	for range times {
		out = append(out, n)
	}
	return out
}

// The ends that are to be wound are those that were reckoned.
func TestStretchesAreTheEndsWound(t *testing.T) {
	found := false
	rapid.Check(t, func(t *rapid.T) {
		plan := drawPlan(t)
		plan.Winding.UsualBoard = true
		r := Reckon(plan, Options{})
		if n, ok := r.Node("winding.ends"); ok {
			found = true
			if got := dress.Ends(r.Stretches()); !n.Is.Equal(qty.Int(int64(got))) {
				t.Fatalf("%d ends in stretches, %s reckoned", got, n.Is)
			}
		}
	})
	if !found {
		t.Error("nothing was wound: the drawing shows too little")
	}
}
