package reckon

import (
	"sley/internal/engine/defaults"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// warpRun is the warp lengthwise.
type warpRun struct {
	needed, wound, spare term
	second               term // wound length of beam 2; zero when there is none
}

// warpOfPiece gives the warp that one piece takes: its cloth, its fringes, the
// hems and trims that lie outside the allowances.
func (r *run) warpOfPiece(pr *pieceRun) {
	parts := []term{pr.states[warp.Straight]}
	for _, e := range pr.ends() {
		parts = append(parts, r.endAsWarp(pr, e)...)
	}
	if pr.piece.Trim.Given() {
		trim := r.givenLength(pr.id+"trim", pr.id+"trim", pr.piece.Trim)
		parts = append(parts, r.mul(Length, r.plain(number(2)), trim))
	}
	pr.each = r.put(pr.id+"warp-each", r.sum(Length, parts), warp.Straight, pr.about)
	r.allOfPiece(pr, parts[1:])
}

// allOfPiece is warp × pieces, with the pieces that came off the loom
// otherwise at the length they came to.
func (r *run) allOfPiece(pr *pieceRun, own []term) {
	woven := r.wovenOtherwise(pr, own)
	if len(woven) == 0 {
		pr.all = r.put(pr.id+"warp-all", r.mul(Length, pr.count, pr.each), warp.Straight, pr.about)
		return
	}
	left := r.put(pr.id+"to-weave", r.sub(pr.count, r.plain(count(len(woven), Pieces))), warp.Unsaid, pr.about)
	pr.left = left
	all := r.add(r.mul(Length, left, pr.each), woven...)
	pr.all = r.put(pr.id+"warp-all", all, warp.Straight, pr.about)
}

func (r *run) wovenOtherwise(pr *pieceRun, own []term) []term {
	var out []term
	for i, w := range r.plan.Built.Woven {
		if pieceID(w.Piece) != pr.id {
			continue
		}
		path := "built.woven[" + itoa(i) + "].on-loom"
		l := r.given(path, length(w.OnLoom.Is), given{path: path, typed: w.OnLoom.Typed, state: warp.OnLoom, built: true, about: pr.about})
		took := r.carry(pr.chain, l, warp.OnLoom, warp.Straight, "built.woven["+itoa(i)+"].", pr.about)
		if pr.hasPicks {
			pr.woven = append(pr.woven, r.picksWoven(pr, i, l))
		}
		out = append(out, r.put("built.woven["+itoa(i)+"].took", r.sum(Length, append([]term{took}, own...)), warp.Straight, pr.about))
	}
	return out
}

// picksWoven is the picks of a piece that came to l on the loom.
func (r *run) picksWoven(pr *pieceRun, i int, l term) term {
	id := "built.woven[" + itoa(i) + "]."
	if _, ok := pr.chain.path(warp.OnLoom, pr.ppiState); !ok {
		return pr.picks
	}
	long := l
	if pr.ppiState != warp.OnLoom {
		long = r.carry(pr.chain, l, warp.OnLoom, pr.ppiState, id+"picked-", pr.about)
	}
	n := r.mul(Picks, long, pr.ppi)
	if !r.exact() {
		n = r.whole(n, qty.Nearest)
	}
	return r.put(id+"picks", n, warp.Unsaid, pr.about)
}

// endAsWarp gives what an end of a piece takes of unwoven warp.
func (r *run) endAsWarp(pr *pieceRun, e pieceEnd) []term {
	if e.Finish != warp.Fringe {
		return nil
	}
	cut := r.fringeCut(pr, e)
	if e.name == "first" {
		pr.first = cut
	} else {
		pr.last = cut
	}
	return []term{cut}
}

// fringeCut is finished ÷ (1 - twist) ÷ (1 - yarn shrinkage) + knot; a fringe
// inside the allowances loses with the cloth what the cloth loses.
func (r *run) fringeCut(pr *pieceRun, e pieceEnd) term {
	id := pr.id + e.name
	cut := r.given(id+".fringe", length(e.Depth.Is), given{path: id, typed: e.Depth.Typed, state: warp.Finished, about: pr.about})
	for _, loss := range []struct {
		name  string
		share qty.Typed[qty.Share]
	}{{".twist", e.Twist}, {".yarn-shrinkage", e.YarnShrinkage}} {
		if loss.share.Given() {
			s := r.given(id+loss.name, share(loss.share.Is.Of), given{path: id + loss.name, typed: loss.share.Typed, about: pr.about})
			cut = r.div(Length, cut, r.sub(r.one(), s))
		}
	}
	if e.Inside {
		cut = r.underLosses(pr, e, cut)
	}
	if e.Knot.Given() {
		cut = r.add(cut, r.given(id+".knot", length(e.Knot.Is), given{path: id + ".knot", typed: e.Knot.Typed, about: pr.about}))
	}
	return r.put(id+".fringe-cut", cut, warp.Straight, pr.about)
}

// underLosses is the warp of cloth and fringe together less that of the cloth.
func (r *run) underLosses(pr *pieceRun, e pieceEnd, fringe term) term {
	cloth, ok := pr.states[warp.Finished]
	if !ok {
		return fringe
	}
	id := pr.id + e.name + ".with-cloth"
	both := r.put(id, r.add(cloth, fringe), warp.Finished, pr.about)
	both = r.carry(pr.chain, both, warp.Finished, warp.Straight, id+".", pr.about)
	return r.sub(both, pr.states[warp.Straight])
}

func (r *run) reckonWarp() {
	parts := r.clothParts()
	parts = append(parts, r.onceParts()...)
	needed := r.sum(Length, parts)
	if credit, some := r.fringeCredit(); some {
		needed = r.sub(needed, credit)
	}
	w := &r.warpIs
	w.needed = r.put("warp.needed", needed, warp.Straight, About{})
	w.wound = r.wind("warp.wound", w.needed)
	w.spare = r.put("warp.spare", r.sub(w.wound, w.needed), warp.Straight, About{})
	r.secondBeam()
}

// clothParts are the pieces and the gaps between them.
func (r *run) clothParts() []term {
	all := make([]term, len(r.pieces))
	n := 0
	for i := range r.pieces {
		all[i] = r.pieces[i].all
		n += r.pieces[i].n
	}
	parts := []term{r.put("warp.pieces", r.sum(Length, all), warp.Straight, About{})}
	if gap := r.plan.Gap; gap.Given() && n > 1 {
		g := r.givenLength("gap", "gap", gap)
		parts = append(parts, r.put("warp.gaps", r.mul(Length, r.plain(count(n-1, Number)), g), warp.Straight, About{}))
	}
	return parts
}

// onceParts are the lengths added once, last, outside every share.
func (r *run) onceParts() []term {
	var parts []term
	if h := r.plan.Header; h.Given() {
		parts = append(parts, r.givenLength("warp.header", "header", h))
	}
	parts = append(parts, r.sampling()...)
	for i, e := range r.plan.Extras {
		id := "warp.extras[" + itoa(i) + "]"
		g := given{path: problem.JoinPath("extras", e.Name), typed: e.Length.Typed, about: About{Mark: e.Name}}
		parts = append(parts, r.given(id, length(e.Length.Is), g))
	}
	parts = append(parts, r.tieOns()...)
	return append(parts, r.waste())
}

// sampling is the warp woven to sample, in whatever state its length was
// written, or what it really took.
func (r *run) sampling() []term {
	if b := r.plan.Built.Sampling; b.Given() {
		return []term{r.given("warp.sampling", length(b.Is), given{path: "built.sampling", typed: b.Typed, state: warp.Straight, built: true})}
	}
	s := r.plan.Sampling.Length
	if !s.Given() {
		return nil
	}
	if s.State == warp.Straight {
		return []term{r.given("warp.sampling", length(s.Is), given{path: "sampling.length", typed: s.Typed, state: s.State})}
	}
	l := r.given("sampling.length", length(s.Is), given{path: "sampling.length", typed: s.Typed, state: s.State})
	took := r.carry(&r.length, l, s.State, warp.Straight, "sampling.", About{})
	return []term{r.put("warp.sampling", took, warp.Straight, About{})}
}

// tieOns is the warp that tying on again takes, once for each cut before the
// last piece.
func (r *run) tieOns() []term {
	n := r.cuts()
	if n == 0 {
		return nil
	}
	tie := r.tieOnLength()
	return []term{r.put("warp.tie-ons", r.mul(Length, r.plain(count(n, Number)), tie), warp.Straight, About{})}
}

func (r *run) cuts() int {
	n := 0
	if r.plan.Sampling.CutOff && r.plan.Sampling.Length.Given() {
		n++
	}
	for i := range r.plan.Pieces {
		if r.plan.Pieces[i].CutOff && i < len(r.plan.Pieces)-1 {
			n++
		}
	}
	return n
}

func (r *run) tieOnLength() term {
	return r.lengthOr("tie-on", "tie-on", r.plan.Loom.Waste.TieOn, "loom.waste.tie-on")
}

// waste is the loom waste: as measured, as written, or a starting value.
func (r *run) waste() term {
	w := &r.plan.Loom.Waste
	if b := r.plan.Built.Waste; b.Given() {
		return r.given("warp.waste", length(b.Is), given{path: "built.waste", typed: b.Typed, built: true})
	}
	var parts []term
	for _, part := range []struct {
		id string
		l  qty.Typed[qty.Length]
	}{{"tie-on", w.TieOn}, {"unreachable", w.Unreachable}, {"back", w.Back}} {
		if part.l.Given() {
			parts = append(parts, r.givenLength(part.id, "loom.waste."+part.id, part.l))
		}
	}
	if len(parts) > 0 {
		return r.put("warp.waste", r.sum(Length, parts), warp.Straight, About{})
	}
	return r.lengthOr("warp.waste", "loom-waste", w.Lump, "loom.waste")
}

// fringeCredit is the fringe that is cut out of the loom waste at the two ends
// of the warp: min(fringe, usable waste) at each.
func (r *run) fringeCredit() (term, bool) {
	w := &r.plan.Loom.Waste
	if !w.GivesFringe || len(r.pieces) == 0 {
		return term{}, false
	}
	var parts []term
	front, back := r.pieces[0].first, r.pieces[len(r.pieces)-1].last
	started := r.plan.Header.Given() || r.plan.Sampling.Length.Given() && !r.plan.Sampling.CutOff
	if w.TieOn.Given() && !front.Is.IsZero() && !started {
		parts = append(parts, r.do(Smaller, Length, front, r.tieOnLength()))
	}
	if w.Unreachable.Given() && !back.Is.IsZero() {
		parts = append(parts, r.do(Smaller, Length, back, r.givenLength("unreachable", "loom.waste.unreachable", w.Unreachable)))
	}
	if len(parts) == 0 {
		return term{}, false
	}
	return r.put("warp.fringe-credit", r.sum(Length, parts), warp.Straight, About{}), true
}

// wind rounds the warp needed up to the winding step, unless a wound length
// was fixed.
func (r *run) wind(id string, needed term) term {
	if b := r.plan.Built.Wound; b.Given() && id == "warp.wound" {
		return r.given(id, length(b.Is), given{path: "built.wound", typed: b.Typed, state: warp.Straight, built: true})
	}
	if w := r.plan.Warp.Wound; w.Given() && id == "warp.wound" {
		return r.given(id, length(w.Is), given{path: "warp.wound", typed: w.Typed, state: warp.Straight})
	}
	if r.exact() {
		return r.put(id, needed, warp.Straight, About{})
	}
	way := rounding(r.plan.Rounding.Warp, qty.Up)
	return r.put(id, r.to(needed, r.step(), way), warp.Straight, About{})
}

// step is the winding step: as written, or a quarter yard, or 10 cm where the
// plan is written in metric lengths.
func (r *run) step() term {
	key := "step"
	if r.metric {
		key = "step-metric"
	}
	return r.lengthOr("step", key, r.plan.Rounding.Step, "rounding.step")
}

// secondBeam winds the ends of beam 2: as long as the first warp, with their
// own take-up in the place of the warp's, and what they are longer in all.
func (r *run) secondBeam() {
	w := &r.plan.Warp
	if !w.SecondTakeUp.Given() && !w.SecondExtra.Given() {
		return
	}
	parts := []term{r.warpIs.needed}
	if w.SecondTakeUp.Given() {
		parts = append(parts, r.secondTakeUp()...)
	}
	if w.SecondExtra.Given() {
		parts = append(parts, r.givenLength("second-beam.extra", "warp.second-beam.extra", w.SecondExtra))
	}
	needed := r.put("second-beam.needed", r.sum(Length, parts), warp.Straight, About{})
	r.warpIs.second = r.wind("second-beam.wound", needed)
}

// secondTakeUp gives, for each kind of piece, how much longer its cloth is on
// beam 2 than on beam 1 (shorter: a figure below 0).
func (r *run) secondTakeUp() []term {
	link := r.givenLink("second-beam.", linkNamed("take-up"), r.plan.Warp.SecondTakeUp)
	if r.plan.Warp.SecondTakeUp.Accept {
		v, _ := defaults.For("take-up", r.kase)
		link.steps = []chainStep{{losses: []term{r.byDefault("allowances.take-up", share(v.Share), v)}}}
	}
	var out []term
	for i := range r.pieces {
		pr := &r.pieces[i]
		relaxed, ok := pr.states[warp.Relaxed]
		if !ok {
			continue
		}
		long := r.put(pr.id+"second-beam", r.cross(relaxed, hop{link: &link, to: warp.Straight, up: true}), warp.Straight, pr.about)
		more := r.mul(Length, pr.count, r.sub(long, pr.states[warp.Straight]))
		out = append(out, r.put(pr.id+"second-beam-more", more, warp.Straight, pr.about))
	}
	return out
}
