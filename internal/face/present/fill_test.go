package present

import (
	"strings"
	"testing"
)

// TestFillIn compares with the replacer of the standard library.
func TestFillIn(t *testing.T) {
	pairs := []string{"{a}", "1", "{b}", "{a}", "{long-name}", "", "{n}", "ä"}
	for _, text := range []string{"", "no names", "{a}", "{a}{b}{a}", "x {b} y {unknown} {a", "{{a}}", "}{", "{long-name}", "{long-name}{n}.", "ends {"} {
		if got, want := fillIn(text, pairs...), strings.NewReplacer(pairs...).Replace(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

func FuzzFillIn(f *testing.F) {
	f.Add("{a} and {b}", "{b}", "x")
	f.Fuzz(func(t *testing.T, text, a, b string) {
		pairs := []string{"{a}", a, "{b}", b}
		if got, want := fillIn(text, pairs...), strings.NewReplacer(pairs...).Replace(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	})
}
