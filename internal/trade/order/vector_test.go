package order

import (
	"fmt"
	"slices"
	"testing"
)

// Tartan half sett of nine stripes: Skein Shop / Dashing Mouse Designs (blog),
// "Tartan half sett", https://skeinshop.com/blogs/dashing-mouse-designs gives
// 12 + 4 + 56 + 56 + 4 + 4 + 4 + 4 + 8 = 152 ends. The full setts are derived
// from it: 284 with both pivots shared, 304 with both doubled. The letters for
// the colours are ours.
func TestTartan(t *testing.T) {
	const half = "(a 12, b 4, c 56, d 56, b 4, d 4, b 4, d 4, e 8)"
	for _, test := range []struct {
		suffix string
		want   int
	}{
		{"", 152},
		{" mirrored open", 284},
		{" mirrored doubled", 304},
	} {
		if got := inStripes(t, half+test.suffix).Total(0); got != test.want {
			t.Errorf("half sett%s: got %d ends, want %d", test.suffix, got, test.want)
		}
	}
}

// KB Knits Etc (blog), "On my loom (3/2 cotton towels)", 2016,
// http://kbknitsetc.blogspot.com/2016/01/on-my-loom.html : a threading unit of
// ten ends for 270 ends in all, 54, 54, 81 and 81 heddles. The 27 repeats are
// derived: 270 / 10.
func TestTowelThreading(t *testing.T) {
	const unit = "(4,3,2,1,4,3,4,1,2,3)"
	want := []int{54, 54, 81, 81}
	whole := inShafts(t, unit+" x 27")
	if got := whole.Total(0); got != 270 {
		t.Errorf("got %d ends, want 270", got)
	}
	if got := whole.Shafts(0); !slices.Equal(got, want) {
		t.Errorf("heddles: got %v, want %v", got, want)
	}
	if got := inShafts(t, unit+" x fill").Shafts(27); !slices.Equal(got, want) {
		t.Errorf("heddles of 27 fillings: got %v, want %v", got, want)
	}
}

// Durham Weaver (blog), "Weaving waffle weave hand towels", 2014,
// https://durhamweaver64.blogspot.com/2014 : 45 repeats of 12 ends, 24 ends
// before and 25 after them make 589. Which shafts they are on is not published;
// the waffle unit here is ours.
func TestWaffleTowel(t *testing.T) {
	o := inShafts(t, "(1 2) x 12, (1-6 6-1) x fill, (1 2) x 12, 1")
	if got := o.Total(45); got != 589 {
		t.Errorf("got %d ends, want 589", got)
	}
	if o.Filler() != 12 || o.Fixed() != 24+25 {
		t.Errorf("got %d to a repeat and %d beside, want 12 and 49", o.Filler(), o.Fixed())
	}
}

// Handwoven, "Rosepath border motif design",
// https://handwovenmagazine.com/rosepath-border-motif-design : on eight shafts
// 1-2-3-4-5-6-7-8-1-8-7-6-5-4-3-2-1, 17 ends.
func TestRosepath(t *testing.T) {
	const want = "1 2 3 4 5 6 7 8 1 8 7 6 5 4 3 2 1"
	for _, text := range []string{want, "1-8 1 8-1", "(1-8 1) mirrored"} {
		o := inShafts(t, text)
		if got := spell(o.Runs(0)); got != want || o.Total(0) != 17 {
			t.Errorf("%q: got %s, %d ends, want %s, 17 ends", text, got, o.Total(0), want)
		}
	}
}

// C. P. Brooks, Cotton Manufacturing, "Healds": a draft that uses healds 1 to 5
// for 1, 2, 3, 4 and 2 ends, 12 ends in all; five patterns to the inch make 60
// ends and 5, 10, 15, 20 and 10 healds. The order of the twelve ends is ours.
func TestHealds(t *testing.T) {
	o := inShafts(t, "(1, 2 x 2, 3 x 3, 4 x 4, 5 x 2) x fill")
	if o.Filler() != 12 || o.Total(5) != 60 {
		t.Errorf("got %d ends to a pattern and %d to the inch, want 12 and 60", o.Filler(), o.Total(5))
	}
	if got, want := o.Shafts(5), []int{5, 10, 15, 20, 10}; !slices.Equal(got, want) {
		t.Errorf("healds: got %v, want %v", got, want)
	}
}

// A. Wolfensberger, Theory of Silk Weaving, 1921, p. 11: a point draw on n
// shafts repeats on 2n - 2 ends, so that 12 shafts need 22.
func TestPointDraw(t *testing.T) {
	if got := inShafts(t, "(1-12) mirrored open").Total(0); got != 22 {
		t.Errorf("12 shafts: got %d ends, want 22", got)
	}
	for n := 2; n <= MostShafts; n++ {
		o := inShafts(t, fmt.Sprintf("(1-%d) mirrored open", n))
		if got := len(unroll(o.Runs(0))); got != 2*n-2 {
			t.Errorf("%d shafts: got %d ends, want %d", n, got, 2*n-2)
		}
	}
}
