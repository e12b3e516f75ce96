package problem

import (
	"encoding/json"
	"errors"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

// drawPath draws paths of keys of every kind.
func drawPath(t *rapid.T) Path {
	var p Path
	for i := range rapid.IntRange(0, 6).Draw(t, "steps") {
		if i > 0 && rapid.Bool().Draw(t, "item") {
			p = append(p, Step{Index: rapid.IntRange(0, 9_999_999).Draw(t, "index"), Item: true})
			continue
		}
		p = append(p, Step{Key: rapid.OneOf(rapid.String(), rapid.SampledFrom([]string{"a", "a.b", "", " ", "x[0]", `"`, "æ å", "a=b"})).Draw(t, "key")})
	}
	return p
}

// TestPathsAreReadAgain: what String writes, ParsePath reads.
func TestPathsAreReadAgain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPath(t)
		got, err := ParsePath(p.String())
		if err != nil || len(got) != len(p) {
			t.Fatalf("%q gives %v, %v", p.String(), got, err)
		}
		for i := range p {
			if got[i] != p[i] {
				t.Fatalf("step %d of %q is %v, want %v", i, p.String(), got[i], p[i])
			}
		}
	})
}

// TestPathsAsPeopleWriteThem holds ways of writing and the one that is written.
func TestPathsAsPeopleWriteThem(t *testing.T) {
	for text, want := range map[string]string{
		"":                              "",
		"warp.sett":                     "warp.sett",
		"pieces[0].length":              "pieces[0].length",
		`"warp"."sett"`:                 "warp.sett",
		`yarns."a.b".count`:             `yarns."a.b".count`,
		`yarns.blå.count`:               `yarns.blå.count`,
		`extras.take-up in all`:         "extras.take-up in all",
		`extras."take-up in all"`:       "extras.take-up in all",
		`extras.""`:                     `extras.""`,
		"a[0][12]":                      "a[0][12]",
		`"\u0061\t"`:                    `"a\t"`,
		`yarns."a\"b\\"`:                `yarns."a\"b\\"`,
		`groups."x[1]".y`:               `groups."x[1]".y`,
		"winding.pegs[9999999]":         "winding.pegs[9999999]",
		"pieces[0].first.turn-in":       "pieces[0].first.turn-in",
		"draft.colours.1":               "draft.colours.1",
		`extras."half = whole"`:         `extras."half = whole"`,
		`extras." in front"`:            `extras." in front"`,
		"\"\\u2028\"":                   "\"\u2028\"",
		"allowances.take-up":            "allowances.take-up",
		`yarns."with a [bracket".wraps`: `yarns."with a [bracket".wraps`,
	} {
		p, err := ParsePath(text)
		if err != nil || p.String() != want {
			t.Errorf("%q is %q, %v, want %q", text, p.String(), err, want)
		}
	}
}

// TestTextsThatAreNoPaths: the fault names the character that cannot stand there.
func TestTextsThatAreNoPaths(t *testing.T) {
	for text, want := range map[string]struct {
		at   int
		read string
	}{
		".":             {0, "."},
		"a.":            {2, ""},
		"a..b":          {2, "."},
		"[0]":           {0, "["},
		"a[":            {2, ""},
		"a[x]":          {2, "x"},
		"a[-1]":         {2, "-"},
		"a[01]":         {2, "0"},
		"a[1":           {3, ""},
		"a[12345678]":   {2, "1"},
		"a[0]b":         {4, "b"},
		`a"b`:           {1, `"`},
		`"a`:            {0, `"`},
		`"a"b`:          {3, "b"},
		`"\q"`:          {0, `"`},
		`"\ud800"`:      {0, `"`},
		"å.b=c":         {3, "="},
		"a. b":          {2, " "},
		"a ":            {0, "a"},
		"a\nb":          {1, "\n"},
		"a\xff":         {1, "\xff"},
		"a]":            {1, "]"},
		`yarns."a".`:    {10, ""},
		`pieces[0].[1]`: {10, "["},
	} {
		p, err := ParsePath(text)
		var f *PathFault
		if !errors.As(err, &f) {
			t.Errorf("%q is read as %v", text, p)
			continue
		}
		if f.At != want.at || f.Read != want.read || f.Text != text || f.Error() == "" {
			t.Errorf("%q fails at %d with %q, want %d, %q", text, f.At, f.Read, want.at, want.read)
		}
	}
}

// TestQuote: what is quoted is read again by Unquote, and by encoding/json.
func TestQuote(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(rapid.String(), rapid.StringOf(rapid.RuneFrom([]rune("\x00\x1f\x7f\"\\\t\n\r\b\fa\u2028<&")))).Draw(t, "text")
		got, ok := Unquote(Quote(text))
		var other string
		if err := json.Unmarshal([]byte(Quote(text)), &other); err != nil || !ok || got != text || other != text {
			t.Fatalf("%q is quoted as %s and read as %q, %q, %v", text, Quote(text), got, other, err)
		}
	})
}

// FuzzPath: whatever is read as a path is written so that it is the same again.
func FuzzPath(f *testing.F) {
	for _, text := range []string{"", "a.b", "pieces[0].length", `yarns."a.b".count`, `"\u0041"[0]`, "a[", `"`} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		p, err := ParsePath(text)
		if err != nil {
			return
		}
		again, err := ParsePath(p.String())
		if err != nil || again.String() != p.String() || utf8.ValidString(text) && len(again) != len(p) {
			t.Errorf("%q is %q, then %q, %v", text, p.String(), again.String(), err)
		}
	})
}
