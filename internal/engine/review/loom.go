package review

import (
	"sley/internal/engine/strokes"
	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/problem"
)

// loom holds the draft against what its loom has.
func (r *review) loom() {
	r.loomShafts()
	r.loomTreadles()
	r.loomHeddles()
	r.loomShed()
}

func (r *review) loomShafts() {
	has := r.Loom.Shafts
	if needs := r.used.Most(); has == 0 || needs <= has {
		return
	}
	f := Finding{
		Topic: LacksShafts, Severity: Wrong, Args: problem.Args{"has": has, "needs": r.used.Most()},
		Place: Place{Part: strokes.Threading, Numbers: (r.used &^ draft.UpTo(has)).List()},
	}
	switch {
	case r.used.Len() <= has:
		f.Remedies = []Remedy{{Topic: DropUnused, Changes: []string{"used"}}}
	case r.Fewest().Shafts <= has:
		f.Remedies = []Remedy{{Topic: FewerShafts, Changes: []string{"fewest"}}}
	}
	r.tell(f)
}

func (r *review) loomTreadles() {
	has := r.Loom.Treadles
	if has == 0 || r.Loom.Shed == loom.Table || r.pressed.Most() <= has {
		return
	}
	f := Finding{
		Topic: LacksTreadles, Severity: Wrong, Args: problem.Args{"has": has, "needs": r.pressed.Most()},
		Place: Place{Part: strokes.Treadling, Numbers: (r.pressed &^ draft.UpTo(has)).List()},
	}
	if r.pressed.Len() <= has {
		f.Remedies = append(f.Remedies, Remedy{Topic: DropUnused, Changes: []string{"used"}})
	}
	f.Remedies = append(f.Remedies, Remedy{Topic: LiftPlan, Changes: []string{"lift-plan"}})
	r.tell(f)
}

// loomHeddles tells each shaft that has too few for the warp.
func (r *review) loomHeddles() {
	if len(r.Loom.Heddles) == 0 {
		return
	}
	var needs [draft.MostShafts + 1]int
	for _, shaft := range r.threaded() {
		needs[shaft]++
	}
	for i, has := range r.Loom.Heddles[:min(len(r.Loom.Heddles), draft.MostShafts)] {
		if needs[i+1] > has {
			r.tell(Finding{
				Topic: LacksHeddles, Severity: Wrong, Place: Place{Part: strokes.Threading, Numbers: []int{i + 1}},
				Args: problem.Args{"shaft": i + 1, "has": has, "needs": needs[i+1]},
			})
		}
	}
}

// loomShed tells a draft that is for a loom of another shed.
func (r *review) loomShed() {
	on := r.Loom.Shed
	if on == loom.UnsaidShed || rises(on) == rises(r.Shed) && (on == r.Shed || !r.Treadled() || rises(on)) {
		return
	}
	r.tell(Finding{
		Topic: OtherShed, Severity: Note, Args: problem.Args{"draft": r.Shed.String(), "loom": on.String()},
		Place:    Place{Part: strokes.Ties},
		Remedies: []Remedy{{Topic: ForLoom, Acts: []strokes.Act{{Do: strokes.ForShed, Shed: on}}}},
	})
}

// rises reports whether treadles raise the shafts they are tied to, and the others stay.
func rises(shed loom.Shed) bool { return shed == loom.Rising || shed == loom.UnsaidShed }
