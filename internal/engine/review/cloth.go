package review

import (
	"sley/internal/engine/structure"
	"sley/internal/trade/problem"
)

// cloth tells what is held by nothing, and cloth that comes in layers.
func (r *review) cloth() {
	ends, picks := r.weave.Loose(structure.Warp), r.weave.Loose(structure.Weft)
	if len(ends) > 0 {
		r.tell(Finding{
			Topic: LooseEnds, Severity: Wrong, Place: Place{Ends: r.shifted(firstRun(ends))},
			Args: problem.Args{"count": len(ends), "of": r.weave.Ends},
		})
	}
	if len(picks) > 0 {
		r.tell(Finding{
			Topic: LoosePicks, Severity: Wrong, Place: Place{Picks: firstRun(picks)},
			Args: problem.Args{"count": len(picks), "of": r.weave.Picks},
		})
	}
	r.layers()
}

// layers tells cloth in layers that were not asked for, or in more or fewer than were.
func (r *review) layers() {
	layers, severity := r.weave.Woven(), Care
	if r.Context.Layers == 0 {
		severity = Note // it may be meant so
	}
	if layers > 0 && layers != max(r.Context.Layers, 1) {
		r.tell(Finding{Topic: Layers, Severity: severity, Args: problem.Args{"layers": layers, "wanted": max(r.Context.Layers, 1)}})
	}
}

// firstRun is the first of a list and its neighbours that follow.
func firstRun(list []int) Span {
	s := Span{list[0], list[0] + 1}
	for _, n := range list[1:] {
		if n != s.To {
			break
		}
		s.To++
	}
	return s
}
