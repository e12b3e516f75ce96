// Package present turns what the program knows into words for people: the only
// place where problems, figures and workings get their wording.
package present

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"sley/internal/trade/problem"
)

// Wrong says what is wrong, in lower case without a full stop.
func Wrong(p problem.Problem) string { return fill(wordsFor(p.Code).wrong, p) }

// Why says why that is wrong, or nothing where it is plain.
func Why(p problem.Problem) string { return fill(wordsFor(p.Code).why, p) }

// Fix says what to do. What was likely meant comes first.
func Fix(p problem.Problem) string {
	fix := wordsFor(p.Code).fix
	if inner, ok := p.Args["why"].(string); ok {
		if w, known := wordsOf(inner); known {
			fix = w.fix
		}
	}
	if near, ok := p.Args["near"].(string); ok && near != "" && near != p.Read {
		return fmt.Sprintf("did you mean %q? ", near) + fill(fix, p)
	}
	return fill(fix, p)
}

// Problem says a problem on several lines, each ended: where it stands and
// what is wrong, the line of the file with carets below the fault, why it is
// wrong where that is not plain, and what to do.
//
//	towels.toml:7:10: error: pieces[0].width: "18" has no unit
//	  7 | width = "18"
//	    |          ^^
//	fix: write the unit with the number, as "18 in" or "18 cm"
func Problem(p problem.Problem) string {
	var b strings.Builder
	b.WriteString(heading(p))
	b.WriteString(excerpt(p.Place))
	if why := Why(p); why != "" {
		fmt.Fprintln(&b, why)
	}
	if fix := Fix(p); fix != "" {
		fmt.Fprintf(&b, "fix: %s\n", fix)
	}
	return b.String()
}

func heading(p problem.Problem) string {
	parts := []string{p.Place.String(), p.Severity.String(), p.Path, Wrong(p)}
	var said []string
	for _, part := range parts {
		if part != "" {
			said = append(said, part)
		}
	}
	return strings.Join(said, ": ") + "\n"
}

// legible shows a tab as a space and what a terminal would act upon as a dot.
func legible(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\t':
			return ' '
		case unicode.IsControl(r):
			return '·'
		}
		return r
	}, text)
}

// widest is how many characters of a line are shown.
const widest = 100

// excerpt shows the line of a place with carets below what is wrong. Of a very
// long line only the part around the fault is shown.
func excerpt(place problem.Place) string {
	if place.Line == 0 || place.Excerpt == "" {
		return ""
	}
	line := legible(place.Excerpt)
	line, col := window([]rune(line), place.Col-1)
	carets := min(max(place.Width, 1), max(1, utf8.RuneCountInString(line)-col))
	number := fmt.Sprint(place.Line)
	return fmt.Sprintf("  %s | %s\n  %s | %s%s\n", number, line,
		strings.Repeat(" ", len(number)), strings.Repeat(" ", col), strings.Repeat("^", carets))
}

// window cuts a line to the part around the character at col, and gives where
// that character stands in the part.
func window(line []rune, col int) (string, int) {
	from, to := 0, len(line)
	if len(line) > widest {
		from = min(max(0, col-widest/3), len(line)-widest)
		to = from + widest
	}
	text := strings.TrimRight(string(line[from:to]), " ")
	if from > 0 {
		text = "…" + string(line[from+1:to])
	}
	return text, col - from
}
