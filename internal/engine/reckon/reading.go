package reckon

import (
	"maps"
	"strings"

	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// checkReading shows the other reading of bare percentages. A bare 8 % is a
// share lost, the reading that comes out at size; read as a share added it
// gives a shorter warp, shown beside the other when the difference is more than
// the winding step.
func (r *run) checkReading() {
	if r.exact() || r.plan.Built.Wound.Given() || r.plan.Warp.Wound.Given() {
		return
	}
	added, some := asAdded(r.plan.Allowances)
	if !some {
		return
	}
	other := r.otherWarp(added)
	step := r.step()
	if r.warpIs.needed.Is.Sub(other.Is).Abs().Cmp(step.Is) <= 0 {
		return
	}
	way := rounding(r.plan.Rounding.Warp, qty.Up)
	r.put("warp.if-added", r.to(r.plain(other), step, way), warp.Straight, About{})
	r.readings(step, way)
}

// Reading is another reading of one allowance, and the warp that it would make.
type Reading struct {
	Key   string
	Typed string // the allowance, written so that it is read that way
	Wound Node
}

// readings tells of each allowance with bare percentages what warp it would make if they
// were added, the others as they are read.
func (r *run) readings(step term, way qty.Rounding) {
	if r.silent {
		return
	}
	for _, name := range warp.LinkNames() {
		a, changed := bareAsAdded(r.plan.Allowances[name.Key])
		if name.Width || !changed {
			continue
		}
		others := maps.Clone(r.plan.Allowances)
		others[name.Key] = a
		wound := r.to(r.plain(r.otherWarp(others)), step, way)
		r.out.Readings = append(r.out.Readings, Reading{
			name.Key, asWritten(a), Node{ID: "warp.wound", Figure: wound.Figure, State: warp.Straight},
		})
	}
}

// asWritten writes an allowance whose bare percentages are added.
func asWritten(a warp.Allowance) string {
	steps := make([]string, len(a.Steps))
	for i, step := range a.Steps {
		terms := make([]string, len(step))
		for j, t := range step {
			terms[j] = strings.TrimSpace(t.Typed)
			if t.Form == warp.Add && !strings.HasPrefix(strings.ToLower(terms[j]), "add") {
				terms[j] = "add " + terms[j]
			}
		}
		steps[i] = strings.Join(terms, " + ")
	}
	return strings.Join(steps, ", then ")
}

// asAdded gives the allowances with every bare percentage of length as a share
// added.
func asAdded(a warp.Allowances) (warp.Allowances, bool) {
	out, some := warp.Allowances{}, false
	for _, name := range warp.LinkNames() {
		given := a[name.Key]
		if !given.Given() {
			continue
		}
		if !name.Width {
			changed := false
			given, changed = bareAsAdded(given)
			some = some || changed
		}
		out[name.Key] = given
	}
	return out, some
}

func bareAsAdded(a warp.Allowance) (warp.Allowance, bool) {
	changed := false
	steps := make([][]warp.Term, len(a.Steps))
	for i, step := range a.Steps {
		steps[i] = append([]warp.Term{}, step...)
		for j, t := range step {
			if t.Form == warp.Lose && !strings.HasPrefix(strings.ToLower(strings.TrimSpace(t.Typed)), "lose") {
				steps[i][j].Form = warp.Add
				changed = true
			}
		}
	}
	a.Steps = steps
	return a, changed
}

// otherWarp reckons the warp needed with other allowances, on the same ends.
func (r *run) otherWarp(a warp.Allowances) Figure {
	plan := *r.plan
	plan.Allowances = a
	o := &run{
		plan: &plan, out: &Result{Plan: &plan}, shown: map[string]term{},
		kase: r.kase, metric: r.metric, cloth: r.cloth, silent: true,
	}
	o.reckonPieces()
	o.reckonWarp()
	return o.warpIs.needed.Figure
}
