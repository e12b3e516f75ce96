package reckon

import (
	"strings"

	"sley/internal/engine/dress"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// The places of a colour change, named for their words.
const (
	MarkAtStart = "at-start"
	MarkAtFar   = "at-far"
)

// Where a path longer than the warp is worth a word: one that may not be the
// best, and any; common practice, no source.
const (
	muchOver = qty.Centimetre
	farOver  = qty.Yard / 4
)

// wound works out the winding: the ends, the way of the warp, and the bouts.
func (r *run) wound(list []dress.Stretch) {
	ends := r.put("winding.ends", r.endsToWind(list), warp.Unsaid, About{})
	if r.cloth.floats.Is.Sign() > 0 {
		r.put("winding.apart", r.cloth.floats, warp.Unsaid, About{})
	}
	r.put("winding.passes", r.whole(r.inPasses(ends), qty.Up), warp.Unsaid, About{})
	r.onBoard()
	r.onMill()
	r.splitPasses(list)
	r.inBouts(list, ends)
}

// endsToWind is the working ends with the doubled ones, without those of beam 2.
func (r *run) endsToWind(list []dress.Stretch) term {
	all := r.cloth.ends
	if r.cloth.doubled.Is.Sign() > 0 {
		all = r.add(all, r.cloth.doubled)
	}
	if n := qty.Int(int64(dress.Ends(list))); !n.Equal(all.Is) {
		return r.sub(all, r.plain(figure(all.Is.Sub(n), Ends)))
	}
	return all
}

// board gives the board of the plan, and where it is written.
func (r *run) board() (b dress.Board, path, read string) {
	if r.plan.Winding.UsualBoard {
		return dress.UsualBoard(r.metric), "winding.board", "usual"
	}
	for _, p := range r.plan.Winding.Pegs {
		b.Pegs = append(b.Pegs, dress.Peg(p))
	}
	return b, "winding.pegs", "pegs"
}

// onBoard finds the path over the board that leaves the least over.
func (r *run) onBoard() {
	if !r.plan.Winding.HasBoard() {
		return
	}
	b, path, read := r.board()
	wound, _ := qty.LengthOf(r.warpIs.wound.Is, qty.Up)
	found := b.Path(wound, dress.Budget)
	args := problem.Args{"longest": asWound(found.Length.Rat()), "wound": asWound(r.warpIs.wound.Is)}
	switch {
	case !found.Reaches && found.Best:
		r.warn("winding.board-short", path, read, args)
	case !found.Reaches:
		r.warn("winding.not-found", path, read, args)
	case !found.Best && found.Length > wound+muchOver:
		r.tell("winding.not-best", path, read, nil)
	case found.Length > wound+farOver:
		r.tell("winding.far-over", path, read, problem.Args{"path": asWound(found.Length.Rat()), "wound": args["wound"], "over": length(found.Length - wound)})
	}
	if found.Reaches {
		r.path(b, found)
	}
}

// asWound is a length of warp, to be shown as the wound length is.
func asWound(nm qty.Rat) Node { return Node{ID: "warp.wound", Figure: figure(nm, Length)} }

// path makes the nodes of a path: how far it is to each peg, and its length.
// Their marks are names of pegs; of the whole path, of all in order.
func (r *run) path(b dress.Board, p dress.Path) {
	var names []string
	var spans []term
	for i, peg := range p.Pegs {
		names = append(names, b.Pegs[peg].Name)
		if i == 0 {
			continue
		}
		spans = append(spans, r.plain(length(dress.Span(b.Pegs[p.Pegs[i-1]], b.Pegs[peg]))))
		r.put("winding.pegs["+itoa(i)+"]", r.sum(Length, spans), warp.Straight, About{Mark: b.Pegs[peg].Name})
	}
	long := r.put("winding.path-length", r.sum(Length, spans), warp.Straight, About{Mark: strings.Join(names, ", ")})
	r.put("winding.over", r.sub(long, r.warpIs.wound), warp.Straight, About{})
}

// onMill is the whole turns of a mill, and what is wound beyond the last.
func (r *run) onMill() {
	mill := r.plan.Winding.Mill
	if !mill.Given() {
		return
	}
	girth := r.givenLength("winding.mill", "winding.mill", mill)
	turns := r.put("winding.turns", r.whole(r.div(Number, r.warpIs.wound, girth), qty.Down), warp.Unsaid, About{})
	past := r.sub(r.warpIs.wound, r.mul(Length, turns, girth))
	r.put("winding.past", past, warp.Straight, About{})
}

// winder is how the warp is wound, of bouts of any size.
func (r *run) winder() dress.Winder {
	return dress.Winder{Together: max(r.plan.Winding.Together.Is, 1)}
}

// inBouts shares the warp out to bouts, and counts the counting ties.
func (r *run) inBouts(list []dress.Stretch, ends term) {
	most, ok := r.mostInBout(list)
	if !ok {
		r.ties([]int{dress.Ends(list)})
		return
	}
	winder := r.winder()
	winder.Most = most.Is.Count(qty.Down)
	bouts := winder.Bouts(list)
	if r.many(r.boutPath(), len(bouts)) {
		return
	}
	n := r.put("winding.bouts", r.countBouts(winder, most, ends), warp.Unsaid, About{})
	var sizes []int
	for i, b := range bouts {
		size := r.unitsOfBout(winder, ends, n, i)
		if rest := size.Is.Sub(qty.Int(int64(b.Ends))).Neg(); !rest.IsZero() {
			size = r.add(size, r.plain(figure(rest, Ends))) // what is no whole unit
		}
		r.put("bouts["+itoa(i)+"].ends", size, warp.Unsaid, About{Index: i + 1, Yarn: strings.Join(b.Yarns, " + ")})
		sizes = append(sizes, b.Ends)
	}
	r.ties(sizes)
	r.changes(bouts)
}

// boutPath is where the plan says how large bouts are.
func (r *run) boutPath() string {
	if r.plan.Winding.Bout.Given() {
		return "winding.bout"
	}
	return "winding.peg"
}

// countBouts is ends ÷ the most a bout takes, in whole units, rounded up.
func (r *run) countBouts(w dress.Winder, most, ends term) term {
	if w.Unit() > 1 {
		most = r.to(most, r.unitOfBout(), qty.Down)
	}
	return r.whole(r.div(Number, ends, most), qty.Up)
}

// unitOfBout is what bouts grow by: two passes, where several ends are wound at
// once.
func (r *run) unitOfBout() term {
	return r.plain(count(2*r.plan.Winding.Together.Is, Ends))
}

// unitsOfBout shares the whole units out, the larger bouts first: of the i-th
// bout they are (units - i) ÷ bouts, rounded up.
func (r *run) unitsOfBout(w dress.Winder, ends, bouts term, i int) term {
	units := ends
	if w.Unit() > 1 {
		units = r.whole(r.div(Number, ends, r.unitOfBout()), qty.Down)
	}
	if i > 0 {
		units = r.sub(units, r.plain(count(i, units.Kind)))
	}
	mine := r.whole(r.div(Ends, units, bouts), qty.Up)
	if w.Unit() == 1 {
		return mine
	}
	return r.mul(Ends, r.unitOfBout(), mine)
}

// ties counts a tie after every so many ends of each bout.
func (r *run) ties(sizes []int) {
	tie := r.plan.Winding.Tie
	if !tie.Given() {
		return
	}
	every := r.given("winding.tie", count(tie.Is, Ends), given{path: "winding.tie", typed: tie.Typed})
	var parts []term
	for _, one := range dress.Runs(sizes) {
		for _, size := range one.Cycle {
			in := r.whole(r.div(Number, r.plain(count(size, Ends)), every), qty.Down)
			if one.Times > 1 {
				in = r.mul(Number, r.plain(count(one.Times, Number)), in)
			}
			parts = append(parts, in)
		}
	}
	r.put("winding.ties", r.sum(Number, parts), warp.Unsaid, About{})
}

// changes makes a node of each colour change: the passes wound before it.
func (r *run) changes(bouts []dress.Bout) {
	n := 0
	for _, b := range bouts {
		n += len(b.Changes)
	}
	if r.many(r.boutPath(), n) {
		return
	}
	for i, b := range bouts {
		for k, c := range b.Changes {
			about := About{Index: i + 1, Yarn: strings.Join(c.Yarns, " + "), Mark: MarkAtStart}
			if c.Far {
				about.Mark = MarkAtFar
			}
			r.put("bouts["+itoa(i)+"].changes["+itoa(k)+"]", r.passes(c.After), warp.Unsaid, about)
		}
	}
}

// passes is the ends of that many whole passes ÷ ends wound at once.
func (r *run) passes(n int) term {
	return r.inPasses(r.plain(count(n*r.winder().Together, Ends)))
}

// inPasses is ends ÷ ends wound at once.
func (r *run) inPasses(ends term) term {
	w := r.plan.Winding.Together
	if w.Is < 2 {
		ends.Kind = Number
		return ends
	}
	at := r.given("winding.together", count(w.Is, Ends), given{path: "winding.together", typed: w.Typed})
	return r.div(Number, ends, at)
}
