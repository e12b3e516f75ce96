package app

import (
	"bytes"
	"context"
	"slices"
	"strconv"

	"sley/internal/edge/render/png"
	"sley/internal/engine/draw/drafting"
	"sley/internal/engine/reckon"
	"sley/internal/trade/draft"
	"sley/internal/trade/order"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/record"
	"sley/internal/trade/warp"
)

// Pictured is what of a document can be drawn.
type Pictured struct {
	Version int
	Kind    record.Kind
	// Result is the reckoning of a warp, and of a loom a plan with nothing but that and
	// its board; nil of others, and where the plan has errors.
	Result *reckon.Result
	Draft  *Drafted // of a draft; nil of others
}

// Pictured opens a document to be drawn, a draft after changes as ChangeDraft makes them.
// The error is the book's trouble, or that a change cannot be made: *ChangeError.
func (s *Studio) Pictured(ctx context.Context, id record.ID, changes []string) (*Pictured, error) {
	var d record.Document
	var b *body
	err := s.read(ctx, func(r record.Reader) (err error) {
		d, b, err = openDocument(r, id)
		return err
	})
	if err != nil {
		return nil, err
	}
	out := &Pictured{Version: d.Version, Kind: d.Kind}
	switch d.Kind {
	case record.Warp:
		out.Result = b.drawable()
	case record.Loom:
		l, winding, _ := b.loom()
		plan := &warp.Plan{Loom: l, Winding: winding}
		if reckon.Metric(l.Width.Typed) {
			plan.Units.Length = "cm"
		}
		out.Result = &reckon.Result{Plan: plan}
	case record.Draft:
		out.Draft, err = b.changed(changes)
	}
	return out, err
}

// adopted reads the plan of a warp, with its draft.
func (b *body) adopted() (*warp.Plan, *problem.List, error) {
	tree, err := b.plan()
	if err != nil {
		return nil, nil, err
	}
	plan, list := tree.Plan("")
	Source{Beside: b.beside}.adopt(plan, list)
	return plan, list, nil
}

// drawable reckons a warp with all that is drawn of it; nil where the plan has errors.
func (b *body) drawable() *reckon.Result {
	plan, list, err := b.adopted()
	if err != nil || list.Failed() {
		return nil
	}
	return reckon.Solve(plan, reckon.Options{Tape: true})
}

// ChangeError is that changes of a draft cannot be made.
type ChangeError struct{ Err error }

func (e *ChangeError) Error() string { return e.Err.Error() }

// Unwrap gives what was wrong.
func (e *ChangeError) Unwrap() error { return e.Err }

// changed is the draft of a body after changes; nil where it cannot be read.
func (b *body) changed(changes []string) (*Drafted, error) {
	d, _ := b.draft()
	if d == nil {
		return nil, nil
	}
	out := &Drafted{Draft: d}
	if len(changes) == 0 {
		return out, nil
	}
	made, err := ChangeDraft(out, changes)
	if err != nil {
		return nil, &ChangeError{err}
	}
	return made, nil
}

// The picture of a cloth: how large it may be, and how many threads it has each way.
const (
	clothDots    = 480
	clothThreads = 120
	leastShown   = 40
)

// Cloth is a picture of the cloth, a PNG of at most 480 by 480 dots: of a warp its left
// edge from the first pick on, in the colours of its yarns; of a draft its repeat again and
// again. It reports false where there is no cloth, or it is not known how it interlaces.
func (p *Pictured) Cloth() ([]byte, bool) {
	var d *draft.Draft
	switch {
	case p.Draft != nil:
		d = shownOften(p.Draft.Draft)
	case p.Result != nil:
		d, _ = woven(p.Result, clothThreads)
	}
	if d == nil || d.Ends() == 0 || d.Picks() == 0 || d.Check().Failed() {
		return nil, false
	}
	cells, ok := drafting.Cloth(d, clothDots/max(d.Ends(), d.Picks()))
	if !ok {
		return nil, false
	}
	var out bytes.Buffer
	if png.EncodeCells(&out, cells, 96) != nil {
		return nil, false
	}
	return out.Bytes(), true
}

// shownOften is a draft again and again until there is enough to look at, and no more.
func shownOften(d *draft.Draft) *draft.Draft {
	if d.Ends() == 0 || d.Picks() == 0 {
		return nil
	}
	d = d.RepeatEnds((leastShown + d.Ends() - 1) / d.Ends()).RepeatPicks((leastShown + d.Picks() - 1) / d.Picks())
	return d.First(clothThreads, clothThreads)
}

