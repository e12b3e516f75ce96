package present

import (
	"strings"
	"testing"

	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
)

func TestProblem(t *testing.T) {
	p := problem.Problem{
		Code: "length.no-unit", Path: "pieces[0].width", Read: "18",
		Place: problem.Place{File: "towels.toml", Line: 7, Col: 10, Width: 2, Excerpt: `width = "18"`},
	}
	want := `towels.toml:7:10: error: pieces[0].width: "18" has no unit
  7 | width = "18"
    |          ^^
fix: write the unit with the number, as "18 in" or "18 cm"
`
	if got := Problem(p); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	p.Place, p.Severity = problem.Place{}, problem.Warning
	if got, _, _ := strings.Cut(Problem(p), "\n"); got != `warning: pieces[0].width: "18" has no unit` {
		t.Errorf("without a place: %q", got)
	}
}

func TestFixBeginsWithWhatWasMeant(t *testing.T) {
	p := problem.Problem{Code: "yarn.unknown", Read: "bleu", Args: problem.Args{"near": "blue", "valid": []string{"blue", "white"}}}
	if got, want := Fix(p), `did you mean "blue"? the yarns are blue, white; a new one begins with [yarns.NAME]`; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	p.Args["near"] = "bleu"
	if got := Fix(p); strings.Contains(got, "mean") {
		t.Errorf("what was written is offered again: %q", got)
	}
}

// TestExcerpt: the carets stand below the fault also with tabs and characters
// of several bytes, and only a part of an endless line is shown.
func TestExcerpt(t *testing.T) {
	long := strings.Repeat("blå 4, ", 100) + "bleu 4" + strings.Repeat(", hvit 4", 100)
	for _, c := range []struct {
		place problem.Place
		below string
	}{
		{problem.Place{Line: 3, Col: 9, Width: 4, Excerpt: "\tname =\tbleu"}, "bleu"},
		{problem.Place{Line: 12, Col: 8, Width: 4, Excerpt: "blå 4, bleu 4"}, "bleu"},
		{problem.Place{Line: 1, Col: 701, Width: 4, Excerpt: long}, "bleu"},
		{problem.Place{Line: 1, Col: 5, Width: 1, Excerpt: "blue"}, ""},
		{problem.Place{Line: 1, Col: 1, Width: 900, Excerpt: "blue"}, "blue"},
	} {
		lines := strings.Split(excerpt(c.place), "\n")
		if len(lines) != 3 {
			t.Fatalf("%q has %d lines", lines, len(lines))
		}
		text, marks := []rune(lines[0]), []rune(lines[1])
		from := strings.IndexRune(lines[1], '^')
		from = len([]rune(lines[1][:from]))
		got := string(text[min(from, len(text)):min(len(marks), len(text))])
		if got != c.below || len(text) > widest+10 {
			t.Errorf("the carets mark %q, want %q in\n%s\n%s", got, c.below, lines[0], lines[1])
		}
	}
}

func TestSay(t *testing.T) {
	for _, c := range []struct {
		value any
		want  string
	}{
		{"blue", "blue"},
		{strings.Repeat("x", 80), strings.Repeat("x", 59) + "…"},
		{"two\n lines", "two lines"},
		{[]string{"a", "b"}, "a, b"},
		{7, "7"},
		{qty.Frac(124, 100), "1.24"},
		{qty.Tex(qty.Frac(1476, 10)), "147.6 tex"},
		{10 * qty.Metre, "10 m"},
		{qty.Percent(qty.Int(90)), "90 %"},
	} {
		if got := say(c.value); got != c.want {
			t.Errorf("%v is said as %q, want %q", c.value, got, c.want)
		}
	}
}

// TestUnknownCodeIsStillSaid: a code without words never makes an empty line.
func TestUnknownCodeIsStillSaid(t *testing.T) {
	if got := Problem(problem.Problem{Code: "no.such"}); !strings.Contains(got, "no.such") || !strings.Contains(got, "fix:") {
		t.Errorf("got %q", got)
	}
}
