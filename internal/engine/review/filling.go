package review

import (
	"slices"

	"sley/internal/engine/strokes"
	"sley/internal/trade/problem"
	"sley/internal/trade/weave"
)

// row is the threading of a warp without its floating selvedges: the ends of the draft,
// and how many the warp has.
type row struct {
	list  []int
	fill  Span // what is repeated; none: all of it, or where whole what comes again in it
	ends  int
	whole bool // the draft shows the whole warp
}

func (r *review) row() row {
	w := row{list: r.Threading[r.first : r.last+1], ends: r.Context.Ends, whole: !r.loops()}
	if w.whole {
		w.ends = len(w.list)
	}
	if r.fills() && r.Fill.From >= r.first && r.Fill.To <= r.last+1 {
		w.fill, w.whole = Span{r.Fill.From - r.first, r.Fill.To - r.first}, false
	}
	return w
}

// filling tells a threading whose repeats do not come to the ends of the warp. A straight
// draw may stop anywhere, and a warp that is alike from both edges is balanced.
func (r *review) filling() {
	w := r.row()
	from, repeat := w.repeat()
	if w.ends < repeat || w.ends > strokes.MostThreads || repeat < 2 {
		return
	}
	over := (w.ends - w.fixed()) % repeat
	if over <= 0 || straight(w.list[from:from+repeat]) || w.balanced(w.ends) {
		return
	}
	r.tell(Finding{
		Topic: PartRepeat, Severity: Note, Place: Place{Part: strokes.Threading, Ends: Span{r.last, r.last + 1}},
		Args:     problem.Args{"ends": w.ends, "repeat": repeat, "over": over},
		Remedies: r.fillRemedies(w, repeat, over),
	})
}

// repeat is where the ends begin that come again, and how many they are; 0 where none do.
func (w row) repeat() (from, ends int) {
	switch {
	case w.fill != Span{}:
		return w.fill.From, w.fill.To - w.fill.From
	case !w.whole:
		return 0, weave.Period(w.list, true)
	}
	if n := weave.Period(w.list, false); 2*n <= len(w.list) {
		return 0, n
	}
	return 0, 0
}

// fixed is how many ends stand beside those that fill.
func (w row) fixed() int {
	if w.fill == (Span{}) {
		return 0
	}
	return len(w.list) - (w.fill.To - w.fill.From)
}

// on is the threading on that many ends: the repeat goes on, and what stands behind it
// stays at the right edge.
func (w row) on(ends int) []int {
	from, repeat := w.repeat()
	behind := []int(nil)
	if w.fill != (Span{}) {
		behind = w.list[w.fill.To:]
	}
	out := make([]int, 0, ends)
	for i := range ends - len(behind) {
		if i >= from {
			i = from + (i-from)%repeat
		}
		out = append(out, w.list[i])
	}
	return append(out, behind...)
}

// balanced reports whether that many ends are alike from both edges.
func (w row) balanced(ends int) bool {
	list := w.on(ends)
	for i := range len(list) / 2 {
		if list[i] != list[len(list)-1-i] {
			return false
		}
	}
	return true
}

// straight reports whether a repeat takes its shafts one after another, all once.
func straight(list []int) bool {
	n, low := len(list), slices.Min(list)
	if slices.Max(list)-low+1 != n {
		return false
	}
	for _, by := range []int{1, n - 1} {
		even := true
		for i := range list {
			even = even && list[(i+1)%n]-low == (list[i]-low+by)%n
		}
		if even {
			return true
		}
	}
	return false
}

// fillRemedies leave the odd ends out, add those that the repeat lacks, or so many that
// both edges are alike.
func (r *review) fillRemedies(w row, repeat, over int) []Remedy {
	out := []Remedy{r.ends(w, AddEnds, repeat-over)}
	if w.ends > over {
		out = append([]Remedy{r.ends(w, LeaveOutEnds, -over)}, out...)
	}
	for change := 1; change < repeat; change++ {
		if change != repeat-over && w.balanced(w.ends+change) {
			return append(out, r.ends(w, Balance, change))
		}
	}
	return out
}

// ends gives the warp so many ends more, or fewer; where the draft shows all of them, at
// its right edge.
func (r *review) ends(w row, topic Topic, change int) Remedy {
	m, at := Remedy{Topic: topic, Ends: change}, r.last+1
	switch {
	case !w.whole:
	case change < 0:
		m.Acts = []strokes.Act{{Do: strokes.Delete, Part: strokes.Threading, From: at + change, To: at}}
	default:
		m.Acts = []strokes.Act{{Do: strokes.Put, Part: strokes.Threading, At: at, Put: strokes.Numbers(w.on(w.ends + change)[w.ends:]...)}}
	}
	return m
}
