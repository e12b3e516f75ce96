package reckon

import (
	"slices"
	"strconv"
	"strings"

	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// Backward is the answer of a reckoning backwards.
type Backward struct {
	What    string // the path of the unknown
	Found   Figure
	Step    qty.Rat // the printed step it was found in; 0 when rounding is off
	Limits  []Limit
	Binding string // the path of the limit that decides
}

// Limit is one thing that is given and may not be exceeded.
type Limit struct {
	Path       string
	Have, Need string // ids of nodes
}

// Solve reckons the plan: forwards, or, where it says what to find, backwards.
// Backwards gives the largest value of the unknown, in printed steps, whose
// needs stay within what the plan gives: stock is never exceeded, and one step
// more would exceed it. The needs grow with every unknown there is, so halving
// finds it; the forward reckoning is the only arithmetic.
func Solve(plan *warp.Plan, opt Options) *Result {
	if plan.Find.What == "" {
		return Reckon(plan, opt)
	}
	s := newSearch(plan)
	if s.set == nil {
		return s.amount(opt)
	}
	return s.solve(opt)
}

// search is one reckoning backwards.
type search struct {
	plan *warp.Plan
	kind Kind
	path string
	step qty.Rat
	set  func(p *warp.Plan, value qty.Rat)
}

func newSearch(plan *warp.Plan) *search {
	s := &search{plan: plan, path: plan.Find.What}
	piece, field := splitPath(s.path)
	switch {
	case s.path == "warp.sett":
		s.kind, s.step, s.set = Density, s.settStep(), setSett
	case field == "count":
		s.kind, s.step, s.set = Pieces, qty.Int(1), setCount(piece)
	case field == "length":
		s.kind, s.step, s.set = Length, s.benchStep(), setLength(piece)
	case field == "width":
		s.kind, s.step, s.set = Length, s.benchStep(), setWidth(piece)
	}
	return s
}

// FindPaths lists everything of a plan that can be reckoned backwards.
func FindPaths(plan *warp.Plan) []string {
	var out []string
	for i := range plan.Pieces {
		for _, field := range []string{"length", "width", "count"} {
			out = append(out, pieceID(i)+field)
		}
	}
	out = append(out, "warp.sett")
	for i := range plan.Yarns {
		out = append(out, "yarns."+plan.Yarns[i].Name)
	}
	return out
}

// Findable reports whether the path names something of the plan that can be
// reckoned backwards.
func Findable(plan *warp.Plan, path string) bool {
	return slices.Contains(FindPaths(plan), path)
}

// splitPath takes pieces[2].width apart.
func splitPath(path string) (piece int, field string) {
	rest, ok := strings.CutPrefix(path, "pieces[")
	if !ok {
		return 0, ""
	}
	number, field, _ := strings.Cut(rest, "].")
	piece, err := strconv.Atoi(number)
	if err != nil {
		return 0, ""
	}
	return piece, field
}

// benchStep is the step that lengths are printed in at the bench.
func (s *search) benchStep() qty.Rat {
	if b := s.plan.Rounding.Bench; b.Given() {
		return b.Is.Rat()
	}
	if MetricPlan(s.plan) {
		return (5 * qty.Millimetre).Rat()
	}
	return (qty.Inch / 8).Rat()
}

// settStep is half an end to the inch, or a fifth of an end to the centimetre.
func (s *search) settStep() qty.Rat {
	if MetricPlan(s.plan) {
		return qty.Frac(1, 5).Div(qty.Centimetre.Rat())
	}
	return qty.Frac(1, 2).Div(qty.Inch.Rat())
}

func setSett(p *warp.Plan, v qty.Rat) {
	per := v.Mul(qty.Inch.Rat())
	d := qty.Density{Threads: per, Over: qty.Inch}
	p.Warp.Sett = warp.Sett{Is: d, State: warp.InReed, Typed: d.String()}
}

func setCount(piece int) func(*warp.Plan, qty.Rat) {
	return func(p *warp.Plan, v qty.Rat) {
		n := v.Count(qty.Down)
		p.Pieces[piece].Count, p.Pieces[piece].CountTyped = n, itoa(n)
	}
}

func sizeOf(old warp.Size, v qty.Rat) warp.Size {
	l, _ := qty.LengthOf(v, qty.Down)
	if old.State == warp.Unsaid {
		old.State = warp.Finished
	}
	return warp.Size{Is: l, State: old.State, Typed: l.String()}
}

func setLength(piece int) func(*warp.Plan, qty.Rat) {
	return func(p *warp.Plan, v qty.Rat) { p.Pieces[piece].Length = sizeOf(p.Pieces[piece].Length, v) }
}

func setWidth(piece int) func(*warp.Plan, qty.Rat) {
	return func(p *warp.Plan, v qty.Rat) { p.Pieces[piece].Width = sizeOf(p.Pieces[piece].Width, v) }
}

// with gives the plan with the unknown at value.
func (s *search) with(value qty.Rat) *warp.Plan {
	p := *s.plan
	p.Pieces = slices.Clone(p.Pieces)
	s.set(&p, value)
	return &p
}

// limits lists what the plan gives: the stock of its yarns and its wound
// length, or those of them that it names.
func (s *search) limits(r *Result) []Limit {
	var out []Limit
	named := func(path string) bool {
		return len(s.plan.Find.Within) == 0 || slices.Contains(s.plan.Find.Within, path)
	}
	if _, ok := r.Node("warp.wound"); ok && s.woundFixed() && named("warp.wound") {
		out = append(out, Limit{"warp.wound", "warp.wound", "warp.needed"})
	}
	for _, l := range []Limit{{"loom.beam-holds", "loom.beam-holds", "warp.wound"}, {"loom.width", "loom.width", "width.occupied"}} {
		if _, ok := r.Node(l.Have); ok && named(l.Path) {
			out = append(out, l)
		}
	}
	for i := range s.plan.Yarns {
		name := s.plan.Yarns[i].Name
		if _, ok := r.Node(yarnID(name) + "stock"); ok && named("yarns."+name) {
			out = append(out, Limit{"yarns." + name, yarnID(name) + "stock", yarnID(name) + "need"})
		}
	}
	return out
}

func (s *search) woundFixed() bool {
	return s.plan.Warp.Wound.Given() || s.plan.Built.Wound.Given()
}

// over gives the first limit that the reckoning exceeds, and how much of the
// tightest limit is left over.
func (s *search) over(r *Result) (exceeded string, limits []Limit) {
	limits = s.limits(r)
	for _, l := range limits {
		have, _ := r.Node(l.Have)
		need, _ := r.Node(l.Need)
		if have.Is.Less(need.Is) {
			return l.Path, limits
		}
	}
	return "", limits
}

// reach bounds a search: 10 km of cloth, 10,000 pieces, 400 ends to the inch.
func (s *search) reach() qty.Rat {
	switch s.kind {
	case Pieces:
		return qty.Int(10_000)
	case Density:
		return qty.Int(400).Div(qty.Inch.Rat())
	}
	return (10 * qty.Kilometre).Rat()
}

// unit is the smallest value tried: one printed step, or one nanometre's
// worth where rounding is off.
func (s *search) unit() qty.Rat {
	if s.plan.Rounding.Off && s.kind == Length {
		return qty.Int(1)
	}
	return s.step
}

func (s *search) solve(opt Options) *Result {
	most := s.reach().Div(s.unit()).Floor().Whole64()
	n, binding, ok := s.largest(most)
	if !ok {
		return s.fails(binding, opt)
	}
	value := s.unit().Mul(qty.Int(n))
	r := Reckon(s.with(value), opt)
	_, limits := s.over(r)
	r.Backward = &Backward{What: s.path, Found: figure(value, s.kind), Step: s.step, Limits: limits, Binding: binding}
	if s.plan.Rounding.Off {
		r.Backward.Step = qty.Rat{}
	}
	return r
}

// largest gives the largest multiple of the unit that no limit forbids, and
// the limit that forbids the next. It doubles until one does, then halves.
func (s *search) largest(most int64) (n int64, binding string, ok bool) {
	low, high := int64(0), int64(1)
	for {
		exceeded := s.try(high)
		if exceeded != "" {
			binding = exceeded
			break
		}
		if low = high; high == most {
			return 0, "", false
		}
		high = min(high*2, most)
	}
	for high-low > 1 {
		mid := low + (high-low)/2
		if exceeded := s.try(mid); exceeded != "" {
			high, binding = mid, exceeded
		} else {
			low = mid
		}
	}
	return low, binding, low > 0
}

func (s *search) try(n int64) (exceeded string) {
	trial := s.with(s.unit().Mul(qty.Int(n)))
	trial.Winding = warp.Winding{} // dressing limits nothing
	exceeded, _ = s.over(Reckon(trial, Options{}))
	return exceeded
}

// fails reckons with the smallest value and says why nothing was found: no
// limit was given or reached, or not even one step fits.
func (s *search) fails(binding string, opt Options) *Result {
	r := Reckon(s.with(s.step), opt)
	code := "find.unlimited"
	if binding != "" {
		code = "find.nothing-fits"
	}
	r.Problems = problem.List{} // what the trial values bring about is no fault of the plan
	r.Problems.Fail(code, "find.what", s.path, map[string]any{"limit": binding})
	return r
}

// amount answers how much of a yarn is needed: the forward reckoning says it.
func (s *search) amount(opt Options) *Result {
	r := Reckon(s.plan, opt)
	name := strings.TrimPrefix(s.path, "yarns.")
	need, ok := r.Node(yarnID(name) + "need")
	if !ok {
		r.Problems.Fail("find.unused-yarn", "find.what", s.path, map[string]any{"yarn": name})
		return r
	}
	r.Backward = &Backward{What: s.path, Found: need.Figure}
	return r
}

// LimitPaths lists what of a plan may limit what is found backwards.
func LimitPaths(plan *warp.Plan) []string {
	var out []string
	if plan.Warp.Wound.Given() || plan.Built.Wound.Given() {
		out = append(out, "warp.wound")
	}
	if plan.Loom.BeamHolds.Given() {
		out = append(out, "loom.beam-holds")
	}
	if plan.Loom.Width.Given() {
		out = append(out, "loom.width")
	}
	for i := range plan.Yarns {
		if plan.Yarns[i].Stock.Given() {
			out = append(out, "yarns."+plan.Yarns[i].Name)
		}
	}
	return out
}
