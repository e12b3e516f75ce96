// Package app holds everything a person can do, one function each. Faces call
// it; it joins files, engines and, later, the book.
package app

import (
	"sley/internal/edge/planfile"
	"sley/internal/engine/reckon"
	"sley/internal/trade/problem"
	"sley/internal/trade/warp"
)

// ReckonPlan reads a plan file, with the draft it points to, and reckons it,
// backwards where it says what to find. find, when not empty, stands in for
// the plan's own [find]. The result is nil when the plan has errors; the
// list holds the problems of the file and of the reckoning, in their places.
func ReckonPlan(s Source, find string, workings bool) (*reckon.Result, *problem.List) {
	plan, places, list := s.decode(find)
	if find != "" && !list.Failed() && !reckon.Findable(plan, find) {
		list.Fail("find.path", "--find", find, problem.Args{"valid": reckon.FindPaths(plan)})
	}
	if list.Failed() {
		return nil, list
	}
	if find != "" {
		plan.Find = warp.Find{What: find}
	}
	result := reckon.Solve(plan, reckon.Options{Workings: workings, Tape: true})
	for _, p := range result.Problems.All() {
		if p.Path == "find.what" && find != "" {
			p.Path = "--find" // it stands on the command line, not in the file
		}
		list.Add(p)
	}
	list.Locate(places.Find)
	return result, list
}

// decode reads a plan with the draft it points to.
func (s Source) decode(find string) (*warp.Plan, planfile.Places, *problem.List) {
	plan, places, list := planfile.DecodeFor(s.Name, s.Text, find)
	s.adopt(plan, list)
	list.Locate(places.Find)
	return plan, places, list
}

// FindPaths lists what of a plan file can be reckoned backwards.
func FindPaths(name string, text []byte) []string {
	plan, _, _ := planfile.Decode(name, text)
	return reckon.FindPaths(plan)
}
