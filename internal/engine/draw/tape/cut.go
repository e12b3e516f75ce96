package tape

import (
	"cmp"
	"math"
	"slices"
)

const (
	// Overlap is how far a part reaches under the one before it, in mm: the tab at
	// its foot. The first part has it too, to pin the tape by.
	Overlap = 10.0
	// tail is the paper beyond the end of a strip, for the last pin, in mm.
	tail = 6.0
	// shortest is the least that a page must hold of a strip, in mm.
	shortest = 50.0
	// whole is what parts are cut to, in mm, so that every join is at a number.
	whole = 10.0
)

// part is a piece of a strip that is on one page.
type part struct {
	strip    int
	title    string
	from, to float64 // mm on the loom
	marks    []marked
	first    bool
	last     bool
}

// marked is a mark that knows its index.
type marked struct {
	Mark
	index int
}

// high is how much paper the part takes upwards, in mm.
func (p part) high() float64 {
	if p.last {
		return Overlap + p.to - p.from + tail
	}
	return Overlap + p.to - p.from
}

// cut makes parts that are about equal, none longer than longest, a whole number
// of centimetres. A mark at a join is on the part that begins there.
func cut(index int, s Strip, longest float64) []part {
	if !s.drawable() {
		return nil
	}
	marks := s.sorted()
	var parts []part
	for from := 0.0; from < s.Length; {
		p := part{strip: index, title: s.Title, from: from, to: from + share(s.Length-from, longest), first: from == 0}
		if p.last = p.to >= s.Length-hair; p.last {
			p.to = s.Length
		}
		for len(marks) > 0 && (p.last || marks[0].At < p.to) {
			p.marks, marks = append(p.marks, marks[0]), marks[1:]
		}
		parts = append(parts, p)
		from = p.to
	}
	return parts
}

// share is how long the next part is when so much of the strip is left.
func share(left, longest float64) float64 {
	count := math.Ceil(left / longest)
	if count == 1 {
		return left
	}
	return math.Ceil(left/count/whole) * whole
}

// sorted is the marks on the strip, upwards.
func (s Strip) sorted() []marked {
	var on []marked
	for i, m := range s.Marks {
		if m.At >= 0 && m.At <= s.Length {
			on = append(on, marked{m, i})
		}
	}
	slices.SortStableFunc(on, func(a, b marked) int { return cmp.Compare(a.At, b.At) })
	return on
}

// letters names the nth join, from 0: A to Z, AA to ZZ and so on.
func letters(n int) string {
	text := ""
	for n++; n > 0; n = (n - 1) / 26 {
		text = string(rune('A'+(n-1)%26)) + text
	}
	return text
}
