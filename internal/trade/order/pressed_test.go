package order

import (
	"slices"
	"testing"
)

func TestTreadles(t *testing.T) {
	for _, c := range []struct {
		text string
		want []uint64
	}{
		{"1 2 3 4", []uint64{1, 2, 4, 8}},
		{"1+3, 2+4", []uint64{5, 10}},
		{"(4-2 1+2) x 2", []uint64{8, 4, 2, 3, 8, 4, 2, 3}},
		{"tabby 3 tabby", []uint64{1, 2, 4, 1, 2}},
		{"1-3 mirrored", []uint64{1, 2, 4, 2, 1}},
		{"64 + 1", []uint64{1<<63 | 1}},
	} {
		o, faults := Parse(c.text, Context{Kind: Treadles, Groups: map[string]string{"tabby": "1 2"}})
		var got []uint64
		for _, r := range o.Runs(0) {
			got = append(got, slices.Repeat([]uint64{r.Set}, r.Count)...)
		}
		if len(faults) > 0 || !slices.Equal(got, c.want) {
			t.Errorf("%q: got %v, want %v, faults %v", c.text, got, c.want, faults)
		}
	}
	if o, _ := Parse("1+3 2 7", Context{Kind: Treadles}); o.MaxTreadle() != 7 || o.MaxShaft() != 0 || o.Shafts(1) != nil {
		t.Errorf("highest treadle %d, shaft %d", o.MaxTreadle(), o.MaxShaft())
	}
}

func TestFaultyTreadles(t *testing.T) {
	for _, c := range []struct {
		text string
		code string
		at   int
	}{
		{"1+", codeUnexpected, 1},
		{"1+0", codeTreadle, 2},
		{"1 65", codeTreadle, 2},
		{"1-70", codeTreadle, 2},
		{"2+blue", codeUnexpected, 1},
		{"+2", codeUnexpected, 0},
		{"1+2+", codeUnexpected, 3},
		{"1-", codeUnexpected, 1},
		{"blue 2", codeNameUnknown, 0},
	} {
		_, faults := Parse(c.text, Context{Kind: Treadles})
		if len(faults) == 0 || faults[0].Code != c.code || faults[0].At != c.at {
			t.Errorf("%q: got %v, want %s at %d", c.text, faults, c.code, c.at)
		}
	}
	for _, kind := range []Kind{Stripes, Shafts} {
		if _, faults := Parse("1+3", Context{Kind: kind}); len(faults) == 0 {
			t.Errorf("an order of %s takes two at once", kind)
		}
	}
}
