package app

import (
	"context"
	"slices"

	"sley/internal/trade/draft"
	"sley/internal/trade/order"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
	"sley/internal/trade/warp"
)

// Table is a draft as it is drawn: of the shelf, or the own copy of a warp. Its draft has a
// colour for every thread.
type Table struct {
	Version int
	Kind    record.Kind
	Name    string
	Draft   *draft.Draft
	// Names are the yarns of the palette's colours, of a warp whose colours are its yarns';
	// nil elsewhere.
	Names []string
	// Fills are the stretches of ends and of picks that a warp repeats as often as it needs,
	// the second left out; both 0 where all is repeated, or nothing.
	FillEnds, FillPicks [2]int
	Whole               bool // every end of the warp and every pick of its first piece
	// Uncoloured is a warp's draft as it is written: the colours of its threads are those of
	// its yarns, and are drawn in the whole warp.
	Uncoloured bool
	Crammed    bool // of a whole warp: its stripes say densities, or beams
	Bordered   bool // of a whole warp: its first piece has borders, or an order of its own
	// Fixed says why nothing can be drawn: empty where it can.
	Fixed FixedBy
	// Loom are the shafts and treadles of a warp's loom; 0 where it is not said.
	Shafts, Treadles int
}

// FixedBy is why a draft cannot be drawn on.
type FixedBy string

// The reasons.
const (
	FixedByStart FixedBy = "started" // work began: what stands on the loom is amended
	FixedByFile  FixedBy = "whole"   // a whole warp whose draft is an interchange text: that is drawn itself
)

// Table opens a draft of the shelf, or that of a warp, to be drawn: as it is written down,
// or whole, with every end of the warp and every pick of its first piece. It is nil when
// the list has errors. Trouble: NotFound where the document is neither.
func (s *Studio) Table(ctx context.Context, id record.ID, whole bool) (*Table, *problem.List, error) {
	var out *Table
	list := &problem.List{}
	err := s.read(ctx, func(r record.Reader) error {
		d, b, err := openDocument(r, id)
		if err != nil {
			return err
		}
		out, list, err = tableOf(r, d, b, whole)
		return err
	})
	return out, list, err
}

func tableOf(r record.Reader, d record.Document, b *body, whole bool) (*Table, *problem.List, error) {
	if d.Kind != record.Draft && d.Kind != record.Warp {
		return nil, &problem.List{}, &record.Trouble{Code: record.NotFound, Found: string(record.Draft)}
	}
	t, list := tableIn(b, d.Kind, whole)
	if t == nil {
		return nil, list, nil
	}
	t.Version, t.Kind, t.Name = d.Version, d.Kind, d.Name
	if d.Kind == record.Warp {
		if _, on, err := started(r, d.ID); err != nil || on {
			t.Fixed = FixedByStart
			return t, list, err
		}
	}
	return t, list, nil
}

// tableIn is the table of a body, with a colour for every thread.
func tableIn(b *body, kind record.Kind, whole bool) (t *Table, list *problem.List) {
	if kind == record.Warp {
		t, list = b.warpTable(whole)
	} else {
		t, list = b.shelfTable()
	}
	if t != nil {
		coloured(t.Draft)
	}
	return t, list
}

// shelfTable is the draft of a body that has an interchange text.
func (b *body) shelfTable() (*Table, *problem.List) {
	d, list := b.draft()
	if d == nil {
		return nil, list
	}
	return &Table{Draft: d.Clone()}, list
}

// The colours of threads that say none: dark ends and light picks, as drafts are printed.
var (
	plainEnd  = draft.Colour{R: 0x2a, G: 0x25, B: 0x20}
	plainPick = draft.Colour{R: 0xfd, G: 0xfb, B: 0xf6}
)

