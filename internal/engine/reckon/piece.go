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

	cloth     term // finished cloth woven for one: size, hems, inside fringe
	hasCloth  bool
	states    map[warp.State]term // the woven length in every state known
	ppiState  warp.State
	ppi       term // picks per length in ppiState
	picks     term // of one piece, one layer
	hasPicks  bool
	near, far int      // picks of the borders
	order     []picked // the picks laid out; nil until asked for
	inside    []term   // what its ends take of the cloth; nil until asked for
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

// pickDensity gives the picks as built, as written, or as many as the ends of
// a balanced cloth.
func (r *run) pickDensity() pick {
	switch b, w := &r.plan.Built.Picks, &r.plan.Weft.Picks; {
	case b.Given():
		return pick{r.given("picks.wanted", settOf(*b), given{path: "built.picks", typed: b.Typed, state: warp.OnLoom, built: true}), warp.OnLoom}
	case w.Given():
		return pick{r.given("picks.wanted", settOf(*w), given{path: "weft.picks", typed: w.Typed, state: w.State}), w.State}
	}
	return pick{r.put("picks.wanted", r.cloth.density, warp.OnLoom, About{}), warp.OnLoom}
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
		a, own := all[name.Key], out[name.Key]
		if a.Given() && !own.Given() && !name.Width && !circles(out, name) {
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
	pr.count = r.given(pr.id+"count", count(p.Count, Pieces), given{path: pr.id + "count", typed: p.CountTyped, about: pr.about})
	if n := panels(p); n > 1 {
		pr.n *= n
		pr.count = r.put(pr.id+"panels", r.mul(Pieces, pr.count, r.plain(number(int64(n)))), warp.Unsaid, pr.about)
	}
	if n := r.plan.Class.InTurn; n > 1 {
		pr.n *= n
		pr.count = r.put(pr.id+"in-turn", r.mul(Pieces, pr.count, r.plain(number(int64(n)))), warp.Unsaid, pr.about)
	}
}

// woven gives the cloth that one piece needs and the state it is in. A
// finished size is between the hems, so hems, and fringe that is to shrink as
// cloth does, are added; a size in any other state is the whole stretch woven.
func (r *run) woven(pr *pieceRun) (term, warp.State) {
	p := pr.piece
	size := r.given(pr.id+"length", length(p.Length.Is), given{path: pr.id + "length", typed: p.Length.Typed, state: p.Length.State, about: pr.about})
	if p.Length.State != warp.Finished {
		return size, p.Length.State
	}
	parts := append([]term{size}, r.insideEnds(pr)...)
	pr.cloth = r.put(pr.id+"cloth", r.sum(Length, parts), warp.Finished, pr.about)
	pr.hasCloth = true
	return pr.cloth, warp.Finished
}

// insideEnds gives what the ends of a piece take of finished cloth.
func (r *run) insideEnds(pr *pieceRun) []term {
	if pr.inside == nil {
		pr.inside = []term{}
		for _, end := range pr.ends() {
			pr.inside = append(pr.inside, r.endAsCloth(pr, end)...)
		}
	}
	return pr.inside
}

type pieceEnd struct {
	name string
	*warp.End
}

func (pr *pieceRun) ends() []pieceEnd {
	return []pieceEnd{{"first", &pr.piece.First}, {"last", &pr.piece.Last}}
}

func (r *run) endAsCloth(pr *pieceRun, e pieceEnd) []term {
	id := pr.id + e.name
	switch {
	case e.Finish == warp.Hem && !e.Outside:
		return r.hemParts(pr, e)
	case e.Finish == warp.Fringe && e.Inside:
		return []term{r.given(id+".fringe", length(e.Depth.Is), given{path: id, typed: e.Depth.Typed, about: pr.about})}
	}
	return nil
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
// carries the length they make to every state.
func (r *run) wholePicks(pr *pieceRun, base term, state warp.State) {
	at, ok := pr.chain.path(state, pr.ppiState)
	if !ok {
		pr.states = r.spread(pr.chain, base, state, pr.id, pr.about)
		return
	}
	long := base
	for _, h := range at {
		long = r.put(pr.id+"before."+stateSlug(h.to), r.cross(long, h), h.to, pr.about)
		r.from(sourceOfHop(h))
	}
	exact := r.put(pr.id+"picks.exact", r.mul(Picks, long, pr.ppi), warp.Unsaid, pr.about)
	pr.hasPicks = true
	pr.picks = r.motifs(pr, exact)
	long = r.put(pr.id+stateSlug(pr.ppiState), r.div(Length, pr.picks, pr.ppi), pr.ppiState, pr.about)
	pr.states = r.spread(pr.chain, long, pr.ppiState, pr.id, pr.about)
}

// motifs rounds picks to border + motif k + balance + border.
func (r *run) motifs(pr *pieceRun, exact term) term {
	pr.near, pr.far = borderPicks(pr.piece)
	if r.exact() {
		return r.put(pr.id+"picks", exact, warp.Unsaid, pr.about)
	}
	motif, fixed := max(pr.piece.Motif, 1), pr.near+pr.far+pr.piece.Balance
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
	return r.put(pr.id+"picks", picks, warp.Unsaid, pr.about)
}

// borderPicks gives the picks of the near and the far border.
func borderPicks(p *warp.Piece) (near, far int) {
	near = p.BorderPicks
	if !p.Border.IsZero() {
		near = p.Border.Total(1)
	}
	if p.Far == warp.NoFarBorder {
		return near, 0
	}
	return near, near
}

// finishedSize gives the size one piece comes out at: the finished cloth
// without its hems and the fringe that lies in it.
func (r *run) finishedSize(pr *pieceRun) {
	whole, ok := pr.states[warp.Finished]
	if !ok {
		return
	}
	out := whole
	for _, part := range r.insideEnds(pr) {
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
	r.put(pr.id+e.name+".fold", r.div(Length, r.mul(Length, deep, relaxed), whole), warp.Relaxed, pr.about)
}
