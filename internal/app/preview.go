package app

import (
	"context"
	"slices"

	"sley/internal/edge/planfile"
	"sley/internal/engine/reckon"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
	"sley/internal/trade/warp"
)

// PreviewAsked is what a warp is to be reckoned with that is not written down.
type PreviewAsked struct {
	ID       record.ID
	Sets     []Set    // laid over the plan, as Save would
	Find     string   // the path of what is to be found backwards; empty: what the plan says
	Within   []string // what limits it; none: everything the plan gives
	Workings bool
	Only     []string // the parts that are wanted, PartYarns and so on and sections of the numbers; none: all
}

// The parts of a preview beside the sections of its numbers.
const (
	PartAllowances = "allowances"
	PartOrders     = "orders"
	PartYarns      = "yarns"
	PartSett       = "sett"
	PartFindable   = "findable"
	PartDraft      = "draft"
)

// Preview is a warp reckoned as it would be with what was asked. Whatever stands in the
// plan, half-typed too, there is a preview of it.
type Preview struct {
	Version  int            // of the document that was read
	Mark     string         // of the plan with what was laid over it
	Plan     *warp.Plan     // as far as it could be read
	Result   *reckon.Result // nil when the plan has errors
	Problems *problem.List
	Allowed  []reckon.Allowed
	Sett     *reckon.Result // what the rules of the trade advise for its yarn and weave
	Orders   []LaidOrder
	Draft    *DraftFacts // nil where the plan says nothing of its draft
	Work     WorkFacts
	Units    warp.Units // of the book
	only     []string
	tree     *planfile.Document
}

// Wants says whether a part of the preview was asked for.
func (p *Preview) Wants(part string) bool { return len(p.only) == 0 || slices.Contains(p.only, part) }

// DraftFacts is what there is to say of a draft in one line. Ends and picks are those
// after which it comes again.
type DraftFacts struct {
	Shafts, Treadles, Ends, Picks int
	Weave                         string // as DraftWeaves has it; empty where it has no name
}

// WorkFacts is how far the work on a warp is.
type WorkFacts struct {
	Stage     string // as record.Facts has it
	Wound     bool   // the length wound was written down
	Woven     int    // picks, from the start of the warp
	Of        int    // picks in all; 0 where that is not known
	Washed    bool   // a size of the finished cloth was measured
	Measured  bool   // any size was
	Amendable bool   // work began: the plan is amended only
}

// Typed is what stands at a path of the plan as it was typed; empty where nothing does,
// or no text.
func (p *Preview) Typed(path string) string { return textAt(p.tree, path) }

// Preview reckons a warp with values laid over its plan. Nothing is written. After work
// began only amendments are laid over it; others are refused among the problems, as are
// paths that a plan cannot have. Trouble: NotFound where it is no warp.
func (s *Studio) Preview(ctx context.Context, asked PreviewAsked) (*Preview, error) {
	out := &Preview{Problems: &problem.List{}, only: asked.Only}
	var stands *body
	err := s.read(ctx, func(r record.Reader) error {
		d, b, err := openDocument(r, asked.ID)
		if err != nil {
			return err
		}
		if d.Kind != record.Warp {
			return &record.Trouble{Code: record.NotFound, Found: string(record.Warp)}
		}
		stands, out.Version = b, d.Version
		if out.Units, err = unitsOf(r); err == nil {
			out.Work, err = workOf(r, d)
		}
		return err
	})
	if err == nil {
		err = out.reckon(stands, asked)
	}
	return out, err
}

// reckon lays what was asked over a plan and reckons it.
func (p *Preview) reckon(b *body, asked PreviewAsked) error {
	refused := b.lay(asked.Sets, p.Work.Amendable)
	tree, err := b.plan()
	if err != nil {
		return err
	}
	p.tree, p.Mark = tree, Mark(tree.Text())
	findIn(tree, asked)
	plan, list := tree.Plan("")
	Source{Beside: b.beside}.adopt(plan, list)
	p.Plan = plan
	if !list.Failed() {
		p.Result = reckon.Solve(plan, reckon.Options{Workings: asked.Workings, Tape: true})
		p.Plan = p.Result.Plan
		list.Append(&p.Result.Problems)
	}
	p.Problems.Append(refused)
	p.Problems.Append(unplaced(list))
	p.tell()
	return nil
}

// lay writes values into a body of which nothing is kept, and says which could not be.
func (b *body) lay(sets []Set, amends bool) *problem.List {
	list := &problem.List{}
	var may []Set
	for _, set := range sets {
		if amends && !amendable(set.Path) {
			list.Fail("warp.frozen", set.Path, string(set.Value), problem.Args{"was": b.at(set.Path)})
			continue
		}
		may = append(may, set)
	}
	list.Append(b.apply(record.Warp, may))
	return list
}

// at is what stands at a path of a plan.
func (b *body) at(path string) string {
	tree, err := b.plan()
	if err != nil {
		return ""
	}
	return textAt(tree, path)
}

// findIn writes what is to be found into a plan.
func findIn(tree *planfile.Document, asked PreviewAsked) {
	if asked.Find == "" {
		return
	}
	mustSet(tree, "find.what", planfile.TextValue(asked.Find))
	tree.Remove("find.within")
	for i, path := range asked.Within {
		mustSet(tree, problem.Path{{Key: "find"}, {Key: "within"}, {Item: true, Index: i}}.String(), planfile.TextValue(path))
	}
}

// tell finds what is shown beside the numbers.
func (p *Preview) tell() {
	if p.Wants(PartAllowances) {
		p.Allowed = reckon.Allowances(p.Plan)
	}
	if p.Wants(PartSett) {
		p.Sett = reckon.Advise(p.Plan)
	}
	if p.Wants(PartOrders) {
		p.Orders = p.laidOrders()
	}
	if p.Wants(PartDraft) {
		p.Draft = draftFactsOf(p.Plan)
	}
	p.Work.Wound = p.Plan.Built.Wound.Given()
	if p.Result != nil {
		p.Work.Of = wholeOf(p.Result, "weft.picks")
	}
}

// workOf is how far the work on a warp is, as its events tell.
func workOf(r record.Reader, d record.Document) (WorkFacts, error) {
	stage, err := stageOf(r, d)
	w := WorkFacts{Stage: stage, Amendable: stage != record.Planned}
	if err != nil || !w.Amendable {
		return w, err
	}
	_, w.Amendable, err = started(r, d.ID)
	if err != nil {
		return w, err
	}
	if w.Woven, err = wovenOf(r, d.ID); err != nil {
		return w, err
	}
	sizes, err := r.Events(d.ID, record.Measurement)
	for _, e := range record.Standing(sizes) {
		w.Measured = true
		w.Washed = w.Washed || e.State == warp.Finished.String()
	}
	return w, err
}

// wovenOf is the pick that was woven last.
func wovenOf(r record.Reader, id record.ID) (int, error) {
	events, err := r.Events(id, record.Progress)
	return record.Reached(events, record.Woven, ""), err
}
