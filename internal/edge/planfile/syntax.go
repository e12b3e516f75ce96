package planfile

import (
	"bytes"
	"regexp"
	"strings"
	"unicode/utf8"

	"sley/internal/trade/problem"
)

// largest is the size in bytes up to which a plan file is read. A plan of
// hundreds of stripes stays below a hundredth of it.
const largest = 1 << 20

// readable looks at the file as a whole, before it is taken apart.
func readable(src *source) *problem.Problem {
	switch {
	case len(src.text) > largest:
		return &problem.Problem{
			Code: "file.large", Place: problem.Place{File: src.file},
			Args: problem.Args{"size": len(src.text), "most": largest},
		}
	case !utf8.Valid(src.text):
		at := badByte(src.text)
		place := src.place(span{at, at + 1})
		place.Excerpt = strings.ToValidUTF8(place.Excerpt, "�")
		return &problem.Problem{Code: "file.not-utf8", Place: place}
	}
	return nil
}

// badByte gives where text stops being UTF-8.
func badByte(text []byte) int {
	at := 0
	for at < len(text) {
		r, size := utf8.DecodeRune(text[at:])
		if r == utf8.RuneError && size == 1 {
			return at
		}
		at += size
	}
	return at
}

var (
	// bare finds a value that ought to stand in quotes.
	bare = regexp.MustCompile(`^\s*(?:"[^"]*"|'[^']*'|[A-Za-z0-9_.-]+)\s*=\s*([^"'\[{\s“”„«].*?)\s*(?:#.*)?$`)
	// curly finds quotes that a word processor has bent.
	curly = regexp.MustCompile(`[“”„‟«»‘’]`)
	// open finds a text whose closing quote is missing.
	open = regexp.MustCompile(`=\s*"[^"]*$|=\s*'[^']*$`)
	// alone finds a line that is only a name.
	alone = regexp.MustCompile(`^\s*([A-Za-z0-9_.-]+)\s*(?:#.*)?$`)
)

// syntaxProblem says why the file is not TOML. The mistakes that people who
// never met TOML make are recognised by the line they stand on.
func syntaxProblem(src *source, at span, says string) problem.Problem {
	whole := src.lineSpan(src.line(at.from))
	line := src.text[whole.from:whole.to]
	p := problem.Problem{Code: "toml.syntax", Read: read(src, at), Args: problem.Args{"says": says}}
	if code, in := mistake(line); code != "" {
		at = span{whole.from + in.from, whole.from + in.to}
		p = problem.Problem{Code: code, Read: read(src, at), Args: problem.Args{"quoted": quotable(read(src, at))}}
	}
	p.Place = src.place(at)
	return p
}

// quotable gives a value as it can stand between quotes: 2" as 2 in.
func quotable(value string) string {
	return strings.TrimSpace(strings.NewReplacer(`"`, " in", "'", " ft", "  ", " ").Replace(value))
}

// mistake recognises a line and gives the range in it that is wrong.
func mistake(line []byte) (code string, in span) {
	if len(line) > 1000 {
		return "", span{}
	}
	if m := bare.FindSubmatchIndex(line); m != nil {
		return "toml.quotes", span{m[2], m[3]}
	}
	if m := alone.FindSubmatchIndex(line); m != nil {
		return "toml.no-value", span{m[2], m[3]}
	}
	if m := curly.FindIndex(line); m != nil && !bytes.ContainsAny(line, `"'`) {
		return "toml.curly-quotes", span{m[0], m[1]}
	}
	if m := open.FindIndex(line); m != nil {
		return "toml.open-quote", span{m[0] + bytes.IndexAny(line[m[0]:], `"'`), m[1]}
	}
	return "", span{}
}

// read gives the part of the file as it would be quoted, cut to one line.
func read(src *source, at span) string {
	text, _, _ := strings.Cut(string(src.text[at.from:max(at.from, at.to)]), "\n")
	return strings.TrimRight(text, "\r")
}
