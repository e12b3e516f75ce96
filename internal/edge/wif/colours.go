package wif

import (
	"sley/internal/trade/draft"
	"sley/internal/trade/problem"
)

// defaults reads the colours that most ends and most picks have. The number of a
// colour may have its red, green and blue beside it; where the table ends before
// that number they are the next colour.
func (r *reader) defaults() {
	warp, weft := r.defaultOf(warpName), r.defaultOf(weftName)
	if warp.number > weft.number {
		r.draft.Weft.Colour = r.settle(weftName, weft)
		r.draft.Warp.Colour = r.settle(warpName, warp)
		return
	}
	r.draft.Warp.Colour = r.settle(warpName, warp)
	r.draft.Weft.Colour = r.settle(weftName, weft)
}

// chosen is what stands under Color.
type chosen struct {
	*line
	number int
	beside []int // red, green and blue, or nothing
}

func (r *reader) defaultOf(name string) chosen {
	s := r.doc.find(name)
	l := s.get("Color")
	if l == nil || l.value == "" {
		return chosen{}
	}
	if n, ok := r.numbers(l, 1); ok {
		return chosen{l, n[0], nil}
	}
	n, ok := r.numbers(l, 4)
	if !ok {
		r.warn("wif.value", r.pathIn(s, l.key), l.valued, problem.Args{"wanted": "the number of a colour, or that and r,g,b"})
		l.mute()
		return chosen{}
	}
	return chosen{l, n[0], n[1:]}
}

// settle gives the index of a chosen colour.
func (r *reader) settle(name string, c chosen) int {
	if c.line == nil {
		return 0
	}
	path, table := r.pathIn(r.doc.find(name), "Color"), len(r.draft.Palette)
	if c.beside != nil && c.number == table+1 && r.within(c.beside) {
		r.draft.Palette = append(r.draft.Palette, r.beside(c.beside))
		return table
	}
	switch {
	case table == 0:
		r.noColours(path, c.valued)
		return 0
	case c.number < 1 || c.number > table:
		r.warn("wif.colour-missing", path, c.valued, problem.Args{"colours": table})
		c.mute()
		return 0
	case c.beside != nil && (!r.within(c.beside) || r.beside(c.beside) != r.draft.Palette[c.number-1]):
		r.tell("wif.colour-differs", path, c.valued, problem.Args{"number": c.number})
	}
	return c.number - 1
}

// within reports whether the numbers lie in the range of a palette that can be read.
func (r *reader) within(n []int) bool {
	return r.scaled.least < r.scaled.most && min(n[0], n[1], n[2]) >= r.scaled.least && max(n[0], n[1], n[2]) <= r.scaled.most
}

func (r *reader) beside(n []int) draft.Colour {
	return draft.Colour{R: r.scaled.from(n[0]), G: r.scaled.from(n[1]), B: r.scaled.from(n[2])}
}

// noColours tells once that there is no table to look colours up in.
func (r *reader) noColours(path string, at span) {
	if r.told["wif.no-colours"] == 0 {
		r.warn("wif.no-colours", path, at, nil)
	}
}

// threads reads the colours and sizes of n ends or picks.
func (r *reader) threads(name string, t *draft.Threads, n int) {
	if n == 0 {
		return
	}
	t.Colours = r.colours(name, t.Colour, n)
	u := r.unitOf(name)
	if u.name == "" {
		return
	}
	s := r.doc.find(name)
	t.Thick, t.Apart = r.size(s, "Thickness", u), r.size(s, "Spacing", u)
	t.Thicks, t.Aparts = r.sizes(name+thicknessOf, u, n), r.sizes(name+spacingOf, u, n)
}

// colours reads the colour of each thread; those that are not listed have the one
// that most have.
func (r *reader) colours(name string, most, n int) []int {
	list := name + coloursOf
	rows := r.rowsOf[list]
	if len(rows) > 0 && len(r.draft.Palette) == 0 {
		r.noColours(pathOf(list), r.doc.find(list).at)
		return nil
	}
	var out []int
	for _, w := range rows {
		if r.beyond(name, list, w, n) {
			continue
		}
		if at, ok := r.thread(list, w); ok {
			for len(out) < w.n-1 {
				out = append(out, most)
			}
			out = append(out, at)
		}
	}
	return out
}

// beyond tells a thread that there is not, and makes a remark of its line.
func (r *reader) beyond(name, list string, w row, n int) bool {
	if w.n <= n {
		return false
	}
	r.warn("wif.thread-beyond", pathAt(list, w.n), w.at, problem.Args{"threads": n, "what": threadsOf[name]})
	w.mute()
	return true
}

// thread reads the colour of one thread.
func (r *reader) thread(list string, w row) (int, bool) {
	if w.value == "" {
		return 0, false
	}
	n, ok := whole(w.value)
	if !ok {
		if four, is := r.numbers(w.line, 4); is {
			n, ok = four[0], true
		}
	}
	table := len(r.draft.Palette)
	if ok && n >= 1 && n <= table {
		return n - 1, true
	}
	path := pathAt(list, w.n)
	switch {
	case !ok:
		r.warn("wif.value", path, w.valued, problem.Args{"wanted": "the number of a colour"})
	default:
		r.warn("wif.colour-missing", path, w.valued, problem.Args{"colours": table})
	}
	w.mute()
	return 0, false
}
