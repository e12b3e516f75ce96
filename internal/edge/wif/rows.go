package wif

import (
	"slices"
	"strconv"

	"sley/internal/trade/problem"
)

// row is a line of a numbered section.
type row struct {
	n int // its key, from 1
	*line
}

// rows gives the numbered lines of a section from the lowest number on, each number
// once. A number far beyond how many there are is left out: whoever counts on it
// would get a list that the file does not hold.
func (r *reader) rows(s *section) []row {
	all := r.numbered(s)
	if !slices.IsSortedFunc(all, byNumber) {
		slices.SortStableFunc(all, byNumber)
	}
	out := all[:0]
	for _, w := range all {
		if last := len(out) - 1; last >= 0 && out[last].n == w.n {
			r.twice(s, out[last].line, w.line)
			out[last] = w
			continue
		}
		if w.n > aheadTimes*(len(out)+1)+aheadBy {
			r.warn("wif.far", pathOf(s.name), w.at, problem.Args{"section": s.name, "lines": len(all)})
			w.mute()
			continue
		}
		out = append(out, w)
	}
	return out
}

func byNumber(a, b row) int { return a.n - b.n }

// numbered gives the lines whose key is a number, in the order of the text.
func (r *reader) numbered(s *section) []row {
	out := make([]row, 0, len(s.lines))
	for i := range s.lines {
		l := &s.lines[i]
		if l.key == "" {
			continue
		}
		n, ok := whole(l.key)
		if !ok || n == 0 {
			r.unknownKey(s, l)
			continue
		}
		if l.key[0] == '0' {
			l.key = strconv.Itoa(n)
		}
		out = append(out, row{n, l})
	}
	return out
}

// last gives the highest number of the rows, 0 when there are none.
func last(rows []row) int {
	if len(rows) == 0 {
		return 0
	}
	return rows[len(rows)-1].n
}

// gaps tells the numbers that are missing between those of a section.
func (r *reader) gaps(name string, rows []row) {
	for i := 1; i < len(rows); i++ {
		if from, to := rows[i-1].n+1, rows[i].n-1; from <= to {
			args := problem.Args{"section": name, "range": between(from, to)}
			r.warn("wif.gap", pathOf(name), rows[i].at, args)
		}
	}
}

// between writes a range of numbers.
func between(from, to int) string {
	if from == to {
		return strconv.Itoa(from)
	}
	return strconv.Itoa(from) + "–" + strconv.Itoa(to)
}
