package app

import (
	"slices"

	"sley/internal/trade/record"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

// How many records are looked at for a warp, and how many allowances of one key they give.
const (
	mostLookedAt = 20
	mostAdvised  = 5
)

// recordAdvice is what finished warps in the same fibre say, the newest first.
func recordAdvice(r record.Reader, id record.ID, plan *warp.Plan) ([]Advised, error) {
	fibre, ok := fibreOf(plan)
	if !ok {
		return nil, nil
	}
	found, err := finishedIn(r, fibre)
	if err != nil {
		return nil, err
	}
	var out []Advised
	given := map[string]int{}
	for _, d := range found[:min(len(found), mostLookedAt)] {
		if d.ID == id {
			continue
		}
		of, b, err := recordWith(r, d.ID)
		if err != nil {
			return nil, err
		}
		if other, _ := fibreOf(b.reckon().plan); other.Name != fibre.Name {
			continue // the fibre is that of another of its yarns
		}
		for _, l := range of.Learnt {
			if given[l.Key]++; given[l.Key] <= mostAdvised {
				out = append(out, Advised{Learnt: l.Learnt, Warp: of.Name, ID: of.ID, Path: l.Path})
			}
		}
	}
	return out, nil
}

// finishedIn gives warps that are finished and name a fibre by any of its names, those
// changed last first: of each name the first 200 by their own names.
func finishedIn(r record.Reader, fibre yarn.Fibre) ([]record.Document, error) {
	var out []record.Document
	for _, name := range append([]string{fibre.Name}, fibre.Aliases...) {
		found, _, err := r.List(record.Query{Kind: record.Warp, Stage: record.Done, Words: name, Most: mostListed})
		if err != nil {
			return nil, err
		}
		for _, d := range found {
			if !slices.ContainsFunc(out, func(have record.Document) bool { return have.ID == d.ID }) {
				out = append(out, d)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b record.Document) int { return b.Changed.Compare(a.Changed) })
	return out, nil
}

// fibreOf is the main fibre of the yarn that most of a warp is planned in: the one named,
// else the first of the stripes, else the first of the plan; false where it is not known.
func fibreOf(plan *warp.Plan) (yarn.Fibre, bool) {
	name := plan.Warp.Yarn
	if names := plan.Warp.Stripes.Names(); name == "" && len(names) > 0 {
		name = names[0]
	}
	y, ok := plan.YarnNamed(name)
	if !ok && name == "" && len(plan.Yarns) > 0 {
		y, ok = &plan.Yarns[0], true
	}
	if !ok {
		return yarn.Fibre{}, false
	}
	return y.Composition.Is.Main()
}
