package app

import (
	"context"

	"sley/internal/engine/content"
	"sley/internal/engine/reckon"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

// ClothLabel is what the label of a cloth says: its fibres by the weight of what is in it,
// and how it is cared for.
type ClothLabel struct {
	Result *reckon.Result // of the warp
	Units  warp.Units     // of the book that it is in
	Yarns  []content.Yarn // what is in the cloth of each
	Shares []content.Share
	Labels []content.Label // one for each form; none where something is missing for them
	Care   *content.Care   // nil where no fibre is known
}

// LabelOf gives the label of the cloth that a reckoning comes to. The list has what must be
// said of its yarns before there are shares, as content.InCloth gives it; care is told all
// the same.
func LabelOf(result *reckon.Result) (*ClothLabel, *problem.List) {
	out := &ClothLabel{Result: result}
	var of []yarn.Composition
	for i := range result.Plan.Yarns {
		of = append(of, result.Plan.Yarns[i].Composition.Is)
	}
	if care, ok := content.CareFor(content.Fibres(of), result.Plan.Wash); ok {
		out.Care = &care
	}
	found, list := content.InCloth(result)
	if list.Failed() {
		return out, list
	}
	out.Yarns, out.Shares = found, content.Shares(content.Parts(found))
	out.Labels = []content.Label{content.European(out.Shares, found), content.American(out.Shares)}
	return out, list
}

// Label gives the label of a warp of the book: after work began that of the plan that was
// frozen, with the amendments since. It is nil where the plan cannot be reckoned, and the
// list says why. Trouble: NotFound where it is no warp.
func (s *Studio) Label(ctx context.Context, id record.ID) (*ClothLabel, *problem.List, error) {
	of, err := s.ReckonWarp(ctx, id)
	if err != nil || of.Result == nil {
		return nil, problemsOf(of), err
	}
	out, list := LabelOf(of.Result)
	out.Units = of.Units
	return out, list, nil
}

func problemsOf(of *Reckoned) *problem.List {
	if of == nil {
		return &problem.List{}
	}
	return of.Problems
}

// LabelPlan reads a plan file, with the draft it points to, and gives the label of its
// cloth, as LabelOf does. It is nil when the plan has errors; the list has what is wrong
// with it, or else what is missing for a label, in their places.
func LabelPlan(s Source) (*ClothLabel, *problem.List) {
	plan, places, list := s.decode("")
	if list.Failed() {
		return nil, list
	}
	result := reckon.Solve(plan, reckon.Options{})
	if result.Problems.Failed() {
		result.Problems.Locate(places.Find)
		return nil, &result.Problems
	}
	out, found := LabelOf(result)
	found.Locate(places.Find)
	out.Units = s.Units
	return out, found
}
