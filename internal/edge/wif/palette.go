package wif

import (
	"strconv"

	"sley/internal/trade/draft"
	"sley/internal/trade/problem"
)

// scale is the range of the numbers of a colour.
type scale struct{ least, most int }

// eight is the range of a byte, which colours here have.
var eight = scale{0, 255}

// from gives a number of the range as a byte, the nearest.
func (s scale) from(n int) uint8 {
	span := int64(s.most - s.least)
	return uint8((2*255*int64(n-s.least) + span) / (2 * span))
}

// to gives a byte as a number of the range, the nearest.
func (s scale) to(c uint8) int {
	return s.least + int((2*int64(c)*int64(s.most-s.least)+255)/510)
}

// palette reads the colour table, and the colours that most ends and most picks
// have, which may bring a colour of their own.
func (r *reader) palette() {
	s := r.doc.find(paletteName)
	rows := r.rowsOf[tableName]
	if form := s.get("Form"); form != nil && form.value != "" && fold(form.value) != "rgb" {
		r.warn("wif.palette-form", r.pathIn(s, "Form"), form.valued, nil)
		return
	}
	in := r.scale(s, len(rows) > 0)
	r.scaled = in
	r.draft.Palette = make([]draft.Colour, last(rows))
	for _, w := range rows {
		r.draft.Palette[w.n-1] = r.colour(w, in)
	}
	if len(rows) > 0 && rows[0].n > 1 {
		rows = append([]row{{0, &line{}}}, rows...)
	}
	r.gaps(tableName, rows)
	r.entries(s)
}

// scale reads the range of the palette's numbers.
func (r *reader) scale(s *section, needed bool) scale {
	l := s.get("Range")
	if l == nil || l.value == "" {
		if needed {
			at := r.doc.find(tableName).at
			r.warn("wif.range-unsaid", pathOf(paletteName), at, nil)
			r.repair(paletteName, "Form", "RGB")
			r.repair(paletteName, "Range", "0,255")
		}
		return eight
	}
	n, ok := r.numbers(l, 2)
	if !ok || n[0] >= n[1] || n[1] == beyondAll {
		r.warn("wif.palette-range", r.pathIn(s, "Range"), l.valued, nil)
		r.repair(paletteName, "Range", "0,255")
		return eight
	}
	return scale{n[0], n[1]}
}

// numbers reads a value that is so many whole numbers.
func (r *reader) numbers(l *line, want int) ([]int, bool) {
	var out []int
	for t, rest, more := r.src.token(l.valued); more; t, rest, more = r.src.token(rest) {
		n, ok := whole(t.text)
		if !ok || len(out) == want {
			return nil, false
		}
		out = append(out, n)
	}
	return out, len(out) == want
}

// colour reads a row of the table; what is no colour is black.
func (r *reader) colour(w row, in scale) draft.Colour {
	path := pathAt(tableName, w.n)
	n, ok := r.numbers(w.line, 3)
	if !ok {
		r.warn("wif.colour-value", path, w.shown(), nil)
		black := strconv.Itoa(in.least)
		w.instead(black + "," + black + "," + black)
		return draft.Colour{}
	}
	kept := [3]int{}
	for i := range n {
		kept[i] = min(max(n[i], in.least), in.most)
	}
	text := strconv.Itoa(kept[0]) + "," + strconv.Itoa(kept[1]) + "," + strconv.Itoa(kept[2])
	if kept != [3]int(n) {
		r.warn("wif.colour-range", path, w.valued, problem.Args{"least": in.least, "most": in.most})
		w.instead(text)
	} else {
		w.value = text
	}
	return draft.Colour{R: in.from(kept[0]), G: in.from(kept[1]), B: in.from(kept[2])}
}

// entries holds the count of the palette against the table.
func (r *reader) entries(s *section) {
	l, n := s.get("Entries"), len(r.draft.Palette)
	if l == nil || l.value == "" {
		return
	}
	said, ok := whole(l.value)
	switch {
	case !ok:
		r.warn("wif.value", r.pathIn(s, l.key), l.valued, problem.Args{"wanted": "a whole number"})
	case said != n:
		r.warn("wif.palette-entries", r.pathIn(s, l.key), l.valued, problem.Args{"listed": n})
	default:
		return
	}
	r.repair(paletteName, l.key, strconv.Itoa(n))
}
