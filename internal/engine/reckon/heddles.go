package reckon

import (
	"sley/internal/trade/order"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// reckonHeddles counts the heddles each shaft needs for the threading, and
// what the loom has over.
func (r *run) reckonHeddles() {
	t := r.plan.Warp.Threading
	if t.IsZero() || r.exact() {
		return
	}
	times, ok := r.threadings()
	if !ok {
		return
	}
	once, fixed := t.Shafts(1), t.Shafts(0)
	var all []term
	for shaft := range once {
		before := 0
		if shaft < len(fixed) {
			before = fixed[shaft]
		}
		all = append(all, r.heddlesOn(shaft, before, once[shaft]-before, times))
	}
	r.put("heddles.total", r.sum(Heddles, all), warp.Unsaid, About{})
}

// threadings gives how often the threading's group is repeated to take every
// working end. A threading that does not come to the ends is a problem.
func (r *run) threadings() (int, bool) {
	t, ends := r.plan.Warp.Threading, r.cloth.ends.Is.Count(qty.Nearest)
	if times, ok := t.Fills(ends); ok {
		return times, true
	}
	path := "warp.threading"
	if r.plan.Built.Ends.Given() {
		path = "built.ends"
	}
	r.out.Problems.Warn("threading.ends", path, t.Text, problem.Args{
		"ends": ends, "fixed": t.Fixed(), "repeat": t.Filler(),
	})
	return 0, false
}

// heddlesOn is fixed + in the repeat × repeats, with the second ends of doubled
// edges where each has a heddle of its own.
func (r *run) heddlesOn(shaft, fixed, each, times int) term {
	about := About{Index: shaft + 1}
	h := r.mul(Heddles, r.plain(count(each, Heddles)), r.plain(count(times, Repeats)))
	if fixed > 0 {
		h = r.add(r.plain(count(fixed, Heddles)), h)
	}
	if n := r.doubledOn(shaft+1, times); n > 0 {
		h = r.add(h, r.plain(count(n, Heddles)))
	}
	id := "heddles[" + itoa(shaft+1) + "]"
	need := r.put(id, h, warp.Unsaid, about)
	if on := r.plan.Loom.Heddles; shaft < len(on) {
		path := "loom.heddles[" + itoa(shaft) + "]"
		has := r.given("heddles.on-loom["+itoa(shaft+1)+"]", count(on[shaft], Heddles), given{path: path, typed: itoa(on[shaft]), about: about})
		r.put("heddles.spare["+itoa(shaft+1)+"]", r.sub(has, need), warp.Unsaid, about)
	}
	return need
}

// doubledOn counts the doubled edge ends on a shaft that have a heddle of
// their own.
func (r *run) doubledOn(shaft, times int) int {
	w := &r.plan.Warp
	if w.DoubledEnds == 0 || w.SharedHeddle {
		return 0
	}
	ends := w.Threading.Runs(times)
	n := 0
	for _, at := range edgeShafts(ends, w.DoubledEnds) {
		if at == shaft {
			n++
		}
	}
	return n
}

// edgeShafts gives the shafts of the first and the last n ends.
func edgeShafts(runs []order.Run, n int) []int {
	var out []int
	left := n
	for i := 0; i < len(runs) && left > 0; i++ {
		for k := min(left, runs[i].Count); k > 0; k-- {
			out, left = append(out, runs[i].Shaft), left-1
		}
	}
	left = n
	for i := len(runs) - 1; i >= 0 && left > 0; i-- {
		for k := min(left, runs[i].Count); k > 0; k-- {
			out, left = append(out, runs[i].Shaft), left-1
		}
	}
	return out
}
