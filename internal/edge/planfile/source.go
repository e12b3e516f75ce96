package planfile

import (
	"bytes"
	"sort"
	"unicode/utf8"

	"sley/internal/trade/problem"
)

// span is a range of bytes of the file.
type span struct{ from, to int }

// step is how many bytes lie between two marks of a source.
const step = 64

// source is the text of a file, ready to tell lines and columns. A column
// counts characters, not bytes, and is found in constant time, so that a file
// of one enormous line with a fault at every word is no trap.
type source struct {
	file  string
	text  []byte
	whole string // the same, of which every excerpt is a part, so that none is a copy
	lines []int  // where each line begins
	runes []int  // characters before every step-th byte
}

func newSource(file string, text []byte) *source {
	s := &source{file: file, text: text, whole: string(text), lines: []int{0}}
	count := 0
	for i, b := range text {
		if i%step == 0 {
			s.runes = append(s.runes, count)
		}
		if utf8.RuneStart(b) {
			count++
		}
		if b == '\n' {
			s.lines = append(s.lines, i+1)
		}
	}
	return s
}

// runesBefore gives how many characters begin before byte at.
func (s *source) runesBefore(at int) int {
	if len(s.runes) == 0 {
		return 0
	}
	mark := min(at/step, len(s.runes)-1)
	count := s.runes[mark]
	for _, b := range s.text[mark*step : at] {
		if utf8.RuneStart(b) {
			count++
		}
	}
	return count
}

// line gives the index of the line that byte at stands in.
func (s *source) line(at int) int {
	return sort.SearchInts(s.lines, at+1) - 1
}

// lineSpan gives the range of a line without its line end.
func (s *source) lineSpan(line int) span {
	from, to := s.lines[line], len(s.text)
	if line+1 < len(s.lines) {
		to = s.lines[line+1] - 1
	}
	return span{from, max(from, from+len(bytes.TrimSuffix(s.text[from:to], []byte("\r"))))}
}

// place gives where a range stands. What reaches over the end of its line is
// cut there; an empty range covers one character. Without a source there is no
// place.
func (s *source) place(at span) problem.Place {
	if s == nil {
		return problem.Place{}
	}
	line := s.line(at.from)
	whole := s.lineSpan(line)
	from := min(at.from, whole.to)
	to := max(from, min(at.to, whole.to))
	return problem.Place{
		File:    s.file,
		Line:    line + 1,
		Col:     s.runesBefore(from) - s.runesBefore(whole.from) + 1,
		Width:   max(1, s.runesBefore(to)-s.runesBefore(from)),
		Excerpt: s.whole[whole.from:whole.to],
	}
}
