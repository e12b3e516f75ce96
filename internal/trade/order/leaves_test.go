package order

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// written spells a leaf anew from what is told of it.
func (l Leaf) written() string {
	switch {
	case l.Group != "":
		return l.Group
	case l.Run.Name != "":
		return fmt.Sprint(l.Run.Count, " ", one(l.Run))
	case l.First != l.Last:
		return fmt.Sprintf("%d-%d", l.First, l.Last)
	}
	return one(l.Run)
}

// Each leaf, put in the place of its text as it is told, leaves the order as it was: so
// its place is right and all of it is told.
func TestLeavesStandInTheirPlaces(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := draw(rt)
		o := s.parse(rt)
		leaves := Leaves(s.text, s.ctx)
		text := s.text
		for _, l := range slices.Backward(leaves) {
			text = text[:l.From] + l.written() + text[l.To:]
		}
		again, faults := Parse(text, s.ctx)
		if len(faults) > 0 || !again.Equal(o) {
			rt.Fatalf("%q is written anew as %q: %v", s.text, text, faults)
		}
		for i, l := range leaves {
			if strings.Trim(s.text[l.From:l.To], "(), ") != s.text[l.From:l.To] || i > 0 && l.From < leaves[i-1].To {
				rt.Fatalf("%q: leaf %q at %d", s.text, s.text[l.From:l.To], l.From)
			}
			if opened := strings.Count(s.text[:l.From], "(") - strings.Count(s.text[:l.From], ")"); l.Depth != opened {
				rt.Fatalf("%q: %q lies in %d brackets, not %d", s.text, s.text[l.From:l.To], opened, l.Depth)
			}
		}
	})
}

// In brackets without a turn, the leaves times their repeats are the threads.
func TestLeavesTellTheirRepeats(t *testing.T) {
	for text, want := range map[string]string{
		"blue 12":                                "blue 12 depth 0 times 1",
		"blue 12 x 3":                            "blue 12 depth 0 times 3",
		"(blue 2, (white 4, red 1) x 3) x 2":     "blue 2 depth 1 times 2; white 4 depth 2 times 3; red 1 depth 2 times 3",
		"(white 6) x fill, 2 blue at 36 epi":     "white 6 depth 1 times 1 fills; blue at 36 epi 2 depth 0 times 1",
		"(blue 2 x 3) x fill, edge x 2, white 1": "blue 2 depth 1 times 3 fills; edge depth 0 times 2; white 1 depth 0 times 1",
		"blåbär 1, white 2 on beam 2":            "blåbär 1 depth 0 times 1; white on beam 2 2 depth 0 times 1",
	} {
		var got []string
		for _, l := range Leaves(text, Context{Groups: map[string]string{"edge": "red 3 x 4"}}) {
			words := fmt.Sprintf("%s %d depth %d times %d", one(l.Run), l.Run.Count, l.Depth, l.Times)
			if l.Group != "" {
				words = fmt.Sprintf("%s depth %d times %d", l.Group, l.Depth, l.Times)
			}
			if l.Fills {
				words += " fills"
			}
			got = append(got, words)
		}
		if strings.Join(got, "; ") != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	if Leaves("blue 12, (white", Context{}) != nil {
		t.Error("a text with faults has leaves")
	}
}

// What is laid out is the order with its group repeated, or all of it where none fills,
// cut off thread by thread.
func TestLaidLikeTwin(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := draw(rt)
		o := s.parse(rt)
		n := rapid.IntRange(0, 300).Draw(rt, "threads")
		before, fill := s.before, s.fill
		if len(fill) == 0 {
			before, fill = nil, before
		}
		want := slices.Clone(before)
		for room := n - len(before) - len(s.after); room > 0; room -= len(fill) {
			want = append(want, fill[:min(room, len(fill))]...)
		}
		want = append(want, s.after...)
		want = want[:min(n, len(want))]
		runs, all := o.Laid(n, math.MaxInt)
		if got := unroll(runs); !all || !slices.Equal(got, want) {
			rt.Fatalf("%q to %d: got %q, want %q", s.text, n, got, want)
		}
		if some, all := o.Laid(n, 2); len(some) != min(2, len(runs)) || all != (len(runs) <= 2) || !slices.EqualFunc(some, runs[:len(some)], func(a, b Run) bool { return one(a) == one(b) && a.Count == b.Count }) {
			rt.Fatalf("%q to %d: the first two of %v are %v, %v", s.text, n, runs, some, all)
		}
	})
}