// coloured gives every thread a colour of its own, and the palette what they name.
func coloured(d *draft.Draft) {
	if len(d.Palette) == 0 {
		d.Palette = []draft.Colour{plainEnd, plainPick}
		d.Warp.Colour, d.Weft.Colour, d.Warp.Colours, d.Weft.Colours = 0, 1, nil, nil
	}
	d.Warp.Colours = colourOfEach(&d.Warp, d.Ends(), len(d.Palette))
	d.Weft.Colours = colourOfEach(&d.Weft, d.Picks(), len(d.Palette))
}

// colourOfEach is the colour of each of n threads; one that the palette has not is the first.
func colourOfEach(t *draft.Threads, n, palette int) []int {
	out := make([]int, n)
	for i := range out {
		if c := t.ColourOf(i); c >= 0 && c < palette {
			out[i] = c
		}
	}
	return out
}

// warpTable is the draft of a warp.
func (b *body) warpTable(whole bool) (*Table, *problem.List) {
	switch {
	case whole:
		return b.wholeTable()
	case b.WIF != nil:
		t, list := b.shelfTable()
		if t != nil {
			b.onLoomOf(t)
		}
		return t, list
	}
	plan, list, err := b.adopted()
	if err != nil {
		return nil, unread("", err)
	}
	t := &Table{Draft: &draft.Draft{Shed: plan.Loom.Shed, Shafts: max(1, plan.Shafts(), plan.Loom.Shafts), Ties: plan.Ties()}}
	t.Draft.Treadles, t.Uncoloured = len(t.Draft.Ties), true
	t.Draft.Threading = draft.ShaftsOf(asWritten(plan.Warp.Threading, &t.FillEnds))
	picks := draft.SetsOf(asWritten(plan.Drafting.Picked(), &t.FillPicks))
	if plan.Drafting.LiftPlan.IsZero() {
		t.Draft.Treadling = picks
	} else {
		t.Draft.Lifts = picks
	}
	t.Shafts, t.Treadles = plan.Loom.Shafts, plan.Loom.Treadles
	return t, unplaced(list)
}

// asWritten lays out an order with what fills once, and says where that stands.
func asWritten(o order.Order, fills *[2]int) []order.Run {
	before, group, after := o.Before(), o.FillRuns(), o.After()
	if len(group) > 0 {
		fills[0] = order.Threads(before)
		fills[1] = fills[0] + order.Threads(group)
	}
	return append(append(append([]order.Run{}, before...), group...), after...)
}

// onLoomOf says what loom a warp is for.
func (b *body) onLoomOf(t *Table) {
	if tree, err := b.plan(); err == nil {
		plan, _ := tree.Plan("")
		t.Shafts, t.Treadles = plan.Loom.Shafts, plan.Loom.Treadles
	}
}

// mostTable is how many ends, and how many picks, a whole table has.
const mostTable = 8000

// wholeTable is every end of a warp and every pick of its first piece in the colours of its
// yarns.
func (b *body) wholeTable() (*Table, *problem.List) {
	now := b.drawable()
	if now == nil {
		r := b.reckon()
		return nil, r.list
	}
	t, list := &Table{Whole: true}, &problem.List{}
	if t.Draft, t.Names = wovenWhole(now, list); t.Draft == nil {
		return nil, list
	}
	if b.WIF != nil {
		t.Fixed = FixedByFile
	}
	t.Crammed, t.Bordered = crammed(now.Plan.Warp.Stripes), bordered(now.Plan)
	t.Shafts, t.Treadles = now.Plan.Loom.Shafts, now.Plan.Loom.Treadles
	return t, list
}

// crammed says whether stripes say more than yarns and counts.
func crammed(o order.Order) bool {
	return slices.ContainsFunc(append(append(o.Before(), o.FillRuns()...), o.After()...), func(r order.Run) bool {
		return r.Density.Given() || r.Beam != 0
	})
}

// bordered says whether the picks of the first piece are more than the plan's order.
func bordered(plan *warp.Plan) bool {
	if len(plan.Pieces) == 0 {
		return false
	}
	near, far := plan.Pieces[0].Borders()
	return near+far > 0 || !plan.Pieces[0].Order.IsZero()
}
