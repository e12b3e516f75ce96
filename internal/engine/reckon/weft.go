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
		return
	}
	r.out.Problems.Warn("weft.unknown", "weft", "", nil)
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
			all = append(all, r.mul(Picks, pr.remaining(), pr.picks))
			all = append(all, pr.woven...)
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
	add := func(yarn string, picks term) {
		if counted[yarn] == nil {
			names = append(names, yarn)
		}
		counted[yarn] = append(counted[yarn], picks)
	}
	for i := range r.pieces {
		if pr := &r.pieces[i]; pr.hasPicks {
			r.picksByYarn(pr, add)
		}
	}
	r.partsByYarn(names, counted)
}

// picksByYarn adds the picks of each yarn in the pieces as planned and in those
// that came off the loom otherwise, and notes the colour changes.
func (r *run) picksByYarn(pr *pieceRun, add func(yarn string, picks term)) {
	for _, t := range r.tallyOf(pr) {
		begins := t.begins.Mul(qty.Int(int64(pr.n)))
		r.weft.changes[t.yarn] = r.weft.changes[t.yarn].Add(begins)
		add(t.yarn, r.mul(Picks, pr.remaining(), r.plain(figure(t.n, Picks))))
	}
	for _, n := range pr.woven {
		one := *pr
		one.picks, one.order = n, nil
		for _, t := range r.tallyOf(&one) {
			add(t.yarn, r.plain(figure(t.n, Picks)))
		}
	}
}

// partsByYarn adds up the picks of each yarn, in every layer.
func (r *run) partsByYarn(names []string, counted map[string][]term) {
	for _, name := range names {
		sum := r.sum(Picks, counted[name])
		if r.cloth.layers > 1 {
			sum = r.mul(Picks, sum, r.plain(number(int64(r.cloth.layers))))
		}
		picks := r.put(yarnID(name)+"picks", sum, warp.Unsaid, About{Yarn: name})
		r.weft.parts = append(r.weft.parts, weftPart{name, picks})
	}
}
