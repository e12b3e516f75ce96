package reckon

import (
	"sley/internal/engine/defaults"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

// weave gives the plan's weave, plain when it names none.
func (r *run) weave() warp.Weave {
	if w, ok := warp.WeaveNamed(r.plan.Weave); ok {
		return w
	}
	w, _ := warp.WeaveNamed("plain")
	return w
}

// root is the square root of a plain number.
func (c calc) root(a term) term {
	out := term{Figure: figure(root(a.Is), Number)}
	if c.show {
		out.expr = &Expr{Op: Root, Args: []*Expr{a.expr}}
	}
	return out
}

// advisedSett is the working share of the greatest sett that the yarn and the
// weave allow. The decoder asks for a sett where the yarn has no grist.
func (r *run) advisedSett() term {
	greatest, ok := r.greatestSett()
	if !ok {
		panic("internal error: neither sett nor grist, and the decoder let it pass")
	}
	v, _ := defaults.For("working-sett", r.kase)
	working := r.byDefault("sett.working", share(v.Share), v)
	t := r.put("sett.wanted", r.mul(Density, greatest, working), warp.InReed, About{})
	r.from("osterkamp-sett")
	return t
}

// greatestSett is diameters × ends ÷ (ends + interlacings), Ashenhurst's rule.
func (r *run) greatestSett() (term, bool) {
	if t, ok := r.shown["sett.greatest"]; ok {
		return t, true
	}
	y, ok := r.warpYarn()
	if !ok {
		return term{}, false
	}
	diameters, ok := r.diameters(y)
	if !ok {
		return term{}, false
	}
	t := r.put("sett.greatest", r.byInterlacing(diameters), warp.InReed, About{Yarn: y.Name})
	r.from("ashenhurst")
	r.shown["sett.greatest"] = t
	return t, true
}

// byInterlacing is per length × ends ÷ (ends + interlacings) of the weave.
func (r *run) byInterlacing(per term) term {
	w := r.weave()
	ends, cross := r.plain(count(w.Ends, Number)), r.plain(count(w.Interlacings, Number))
	return r.div(Density, r.mul(Density, per, ends), r.add(ends, cross))
}

// diameters is K √(yards per pound), the yarn's diameters in an inch.
func (r *run) diameters(y *yarn.Yarn) (term, bool) {
	g := y.Grist()
	if g.IsZero() {
		return term{}, false
	}
	id, about := yarnID(y.Name), About{Yarn: y.Name}
	grist := r.given(id+"grist", figure(g.NGPerNM(), Grist), given{path: "yarns." + y.Name, typed: gristText(y), about: about})
	yards := r.div(Number, r.plain(figure(qty.Pound.Rat(), Weight)), grist, r.plain(figure(qty.Yard.Rat(), Length)))
	per := r.put(id+"yards-per-pound", yards, warp.Unsaid, about)
	k := r.diameterK(y, id)
	d := r.div(Density, r.mul(Number, k, r.root(per)), r.plain(length(qty.Inch)))
	t := r.put(id+"diameters", d, warp.Unsaid, about)
	r.from("ashenhurst")
	return t, true
}

func (r *run) diameterK(y *yarn.Yarn, id string) term {
	about := About{Yarn: y.Name}
	k, source := y.K()
	if source == "" {
		return r.given(id+"diameter-constant", figure(k, Number), given{path: "yarns." + y.Name + ".diameter-constant", typed: k.Short(4), about: about})
	}
	v := defaults.Value{Key: "diameter-constant", Low: qty.Frac(84, 100), High: qty.Frac(95, 100), Source: source}
	return r.byDefault(id+"diameter-constant", figure(k, Number), v)
}
