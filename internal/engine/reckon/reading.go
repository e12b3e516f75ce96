package reckon

import (
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
