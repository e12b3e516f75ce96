package reckon

import (
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// useInWeft gives the yarn's weft with its reserves: as laid by its picks, or
// as the plan estimates it.
func (r *run) useInWeft(u *yarnUse) {
	laid, ok := r.laid(u)
	if s, some := r.sampleWeft(u); some {
		if ok {
			laid = r.add(laid, s)
		} else {
			laid, ok = s, true
		}
	}
	if !ok {
		return
	}
	parts := []term{laid}
	parts = append(parts, r.tails(u)...)
	if u.name == r.weftYarn() {
		parts = append(parts, r.mainReserves()...)
	}
	parts = append(parts, r.reserve(u, laid)...)
	weft := r.put(u.id+"weft", r.sum(YarnLength, parts), warp.Unsaid, u.about)
	u.weft = r.bobbins(u, weft)
}

// laid is picks × the length of a pick, or the plan's own estimate.
func (r *run) laid(u *yarnUse) (term, bool) {
	w := &r.plan.Weft
	switch {
	case u.name != r.weftYarn() && (w.OfWarp.Given() || w.PerPiece.Given()):
		return term{}, false
	case w.OfWarp.Given():
		part := r.given("weft.of-warp", share(w.OfWarp.Is.Of), given{path: "weft.of-warp", typed: w.OfWarp.Typed})
		return r.put(u.id+"weft-laid", r.mul(YarnLength, part, r.weft.warpYarn), warp.Unsaid, u.about), true
	case w.PerPiece.Given():
		return r.perPiece(u)
	}
	for _, part := range r.weft.parts {
		if part.yarn == u.name {
			return r.put(u.id+"weft-laid", r.mul(YarnLength, part.picks, r.weft.pick), warp.Unsaid, u.about), true
		}
	}
	return term{}, false
}

// perPiece is pieces × the length for each; a weight for each is measured by the
// yarn's grist.
func (r *run) perPiece(u *yarnUse) (term, bool) {
	w := &r.plan.Weft.PerPiece
	g := given{path: "weft.per-piece", typed: w.Typed}
	if w.Is.Mass == 0 {
		each := r.given("weft.per-piece", figure(w.Is.Length.Rat(), YarnLength), g)
		return r.put(u.id+"weft-laid", r.mul(YarnLength, r.allPieces(), each), warp.Unsaid, u.about), true
	}
	y, ok := r.plan.YarnNamed(u.name)
	if !ok || y.Grist().IsZero() {
		r.warn("weft.no-grist", "weft.per-piece", w.Typed, problem.Args{"yarn": u.name})
		return term{}, false
	}
	grist := r.gristOf(u, y)
	each := r.given("weft.per-piece", figure(w.Is.Mass.Rat(), Weight), g)
	return r.put(u.id+"weft-laid", r.mul(YarnLength, r.allPieces(), each, grist), warp.Unsaid, u.about), true
}

func (r *run) allPieces() term {
	all := make([]term, len(r.pieces))
	for i := range r.pieces {
		all[i] = r.pieces[i].count
	}
	return r.sum(Pieces, all)
}

// sampleWeft is the weft of the sampling, unless the plan leaves it out.
func (r *run) sampleWeft(u *yarnUse) (term, bool) {
	s := &r.plan.Sampling
	name := s.Yarn
	if name == "" {
		name = r.weftYarn()
	}
	if name != u.name || s.NoWeft || !s.Length.Given() || !r.weft.hasPicks || r.weft.pick.Is.IsZero() {
		return term{}, false
	}
	long, ok := r.sampleAt()
	if !ok {
		return term{}, false
	}
	picks := r.whole(r.mul(Picks, long, r.pieces[0].ppi), qty.Up)
	if r.exact() {
		picks = r.mul(Picks, long, r.pieces[0].ppi)
	}
	n := r.put("sampling.picks", picks, warp.Unsaid, About{})
	return r.put("sampling.weft", r.mul(YarnLength, n, r.weft.pick), warp.Unsaid, u.about), true
}

// sampleAt gives the length of the sampling in the state the picks are read in.
func (r *run) sampleAt() (term, bool) {
	s, state := r.plan.Sampling.Length, r.pieces[0].ppiState
	l := r.given("sampling.length", length(s.Is), given{path: "sampling.length", typed: s.Typed, state: s.State})
	if _, ok := r.length.path(s.State, state); !ok {
		return term{}, false
	}
	return r.carry(&r.length, l, s.State, state, "sampling.woven-", About{}), true
}

// tails is what every colour change costs the yarn that begins.
func (r *run) tails(u *yarnUse) []term {
	n := r.weft.changes[u.name]
	if !r.plan.Weft.Tail.Given() || n.IsZero() {
		return nil
	}
	tail := r.givenLength("weft.tail", "weft.tail", r.plan.Weft.Tail)
	return []term{r.put(u.id+"tails", r.mul(YarnLength, r.plain(figure(n, Changes)), tail), warp.Unsaid, u.about)}
}

// mainReserves are hemstitching and repairs, both of the main weft.
func (r *run) mainReserves() []term {
	var parts []term
	w := &r.plan.Weft
	if n := r.fringedEnds(); w.Hemstitch.Given() && n > 0 {
		widths := r.given("weft.hemstitch", figure(w.Hemstitch.Is, Widths), given{path: "weft.hemstitch", typed: w.Hemstitch.Typed})
		all := r.mul(YarnLength, r.plain(count(n, Number)), widths, r.cloth.occupied)
		parts = append(parts, r.put("weft.hemstitching", all, warp.Unsaid, About{}))
	}
	if w.Repairs.Given() {
		parts = append(parts, r.given("weft.repairs", figure(w.Repairs.Is.Rat(), YarnLength), given{path: "weft.repairs", typed: w.Repairs.Typed}))
	}
	return parts
}

// fringedEnds counts the ends of all pieces that carry a fringe.
func (r *run) fringedEnds() int {
	n := 0
	for i := range r.pieces {
		for _, e := range r.pieces[i].ends() {
			if e.Finish == warp.Fringe {
				n += r.pieces[i].n
			}
		}
	}
	return n
}

// reserve is the share of the weft laid that is kept over.
func (r *run) reserve(u *yarnUse, laid term) []term {
	w := &r.plan.Weft
	if !w.Reserve.Given() && (w.OfWarp.Given() || w.PerPiece.Given()) {
		return nil
	}
	part := r.shareOr("weft.reserve", "weft-reserve", w.Reserve, "weft.reserve")
	if part.Is.IsZero() {
		return nil
	}
	return []term{r.put(u.id+"reserve", r.mul(YarnLength, laid, part), warp.Unsaid, u.about)}
}

// bobbins counts the bobbins to wind and adds what is left over on each.
func (r *run) bobbins(u *yarnUse, weft term) term {
	w := &r.plan.Weft
	if !w.Bobbin.Given() {
		return weft
	}
	holds := r.givenLength("weft.bobbin", "weft.bobbin", w.Bobbin)
	if !w.BobbinEnd.Given() || w.BobbinEnd.Is >= w.Bobbin.Is {
		r.put(u.id+"bobbins", r.bobbinCount(weft, holds), warp.Unsaid, u.about)
		return weft
	}
	end := r.givenLength("weft.bobbin-end", "weft.bobbin-end", w.BobbinEnd)
	n := r.put(u.id+"bobbins", r.bobbinCount(weft, r.sub(holds, end)), warp.Unsaid, u.about)
	lost := r.put(u.id+"bobbin-ends", r.mul(YarnLength, n, end), warp.Unsaid, u.about)
	return r.put(u.id+"weft-wound", r.add(weft, lost), warp.Unsaid, u.about)
}

func (r *run) bobbinCount(weft, holds term) term {
	n := r.div(Bobbins, weft, holds)
	if r.exact() {
		return n
	}
	return r.whole(n, qty.Up)
}
