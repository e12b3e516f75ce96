package reckon

import (
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
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
	offFitted = qty.Frac(5, 100)  // where whole repeats were fitted; common practice, no source
	offLength = qty.Frac(10, 100) // of the length wanted, by whole motifs; common practice, no source
	tightYarn = qty.Frac(2, 100)  // of the yarn needed; common practice, no source
)

// mostTight is yarn enough to mend any fault, however much was needed.
const mostTight = 50 * qty.Metre

// check holds the reckoning against the loom and the cloth. Each problem says
// what will happen and what to do.
func (r *run) check() {
	r.checkLoom()
	r.checkHeddles()
	r.checkDraft()
	r.checkReed()
	r.checkSett()
	r.checkPicks()
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
	if w := l.Width; w.Given() {
		r.givenLength("loom.width", "loom.width", w)
		if w.Is.Rat().Less(r.cloth.occupied.Is) {
			r.warn("loom.width", "loom.width", w.Typed, problem.Args{"width": length(w.Is), "needs": r.cloth.occupied.Figure})
		}
	}
	r.checkInReed()
	if b := l.BeamHolds; b.Given() {
		r.givenLength("loom.beam-holds", "loom.beam-holds", b)
		if b.Is.Rat().Less(r.warpIs.wound.Is) {
			r.warn("loom.beam", "loom.beam-holds", b.Typed, problem.Args{"holds": length(b.Is), "wound": Node{ID: "warp.wound", Figure: r.warpIs.wound.Figure}})
		}
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
func (r *run) checkInReed() {
	in, ok := r.out.Node("dents.in-reed")
	own := ok && r.out.Reeds[r.out.Sleying[0].Reed].Width > 0 // the loom's width is checked by itself
	if !own || !in.Is.Less(r.cloth.allDents.Is) {
		return
	}
	r.warn("loom.reed-short", "loom.reeds", r.out.Reeds[r.out.Sleying[0].Reed].Name,
		problem.Args{"dents": in.Figure, "needs": r.cloth.allDents.Figure})
}

func (r *run) checkHeddles() {
	t, l := r.plan.Warp.Threading, &r.plan.Loom
	switch need := r.plan.Shafts(); {
	case l.Shafts == 0 || need <= l.Shafts:
	case t.MaxShaft() > l.Shafts:
		r.warn("loom.shafts", "warp.threading", t.Text, problem.Args{"shafts": l.Shafts, "needs": t.MaxShaft()})
	default:
		r.warn("loom.shafts", "draft", "", problem.Args{"shafts": l.Shafts, "needs": need})
	}
	if need := r.weave().Shafts; l.Shafts > 0 && t.IsZero() && l.Shafts < need {
		r.warn("loom.weave", "loom.shafts", itoa(l.Shafts), problem.Args{"weave": r.weave().Name, "needs": need})
	}
	var shafts, short []string
	for shaft := 1; shaft <= len(l.Heddles); shaft++ {
		spare, ok := r.out.Node("heddles.spare[" + itoa(shaft) + "]")
		if ok && spare.Is.Sign() < 0 {
			shafts, short = append(shafts, itoa(shaft)), append(short, spare.Is.Neg().String())
		}
	}
	if len(short) > 0 {
		r.warn("loom.heddles", "loom.heddles", "", problem.Args{"shafts": shafts, "short": short})
	}
}

func (r *run) checkReed() {
	c := &r.cloth
	if !c.hasReed {
		return
	}
	chosen := r.out.Sleying[0]
	if offSett.Less(chosen.Off.Abs()) && !r.proposed() {
		wanted, _ := r.out.Node("sett.wanted")
		r.tell("sett.off", "warp.sett", wanted.Typed, problem.Args{"exact": c.density.Figure, "off": share(chosen.Off)})
	}
	if fill, known := r.crowding(chosen); known && reedFull.Less(fill) {
		r.warn("reed.full", "warp.sett", r.out.Reeds[chosen.Reed].Name, problem.Args{"fill": share(fill), "ends": c.order.Most(), "yarn": r.warpName()})
	}
	r.checkCrammed()
}

// checkCrammed says where a stripe's own density has no order in the reed
// chosen.
func (r *run) checkCrammed() {
	for _, run := range r.plan.Warp.Stripes.Totals(1) {
		if !run.Density.Given() {
			continue
		}
		wanted := run.Density.Is.PerNM()
		exact, order := r.cram(wanted)
		off := exact.Sub(wanted).Div(wanted)
		if offSett.Less(off.Abs()) {
			r.tell("sett.stripe-off", "warp.stripes", run.Density.Typed, problem.Args{"exact": density(exact), "off": share(off), "order": order.String()})
		}
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
	greatest := sideBySide(y).Mul(w.Factor()).Mul(qty.Int(int64(r.cloth.layers)))
	part := r.cloth.density.Is.Div(greatest)
	args := problem.Args{"part": share(part), "greatest": density(greatest), "weave": w.Name, "yarn": y.Name}
	switch sett := r.plan.Warp.Sett.Typed; {
	case tooClose.Less(part):
		r.warn("sett.close", "warp.sett", sett, args)
	case part.Less(tooOpen) && r.plan.Wash != "fulled" && w.Class != "lace":
		r.warn("sett.open", "warp.sett", sett, args)
	}
}

// sideBySide is how many threads of a yarn lie side by side in a length.
func sideBySide(y *yarn.Yarn) qty.Rat { return y.Diameters().Div(qty.Inch.Rat()) }

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

// checkPicks says when more picks are wanted than there is room for: picks of
// plain, twill, satin and basket touch at the yarn's diameters, and of any weave
// those of one face do at twice as many.
func (r *run) checkPicks() {
	y, ok := r.plan.YarnNamed(r.weftYarn())
	if !ok || y.Grist().IsZero() || !r.weft.hasPicks || r.hasOrders() {
		return
	}
	room := sideBySide(y)
	if !touching(r.weave().Name) {
		room = room.Mul(qty.Int(2))
	}
	if picks := r.pieces[0].ppi; room.Less(picks.Is) {
		r.warn("picks.close", "weft.picks", r.plan.Weft.Picks.Typed, problem.Args{"picks": picks.Figure, "room": density(room), "yarn": y.Name})
	}
}

// touching names the weaves whose picks lie side by side, one to a shed.
func touching(weave string) bool {
	switch weave {
	case "plain", "basket", "2/1 twill", "2/2 twill", "3/1 twill", "point twill", "satin", "huck", "lace", "waffle":
		return true
	}
	return false
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
		off := r.cloth.inReed.Is.Sub(reed.Is).Div(reed.Is)
		if most := r.widthMayBeOff(reed.Is); most.Less(off.Abs()) {
			p := &r.plan.Pieces[i]
			r.tell(wider("width", off), pieceID(i)+"width", p.Width.Typed, problem.Args{"off": share(off.Abs()), "comes": r.cloth.finished.Figure})
		}
	}
}

// widthMayBeOff is how far the width may be off before it is told: what is
// usual, and more where whole repeats were fitted to the widest piece.
func (r *run) widthMayBeOff(wanted qty.Rat) qty.Rat {
	if r.cloth.fitted && wanted.Equal(r.cloth.wanted.Is) {
		return offFitted
	}
	return offWidth
}

// wider names a figure that is off by its direction.
func wider(what string, off qty.Rat) string {
	if off.Sign() < 0 {
		return what + ".under"
	}
	return what + ".over"
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
		needed, _ := r.out.Node("warp.needed")
		short := Node{ID: "warp.short", Figure: figure(w.spare.Is.Neg(), Length)}
		r.warn("warp.short", wound.Path, wound.Typed, problem.Args{"short": short, "needed": needed})
	}
	for i := range r.pieces {
		pr := &r.pieces[i]
		r.checkBorder(pr)
		r.checkLength(pr)
		loom, known := pr.states[warp.OnLoom]
		if !known {
			r.tell("tape.unknown", pr.id+"length", pr.piece.Length.Typed, nil)
		}
		if known && pr.states[warp.Straight].Is.Less(loom.Is) {
			r.tell("allowance.relaxation", pr.id+"length", pr.piece.Length.Typed, problem.Args{"loom": loom.Figure, "warp": pr.states[warp.Straight].Figure})
		}
	}
}

// checkLength says when whole motifs bring the piece far from the length wanted.
func (r *run) checkLength(pr *pieceRun) {
	wanted, state := pr.piece.Length.Is.Rat(), pr.piece.Length.State
	n, ok := r.out.Node(pr.id + "comes-out")
	if state != warp.Finished || !ok || wanted.IsZero() {
		return
	}
	if off := n.Is.Sub(wanted).Div(wanted); offLength.Less(off.Abs()) {
		r.tell(wider("length", off), pr.id+"length", pr.piece.Length.Typed, problem.Args{"off": share(off.Abs()), "comes": n})
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

// checkGrist says when a stock, a put-up or a price cannot be reckoned with
// because nothing says how long the yarn is in its weight.
func (r *run) checkGrist(id string, y *yarn.Yarn) {
	_, used := r.out.Node(id + "need")
	weighed := y.Stock.Is.Mass > 0 || y.PutUp.Is.Mass > 0 || y.PriceMass > 0
	if used && weighed && y.Grist().IsZero() {
		r.warn("yarn.no-grist", "yarns."+y.Name, y.Name, problem.Args{"yarn": y.Name})
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
		r.checkGrist(id, y)
		left, has := r.out.Node(id + "stock-left")
		if has && left.Is.Sign() < 0 && !y.PutUp.Given() {
			r.warn("yarn.short", "yarns."+name+".stock", y.Stock.Typed, problem.Args{"yarn": name, "short": Node{ID: id + "short", Figure: figure(left.Is.Neg(), YarnLength)}})
		}
		over, bought := r.out.Node(id + "left")
		need, _ := r.out.Node(id + "need")
		if bought && over.Is.Less(qty.Min(need.Is.Mul(tightYarn), mostTight.Rat())) {
			r.tell("yarn.tight", "yarns."+name+".put-up", y.PutUp.Typed, problem.Args{"yarn": name, "left": over})
		}
	}
}
