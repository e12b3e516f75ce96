package weave

import "slices"

// Repeat gives the smallest weave that, tiled, is w: of a repeat the smallest whose
// size divides that of w, of a bounded weave the smallest that fills it, the last
// cut off. It is a repeat itself.
func (w *Weave) Repeat() *Weave {
	out := w.Crop(0, 0, w.PickPeriod(), w.EndPeriod())
	out.Bounded = false
	return out
}

// PickPeriod gives the picks after which the picks come again; all of them where
// they do not.
func (w *Weave) PickPeriod() int {
	return Period(w.rowClasses(), !w.Bounded)
}

// EndPeriod gives the ends after which the ends come again.
func (w *Weave) EndPeriod() int {
	// Only the rows that differ say something of the ends.
	return w.distinctRows().Transpose().PickPeriod()
}

// distinctRows gives the rows that differ, each once.
func (w *Weave) distinctRows() *Weave {
	classes := w.rowClasses()
	var first []int
	for i, c := range classes {
		if c == len(first) {
			first = append(first, i)
		}
	}
	out := w.like(len(first), w.ends)
	for i, at := range first {
		copy(out.Row(i), w.Row(at))
	}
	return out
}

// rowClasses numbers the rows so that equal rows share a number, from 0 in the
// order of their first appearance.
func (w *Weave) rowClasses() []int {
	classes := make([]int, w.picks)
	seen := map[uint64][]int{} // first rows by their hash
	n := 0
	for i := range w.picks {
		row := w.Row(i)
		if i > 0 && slices.Equal(row, w.Row(i-1)) {
			classes[i] = classes[i-1]
			continue
		}
		key := hashRow(row)
		at := slices.IndexFunc(seen[key], func(k int) bool { return slices.Equal(w.Row(k), row) })
		if at >= 0 {
			classes[i] = classes[seen[key][at]]
			continue
		}
		classes[i], n = n, n+1
		seen[key] = append(seen[key], i)
	}
	return classes
}

// PickClasses numbers the picks so that equal picks share a number, counted from 0
// as they first appear, and gives how many there are.
func (w *Weave) PickClasses() (classes []int, n int) {
	classes = w.rowClasses()
	if len(classes) > 0 {
		n = slices.Max(classes) + 1
	}
	return classes, n
}

// EndClasses numbers the ends so that equal ends share a number.
func (w *Weave) EndClasses() (classes []int, n int) {
	return w.distinctRows().Transpose().PickClasses()
}

// Cycle gives the length of what a list of threads repeats: its period where it comes
// twice or more, or once and one thread to balance it; else the whole list, whose end
// only happens to be like its beginning.
func Cycle(list []int) int {
	p := Period(list, false)
	if n := len(list); n < 2*p && n != p+1 {
		return n
	}
	return p
}

// Period is the least p with list[i] = list[i-p] for all i from p on, by the
// borders of the list (Knuth, Morris, Pratt 1977); divides asks that p divide its
// length, and is the length where none does.
func Period(list []int, divides bool) int {
	n := len(list)
	border := make([]int, n+1)
	for i, k := 1, 0; i < n; i++ {
		for k > 0 && list[i] != list[k] {
			k = border[k]
		}
		if list[i] == list[k] {
			k++
		}
		border[i+1] = k
	}
	if n == 0 {
		return 0
	}
	p := n - border[n]
	if divides && n%p != 0 {
		return n
	}
	return p
}
