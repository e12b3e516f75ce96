package review

import (
	"slices"

	"sley/internal/engine/strokes"
	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/problem"
)

// shafts tells shafts that weave the same, and shafts that move and have no end.
func (r *review) shafts() {
	for _, alike := range spread(r.alikeShafts()) {
		same := draft.Of(alike...)
		r.tell(Finding{
			Topic: SameShafts, Severity: Note, Args: problem.Args{"shafts": same.String()},
			Place:    Place{Part: strokes.Threading, Numbers: alike},
			Remedies: []Remedy{{Topic: Merge, Acts: r.rethread(same, alike[0])}},
		})
	}
	if empty := r.emptyShafts(); empty != 0 {
		r.tell(Finding{
			Topic: EmptyShafts, Severity: Note, Args: problem.Args{"shafts": empty.String()},
			Place:    Place{Part: r.tied(), Numbers: empty.List()},
			Remedies: []Remedy{{Topic: DropUnused, Acts: []strokes.Act{r.untie(empty)}}},
		})
	}
}

// alikeShafts groups the shafts that have ends by what they do at each pick.
func (r *review) alikeShafts() [][]int {
	distinct := slices.Clone(r.lifts)
	slices.Sort(distinct)
	distinct = slices.Compact(distinct)
	at := map[string]int{}
	var out [][]int
	for _, shaft := range r.used.List() {
		column := make([]byte, len(distinct))
		for i, up := range distinct {
			column[i] = byte(up >> (shaft - 1) & 1)
		}
		k, ok := at[string(column)]
		if !ok {
			k, out = len(out), append(out, nil)
			at[string(column)] = k
		}
		out[k] = append(out[k], shaft)
	}
	return out
}

// spread gives the groups of more than one. Where all are as large, heddles are spread
// over the shafts on purpose, or feet over the treadles, and there are none.
func spread(groups [][]int) [][]int {
	if !slices.ContainsFunc(groups, func(g []int) bool { return len(g) != len(groups[0]) }) {
		return nil
	}
	return slices.DeleteFunc(groups, func(g []int) bool { return len(g) < 2 })
}

// rethread puts the ends of shafts on one of them.
func (r *review) rethread(same draft.Set, on int) []strokes.Act {
	list := slices.Clone(r.Threading)
	for end, shaft := range list {
		if same.Has(shaft) {
			list[end] = on
		}
	}
	return []strokes.Act{{Do: strokes.Put, Part: strokes.Threading, Remove: len(list), Put: strokes.Numbers(list...)}}
}

// tied is the part that says which shafts move.
func (r *review) tied() strokes.Part {
	if r.Treadled() {
		return strokes.Ties
	}
	return strokes.Lifts
}

// emptyShafts are those without ends that rise for nothing. What keeps a shaft out of the
// shed on other looms is not for nothing.
func (r *review) emptyShafts() draft.Set {
	var moved draft.Set
	switch {
	case !r.Treadled():
		for _, up := range r.lifts {
			moved |= up
		}
	case r.Shed == loom.Rising || r.Shed == loom.UnsaidShed:
		for _, tie := range r.Ties {
			moved |= tie.Tied
		}
	}
	return moved & draft.UpTo(r.Shafts) &^ r.used
}

func (r *review) untie(empty draft.Set) strokes.Act {
	put := strokes.Values(r.Draft, r.tied())
	for i, v := range put {
		put[i] = v &^ strokes.Value(empty)
	}
	return strokes.Act{Do: strokes.Put, Part: r.tied(), Remove: len(put), Put: put}
}
