package dress

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestUneven(t *testing.T) {
	for _, c := range []struct {
		name     string
		together int
		warp     []Stretch
		want     []Uneven
	}{
		{"odd stripes", 2, warpOf("white", 7, "blue", 9, "white", 4), []Uneven{{1, 1, 7, []string{"white"}}, {2, 2, 9, []string{"blue"}}}},
		{"even stripes", 2, warpOf("white", 36, "blue", 12, "white", 36), nil},
		{"one at once", 1, warpOf("white", 7, "blue", 9), nil},
		{"only the last is odd", 2, warpOf("white", 8, "blue", 9), nil},
		{"a single end between", 2, warpOf("white", 8, "blue", 1, "white", 8), []Uneven{{2, 2, 1, []string{"blue"}}}},
		{"end and end", 2, warpOf("a", 12, "b", 1, "c", 1, "b", 1, "c", 1, "a", 12), nil},
		{"end and end that begins in the stripe beside it", 2, warpOf("a", 11, "b", 1, "a", 1, "b", 1, "a", 12, "c", 6), nil},
		{"the same with an end more", 2, warpOf("a", 11, "b", 1, "a", 1, "b", 1, "a", 13, "c", 6), []Uneven{{1, 5, 27, []string{"a", "b"}}}},
		{"a stripe that ends beside a stripe", 2, warpOf("b", 1, "a", 1, "b", 1, "a", 40, "b", 8, "a", 2), []Uneven{{1, 4, 43, []string{"b", "a"}}}},
		{"end and end, one end more", 2, warpOf("a", 12, "b", 1, "c", 1, "b", 1, "a", 12), []Uneven{{2, 4, 3, []string{"b", "c"}}}},
		{"by threes", 3, warpOf("a", 9, "b", 4, "a", 9), []Uneven{{2, 2, 4, []string{"b"}}}},
		{"crammed in one yarn", 2, []Stretch{{"a", 3, 1, perInch(12)}, {"a", 3, 1, perInch(24)}, {"b", 4, 1, perInch(24)}}, nil},
		{"another beam between", 2, []Stretch{{"a", 3, 1, perInch(12)}, {"b", 3, 0, perInch(12)}, {"a", 3, 1, perInch(12)}}, nil},
	} {
		got := Winder{c.together, 100}.Uneven(c.warp)
		same := func(a, b Uneven) bool {
			return a.First == b.First && a.Last == b.Last && a.Ends == b.Ends && slices.Equal(a.Yarns, b.Yarns)
		}
		if !slices.EqualFunc(got, c.want, same) {
			t.Errorf("%s: got %+v, want %+v", c.name, got, c.want)
		}
	}
}

// There are uneven stripes exactly where a pass holds ends of two stripes of
// which one is no narrower than a pass.
func TestUnevenIsWhereAPassIsSplit(t *testing.T) {
	split, whole := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		w := Winder{rapid.IntRange(1, 4).Draw(t, "together"), 100}
		list := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Stretch {
			return Stretch{
				Yarn:   rapid.SampledFrom([]string{"white", "blue", "sand"}).Draw(t, "yarn"),
				Places: rapid.IntRange(1, 6).Draw(t, "places"), Each: rapid.SampledFrom([]int{1, 1, 2, 0}).Draw(t, "each"),
				Density: perInch(24),
			}
		}), 1, 6).Draw(t, "warp")
		want := splits(w, yarnByEnd(list))
		if got := len(w.Uneven(list)) > 0; got != (want > 0) || w.Split(list) != want {
			t.Fatalf("%v by %d: uneven %v, %d passes split, want %d", yarnByEnd(list), w.Together, w.Uneven(list), w.Split(list), want)
		}
		if want > 0 {
			split++
		} else {
			whole++
		}
	})
	if !testing.Short() && (split < 10 || whole < 10) { // short draws a fifth
		t.Errorf("%d warps split and %d whole: the drawing shows too little", split, whole)
	}
}

// splits counts the passes that hold two neighbouring ends of different yarns,
// unless both are of stripes narrower than a pass, or one is and the other's yarn
// is among those of its narrow neighbours.
func splits(w Winder, yarns []string) int {
	found := map[int]bool{}
	for i := 1; i < len(yarns); i++ {
		if yarns[i] != yarns[i-1] && i%w.Together != 0 && !meant(w, yarns, i-1, i) && !meant(w, yarns, i, i-1) {
			found[i/w.Together] = true
		}
	}
	return len(found)
}

// meant reports whether the end at is of a narrow stripe with narrow neighbours,
// and the other end of one of their yarns.
func meant(w Winder, yarns []string, at, other int) bool {
	if !narrowAt(w, yarns, at) {
		return false
	}
	from, to := at, at
	for from > 0 && narrowAt(w, yarns, from-1) {
		from--
	}
	for to < len(yarns)-1 && narrowAt(w, yarns, to+1) {
		to++
	}
	near := yarns[from : to+1]
	return len(distinct(near)) > 1 && slices.Contains(near, yarns[other])
}

// narrowAt reports whether the stripe of that end is narrower than a pass.
func narrowAt(w Winder, yarns []string, at int) bool {
	from, to := at, at+1
	for from > 0 && yarns[from-1] == yarns[at] {
		from--
	}
	for to < len(yarns) && yarns[to] == yarns[at] {
		to++
	}
	return to-from < w.Together
}
