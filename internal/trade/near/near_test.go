package near

import (
	"testing"

	"pgregory.net/rapid"
)

var toTests = []struct{ text, want string }{
	{"widht", "width"}, // two letters swapped are one slip
	{"witdh", "width"}, // and so are these
	{"lenght", "length"},
	{"LENGTH", "length"},
	{"colour", ""}, // nothing near
	{"lngt", ""},   // two slips in four letters are too many
	{"x", ""},      // too short to guess
	{"", ""},
	{"length", "length"},
	{"aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa", ""},
}

func TestTo(t *testing.T) {
	names := []string{"width", "length", "count", "in"}
	for _, test := range toTests {
		if got := To(test.text, names); got != test.want {
			t.Errorf("%q: got %q, want %q", test.text, got, test.want)
		}
	}
}

// slow is the distance by its definition: the least over every last step.
func slow(a, b []rune) int {
	if len(a) == 0 || len(b) == 0 {
		return len(a) + len(b)
	}
	i, j := len(a)-1, len(b)-1
	best := min(slow(a[:i], b)+1, slow(a, b[:j])+1, slow(a[:i], b[:j])+change(a[i], b[j]))
	if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
		best = min(best, slow(a[:i-1], b[:j-1])+1)
	}
	return best
}

func TestSlipsAgainstTheDefinition(t *testing.T) {
	word := rapid.SliceOfN(rapid.RuneFrom([]rune("abé")), 0, 6)
	rapid.Check(t, func(t *rapid.T) {
		a, b := word.Draw(t, "a"), word.Draw(t, "b")
		if got, want := slips(a, b), slow(a, b); got != want {
			t.Fatalf("%q to %q: got %d, want %d", string(a), string(b), got, want)
		}
	})
}

func TestSlips(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{{"", "", 0}, {"a", "", 1}, {"ab", "ba", 1}, {"abc", "abd", 1}, {"abcd", "acbd", 1}, {"abcd", "badc", 2}, {"warp", "weft", 3}} {
		if got := slips([]rune(c.a), []rune(c.b)); got != c.want {
			t.Errorf("from %q to %q is %d, want %d", c.a, c.b, got, c.want)
		}
	}
}
