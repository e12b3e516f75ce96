package dress

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// unthreaded lays groups out end by end: the shaft of each end by the place that
// its group's count gives it.
func unthreaded(t interface{ Fatalf(string, ...any) }, list []Threaded, ends int) []int {
	out := make([]int, ends)
	for _, row := range list {
		for _, after := range row.After {
			group := slices.Repeat(row.Shafts, row.Times)
			from := after - len(group)
			if from < 0 || after > ends {
				t.Fatalf("a group runs from %d to %d of %d", from, after, ends)
			}
			for i, shaft := range group {
				if out[from+i] != 0 {
					t.Fatalf("end %d is threaded twice", from+i+1)
				}
				out[from+i] = shaft
			}
		}
	}
	return out
}

// Groups thread every end once, on its own shaft, and none is larger than may be.
func TestGroupsAreTheThreading(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shafts := rapid.SliceOfN(rapid.IntRange(1, 8), 0, 70)
		before, fill, after := shafts.Draw(t, "before"), shafts.Draw(t, "fill"), shafts.Draw(t, "after")
		times, most := rapid.IntRange(0, 30).Draw(t, "times"), rapid.IntRange(1, 40).Draw(t, "most")
		want := slices.Concat(before, slices.Repeat(fill, times), after)
		list := Threading(before, fill, after, times, most)
		if got := unthreaded(t, list, len(want)); !slices.Equal(got, want) {
			t.Fatalf("got %v, want %v", got, want)
		}
		for _, row := range list {
			if n := row.EndsInGroup(); n > most || n == 0 || !slices.IsSorted(row.After) {
				t.Fatalf("a group of %d ends, at most %d: %+v", n, most, row)
			}
		}
	})
}

func TestGroupsThatSuitTheRepeat(t *testing.T) {
	got := Threading(nil, []int{1, 2, 3, 4, 3, 2}, []int{1}, 10, 24)
	want := []Threaded{
		{[]int{1, 2, 3, 4, 3, 2}, 4, []int{24, 48}},
		{[]int{1, 2, 3, 4, 3, 2}, 2, []int{60}},
		{[]int{1}, 1, []int{61}},
	}
	if !slices.EqualFunc(got, want, alikeThreaded) {
		t.Errorf("got %+v, want %+v", got, want)
	}
	long := make([]int, 30)
	for i := range long {
		long[i] = i%4 + 1
	}
	got = Threading(nil, long, nil, 2, 24)
	if len(got) != 2 || !slices.Equal(got[0].After, []int{15, 45}) || !slices.Equal(got[1].After, []int{30, 60}) {
		t.Errorf("a repeat of 30 in groups of 24 at most: %+v", got)
	}
}

func alikeThreaded(a, b Threaded) bool {
	return a.Times == b.Times && slices.Equal(a.Shafts, b.Shafts) && slices.Equal(a.After, b.After)
}
