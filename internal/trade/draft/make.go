package draft

import "sley/internal/trade/weave"

// FromWeave gives the draft with the fewest shafts and lifts that weaves w: ends
// that are alike share a shaft, picks that are alike a lift, both numbered as they
// first come (ends on one shaft are equal columns, so no draft has fewer). It
// reports false when that takes more than MostShafts; the draft is then nil.
func FromWeave(w *weave.Weave) (*Draft, bool) {
	classes, n := w.EndClasses()
	if n > MostShafts {
		return nil, false
	}
	d := &Draft{Shafts: n, Threading: make([]int, w.Ends()), Lifts: make([]Set, w.Picks())}
	first := make([]int, n)
	for end := len(classes) - 1; end >= 0; end-- {
		d.Threading[end] = classes[end] + 1
		first[classes[end]] = end
	}
	for pick := range d.Lifts {
		for c, end := range first {
			if w.WarpUp(pick, end) {
				d.Lifts[pick] = d.Lifts[pick].With(c + 1)
			}
		}
	}
	return d, true
}

// Fewest gives the draft that weaves the same with the fewest shafts and, with one
// foot, the fewest treadles; colours and sizes stay. Ends in no heddle stay in none.
func (d *Draft) Fewest() *Draft {
	lifts := d.LiftPlan()
	c := d.WithoutTreadles()
	number := map[string]int{}
	for end, shaft := range d.Threading {
		if shaft == 0 {
			continue
		}
		key := columnKey(lifts, shaft)
		if number[key] == 0 {
			number[key] = len(number) + 1
		}
		c.Threading[end] = number[key]
	}
	c.Shafts = max(len(number), 1)
	clear(c.Lifts)
	done := Set(0)
	for end, shaft := range d.Threading {
		if shaft == 0 || done.Has(c.Threading[end]) {
			continue
		}
		done = done.With(c.Threading[end])
		for pick, up := range lifts {
			if up.Has(shaft) {
				c.Lifts[pick] = c.Lifts[pick].With(c.Threading[end])
			}
		}
	}
	if !d.Treadled() {
		return c
	}
	if t, ok := c.WithTreadles(d.Shed); ok {
		return t
	}
	return c
}

// columnKey is a shaft's part of every lift.
func columnKey(lifts []Set, shaft int) string {
	out := make([]byte, (len(lifts)+7)/8)
	for i, up := range lifts {
		if up.Has(shaft) {
			out[i/8] |= 1 << (i % 8)
		}
	}
	return string(out)
}
