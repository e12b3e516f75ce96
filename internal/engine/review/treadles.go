package review

import (
	"slices"

	"sley/internal/engine/strokes"
	"sley/internal/trade/draft"
	"sley/internal/trade/problem"
)

// treadles tells treadles that are tied alike, and those that are tied and never pressed.
func (r *review) treadles() {
	if !r.Treadled() {
		return
	}
	for _, alike := range spread(r.alikeTreadles()) {
		r.tell(Finding{
			Topic: SameTreadles, Severity: Note, Args: problem.Args{"treadles": draft.Of(alike...).String()},
			Place:    Place{Part: strokes.Ties, Numbers: alike},
			Remedies: []Remedy{{Topic: Merge, Acts: r.pressOne(alike)}},
		})
	}
	if idle := r.idleTreadles(); len(idle) > 0 {
		r.tell(Finding{
			Topic: IdleTreadles, Severity: Note, Args: problem.Args{"treadles": draft.Of(idle...).String()},
			Place:    Place{Part: strokes.Ties, Numbers: idle},
			Remedies: []Remedy{{Topic: DropUnused, Acts: untreadle(idle)}},
		})
	}
}

// alikeTreadles groups the treadles that are pressed by what they do to shafts with ends.
func (r *review) alikeTreadles() [][]int {
	at := map[draft.Tie]int{}
	var out [][]int
	for _, treadle := range r.pressed.List() {
		if treadle > len(r.Ties) {
			continue // untied: the picks say so themselves
		}
		tie := r.Ties[treadle-1]
		tie = draft.Tie{Tied: tie.Tied & r.used, Lowered: tie.Lowered & r.used}
		k, ok := at[tie]
		if !ok {
			k, out = len(out), append(out, nil)
			at[tie] = k
		}
		out[k] = append(out[k], treadle)
	}
	return out
}

// pressOne presses the first of treadles wherever any of them is, and leaves out the
// others.
func (r *review) pressOne(alike []int) []strokes.Act {
	same := draft.Of(alike...)
	sets := slices.Clone(r.Treadling)
	for i, set := range sets {
		if set&same != 0 {
			sets[i] = (set &^ same).With(alike[0])
		}
	}
	put := strokes.Act{Do: strokes.Put, Part: strokes.Treadling, Remove: len(sets), Put: strokes.Sets(sets...)}
	return append([]strokes.Act{put}, untreadle(alike[1:])...)
}

// untreadle leaves out treadles, the last first.
func untreadle(list []int) []strokes.Act {
	var out []strokes.Act
	for _, treadle := range slices.Backward(list) {
		out = append(out, strokes.Act{Do: strokes.Delete, Part: strokes.Ties, From: treadle - 1, To: treadle})
	}
	return out
}

// idleTreadles are those that something is tied to and no pick presses. Tabby stands
// ready beside many a weave.
func (r *review) idleTreadles() []int {
	var out []int
	for k, tie := range r.Ties {
		idle := tie.Tied|tie.Lowered != 0 && !r.pressed.Has(k+1)
		if idle && k < draft.MostTreadles && !r.tabby(r.Open(draft.Of(k+1)).Up) {
			out = append(out, k+1)
		}
	}
	return out
}

// tabby reports whether a lift raises every other end, or nearly: where blocks meet, two
// neighbours may be alike.
func (r *review) tabby(up draft.Set) bool {
	same, all := 0, 0
	for i := r.first + 1; i <= r.last; i++ {
		if all++; up.Has(r.Threading[i]) == up.Has(r.Threading[i-1]) {
			same++
		}
	}
	return 4*same <= all
}
