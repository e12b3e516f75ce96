package order

import (
	"slices"
	"testing"
	"unicode/utf8"
)

// FuzzOrder holds for every text: no panic, no more memory than the limits
// allow, faults within the text, and of a good order a spelling that is read as
// the same order and counts that agree with its runs.
func FuzzOrder(f *testing.F) {
	for _, test := range shaftTests {
		f.Add(test.text, "1-4 mirrored open", true)
	}
	for _, text := range []string{"1 2 3 4", "1+3 2+4", "(1+2, 3) mirrored x fill", "4-1", "1+", "+1", "1+65", "1+0 2"} {
		f.Add(text, "1+2", true)
	}
	for _, test := range stripeTests {
		f.Add(test.text, "blue 1 red 2", false)
	}
	for _, test := range slices.Concat(stripeFaultTests, shaftFaultTests) {
		f.Add(test.text, test.text, false)
		f.Add(test.text, test.text, true)
	}
	f.Fuzz(func(t *testing.T, text, edge string, shafts bool) {
		ctx := Context{Groups: map[string]string{"edge": edge, "point": "edge, edge"}}
		if shafts {
			ctx.Kind = Shafts
			checkText(t, text, Context{Kind: Treadles, Groups: ctx.Groups})
		}
		checkText(t, text, ctx)
	})
}

func checkText(t *testing.T, text string, ctx Context) {
	t.Helper()
	o, faults := Parse(text, ctx)
	for _, fault := range faults {
		if fault.At < 0 || fault.At > utf8.RuneCountInString(text) {
			t.Fatalf("%q: %v stands at %d, outside", text, fault, fault.At)
		}
	}
	if len(faults) > 0 {
		return
	}
	checkRoundTrip(t, o, ctx)
	checkCounts(t, o, 0)
	checkCounts(t, o, 2)
}

func checkCounts(t *testing.T, o Order, fill int) {
	t.Helper()
	sum, ends := 0, 0
	for _, r := range o.Totals(fill) {
		sum += r.Count
	}
	for _, n := range o.Shafts(fill) {
		ends += n
	}
	if sum != o.Total(fill) || o.Kind() == Shafts && ends != sum {
		t.Fatalf("%q: totals %d, shafts %d, want %d", o.Text, sum, ends, o.Total(fill))
	}
	if !o.Fits(fill) {
		return
	}
	for _, r := range o.Runs(fill) {
		sum -= r.Count
	}
	if sum != 0 {
		t.Fatalf("%q: the runs lack %d threads of %d", o.Text, sum, o.Total(fill))
	}
}
