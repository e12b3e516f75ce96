package app

import (
	"context"
	"slices"

	"sley/internal/engine/defaults"
	"sley/internal/engine/reckon"
	"sley/internal/engine/review"
	"sley/internal/trade/loom"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/record"
)

// Looking is how a draft is looked over.
type Looking struct {
	ID       record.ID
	Loom     record.ID // of the shelf, that a draft of the shelf is for; 0: none said
	Whole    bool      // the whole warp, as Table has it
	Use      string    // of Uses; empty: any cloth
	Shuttles Shuttles
}

// Looked is what there is to tell of a draft, the gravest first.
type Looked struct {
	Version  int
	Findings []review.Finding
}

// Uses lists what a cloth can be for, as the limits of floats go by it.
func Uses() []string {
	var out []string
	for _, l := range defaults.FloatLimits() {
		if l.Use != "" {
			out = append(out, l.Use)
		}
	}
	return out
}

// LookOver tells what an experienced weaver would say of a draft before it is woven, each
// with its place and what would mend it. It is nil when the list has errors. Trouble:
// NotFound where the document has no draft.
func (s *Studio) LookOver(ctx context.Context, asked Looking) (*Looked, *problem.List, error) {
	list := &problem.List{}
	weaving, err := asked.Shuttles.weaving()
	if err != nil {
		list.Fail("look.shuttles", "shuttles", asked.Shuttles.Order, problem.Args{"why": err.Error()})
	}
	if asked.Use != "" && !slices.Contains(Uses(), asked.Use) {
		list.Fail("look.use", "use", asked.Use, problem.Args{"valid": Uses()})
	}
	if list.Failed() {
		return nil, list, nil
	}
	var out *Looked
	err = s.read(ctx, func(r record.Reader) error {
		d, b, err := openDocument(r, asked.ID)
		if err != nil {
			return err
		}
		var t *Table
		if t, list, err = tableOf(r, d, b, asked.Whole); t == nil {
			return err
		}
		c := review.Context{Use: asked.Use, Shuttles: weaving.Shuttles, Start: weaving.Start}
		if c.Loom, err = lookedOn(r, asked.Loom); err != nil {
			return err
		}
		if d.Kind == record.Warp {
			b.wovenOn(&c, t)
		}
		out = &Looked{t.Version, review.Review(t.Draft, c)}
		return err
	})
	return out, list, err
}

// lookedOn is a loom of the shelf; nil where none is said. Trouble: NotFound where it is none.
func lookedOn(r record.Reader, id record.ID) (*loom.Loom, error) {
	if id == 0 {
		return nil, nil
	}
	d, b, err := openDocument(r, id)
	if err != nil {
		return nil, err
	}
	if d.Kind != record.Loom {
		return nil, &record.Trouble{Code: record.NotFound, Found: string(record.Loom)}
	}
	l, _, _ := b.loom()
	return &l, nil
}

// wovenOn says what a warp is woven on and how close.
func (b *body) wovenOn(c *review.Context, t *Table) {
	now := b.reckon()
	if now.result == nil {
		c.Loom = &now.plan.Loom
		return
	}
	plan := now.result.Plan
	c.Loom = &plan.Loom
	c.Ends = wholeOf(now.result, "ends")
	c.Fill = review.Span{From: t.FillEnds[0], To: t.FillEnds[1]}
	c.Sett, c.Picks = perLength(now.result, "sett.exact"), perLength(now.result, "picks.wanted")
	c.Floating = [2]bool{plan.Warp.Floats > 0, plan.Warp.Floats > 1}
	if t.Whole {
		c.Fill, c.Ends = review.Span{}, 0
	}
}

// perLength is a density of a reckoning; the zero value where it has none.
func perLength(r *reckon.Result, id string) qty.Density {
	n, ok := r.Node(id)
	if !ok || n.Kind != reckon.Density {
		return qty.Density{}
	}
	return qty.Density{Threads: n.Is.Mul(qty.Int(int64(qty.Inch))), Over: qty.Inch}
}
