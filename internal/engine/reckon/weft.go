package reckon

import (
	"slices"

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

// weftYarn is the main weft: as written, the yarn of the warp, or the yarn that
// has the most ends.
func (r *run) weftYarn() string {
	if r.plan.Weft.Yarn != "" {
		return r.plan.Weft.Yarn
	}
	if r.plan.Warp.Yarn != "" || r.plan.Warp.Stripes.IsZero() {
		return r.warpName()
	}
	best := order.Run{}
	for _, run := range r.plan.Warp.Stripes.Totals(mostlyFill) {
		if run.Count > best.Count {
			best = run
		}
	}
	return best.Name
}

// mostlyFill repeats a filling group often enough to tell which yarn has the
// most ends.
const mostlyFill = 100

// warpName is the yarn of ends that no stripe names: as written, or the first
// yarn of the plan.
func (r *run) warpName() string {
	if r.plan.Warp.Yarn == "" && len(r.plan.Yarns) > 0 {
		return r.plan.Yarns[0].Name
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
			if counted[t.yarn] == nil {
				names = append(names, t.yarn)
			}
			each := r.plain(figure(t.n, Picks))
			counted[t.yarn] = append(counted[t.yarn], r.mul(Picks, pr.count, each))
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

// picked is a number of neighbouring picks of one yarn.
type picked struct {
	yarn string
	n    qty.Rat // whole unless rounding is off
}

func picksIn(list []picked) qty.Rat {
	sum := qty.Rat{}
	for _, p := range list {
		sum = sum.Add(p.n)
	}
	return sum
}

// pickTotals gives the picks of each yarn in one piece, and notes the colour
// changes, each counted to the yarn that begins.
func (r *run) pickTotals(pr *pieceRun) []picked {
	var out []picked
	var begins []int64
	for k, p := range r.pickOrder(pr) {
		i := slices.IndexFunc(out, func(o picked) bool { return o.yarn == p.yarn })
		if i < 0 {
			i = len(out)
			out, begins = append(out, picked{yarn: p.yarn}), append(begins, 0)
		}
		out[i].n = out[i].n.Add(p.n)
		if k > 0 {
			begins[i]++
		}
	}
	for i, p := range out {
		r.weft.changes[p.yarn] = r.weft.changes[p.yarn].Add(qty.Int(begins[i] * int64(pr.n)))
	}
	return out
}

// pickOrder lays the picks of one piece out, once: border, body, far border.
func (r *run) pickOrder(pr *pieceRun) []picked {
	if pr.order != nil {
		return pr.order
	}
	near := r.borderOrder(pr)
	body := pr.picks.Is.Sub(qty.Int(int64(pr.near + pr.far)))
	out := r.bodyOrder(pr, body, append([]picked{}, near...))
	if pr.far > 0 {
		out = append(out, turned(near, pr.piece.Far == warp.Mirrored)...)
	}
	pr.order = mergePicks(out)
	return pr.order
}

func (r *run) borderOrder(pr *pieceRun) []picked {
	if !pr.piece.Border.IsZero() {
		return picksOf(pr.piece.Border.Runs(1))
	}
	if pr.near > 0 {
		return []picked{{r.weftYarn(), qty.Int(int64(pr.near))}}
	}
	return nil
}

func picksOf(runs []order.Run) []picked {
	out := make([]picked, len(runs))
	for i, run := range runs {
		out[i] = picked{run.Name, qty.Int(int64(run.Count))}
	}
	return out
}

func turned(list []picked, mirrored bool) []picked {
	out := slices.Clone(list)
	if mirrored {
		slices.Reverse(out)
	}
	return out
}

// bodyOrder adds the body to out: it repeats the order of picks and cuts it
// off at the body's end; the group that fills where there is one, else the
// whole order.
func (r *run) bodyOrder(pr *pieceRun, body qty.Rat, out []picked) []picked {
	o := pr.piece.Order
	if o.IsZero() {
		o = r.plan.Weft.Order
	}
	if o.IsZero() {
		return append(out, picked{r.weftYarn(), body})
	}
	before, group, after := picksOf(o.Before()), picksOf(o.FillRuns()), picksOf(o.After())
	if len(group) == 0 {
		before, group = nil, before
	}
	room := body.Sub(picksIn(before)).Sub(picksIn(after))
	start := len(out)
	out = repeatTo(append(out, before...), group, room)
	return cut(append(out, after...), start, body)
}

// repeatTo adds group to out until it makes room picks, the last time cut
// short.
func repeatTo(out, group []picked, room qty.Rat) []picked {
	each := picksIn(group)
	if each.IsZero() {
		return out
	}
	if times := room.Div(each); times.Sign() > 0 {
		out = slices.Grow(out, (times.Count(qty.Up)+1)*len(group))
	}
	for room.Sign() > 0 {
		for _, p := range group {
			if room.Sign() <= 0 {
				break
			}
			p.n = qty.Min(p.n, room)
			room = room.Sub(p.n)
			out = append(out, p)
		}
	}
	return out
}

// cut keeps the first n picks of list from index start on.
func cut(list []picked, start int, n qty.Rat) []picked {
	for i := start; i < len(list); i++ {
		if n.Cmp(list[i].n) <= 0 {
			list[i].n = qty.Max(n, qty.Rat{})
			return list[:i+1]
		}
		n = n.Sub(list[i].n)
	}
	return list
}

// mergePicks joins neighbours of one yarn.
func mergePicks(list []picked) []picked {
	out := list[:0]
	for _, p := range list {
		switch n := len(out); {
		case p.n.Sign() <= 0:
		case n > 0 && out[n-1].yarn == p.yarn:
			out[n-1].n = out[n-1].n.Add(p.n)
		default:
			out = append(out, p)
		}
	}
	return out
}
