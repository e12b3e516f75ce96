package app

import (
	"context"
	"slices"

	"sley/internal/engine/finishing"
	"sley/internal/engine/reckon"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/record"
	"sley/internal/trade/warp"
)

// Finishing is what is done with a cloth after its last pick, in order.
type Finishing struct {
	Result *reckon.Result // of the warp, for the figures of the steps
	Units  warp.Units     // of the book that it is in
	Steps  []finishing.Step
	Sizes  []RecordSize // as planned
}

// FinishingOf gives the steps for the cloth that a reckoning comes to.
func FinishingOf(result *reckon.Result) *Finishing {
	return &Finishing{Result: result, Steps: finishing.Steps(result.Plan), Sizes: plannedSizes(result)}
}

// FinishSteps gives the steps for a warp of the book. They are nil where the plan cannot be
// reckoned, and the list says why. Trouble: NotFound where it is no warp.
func (s *Studio) FinishSteps(ctx context.Context, id record.ID) (*Finishing, *problem.List, error) {
	of, err := s.ReckonWarp(ctx, id)
	if err != nil || of.Result == nil {
		return nil, problemsOf(of), err
	}
	out := FinishingOf(of.Result)
	out.Units = of.Units
	return out, &problem.List{}, nil
}

// RecordForm is the record of a plan that is in no book: what is planned, for a sheet to be
// filled in by hand. What it has as learnt is what the sizes
// planned would teach.
func RecordForm(result *reckon.Result) *Record {
	out := &Record{Sizes: plannedSizes(result), Sett: nodeOf(result, "sett.exact")}
	out.Name = result.Plan.Name
	found := sizesOf{reckoned: &reckoned{plan: result.Plan, result: result}}
	for _, size := range out.Sizes {
		out.Learnt = append(out.Learnt, found.expected(size)...)
	}
	for _, y := range result.Plan.Yarns {
		at := "yarns[" + y.Name + "]."
		out.Yarns = append(out.Yarns, RecordYarn{Name: y.Name, Need: nodeOf(result, at+"need"), Weight: nodeOf(result, at+"weight")})
	}
	return out
}

// expected is what the planned sizes would teach.
func (f sizesOf) expected(size RecordSize) []RecordLearnt {
	size.States = slices.Clone(size.States)
	for i := range size.States {
		at := &size.States[i]
		at.Measured = warp.Size{State: at.State}
		if at.Planned != nil {
			at.Measured.Is, _ = qty.LengthOf(at.Planned.Is, qty.Nearest)
			at.Measured.Typed = at.Measured.Is.String()
		}
	}
	return f.learnt(size)
}

// plannedSizes are the sizes that a plan comes to, in each state that it reaches, with
// what its [built] says was measured.
func plannedSizes(result *reckon.Result) []RecordSize {
	found := sizesOf{reckoned: &reckoned{plan: result.Plan, result: result}}
	var out []RecordSize
	for i := range result.Plan.Pieces {
		for _, width := range []bool{false, true} {
			if size := found.size(i, width); len(size.States) > 0 {
				out = append(out, size)
			}
		}
	}
	return out
}

// FinishPlan reads a plan file, with the draft it points to, and gives the steps for its
// cloth. They are nil when the plan has errors; the list says which, in their places.
func FinishPlan(s Source) (*Finishing, *problem.List) {
	result, list := ReckonPlan(s, "", false)
	if result == nil || list.Failed() {
		return nil, list
	}
	out := FinishingOf(result)
	out.Units = s.Units
	return out, &problem.List{}
}
