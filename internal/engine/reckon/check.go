package reckon

import (
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// Limits of the checks. A warning that fires on good practice is a defect, so
// they stand where the published setts of check-value tables end.
var (
	tooClose  = qty.Int(1)        // of the greatest sett: Ashenhurst's own limit
	tooOpen   = qty.Frac(40, 100) // of the greatest sett; delicate cloth begins at 50 % (Osterkamp)
	reedAir   = qty.Frac(65, 100) // of a dent's width is air; common practice, no source
	reedFull  = qty.Frac(90, 100) // of that air; common practice, no source
	offSett   = qty.Frac(1, 100)  // of the sett: differences up to it count as equal
	offWidth  = qty.Frac(3, 100)  // of the width wanted; common practice, no source
	tightYarn = qty.Frac(2, 100)  // of the yarn needed; common practice, no source
)

// check holds the reckoning against the loom and the cloth. Each problem says
// what will happen and what to do.
func (r *run) check() {
	r.checkLoom()
	r.checkHeddles()
	r.checkReed()
	r.checkSett()
	r.checkEdges()
	r.checkWidths()
	r.checkLengths()
	r.checkReading()
	r.checkYarns()
}

func (r *run) warn(code, path, read string, args problem.Args) {
	r.out.Problems.Warn(code, path, read, args)
}

func (r *run) tell(code, path, read string, args problem.Args) {
	r.out.Problems.Tell(code, path, read, args)
}

func (r *run) checkLoom() {
	l := &r.plan.Loom
	if w := l.Width; w.Given() && w.Is.Rat().Less(r.cloth.occupied.Is) {
		r.warn("loom.width", "loom.width", w.Typed, problem.Args{"width": length(w.Is), "needs": r.cloth.occupied.Figure})
	}
	for i := range r.plan.Pieces {
		r.checkInReed(i)
	}
	if b := l.BeamHolds; b.Given() && b.Is.Rat().Less(r.warpIs.wound.Is) {
		r.warn("loom.beam", "loom.beam-holds", b.Typed, problem.Args{"holds": length(b.Is), "wound": r.warpIs.wound.Figure})
	}
	two := false
	for _, s := range r.out.Stripes {
		two = two || s.Beam == 2
	}
	if two && l.Beams == 1 {
		r.warn("loom.beams", "warp.stripes", r.plan.Warp.Stripes.Text, nil)
	}
	if !two && !r.warpIs.second.Is.IsZero() {
		r.tell("second-beam.unused", "warp.second-beam", "", nil)
	}
}

// checkInReed says when the ends of a reed do not reach.
func (r *run) checkInReed(i int) {
	in, ok := r.out.Node("dents.in-reed")
	own := ok && r.out.Reeds[r.out.Sleying[0].Reed].Width > 0 // the loom's width is checked by itself
	if i > 0 || !own || !in.Is.Less(r.cloth.allDents.Is) {
		return
	}
	r.warn("loom.reed-short", "loom.reeds", r.out.Reeds[r.out.Sleying[0].Reed].Name,
		problem.Args{"dents": in.Figure, "needs": r.cloth.allDents.Figure})
}

func (r *run) checkHeddles() {
	t, l := r.plan.Warp.Threading, &r.plan.Loom
	if l.Shafts > 0 && t.MaxShaft() > l.Shafts {
		r.warn("loom.shafts", "warp.threading", t.Text, problem.Args{"shafts": l.Shafts, "needs": t.MaxShaft()})
	}
	for shaft := 1; shaft <= len(l.Heddles); shaft++ {
		spare, ok := r.out.Node("heddles.spare[" + itoa(shaft) + "]")
		if ok && spare.Is.Sign() < 0 {
			r.warn("loom.heddles", "loom.heddles", "", problem.Args{"shaft": shaft, "short": figure(spare.Is.Neg(), Heddles)})
		}
	}
}

func (r *run) checkReed() {
	c := &r.cloth
	if !c.hasReed {
		return
	}
	chosen := r.out.Sleying[0]
	if offSett.Less(chosen.Off.Abs()) {
		wanted, _ := r.out.Node("sett.wanted")
		r.tell("sett.off", "warp.sett", wanted.Typed, problem.Args{"exact": c.density.Figure, "off": share(chosen.Off)})
	}
	y, ok := r.warpYarn()
	if !ok || y.Grist().IsZero() {
		return
	}
	perDent := y.Diameters().Div(qty.Inch.Rat()).Mul(reedAir).Div(c.dents.Is)
	most := qty.Int(int64(c.order.Most()))
	if fill := most.Div(perDent); reedFull.Less(fill) {
		r.warn("reed.full", "warp.sett", r.out.Reeds[chosen.Reed].Name, problem.Args{
			"fill": share(fill), "ends": c.order.Most(), "yarn": y.Name,
		})
	}
}

// checkSett holds the sett against the closest that yarn and weave allow.
// Fulled cloth is woven open on purpose, faced cloth hides one system.
func (r *run) checkSett() {
	y, ok := r.warpYarn()
	if !ok {
		return
	}
	r.checkWraps()
	if y.Grist().IsZero() || r.weave().Class == "weft-faced" || r.weave().Class == "warp-faced" {
		return
	}
	w := r.weave()
	greatest := y.Diameters().Div(qty.Inch.Rat()).Mul(w.Factor()).Mul(qty.Int(int64(r.cloth.layers)))
	part := r.cloth.density.Is.Div(greatest)
	args := problem.Args{"part": share(part), "greatest": density(greatest), "weave": w.Name, "yarn": y.Name}
	switch sett := r.plan.Warp.Sett.Typed; {
	case tooClose.Less(part):
		r.warn("sett.close", "warp.sett", sett, args)
	case part.Less(tooOpen) && r.plan.Wash != "fulled" && w.Class != "lace":
		r.warn("sett.open", "warp.sett", sett, args)
	}
}

// checkWraps says when more ends stand in an inch than touch in it.
func (r *run) checkWraps() {
	y, ok := r.warpYarn()
	if !ok || y.Wraps.Is.IsZero() {
		return
	}
	perInch, _, ok := y.Wraps.Is.Diameters()
	if !ok {
		return
	}
	touch := perInch.Div(qty.Inch.Rat()).Mul(qty.Int(int64(r.cloth.layers)))
	if touch.Less(r.cloth.density.Is) && r.weave().Class != "warp-faced" {
		r.warn("sett.wraps", "yarns."+y.Name+".wraps", y.Wraps.Typed, problem.Args{"wraps": density(touch), "sett": r.cloth.density.Figure})
	}
}

func (r *run) checkEdges() {
	if n := r.cloth.layers; n > 1 && !r.cloth.ends.Is.Div(qty.Int(int64(n))).IsInt() {
		r.warn("layers.uneven", "warp.layers", itoa(n), problem.Args{"ends": r.cloth.ends.Figure, "layers": n})
	}
}

// checkWidths says where the finished width is not what was wanted.
func (r *run) checkWidths() {
	r.checkStripes()
	if !r.cloth.hasWant {
		return
	}
	for i := range r.plan.Pieces {
		reed, ok := r.out.Node(pieceID(i) + "width-reed")
		if !ok {
			continue
		}
		off := r.settled().Sub(reed.Is).Div(reed.Is)
		if offWidth.Less(off.Abs()) {
			p := &r.plan.Pieces[i]
			r.tell("width.off", pieceID(i)+"width", p.Width.Typed, problem.Args{"off": share(off), "comes": r.cloth.finished.Figure})
		}
	}
}

// settled is the reed width that was aimed at: what the widest piece wants
// where whole repeats were fitted to it, else what the ends that were fixed come
// to. Fitting whole repeats is no fault of the plan.
func (r *run) settled() qty.Rat {
	if r.cloth.fitted {
		return r.cloth.wanted.Is
	}
	return r.cloth.inReed.Is
}

// checkStripes says when stripes without a filling group do not come to a
// number of ends that was fixed.
func (r *run) checkStripes() {
	s := r.plan.Warp.Stripes
	if s.IsZero() || s.Filler() > 0 || r.exact() {
		return
	}
	if n := qty.Int(int64(s.Fixed())); !n.Equal(r.cloth.ends.Is) {
		r.warn("stripes.ends", "warp.stripes", s.Text, problem.Args{"stripes": figure(n, Ends), "ends": r.cloth.ends.Figure})
	}
}

func (r *run) checkLengths() {
	w := &r.warpIs
	if w.spare.Is.Sign() < 0 {
		wound, _ := r.out.Node("warp.wound")
		r.warn("warp.short", wound.Path, wound.Typed, problem.Args{"short": figure(w.spare.Is.Neg(), Length), "needed": w.needed.Figure})
	}
	for i := range r.pieces {
		pr := &r.pieces[i]
		r.checkBorder(pr)
		loom, known := pr.states[warp.OnLoom]
		if !known {
			r.tell("tape.unknown", pr.id+"length", pr.piece.Length.Typed, nil)
		}
		if known && pr.states[warp.Straight].Is.Less(loom.Is) {
			r.tell("allowance.relaxation", pr.id+"length", pr.piece.Length.Typed, problem.Args{"loom": loom.Figure, "warp": pr.states[warp.Straight].Figure})
		}
	}
}

// checkBorder says when the borders alone are longer than the piece wanted.
func (r *run) checkBorder(pr *pieceRun) {
	exact, ok := r.out.Node(pr.id + "picks.exact")
	fixed := qty.Int(int64(pr.near + pr.far + pr.piece.Balance))
	if ok && exact.Is.Less(fixed) {
		r.warn("border.long", pr.id+"border", pr.piece.Border.Text, problem.Args{"border": figure(fixed, Picks), "picks": figure(exact.Is.Ceil(), Picks)})
	}
}

// checkNames tells which yarn was taken where there are several and the plan
// does not say.
func (r *run) checkNames() {
	w := r.plan.Warp
	if len(r.plan.Yarns) < 2 {
		return
	}
	if w.Yarn == "" && w.Stripes.IsZero() {
		r.tell("yarn.taken-warp", "warp", "", problem.Args{"yarn": r.warpName()})
	}
	if r.plan.Weft.Yarn == "" && w.Yarn == "" && !r.hasOrders() && len(r.plan.Weft.Shares) == 0 {
		r.tell("yarn.taken-weft", "weft", "", problem.Args{"yarn": r.weftYarn()})
	}
}

// checkYarns says where the yarn in hand is short and nothing says how to buy
// more, and where hardly any is left over.
func (r *run) checkYarns() {
	r.checkNames()
	for _, name := range r.yarnNames() {
		y, ok := r.plan.YarnNamed(name)
		if !ok {
			continue
		}
		id := yarnID(name)
		left, has := r.out.Node(id + "stock-left")
		if has && left.Is.Sign() < 0 && !y.PutUp.Given() {
			r.warn("yarn.short", "yarns."+name+".stock", y.Stock.Typed, problem.Args{"yarn": name, "short": figure(left.Is.Neg(), YarnLength)})
		}
		over, bought := r.out.Node(id + "left")
		need, _ := r.out.Node(id + "need")
		if bought && over.Is.Less(need.Is.Mul(tightYarn)) {
			r.tell("yarn.tight", "yarns."+name+".put-up", y.PutUp.Typed, problem.Args{"yarn": name, "left": over.Figure})
		}
	}
}
