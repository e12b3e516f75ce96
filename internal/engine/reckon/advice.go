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
// weave allow, or what touching wraps advise where the yarn has no grist. The
// decoder asks for a sett where neither is known.
func (r *run) advisedSett() term {
	t := r.workingSett()
	r.shown["sett.wanted"] = t
	return t
}

func (r *run) workingSett() term {
	greatest, ok := r.greatestSett()
	if !ok {
		return r.settByWraps()
	}
	v, _ := defaults.For("working-sett", r.kase)
	working := r.byDefault("sett.working", share(v.Share), v)
	t := r.put("sett.wanted", r.mul(Density, greatest, working), warp.InReed, About{})
	r.from("ashenhurst-working")
	return t
}

// settByWraps is wraps × ends ÷ (ends + interlacings).
func (r *run) settByWraps() term {
	y, ok := r.warpYarn()
	if !ok {
		panic("internal error: neither sett nor yarn, and the decoder let it pass")
	}
	wraps, ok := r.touchingWraps(y)
	if !ok {
		panic("internal error: neither sett, grist nor wraps, and the decoder let it pass")
	}
	t := r.put("sett.wanted", r.byInterlacing(wraps), warp.InReed, About{})
	r.from("wraps-half")
	return t
}

// touchingWraps is the node of the yarn's wraps that touch.
func (r *run) touchingWraps(y *yarn.Yarn) (term, bool) {
	perInch, _, ok := y.Wraps.Is.Diameters()
	if !ok {
		return term{}, false
	}
	g := given{path: "yarns." + y.Name + ".wraps", typed: y.Wraps.Typed, about: About{Yarn: y.Name}}
	return r.given(yarnID(y.Name)+"wraps", density(perInch.Div(qty.Inch.Rat())), g), true
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
	if t, ok := r.shown[id+"diameters"]; ok {
		return t, true
	}
	grist := r.given(id+"grist", gristFigure(g), given{path: "yarns." + y.Name, typed: gristText(y), about: about})
	pound := r.plain(figure(qty.Pound.Rat(), Weight))
	yards := r.div(Number, r.mul(YarnLength, grist, pound), r.plain(figure(qty.Yard.Rat(), YarnLength)))
	per := r.put(id+"yards-per-pound", yards, warp.Unsaid, about)
	k := r.diameterK(y, id)
	d := r.div(Density, r.mul(Number, k, r.root(per)), r.plain(length(qty.Inch)))
	t := r.put(id+"diameters", d, warp.Unsaid, about)
	r.from("ashenhurst")
	r.shown[id+"diameters"] = t
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

// Advise reckons the setts that the rules of the trade give for the first yarn
// of the plan in its weave: the closest, the usual shares of it, and what its
// wraps say. Nothing else of the plan is reckoned.
func Advise(plan *warp.Plan) *Result {
	r := &run{
		calc: calc{show: true}, plan: plan,
		out: &Result{Plan: plan, Defaults: defaults.Version}, shown: map[string]term{},
	}
	r.prepare()
	if greatest, ok := r.greatestSett(); ok {
		r.shares(greatest)
	}
	r.byWraps()
	return r.out
}

// shares gives the setts of delicate, ordinary and firm cloth.
func (r *run) shares(greatest term) {
	for _, part := range []struct {
		id   string
		low  int64
		high int64
	}{{"sett.delicate", 50, 60}, {"sett.ordinary", 75, 80}, {"sett.firm", 90, 90}} {
		r.shareOf(part.id, greatest, part.low)
		if part.high != part.low {
			r.shareOf(part.id+"-to", greatest, part.high)
		}
	}
}

func (r *run) shareOf(id string, greatest term, p int64) {
	part := r.plain(share(qty.Frac(p, 100)))
	r.put(id, r.mul(Density, greatest, part), warp.InReed, About{})
	r.from("osterkamp-sett")
}

// byWraps is wraps × ends ÷ (ends + interlacings): half the wraps for plain
// weave, two thirds for a 2/2 twill.
func (r *run) byWraps() {
	y, ok := r.warpYarn()
	if !ok || y.Wraps.Is.IsZero() {
		return
	}
	wraps, ok := r.touchingWraps(y)
	if !ok {
		return
	}
	r.put("sett.by-wraps", r.byInterlacing(wraps), warp.InReed, About{})
	r.from("wraps-half")
	r.usualByWraps(y.Wraps.Is)
}

// usualByWraps gives the setts that touching wraps advise for plain weave and
// for 2/2 twill, and the closest plain weave, whatever the weave asked for.
func (r *run) usualByWraps(w yarn.Wraps) {
	for _, rule := range []struct {
		id, source string
		sett       func() (qty.Density, string, bool)
	}{
		{"sett.plain-by-wraps", "wraps-half", w.PlainSett},
		{"sett.twill-by-wraps", "wraps-half", w.TwillSett},
		{"sett.closest-by-wraps", "osterkamp-wraps", w.ClosestPlain},
	} {
		if d, _, ok := rule.sett(); ok {
			r.put(rule.id, r.plain(density(d.PerNM())), warp.InReed, About{})
			r.from(rule.source)
		}
	}
}