// woven is the first ends and picks of a warp as a draft in its colours, at most so many
// each way, and the yarns of its palette; nil where it is not known how it interlaces.
func woven(r *reckon.Result, most int) (*draft.Draft, []string) {
	ends, picks := min(wholeOf(r, "ends"), most), min(clothThreads, most)
	if n, ok := r.Node("pieces[0].picks"); ok && n.Is.IsInt() {
		picks = min(most, n.Is.Count(qty.Nearest))
	}
	d := interlaced(r.Plan, ends, picks)
	if d == nil {
		return nil, nil
	}
	y := yarns{palette: map[string]int{}, d: d, plan: r.Plan}
	for i := range r.Plan.Yarns { // so that a colour keeps its place, whatever has it
		y.of(r.Plan.Yarns[i].Name)
	}
	for _, s := range r.Stripes {
		d.Warp.Colours = y.add(d.Warp.Colours, s.Yarn, s.Ends.Count(qty.Nearest), len(d.Threading))
	}
	for _, run := range firstPicks(r.Plan, picks) {
		d.Weft.Colours = y.add(d.Weft.Colours, run.Name, run.Count, picks)
	}
	return d, y.names
}

// interlaced is the first threads of a plan by its draft, or in plain weave where it says
// no draft and that is its weave.
func interlaced(plan *warp.Plan, ends, picks int) *draft.Draft {
	d := &draft.Draft{Shafts: plan.Shafts(), Treadles: len(plan.Drafting.Ups), Shed: plan.Loom.Shed, Ties: plan.Ties()}
	threading, _ := plan.Warp.Threading.Laid(ends, ends)
	picked, _ := plan.Drafting.Picked().Laid(picks, picks)
	d.Threading = draft.ShaftsOf(threading)
	if plan.Drafting.LiftPlan.IsZero() {
		d.Treadling = draft.SetsOf(picked)
	} else {
		d.Lifts = draft.SetsOf(picked)
	}
	if d.Ends() > 0 && d.Picks() > 0 {
		return d
	}
	if w, ok := warp.WeaveNamed(plan.Weave); plan.Weave != "" && (!ok || w.Ends != 2 || w.Interlacings != 2) {
		return nil
	}
	d = &draft.Draft{Shafts: 2}
	for i := range ends {
		d.Threading = append(d.Threading, i%2+1)
	}
	for i := range picks {
		d.Lifts = append(d.Lifts, draft.Of(i%2+1))
	}
	return d
}

// firstPicks is the picks of the first piece by their yarns, its border first.
func firstPicks(plan *warp.Plan, picks int) []order.Run {
	if len(plan.Pieces) == 0 {
		return nil
	}
	p := &plan.Pieces[0]
	body := p.Order
	if body.IsZero() {
		body = plan.Weft.Order
	}
	out := p.Border.Runs(1)
	near, _ := p.Borders()
	laid, _ := body.Laid(max(0, picks-near), max(picks, clothThreads))
	if p.Border.IsZero() && near > 0 {
		out = []order.Run{{Count: near}}
	}
	return append(slices.Clone(out), append(laid, order.Run{Count: picks})...)
}

// yarns puts the colours of yarns into the palette of a draft.
type yarns struct {
	palette map[string]int
	names   []string
	d       *draft.Draft
	plan    *warp.Plan
}

// add gives so many threads the colour of a yarn, up to most in all. Picks that no order
// names are of the main weft.
func (y *yarns) add(colours []int, name string, n, most int) []int {
	if name == "" {
		name = y.plan.Weft.Yarn
	}
	if name == "" {
		name = y.plan.Warp.Yarn
	}
	for range min(n, most-len(colours)) {
		colours = append(colours, y.of(name))
	}
	return colours
}

// of is the place of a yarn's colour; undyed where it says none.
func (y *yarns) of(name string) int {
	at, ok := y.palette[name]
	if ok {
		return at
	}
	c := draft.Colour{R: 0xe9, G: 0xdf, B: 0xc8}
	yarn, ok := y.plan.YarnNamed(name)
	if !ok && len(y.plan.Yarns) > 0 {
		yarn, ok = &y.plan.Yarns[0], true
	}
	if ok && len(yarn.Colour.Hex) == 7 {
		rgb, _ := strconv.ParseUint(yarn.Colour.Hex[1:], 16, 32)
		c = draft.Colour{R: uint8(rgb >> 16), G: uint8(rgb >> 8), B: uint8(rgb)}
	}
	y.palette[name] = len(y.d.Palette)
	y.names = append(y.names, name)
	y.d.Palette = append(y.d.Palette, c)
	return y.palette[name]
}
