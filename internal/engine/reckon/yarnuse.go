package reckon

import (
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

// yarnUse is what one yarn is used for.
type yarnUse struct {
	each  term // what one loom of a class takes; zero without a class
	name  string
	id    string
	about About
	warp  term // length in the warp
	weft  term // length in the weft with its reserves
	need  term
	grist qty.LinearDensity
}

func yarnID(name string) string { return "yarns[" + name + "]." }

// yarnNames lists the yarns used, in the order of the plan, then any that only
// an order names; "" stands for the one yarn of a plan that names none.
func (r *run) yarnNames() []string {
	var names []string
	seen := map[string]bool{}
	add := func(name string) {
		if !seen[name] {
			seen[name] = true
			names = append(names, name)
		}
	}
	for i := range r.plan.Yarns {
		add(r.plan.Yarns[i].Name)
	}
	for _, s := range r.out.Stripes {
		add(s.Yarn)
	}
	for _, part := range r.weft.parts {
		add(part.yarn)
	}
	return names
}

func (r *run) reckonYarn() {
	r.reckonWeft()
	needs := map[string]*yarnUse{}
	for _, name := range r.yarnNames() {
		u := &yarnUse{name: name, id: yarnID(name), about: About{Yarn: name}}
		r.useInWarp(u)
		needs[name] = u
	}
	r.warpTotal(needs)
	for _, name := range r.yarnNames() {
		u := needs[name]
		r.useInWeft(u)
		r.total(u)
	}
}

// warpEnds gives the ends of a yarn on a beam, with its floating selvedges and
// doubled edges (those are wound on beam 1).
func (r *run) warpEnds(name string, beam int) []term {
	var parts []term
	sum := qty.Rat{}
	for _, s := range r.out.Stripes {
		if s.Yarn == name && s.Beam == beam {
			sum = sum.Add(s.Ends)
		}
	}
	if !sum.IsZero() {
		parts = append(parts, r.plain(figure(sum, Ends)))
	}
	if beam == 1 {
		parts = append(parts, r.edgeEnds(name)...)
	}
	return parts
}

// edgeEnds gives the floating selvedges and doubled ends of a yarn.
func (r *run) edgeEnds(name string) []term {
	var parts []term
	c := &r.cloth
	if n := c.floats; n.Is.Sign() > 0 && r.floatYarn() == name {
		parts = append(parts, n)
	}
	if n := c.doubled; n.Is.Sign() > 0 {
		for _, edge := range r.edgeYarns() {
			if edge == name {
				parts = append(parts, r.plain(count(r.plan.Warp.DoubledEnds, Ends)))
			}
		}
	}
	return parts
}

func (r *run) floatYarn() string {
	if r.plan.Warp.FloatYarn != "" {
		return r.plan.Warp.FloatYarn
	}
	return r.edgeYarns()[0]
}

// edgeYarns gives the yarns of the first and the last stripe.
func (r *run) edgeYarns() [2]string {
	s := r.out.Stripes
	if len(s) == 0 {
		return [2]string{r.warpName(), r.warpName()}
	}
	return [2]string{s[0].Yarn, s[len(s)-1].Yarn}
}

// useInWarp is ends × wound length, beam by beam.
func (r *run) useInWarp(u *yarnUse) {
	var parts []term
	if e := r.warpEnds(u.name, 1); len(e) > 0 {
		parts = append(parts, r.mul(YarnLength, r.put(u.id+"ends", r.sum(Ends, e), warp.Unsaid, u.about), r.warpIs.wound))
	}
	if e := r.warpEnds(u.name, 2); len(e) > 0 {
		long := r.warpIs.second
		if long.Is.IsZero() {
			long = r.warpIs.wound
		}
		parts = append(parts, r.mul(YarnLength, r.put(u.id+"ends-2", r.sum(Ends, e), warp.Unsaid, u.about), long))
	}
	if len(parts) == 0 {
		return
	}
	u.warp = r.put(u.id+"warp", r.sum(YarnLength, parts), warp.Straight, u.about)
}

// warpTotal adds the warp of all yarns.
func (r *run) warpTotal(uses map[string]*yarnUse) {
	var all []term
	for _, name := range r.yarnNames() {
		if u := uses[name]; !u.warp.Is.IsZero() {
			all = append(all, u.warp)
		}
	}
	if len(all) == 0 {
		return
	}
	r.weft.warpYarn = r.put("yarn.warp", r.sum(YarnLength, all), warp.Straight, About{})
}

// total is what the yarn is needed for in all, its weight and what to buy.
func (r *run) total(u *yarnUse) {
	var parts []term
	for _, part := range []term{u.warp, u.weft} {
		if !part.Is.IsZero() {
			parts = append(parts, part)
		}
	}
	if len(parts) == 0 {
		return
	}
	need := r.sum(YarnLength, parts)
	if n := r.plan.Class.Looms; n > 1 {
		need = r.put(u.id+"each-loom", need, warp.Unsaid, u.about)
		u.each = need
		looms := r.given("class.looms", count(n, Number), given{path: "class.looms", typed: itoa(n)})
		need = r.mul(YarnLength, looms, need)
	}
	u.need = r.put(u.id+"need", need, warp.Unsaid, u.about)
	y, ok := r.plan.YarnNamed(u.name)
	if !ok {
		return
	}
	r.weigh(u, y)
	r.buy(u, y)
}

// weigh gives the weights of warp, weft, what one loom of a class takes, and all.
func (r *run) weigh(u *yarnUse, y *yarn.Yarn) {
	g := y.Grist()
	if g.IsZero() {
		return
	}
	u.grist = g
	grist := r.gristOf(u, y)
	for _, part := range []struct {
		name string
		long term
	}{{"warp-weight", u.warp}, {"weft-weight", u.weft}, {"each-loom-weight", u.each}, {"weight", u.need}} {
		if !part.long.Is.IsZero() {
			r.put(u.id+part.name, r.div(Weight, part.long, grist), warp.Unsaid, u.about)
		}
	}
}

// gristOf is the node of a yarn's grist, which must be known.
func (r *run) gristOf(u *yarnUse, y *yarn.Yarn) term {
	return r.given(u.id+"grist", gristFigure(y.Grist()), given{path: "yarns." + u.name, typed: gristText(y), about: u.about})
}

// gristText gives what the grist was taken from, as written.
func gristText(y *yarn.Yarn) string {
	switch y.Basis() {
	case yarn.FromSkein:
		return y.Skein.Length.String() + ": " + y.Skein.Mass.String()
	case yarn.FromWraps:
		return y.Wraps.Typed
	}
	return y.Count.Typed
}

// gristFigure turns a grist into length per weight, as yarn is labelled.
func gristFigure(g qty.LinearDensity) Figure { return figure(g.NGPerNM().Inv(), Grist) }
