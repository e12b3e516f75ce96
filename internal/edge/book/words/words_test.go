package words

import (
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

func TestWordsAreFolded(t *testing.T) {
	for text, want := range map[string]string{
		"": "", "--- 🧶": "", "Tea-Towel": "tea towel", "crème BRÛLÉE": "creme brulee", "cre\u0300me": "creme",
		"ΣΊΣΥΦΟΣ σίσυφος": "σισυφοσ", "STRAẞE straße": "straße", "2/8 ½": "2 8 ½", "a a A á": "a",
		"K\u212a": "kk", "हिन्दी": "हिनदी", "İ": "i", "\xff\x00a": "a", strings.Repeat("é", 60): strings.Repeat("e", Most),
	} {
		if got := strings.Join(Of(text), " "); got != want {
			t.Errorf("%q: %q, not %q", text, got, want)
		}
	}
}

// Words are words of themselves, each once, without anything that a query would read as
// its grammar or that a tokenizer would cut at.
func TestWordsStay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.String().Draw(t, "text")
		got := Of(text)
		if again := Of(strings.Join(got, " ")); !slices.Equal(again, got) {
			t.Errorf("%q, then %q", got, again)
		}
		for _, word := range got {
			if word == "" || strings.ContainsAny(word, "\"'*() \x00+-^:{}") || utf8.RuneCountInString(word) > Most {
				t.Errorf("%q is a word", word)
			}
		}
		large, small := strings.ToUpper(text), strings.ToLower(text)
		there := strings.ToLower(large)
		if other := Of(large); there == small && !slices.Equal(got, other) {
			t.Errorf("%q, and large %q", got, other)
		}
	})
}

func FuzzWords(f *testing.F) {
	f.Add("Kräuter-Tuch 2/8")
	f.Add("\xff\x00İẞ")
	f.Fuzz(func(t *testing.T, text string) {
		got := Of(text)
		if again := Of(strings.Join(got, " ")); !slices.Equal(again, got) {
			t.Errorf("%q, then %q", got, again)
		}
	})
}
