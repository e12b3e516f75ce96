package wif

import (
	"bytes"
	"sort"
	"strings"
	"unicode/utf8"

	"sley/internal/trade/problem"
)

// source is the text of a file as characters, ready to tell lines and columns.
type source struct {
	file  string
	text  string
	lines []int  // where each line begins
	end   string // how the first line ends
	latin bool
}

// newSource makes characters of the bytes of a file: UTF-8 where they are that,
// else one byte a character. A byte order mark is no part of the text.
func newSource(file string, raw []byte) *source {
	raw = bytes.TrimPrefix(raw, []byte("\ufeff"))
	s := &source{file: file, end: "\n", latin: !utf8.Valid(raw)}
	if s.latin {
		s.text = fromLatin(raw)
	} else {
		s.text = string(raw)
	}
	s.cut()
	return s
}

// cut finds where lines begin: after CR, LF, or both.
func (s *source) cut() {
	s.lines = make([]int, 1, 1+strings.Count(s.text, "\n"))
	if at := strings.IndexAny(s.text, "\r\n"); at >= 0 {
		s.end = s.text[at : at+1]
		if strings.HasPrefix(s.text[at:], "\r\n") {
			s.end = "\r\n"
		}
	}
	for i := 0; i < len(s.text); i++ {
		if c := s.text[i]; c == '\n' || c == '\r' && !strings.HasPrefix(s.text[i+1:], "\n") {
			s.lines = append(s.lines, i+1)
		}
	}
}

// line gives the range of a line without its end.
func (s *source) line(n int) span {
	from, to := s.lines[n], len(s.text)
	if n+1 < len(s.lines) {
		to = s.lines[n+1] - 1
	}
	if to > from && to < len(s.text) && s.text[to] == '\n' && s.text[to-1] == '\r' {
		to--
	}
	return span{from, to}
}

// lineOf gives the number of the line that a byte stands in, from 0.
func (s *source) lineOf(at int) int { return sort.SearchInts(s.lines, at+1) - 1 }

// place gives where a range stands. An empty range covers one character.
func (s *source) place(at span) problem.Place {
	n := s.lineOf(at.from)
	whole := s.line(n)
	from := min(at.from, whole.to)
	to := max(from, min(at.to, whole.to))
	return problem.Place{
		File:    s.file,
		Line:    n + 1,
		Col:     utf8.RuneCountInString(s.text[whole.from:from]) + 1,
		Width:   max(1, utf8.RuneCountInString(s.text[from:to])),
		Excerpt: s.text[whole.from:whole.to],
	}
}

// read gives the characters of a range.
func (s *source) read(at span) string { return s.text[at.from:at.to] }

// spaces are what stands round names, keys and values; the last is the mark that
// ended files long ago.
const spaces = " \t\v\f\x1a"

// trim takes the space from both ends of a range.
func (s *source) trim(at span) span {
	for at.from < at.to && isSpace(s.text[at.from]) {
		at.from++
	}
	for at.from < at.to && isSpace(s.text[at.to-1]) {
		at.to--
	}
	return at
}

// isSpace reports whether a byte is one of the spaces.
func isSpace(c byte) bool { return c == ' ' || c == '\t' || c == '\v' || c == '\f' || c == '\x1a' }
