package dress

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/trade/qty"
)

func warpOf(pairs ...any) []Stretch {
	var list []Stretch
	for i := 0; i < len(pairs); i += 2 {
		list = append(list, Stretch{pairs[i].(string), pairs[i+1].(int), 1, qty.Frac(24, int64(qty.Inch))})
	}
	return list
}

func TestSizes(t *testing.T) {
	for _, c := range []struct {
		w    Winder
		n    int
		want []int
	}{
		{Winder{1, 60}, 505, []int{57, 56, 56, 56, 56, 56, 56, 56, 56}},
		{Winder{2, 60}, 505, []int{56, 56, 56, 56, 56, 56, 56, 56, 57}},
		{Winder{2, 60}, 480, []int{60, 60, 60, 60, 60, 60, 60, 60}},
		{Winder{2, 60}, 481, []int{56, 56, 56, 52, 52, 52, 52, 52, 53}},
		{Winder{1, 60}, 7, []int{7}},
		{Winder{4, 60}, 0, nil},
	} {
		if got := c.w.Sizes(c.n); !slices.Equal(got, c.want) {
			t.Errorf("%d ends, %+v: got %v, want %v", c.n, c.w, got, c.want)
		}
	}
}

func TestChangesAreMadeAtAPeg(t *testing.T) {
	got := Winder{1, 100}.Bouts(warpOf("white", 36, "blue", 7, "white", 5))
	want := []Change{{36, false, []string{"blue"}}, {43, true, []string{"white"}}}
	if len(got) != 1 || !equalChanges(got[0].Changes, want) || !slices.Equal(got[0].Yarns, []string{"white"}) {
		t.Errorf("got %+v, want %+v", got, want)
	}
}

// Two at once over stripes of odd ends: one pass carries both yarns.
func TestChangesInAPass(t *testing.T) {
	got := Winder{2, 100}.Bouts(warpOf("white", 7, "blue", 9))
	want := []Change{{3, true, []string{"white", "blue"}}, {4, false, []string{"blue"}}}
	if len(got) != 1 || !equalChanges(got[0].Changes, want) || got[0].Passes != 8 {
		t.Errorf("got %+v, want %+v", got, want)
	}
}

// One of each wound together is no change at every end.
func TestEndAndEndNeedsNoChange(t *testing.T) {
	var pairs []any
	for range 20 {
		pairs = append(pairs, "white", 1, "blue", 1)
	}
	got := Winder{2, 40}.Bouts(warpOf(pairs...))
	if len(got) != 1 || len(got[0].Changes) > 0 || !slices.Equal(got[0].Yarns, []string{"white", "blue"}) {
		t.Errorf("got %+v", got)
	}
}

func equalChanges(a, b []Change) bool {
	return slices.EqualFunc(a, b, func(x, y Change) bool {
		return x.After == y.After && x.Far == y.Far && slices.Equal(x.Yarns, y.Yarns)
	})
}

// Bouts hold every end once, none more than may be; as few as hold them; all but
// the last of an even number of passes where several ends are wound at once; and
// no two differ by more than a unit, what is left over at the end apart.
func TestBoutsShareTheWarpOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		together := rapid.IntRange(1, 6).Draw(t, "together")
		w := Winder{together, 2*together + rapid.IntRange(0, 100).Draw(t, "more")}
		n := rapid.IntRange(1, 1500).Draw(t, "ends")
		sizes := w.Sizes(n)
		all := 0
		for i, size := range sizes {
			all += size
			if size < 1 || size > w.Most {
				t.Fatalf("bout %d of %d has %d ends, most %d", i, len(sizes), size, w.Most)
			}
			if together > 1 && i < len(sizes)-1 && size/together%2 == 1 {
				t.Fatalf("bout %d of %d ends is odd in passes", i, size)
			}
		}
		unit, rest := w.Unit(), n%w.Unit()
		if last := len(sizes) - 1; len(sizes) > 1 {
			sizes[last] -= rest
		}
		if all != n || slices.Max(sizes)-slices.Min(sizes) > unit && len(sizes) > 1 {
			t.Fatalf("%v of %d", sizes, n)
		}
		if fewest := (n + w.Most/unit*unit - 1) / (w.Most / unit * unit); len(sizes) != fewest {
			t.Fatalf("%d bouts, %d would do", len(sizes), fewest)
		}
	})
}

// What is on the threads after each change is what the warp has there.
func TestChangesSayTheWarp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := drawWarp(t)
		w := Winder{rapid.IntRange(1, 4).Draw(t, "together"), 30}
		want := yarnByEnd(list)
		for _, b := range w.Bouts(list) {
			now, next := b.Yarns, b.Changes
			for pass := range b.Passes {
				if len(next) > 0 && next[0].After == pass {
					if next[0].Far != (pass%2 == 1) {
						t.Fatalf("after %d passes at the far peg: %v", pass, next[0].Far)
					}
					now, next = next[0].Yarns, next[1:]
				}
				for i := pass * w.Together; i < min((pass+1)*w.Together, b.Ends); i++ {
					if !slices.Contains(now, want[i]) {
						t.Fatalf("end %d of the bout is %s, and %v is wound", i, want[i], now)
					}
				}
			}
			want = want[b.Ends:]
		}
		if len(want) > 0 {
			t.Fatalf("%d ends are not wound", len(want))
		}
	})
}
