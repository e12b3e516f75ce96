package reckon

import (
	"sley/internal/engine/dress"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

// mostInBout is the most ends in a bout: what the hand holds, what lies side by
// side on a peg, or the smaller of the two. False where neither is known.
func (r *run) mostInBout(list []dress.Stretch) (term, bool) {
	bout := r.plan.Winding.Bout
	onPeg, pegged := r.onPeg(list)
	if !bout.Given() {
		return onPeg, pegged
	}
	inHand := r.given("winding.bout", count(bout.Is, Ends), given{path: "winding.bout", typed: bout.Typed})
	if !pegged {
		return inHand, true
	}
	return r.put("winding.most", r.do(Smaller, Ends, inHand, onPeg), warp.Unsaid, About{}), true
}

// onPeg is the ends that lie side by side on a peg: its length × the wraps just
// touching of the thickest yarn. Threads that lie in more layers come out longer
// on the outside; common practice, no source.
func (r *run) onPeg(list []dress.Stretch) (term, bool) {
	peg := r.plan.Winding.Peg
	if !peg.Given() {
		return term{}, false
	}
	long := r.givenLength("winding.peg", "winding.peg", peg)
	wraps, thickest, ok := r.fewestWraps(list)
	if !ok {
		return term{}, false
	}
	holds := r.put("winding.peg-holds", r.whole(r.mul(Ends, long, wraps), qty.Down), warp.Unsaid, About{})
	together := r.winder().Together
	if least := 2 * together; holds.Is.Less(qty.Int(int64(least))) {
		r.warn("winding.peg-full", "winding.peg", peg.Typed, problem.Args{"holds": holds.Figure, "yarn": thickest, "together": together, "least": least})
		return term{}, false
	}
	return holds, true
}

// fewestWraps is the wraps just touching of the thickest yarn that is wound, as
// far as the yarns are known, with its name.
func (r *run) fewestWraps(list []dress.Stretch) (wraps term, thickest string, ok bool) {
	var all []term
	for _, name := range yarnsWound(list) {
		t, known := r.wrapsTouching(name)
		if !known {
			r.unknownThickness(name)
			continue
		}
		if len(all) == 0 || t.Is.Less(wraps.Is) {
			wraps, thickest = t, name
		}
		all = append(all, t)
	}
	if len(all) == 0 {
		return term{}, "", false
	}
	if len(all) > 1 {
		wraps = r.do(Smaller, Density, all[0], all[1:]...)
	}
	return r.put("winding.peg-wraps", wraps, warp.Unsaid, About{Yarn: thickest}), thickest, true
}

// yarnsWound lists the yarns of the ends that are wound, from the left.
func yarnsWound(list []dress.Stretch) []string {
	var out []string
	seen := map[string]bool{}
	for _, s := range list {
		if s.Ends() > 0 && !seen[s.Yarn] {
			seen[s.Yarn] = true
			out = append(out, s.Yarn)
		}
	}
	return out
}

// wrapsTouching is the wraps just touching of a yarn: as she wrapped it, or by
// its grist what a ruler shows of its diameters.
func (r *run) wrapsTouching(name string) (term, bool) {
	y, ok := r.plan.YarnNamed(name)
	if !ok {
		return term{}, false
	}
	if wraps, ok := r.touchingWraps(y); ok {
		return wraps, true
	}
	d, ok := r.diameters(y)
	if !ok {
		return term{}, false
	}
	shown := r.plain(share(yarn.RulerShare()))
	t := r.put(yarnID(name)+"touching", r.mul(Density, d, shown), warp.Unsaid, About{Yarn: name})
	r.from("osterkamp-wraps")
	return t, true
}

// unknownThickness says which yarn a peg's ends could not be reckoned from.
func (r *run) unknownThickness(name string) {
	if name == "" {
		r.tell("winding.peg-no-yarn", "winding.peg", r.plan.Winding.Peg.Typed, nil)
		return
	}
	path := "winding.peg"
	if _, ok := r.plan.YarnNamed(name); ok {
		path = "yarns." + name
	}
	r.tell("winding.peg-yarn", path, "", problem.Args{"yarn": name})
}
