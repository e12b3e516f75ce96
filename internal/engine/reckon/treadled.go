package reckon

import (
	"slices"
	"strings"

	"sley/internal/engine/defaults"
	"sley/internal/engine/structure"
	"sley/internal/engine/tieup"
	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// motifOf gives the picks that a piece repeats whole, and those that stand once: of
// its own motif, which leaves the borders out, or of the treadling, which runs
// through the whole piece. A treadling without a part that fills is repeated as a
// whole.
func (r *run) motifOf(pr *pieceRun) (motif, fixed int) {
	picked := r.plan.Drafting.Picked()
	switch {
	case pr.piece.Motif > 0 || picked.IsZero():
		return max(pr.piece.Motif, 1), pr.near + pr.far + pr.piece.Balance
	case picked.Filler() == 0:
		return picked.Fixed(), 0
	}
	return picked.Filler(), picked.Fixed()
}

// treadlings is how often the treadling is repeated in the picks of a piece, where it
// decides them.
func (r *run) treadlings(pr *pieceRun, picks term, motif, fixed int) {
	if pr.piece.Motif > 0 || r.plan.Drafting.Picked().IsZero() {
		return
	}
	if fixed > 0 {
		picks = r.sub(picks, r.plain(count(fixed, Picks)))
	}
	r.put(pr.id+"treadlings", r.div(Repeats, picks, r.plain(count(motif, Picks))), warp.Unsaid, pr.about)
}

// Drawn gives the draft of the reckoned warp: the whole threading, one repeat of the
// treadling with what stands before and after it, tied for the plan's loom. It
// reports false where the plan has no threading that comes to its ends, or no
// treadling.
func (r *Result) Drawn() (*draft.Draft, bool) {
	times, ok := r.Threadings()
	if !ok {
		return nil, false
	}
	return r.Plan.Drawn(times, 1)
}

// Cycles gives the drafts that the cloth is judged by: what comes again both ways,
// and the whole threading over what comes again of the treadling.
func (r *Result) Cycles() (unit, across *draft.Draft, ok bool) {
	times, ok := r.Threadings()
	if !ok {
		return nil, nil, false
	}
	unit, ok = r.Plan.Cycle(-1)
	across, whole := r.Plan.Cycle(times)
	return unit, across, ok && whole
}

// Threadings is how often the filling group of the threading is repeated to take every
// working end; it reports false where there is no threading that does.
func (r *Result) Threadings() (int, bool) {
	t := r.Plan.Warp.Threading
	n, ok := r.Node("ends")
	if !ok || t.IsZero() || !n.Is.IsInt() {
		return 0, false
	}
	return t.Fills(n.Is.Count(qty.Nearest))
}

// checkDraft holds the draft against the loom and tells what its sheds do.
func (r *run) checkDraft() {
	l, ties := &r.plan.Loom, len(r.plan.Drafting.Ups)
	if l.Treadles > 0 && ties > l.Treadles && l.Shed != loom.Table {
		r.warn("loom.treadles", "draft.tie-up", "", problem.Args{"treadles": l.Treadles, "needs": ties})
	}
	d, ok := r.out.Drawn()
	if r.silent || !ok {
		return
	}
	r.checkFeet(d)
	list := d.Check()
	emptyShed := func(p problem.Problem) bool { return p.Code == "draft.none-up" || p.Code == "draft.all-up" }
	if all := list.All(); !list.Failed() && !slices.ContainsFunc(all, emptyShed) {
		r.checkCloth()
	}
	for _, p := range list.All() {
		p.Path = draftPath(p.Path)
		if p.Severity == problem.Error {
			p.Severity = problem.Warning // the numbers stand; the cloth will not
		}
		r.out.Problems.Add(p)
	}
}

// checkFeet says when the loom has fewer treadles than the draft has lifts, unless its
// treadling gets along with them by pressing two at a time.
func (r *run) checkFeet(d *draft.Draft) {
	l := &r.plan.Loom
	lifts, needed := tieup.TwoFooted(d, l.Treadles)
	if needed && (!d.Treadled() || d.Treadles > l.Treadles) {
		r.tell("loom.two-footed", "loom.treadles", itoa(l.Treadles), problem.Args{"treadles": l.Treadles, "lifts": lifts})
	}
}

// checkCloth looks at the cloth of the draft: whether it is one cloth, how long its
// floats are, and how its edges are caught.
func (r *run) checkCloth() {
	unit, across, ok := r.out.Cycles()
	if !ok {
		return
	}
	a := structure.OfDraft(unit)
	layers := 0
	for _, l := range a.Layers {
		if !l.Loose() {
			layers++
		}
	}
	loose := len(a.Loose(structure.Warp)) + len(a.Loose(structure.Weft))
	switch {
	case loose > 0:
		r.warn("cloth.loose", "draft", "", problem.Args{"ends": len(a.Loose(structure.Warp)), "picks": len(a.Loose(structure.Weft))})
	case layers > 1 && r.cloth.layers < 2 && r.weave().Name != "double cloth":
		r.warn("cloth.layers", "draft", "", problem.Args{"layers": layers})
	}
	r.checkFloats(a)
	r.checkTurns(across)
}

// checkFloats tells the longest float of a way where it is long on the cloth: ends
// over picks at the picks of the loom, picks over ends at the sett.
func (r *run) checkFloats(a *structure.Analysis) {
	r.checkFloat(a, structure.Weft, "cloth.weft-float", r.cloth.density.Is)
	if len(r.pieces) > 0 {
		r.checkFloat(a, structure.Warp, "cloth.warp-float", r.pieces[0].ppi.Is)
	}
}

func (r *run) checkFloat(a *structure.Analysis, way structure.Way, code string, per qty.Rat) {
	n := max(a.Floats(way, structure.Front).Longest, a.Floats(way, structure.Back).Longest)
	if per.Sign() <= 0 {
		return
	}
	if long := qty.Int(int64(n)).Div(per); defaults.LongFloat("").Length.Rat().Less(long) {
		r.tell(code, "draft", "", problem.Args{"threads": n, "long": Node{ID: "float", Figure: figure(long, Length)}})
	}
}

// checkTurns tells where the weft turns at an edge without catching its outermost
// end, more often than not, and there is no floating selvedge.
func (r *run) checkTurns(d *draft.Draft) {
	if r.plan.Warp.Floats > 0 || len(r.plan.Weft.Order.Names()) > 1 {
		return // caught by hand; or several shuttles, whose sides are not known
	}
	e := structure.EdgesOfDraft(d, d.Ends(), structure.Weaving{})
	left, right := e.Sides[structure.Left], e.Sides[structure.Right]
	if 2*left.Caught >= left.Turns && 2*right.Caught >= right.Turns {
		return
	}
	args := problem.Args{"left": left.Caught, "lefts": left.Turns, "right": right.Caught, "rights": right.Turns}
	if len(e.Fixes) > 0 && len(e.Fixes[0].Swap) > 0 && e.Fixes[0].All() {
		r.tell("edges.start", "draft", "", args)
		return
	}
	r.tell("edges.bare", "draft", "", args)
}

// draftPath is where a plan says what stands at a path of a draft. Picks are those
// of an order, and ends too, so that their places in it are not named.
func draftPath(path string) string {
	name, _, _ := strings.Cut(path, "[")
	switch name {
	case "threading":
		return "warp.threading"
	case "tie-up":
		return "draft." + path
	case "treadling", "lift-plan":
		return "draft." + name
	}
	return "draft"
}
