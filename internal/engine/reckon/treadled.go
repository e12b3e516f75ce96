package reckon

import (
	"strings"

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

// treadlings is how often the treadling is repeated in a piece, where it decides
// the picks.
func (r *run) treadlings(pr *pieceRun, motif, fixed int) {
	if pr.piece.Motif > 0 || r.plan.Drafting.Picked().IsZero() {
		return
	}
	picks := pr.picks
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
	t := r.Plan.Warp.Threading
	n, ok := r.Node("ends")
	if !ok || t.IsZero() || !n.Is.IsInt() {
		return nil, false
	}
	ends, times := n.Is.Count(qty.Nearest), 0
	if t.Filler() > 0 {
		times = (ends - t.Fixed()) / t.Filler()
	}
	if t.Total(times) != ends {
		return nil, false
	}
	return r.Plan.Drawn(times, 1)
}

// checkDraft holds the draft against the loom and tells what its sheds do.
func (r *run) checkDraft() {
	l, ties := &r.plan.Loom, len(r.plan.Drafting.Ups)
	if l.Treadles > 0 && ties > l.Treadles && l.Shed != loom.Table {
		r.warn("loom.treadles", "draft.tie-up", "", problem.Args{"treadles": l.Treadles, "needs": ties})
	}
	d, ok := r.out.Drawn()
	if !ok {
		return
	}
	for _, p := range d.Check().All() {
		p.Path = draftPath(p.Path)
		if p.Severity == problem.Error {
			p.Severity = problem.Warning // the numbers stand; the cloth will not
		}
		r.out.Problems.Add(p)
	}
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
