package reckon

import (
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// pieceRun is what is known of one kind of piece.
type pieceRun struct {
	piece *warp.Piece
	id    string
	about About
	chain *chain
	count term // pieces of this kind, times panels, times the class in turn
	n     int

	states    map[warp.State]term // the woven length in every state known
	ppiState  warp.State
	ppi       term // picks per length in ppiState
	picks     term // of one piece, one layer
	hasPicks  bool
	near, far int      // picks of the borders
	order     []picked // the picks laid out; nil until asked for
	inside    []term   // what its ends take of the cloth; nil until asked for
	woven     []term   // picks of those that came off the loom otherwise
	left      term     // pieces still to weave; used where some are woven
	each      term     // warp of one piece with all that is its own
	all       term     // warp of all of them
	first     term     // warp cut for the fringe at each end; zero when none
	last      term
}

func (r *run) reckonPieces() {
	r.length = r.links("", r.tapeRead(r.plan.Allowances), false)
	ppi := r.pickDensity()
	r.pieces = make([]pieceRun, len(r.plan.Pieces))
	for i := range r.plan.Pieces {
		r.reckonPiece(i, ppi)
	}
}

// tapeRead leaves the relaxation out where the tape is read slackened: the
// cloth has relaxed already.
func (r *run) tapeRead(a warp.Allowances) warp.Allowances {
	if r.plan.Tape != warp.Slackened {
		return a
	}
	out := warp.Allowances{"relaxation": {None: true, Typed: "none"}}
	for key, allowance := range a {
		if key != "relaxation" {
			out[key] = allowance
		}
	}
	return out
}

// pick is the density of picks and the state it is read in.
type pick struct {
	is    term
	state warp.State
}

// pickDensity gives the picks of one layer as built, as written, or as many as
// the ends that one layer has of a balanced cloth.
func (r *run) pickDensity() pick {
	switch b, w := &r.plan.Built.Picks, &r.plan.Weft.Picks; {
	case b.Given():
		return pick{r.given("picks.wanted", settOf(*b), given{path: "built.picks", typed: b.Typed, state: warp.OnLoom, built: true}), warp.OnLoom}
	case w.Given():
		return pick{r.given("picks.wanted", settOf(*w), given{path: "weft.picks", typed: w.Typed, state: w.State}), w.State}
	}
	balanced := r.cloth.density
	if n := r.cloth.layers; n > 1 {
		balanced = r.div(Density, balanced, r.plain(number(int64(n))))
	}
	return pick{r.put("picks.wanted", balanced, warp.OnLoom, About{}), warp.OnLoom}
}

func (r *run) reckonPiece(i int, ppi pick) {
	p := &r.plan.Pieces[i]
	r.pieces[i] = pieceRun{piece: p, id: pieceID(i), about: About{Piece: p.Name}, ppi: ppi.is, ppiState: ppi.state, chain: &r.length}
	pr := &r.pieces[i]
	if len(p.Allowances) > 0 {
		c := r.links(pr.id, r.tapeRead(mixed(r.plan.Allowances, p.Allowances)), false)
		pr.chain = &c
	}
	r.countPieces(pr)
	base, state := r.woven(pr)
	r.wholePicks(pr, base, state)
	r.finishedSize(pr)
	r.warpOfPiece(pr)
}

// mixed puts the allowances of a piece over those of the warp. An allowance of
// its own between two states drops every one of the warp's lengths that would
// run beside it.
func mixed(all, own warp.Allowances) warp.Allowances {
	out := warp.Allowances{}
	for key, a := range own {
		out[key] = a
	}
	for _, name := range warp.LinkNames() {
		a := all[name.Key]
		if a.Given() && !out[name.Key].Given() && !name.Width && !circles(out, name) {
			out[name.Key] = a
		}
	}
	return out
}

// circles reports whether adding the link named would close a circle.
func circles(a warp.Allowances, add warp.LinkName) bool {
	var c chain
	for _, name := range warp.LinkNames() {
		if given := a[name.Key]; given.Given() && !name.Width {
			c.links = append(c.links, chainLink{key: name.Key, link: name.Link})
		}
	}
	return c.joined(add.Link)
}

// countPieces is count × panels × the class in turn.
func (r *run) countPieces(pr *pieceRun) {
	p := pr.piece
	pr.n = p.Count
	pr.count = r.onePiece(pr)
	if n := panels(p); n > 1 {
		pr.n *= n
		pr.count = r.put(pr.id+"panels", r.mul(Pieces, pr.count, r.plain(number(int64(n)))), warp.Unsaid, pr.about)
	}
	if n := r.plan.Class.InTurn; n > 1 {
		pr.n *= n
		pr.count = r.put(pr.id+"in-turn", r.mul(Pieces, pr.count, r.plain(number(int64(n)))), warp.Unsaid, pr.about)
	}
}

// onePiece is the count that was written, or one.
func (r *run) onePiece(pr *pieceRun) term {
	n := count(pr.piece.Count, Pieces)
	if pr.piece.CountTyped == "" {
		return r.put(pr.id+"count", r.plain(n), warp.Unsaid, pr.about)
	}
	return r.given(pr.id+"count", n, given{path: pr.id + "count", typed: pr.piece.CountTyped, about: pr.about})
}

// woven gives the cloth that one piece needs under its allowances and the state
// it is in. A finished size is between the hems, so hems are added; a size in any
// other state is the whole stretch woven.
func (r *run) woven(pr *pieceRun) (term, warp.State) {
	p := pr.piece
	size := r.given(pr.id+"length", length(p.Length.Is), given{path: pr.id + "length", typed: p.Length.Typed, state: p.Length.State, about: pr.about})
	if p.Length.State != warp.Finished {
		return size, p.Length.State
	}
	parts := append([]term{size}, r.insideHems(pr)...)
	return r.put(pr.id+"cloth", r.sum(Length, parts), warp.Finished, pr.about), warp.Finished
}

// insideHems gives what the hems of a piece take of finished cloth.
func (r *run) insideHems(pr *pieceRun) []term {
	if pr.inside == nil {
		pr.inside = r.hems(pr, false)
	}
	return pr.inside
}

// hems gives the parts of the hems that lie inside or outside the allowances.
func (r *run) hems(pr *pieceRun, outside bool) []term {
	parts := []term{}
	for _, e := range pr.ends() {
		if e.Finish == warp.Hem && e.Outside == outside {
			parts = append(parts, r.hemParts(pr, e)...)
		}
	}
	return parts
}

// remaining is how many pieces have the picks of the plan.
func (pr *pieceRun) remaining() term {
	if len(pr.woven) > 0 {
		return pr.left
	}
	return pr.count
}

type pieceEnd struct {
	name string
	*warp.End
}

func (pr *pieceRun) ends() []pieceEnd {
	return []pieceEnd{{"first", &pr.piece.First}, {"last", &pr.piece.Last}}
}

func (r *run) hemParts(pr *pieceRun, e pieceEnd) []term {
	id := pr.id + e.name
	parts := []term{r.given(id+".hem", length(e.Depth.Is), given{path: id, typed: e.Depth.Typed, state: warp.Finished, about: pr.about})}
	if e.TurnIn.Given() {
		parts = append(parts, r.given(id+".turn-in", length(e.TurnIn.Is), given{path: id, typed: e.TurnIn.Typed, state: warp.Finished, about: pr.about}))
	}
	return parts
}

// wholePicks makes the picks of a piece fill whole treadling motifs, and
// carries the length they make to every state. A hem outside the allowances is
// woven like any other cloth; only the losses pass it by.
func (r *run) wholePicks(pr *pieceRun, base term, state warp.State) {
	hop, ok := pr.chain.path(state, pr.ppiState)
	if !ok {
		r.spreadCloth(pr, base, state)
		return
	}
	long := base
	for _, h := range hop {
		long = r.put(pr.id+"before."+stateSlug(h.to), r.cross(long, h), h.to, pr.about)
		r.from(sourceOfHop(h))
	}
	exact := r.put(pr.id+"picks.exact", r.mul(Picks, r.withHems(pr, long), pr.ppi), warp.Unsaid, pr.about)
	pr.hasPicks = true
	pr.picks = r.motifs(pr, exact)
	r.lengthOfPicks(pr)
}

// withHems adds the hems outside the allowances.
func (r *run) withHems(pr *pieceRun, x term) term {
	if outside := r.hems(pr, true); len(outside) > 0 {
		return r.add(x, outside...)
	}
	return x
}

// lengthOfPicks is picks ÷ picks per length, carried to every state.
func (r *run) lengthOfPicks(pr *pieceRun) {
	long := r.div(Length, pr.picks, pr.ppi)
	outside := r.hems(pr, true)
	if len(outside) == 0 {
		long = r.put(pr.id+stateSlug(pr.ppiState), long, pr.ppiState, pr.about)
		pr.states = r.spread(pr.chain, long, pr.ppiState, pr.id, pr.about)
		return
	}
	r.spreadCloth(pr, r.put(pr.id+"under-loss."+stateSlug(pr.ppiState), r.sub(long, outside...), pr.ppiState, pr.about), pr.ppiState)
}

// spreadCloth carries the cloth under the allowances to every state and adds the
// hems outside them in each.
func (r *run) spreadCloth(pr *pieceRun, x term, state warp.State) {
	if len(r.hems(pr, true)) == 0 {
		pr.states = r.spread(pr.chain, x, state, pr.id, pr.about)
		return
	}
	pr.states = map[warp.State]term{}
	for s, y := range r.spread(pr.chain, x, state, pr.id+"under-loss.", pr.about) {
		pr.states[s] = y
	}
	for _, s := range []warp.State{warp.Finished, warp.Relaxed, warp.OnLoom, warp.Straight} {
		if y, ok := pr.states[s]; ok {
			pr.states[s] = r.put(pr.id+stateSlug(s), r.withHems(pr, y), s, pr.about)
		}
	}
}

// motifs rounds picks to border + motif k + balance + border.
func (r *run) motifs(pr *pieceRun, exact term) term {
	pr.near, pr.far = pr.piece.Borders()
	if r.exact() {
		return r.put(pr.id+"picks", exact, warp.Unsaid, pr.about)
	}
	motif, fixed := r.motifOf(pr)
	way := rounding(r.plan.Rounding.Picks, qty.Up)
	picks := exact
	if fixed != 0 {
		picks = r.sub(picks, r.plain(count(fixed, Picks)))
	}
	if motif > 1 {
		picks = r.div(Repeats, picks, r.plain(count(motif, Picks)))
	}
	picks = r.whole(picks, way)
	if picks.Is.Sign() < 0 {
		picks = r.plain(figure(qty.Rat{}, Repeats))
	}
	if motif > 1 {
		picks = r.mul(Picks, r.plain(count(motif, Picks)), picks)
	}
	if fixed != 0 {
		picks = r.add(picks, r.plain(count(fixed, Picks)))
	}
	picks.Kind = Picks
	picks = r.put(pr.id+"picks", picks, warp.Unsaid, pr.about)
	r.treadlings(pr, picks, motif, fixed)
	return picks
}

// finishedSize gives the size one piece comes out at: the finished cloth
// without its hems.
func (r *run) finishedSize(pr *pieceRun) {
	if loom, ok := pr.states[warp.OnLoom]; ok && pr.hasPicks && pr.ppiState != warp.OnLoom && !loom.Is.IsZero() {
		r.put(pr.id+"picks.on-loom", r.div(Density, pr.picks, loom), warp.OnLoom, pr.about)
	}
	whole, ok := pr.states[warp.Finished]
	if !ok {
		return
	}
	out := whole
	for _, part := range append(r.hems(pr, true), r.insideHems(pr)...) {
		out = r.sub(out, part)
	}
	r.put(pr.id+"comes-out", out, warp.Finished, pr.about)
	for _, e := range pr.ends() {
		r.fold(pr, e, whole)
	}
}

// fold gives what to fold on unwashed cloth for a hem that is turned before
// washing: its finished depth in the proportion of the whole piece.
func (r *run) fold(pr *pieceRun, e pieceEnd, whole term) {
	relaxed, ok := pr.states[warp.Relaxed]
	if !ok || e.Finish != warp.Hem || !e.TurnedBefore {
		return
	}
	deep := r.sum(Length, r.hemParts(pr, e))
	if e.Outside {
		r.put(pr.id+e.name+".fold", deep, warp.Relaxed, pr.about)
		return
	}
	r.put(pr.id+e.name+".fold", r.div(Length, r.mul(Length, deep, relaxed), whole), warp.Relaxed, pr.about)
}
