package reckon

import (
	"sley/internal/trade/order"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// weftRun is the weft.
type weftRun struct {
	pick     term // yarn one pick lays
	hasPicks bool
	picks    term // laid in all pieces
	parts    []weftPart
	warpYarn term // length of the whole warp
	changes  map[string]qty.Rat
}

// weftPart is the picks of one yarn.
type weftPart struct {
	yarn  string
	picks term
}

// weftYarn is the main weft: as written, or the yarn of the warp.
func (r *run) weftYarn() string {
	if r.plan.Weft.Yarn != "" {
		return r.plan.Weft.Yarn
	}
	return r.plan.Warp.Yarn
}

func (r *run) reckonWeft() {
	r.weft.changes = map[string]qty.Rat{}
	if r.plan.Weft.OfWarp.Given() || r.plan.Weft.PerPiece.Given() {
		r.weft.parts = []weftPart{{yarn: r.weftYarn()}}
		r.countPicks()
		return
	}
	r.pickLength()
	r.countPicks()
	if r.weft.hasPicks {
		r.splitPicks()
	}
}

// pickLength is reed width × (1 + slack) + turn, or fell width × (1 + crimp):
// two ways of saying the same, never both.
func (r *run) pickLength() {
	w := &r.plan.Weft
	var pick term
	if w.Crimp.Given() && r.cloth.hasFell {
		crimp := r.given("weft.crimp", share(w.Crimp.Is.Of), given{path: "weft.crimp", typed: w.Crimp.Typed})
		pick = r.mul(Length, r.cloth.fell, r.add(r.one(), crimp))
	} else {
		slack := r.shareOr("weft.slack", "slack", w.Slack, "weft.slack")
		pick = r.mul(Length, r.cloth.occupied, r.add(r.one(), slack))
	}
	if w.Turn.Given() {
		pick = r.add(pick, r.givenLength("weft.turn", "weft.turn", w.Turn))
	}
	r.weft.pick = r.put("weft.pick", pick, warp.Unsaid, About{})
	r.from("taylor-weft")
}

// countPicks adds the picks of all pieces. Cloth in layers takes the picks of
// every layer.
func (r *run) countPicks() {
	var all []term
	for i := range r.pieces {
		if pr := &r.pieces[i]; pr.hasPicks {
			all = append(all, r.mul(Picks, pr.count, pr.picks))
		}
	}
	if len(all) == 0 {
		return
	}
	sum := r.sum(Picks, all)
	if r.cloth.layers > 1 {
		sum = r.put("weft.picks-a-layer", sum, warp.Unsaid, About{})
		sum = r.mul(Picks, sum, r.plain(number(int64(r.cloth.layers))))
	}
	r.weft.hasPicks = true
	r.weft.picks = r.put("weft.picks", sum, warp.Unsaid, About{})
}

// splitPicks shares the picks among the yarns: by written shares, by the order
// of picks, or all to the main weft.
func (r *run) splitPicks() {
	switch {
	case len(r.plan.Weft.Shares) > 0:
		r.splitByShares()
	case r.hasOrders():
		r.splitByOrder()
	default:
		r.weft.parts = []weftPart{{r.weftYarn(), r.weft.picks}}
	}
}

func (r *run) hasOrders() bool {
	if !r.plan.Weft.Order.IsZero() {
		return true
	}
	for i := range r.plan.Pieces {
		if p := &r.plan.Pieces[i]; !p.Order.IsZero() || !p.Border.IsZero() {
			return true
		}
	}
	return false
}

func (r *run) splitByShares() {
	for _, s := range r.plan.Weft.Shares {
		about := About{Yarn: s.Yarn}
		part := r.given("weft.shares["+s.Yarn+"]", share(s.Share.Is.Of), given{path: "weft.shares." + s.Yarn, typed: s.Share.Typed, about: about})
		picks := r.put(yarnID(s.Yarn)+"picks", r.mul(Picks, r.weft.picks, part), warp.Unsaid, about)
		r.weft.parts = append(r.weft.parts, weftPart{s.Yarn, picks})
	}
}

// splitByOrder counts the picks of every yarn in every piece.
func (r *run) splitByOrder() {
	var names []string
	counted := map[string][]term{}
	for i := range r.pieces {
		pr := &r.pieces[i]
		if !pr.hasPicks {
			continue
		}
		for _, t := range r.pickTotals(pr) {
			if counted[t.Yarn] == nil {
				names = append(names, t.Yarn)
			}
			each := r.plain(figure(t.Ends, Picks))
			counted[t.Yarn] = append(counted[t.Yarn], r.mul(Picks, pr.count, each))
		}
	}
	for _, name := range names {
		sum := r.sum(Picks, counted[name])
		if r.cloth.layers > 1 {
			sum = r.mul(Picks, sum, r.plain(number(int64(r.cloth.layers))))
		}
		picks := r.put(yarnID(name)+"picks", sum, warp.Unsaid, About{Yarn: name})
		r.weft.parts = append(r.weft.parts, weftPart{name, picks})
	}
}

// pickTotals gives the picks of each yarn in one piece, and notes the colour
// changes, each counted to the yarn that begins.
func (r *run) pickTotals(pr *pieceRun) []Stripe {
	var out []Stripe
	last := ""
	for k, s := range r.pickOrder(pr) {
		out = addPicks(out, s)
		if k > 0 && s.Yarn != last {
			r.weft.changes[s.Yarn] = r.weft.changes[s.Yarn].Add(qty.Int(int64(pr.n)))
		}
		last = s.Yarn
	}
	return out
}

func addPicks(out []Stripe, s Stripe) []Stripe {
	for i := range out {
		if out[i].Yarn == s.Yarn {
			out[i].Ends = out[i].Ends.Add(s.Ends)
			return out
		}
	}
	return append(out, s)
}

// pickOrder lays the picks of one piece out: border, body, far border. Its
// Stripe.Ends are picks.
func (r *run) pickOrder(pr *pieceRun) []Stripe {
	near := r.borderOrder(pr)
	body := pr.picks.Is.Sub(qty.Int(int64(pr.near + pr.far)))
	out := append([]Stripe{}, near...)
	out = append(out, r.bodyOrder(pr, body)...)
	if pr.far > 0 {
		out = append(out, turned(near, pr.piece.Far == warp.Mirrored)...)
	}
	return mergePicks(out)
}

func (r *run) borderOrder(pr *pieceRun) []Stripe {
	if !pr.piece.Border.IsZero() {
		return picksOf(pr.piece.Border.Runs(1))
	}
	if pr.near > 0 {
		return []Stripe{{Yarn: r.weftYarn(), Ends: qty.Int(int64(pr.near))}}
	}
	return nil
}

func picksOf(runs []order.Run) []Stripe {
	out := make([]Stripe, len(runs))
	for i, run := range runs {
		out[i] = Stripe{Yarn: run.Name, Ends: qty.Int(int64(run.Count))}
	}
	return out
}

func turned(list []Stripe, mirrored bool) []Stripe {
	out := append([]Stripe{}, list...)
	if mirrored {
		for i, j := 0, len(out)-1; i < j; i, j = i+1, j-1 {
			out[i], out[j] = out[j], out[i]
		}
	}
	return out
}

// bodyOrder repeats the order of picks over the body and cuts it off at its
// end: the group that fills where there is one, else the whole order.
func (r *run) bodyOrder(pr *pieceRun, body qty.Rat) []Stripe {
	o := pr.piece.Order
	if o.IsZero() {
		o = r.plan.Weft.Order
	}
	if o.IsZero() {
		return []Stripe{{Yarn: r.weftYarn(), Ends: body}}
	}
	before, group, after := picksOf(o.Before()), picksOf(o.FillRuns()), picksOf(o.After())
	if len(group) == 0 {
		before, group = nil, before
	}
	room := body.Sub(endsIn(before)).Sub(endsIn(after))
	out := append([]Stripe{}, before...)
	out = append(out, repeatTo(group, room)...)
	return cut(append(out, after...), body)
}

// repeatTo repeats group until it makes room picks, the last time cut short.
func repeatTo(group []Stripe, room qty.Rat) []Stripe {
	var out []Stripe
	each := endsIn(group)
	if each.IsZero() {
		return nil
	}
	for room.Sign() > 0 {
		out = append(out, cut(group, room)...)
		room = room.Sub(each)
	}
	return out
}

// cut keeps the first n threads of list.
func cut(list []Stripe, n qty.Rat) []Stripe {
	var out []Stripe
	for _, s := range list {
		if n.Sign() <= 0 {
			break
		}
		s.Ends = qty.Min(s.Ends, n)
		out = append(out, s)
		n = n.Sub(s.Ends)
	}
	return out
}

func mergePicks(list []Stripe) []Stripe {
	var out []Stripe
	for _, s := range list {
		if n := len(out); n > 0 && out[n-1].Yarn == s.Yarn {
			out[n-1].Ends = out[n-1].Ends.Add(s.Ends)
			continue
		}
		if s.Ends.Sign() > 0 {
			out = append(out, s)
		}
	}
	return out
}
