package letter_test

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"

	"sley/internal/engine/draw/letter"
)

func TestClean(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"plain", "Warp 1½ yd", "Warp 1½ yd"},
		{"a name", "Győző Łęcki, Țară", "Győző Łęcki, Țară"},
		{"an accent of its own", "cafe\u0301", "café"},
		{"an accent no letter has", "x\u0302y", "xy"},
		{"a letter without its accent", "\u04d0", "\u0410"},
		{"a ligature", "eﬃcient", "efficient"},
		{"wide letters", "ＷＡＲＰ１", "WARP1"},
		{"an old apostrophe letter", "ŉ", "ʼn"},
		{"spaces of all kinds", "a\tb\nc\r\u2028d", "a b c  d"},
		{"thin spaces stay", "1\u2009450\u00a0m", "1\u2009450\u00a0m"},
		{"controls", "a\x00\x07b\x7f", "ab"},
		{"marks of direction", "\u202eabc\u202c\u200f\u2066d\u2069", "abcd"},
		{"joiners and soft hyphens", "a\u200db\u00adc\ufeff", "abc"},
		{"an emoji", "🧶 yarn", "\uFFFD yarn"},
		{"an emoji's shade and style", "👍🏽 ❤️", "\uFFFD\uFFFD \uFFFD"},
		{"han", "織", "\uFFFD"},
		{"broken bytes", "a\xffb\xc3", "a\uFFFDb\uFFFD"},
		{"the missing sign itself", "\uFFFD", "\uFFFD"},
		{"boxes", "☐ ☑ ■", "[ ] [✓] ●"},
		{"half of a pair", string([]byte{0xed, 0xa0, 0x80}), "\uFFFD"},
		{"the last of all", "\U0010ffff", "\uFFFD"},
	} {
		if got := letter.Clean(c.text, sans); got != c.want {
			t.Errorf("%s: %q became %q, want %q", c.name, c.text, got, c.want)
		}
	}
}

func TestFit(t *testing.T) {
	const text = "Galley towels"
	whole := letter.Width(text, serif, 12)
	for _, c := range []struct {
		width float64
		want  string
	}{
		{whole, text},
		{whole + 0.01, text},
		{whole - 0.01, "Galley tow…"},
		{letter.Width("Galley …", serif, 12), "Galley…"},
		{letter.Width("…", serif, 12), "…"},
		{0.1, ""},
		{-1, ""},
	} {
		if got := letter.Fit(text, serif, 12, c.width); got != c.want {
			t.Errorf("%v mm: %q, want %q", c.width, got, c.want)
		}
	}
}

func TestWrap(t *testing.T) {
	wide := letter.Width("hand-spun yarn", sans, 12) + 0.01
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"nothing", " \n ", nil},
		{"one line", "hand-spun  yarn ", []string{"hand-spun yarn"}},
		{"at a space", "hand-spun yarn, washed", []string{"hand-spun", "yarn, washed"}},
		{"after a hyphen", "a big hand-spun yarn", []string{"a big hand-", "spun yarn"}},
		{"not in a range", "about 1200-1450 m", []string{"about", "1200-1450 m"}},
		{"not at a thin space", "a warp of 1\u2009450\u00a0m", []string{"a warp of", "1\u2009450\u00a0m"}},
		{"at line breaks", "one\n\ntwo", []string{"one", "", "two"}},
		{"inside a word too long", "mmmmmmmmmmmm", []string{"mmmmmmmm", "mmmm"}},
	} {
		if diff := cmp.Diff(c.want, letter.Wrap(c.text, sans, 12, wide)); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, diff)
		}
	}
	if got := letter.Wrap("ab", sans, 12, 0); len(got) != 2 {
		t.Errorf("no room at all: %q", got)
	}
}

func TestAWordOfFiveThousandLetters(t *testing.T) {
	lines := letter.Wrap(strings.Repeat("w", 5000), sans, 10, 170)
	if got := strings.Join(lines, ""); len(got) != 5000 || len(lines) < 50 {
		t.Errorf("%d letters on %d lines", len(got), len(lines))
	}
}

func TestFractions(t *testing.T) {
	for _, c := range []struct {
		whole, num, den int
		want            string
	}{
		{1, 1, 2, "1¹⁄₂"},
		{0, 3, 16, "³⁄₁₆"},
		{12, 0, 8, "12"},
		{-2, 1, 4, "−2¹⁄₄"},
		{0, -1, 4, "−¹⁄₄"},
		{0, 0, 4, "0"},
		{0, 45, 64, "⁴⁵⁄₆₄"},
		{0, 7, 890, "⁷⁄₈₉₀"},
	} {
		if got := letter.Fraction(c.whole, c.num, c.den); got != c.want {
			t.Errorf("%d %d/%d: %q, want %q", c.whole, c.num, c.den, got, c.want)
		}
	}
}

func TestFractionText(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"1 1/2 in", "1¹⁄₂ in"},
		{"2 3/16 x 1/8", "2³⁄₁₆ x ¹⁄₈"},
		{"4-5/8 in by 20 yd", "4⁵⁄₈ in by 20 yd"},
		{"1 450 1/2 m", "1 450¹⁄₂ m"},
		{"1\u00a01/4 lb", "1¹⁄₄ lb"},
		{"−3/4", "−³⁄₄"},
		{"(1/3)", "(¹⁄₃)"},
		{"2/2 twill", "2/2 twill"},
		{"10/2 cotton", "10/2 cotton"},
		{"16 10/2 ends", "16 10/2 ends"},
		{"0/4", "0/4"},
		{"1/2/2026", "1/2/2026"},
		{"A1/2", "A1/2"},
		{"3.1/4", "3.1/4"},
		{"1/2in", "1/2in"},
		{"12345/99999", "12345/99999"},
		{"no figures", "no figures"},
		{"", ""},
	} {
		if got := letter.FractionText(c.text); got != c.want {
			t.Errorf("%q became %q, want %q", c.text, got, c.want)
		}
	}
}

func FuzzClean(f *testing.F) {
	for _, seed := range []string{"Warp 1½ yd", "cafe\u0301", "🧶", "\x00\xff", "1/2 3/4", "\u202e ﬃ ☐"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, font := range every {
			clean := letter.Clean(text, font)
			if again := letter.Clean(clean, font); again != clean || !utf8.ValidString(clean) {
				t.Errorf("%q is not clean: %q", clean, again)
			}
			for _, r := range clean {
				if r > 0xFFFF || r < ' ' {
					t.Errorf("%q holds %U", clean, r)
				}
			}
			letter.Ink(text, font, 10)
		}
		letter.FractionText(text)
	})
}

func BenchmarkWidth(b *testing.B) {
	for b.Loop() {
		letter.Width("Beam with paper or sticks between the layers", sans, 12)
	}
}

func BenchmarkWrap(b *testing.B) {
	text := strings.Repeat("Beam with paper or sticks between the layers, and keep the same tension. ", 20)
	for b.Loop() {
		letter.Wrap(text, sans, 12, 174)
	}
}
