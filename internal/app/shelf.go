package app

import (
	"context"
	"encoding/json"

	"sley/internal/edge/planfile"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// The parts of a warp that can come from a shelf, beside its yarns.
const (
	loomPart  = "loom"
	draftPart = "draft"
)

// Use copies a yarn, a loom or a draft from its shelf into a warp, in the place of what
// stands there; a yarn goes under the name that it has in the plan. The copy is the
// warp's own, and says where it came from. Trouble: NotFound where e is of no warp.
func (s *Studio) Use(ctx context.Context, e Edit, part string, shelf record.ID) (Saved, error) {
	d, err := s.document(ctx, shelf)
	if err == nil {
		err = s.mustBeWarp(ctx, e.ID)
	}
	if err != nil {
		return Saved{}, err
	}
	return s.change(ctx, e, record.Edit, func(b *body, _ record.Kind) *problem.List {
		return b.use(part, d)
	})
}

// mustBeWarp fails for a document that is no warp: it has no parts.
func (s *Studio) mustBeWarp(ctx context.Context, id record.ID) error {
	return s.read(ctx, func(r record.Reader) error { return isWarp(r, id) })
}

func isWarp(r record.Reader, id record.ID) error {
	d, err := r.Card(id)
	if err == nil && d.Kind != record.Warp {
		err = &record.Trouble{Code: record.NotFound, Found: string(record.Warp)}
	}
	return err
}

// kindOfPart is what on a shelf a part of a warp can be; false where it is no part.
func kindOfPart(part string) (record.Kind, bool) {
	steps, err := problem.ParsePath(part)
	switch {
	case part == loomPart:
		return record.Loom, true
	case part == draftPart:
		return record.Draft, true
	case err == nil && len(steps) == 2 && steps[0].Key == "yarns" && steps[1].Key != "":
		return record.Yarn, true
	}
	return "", false
}

// noPart refuses what is no part of a warp, or none that such a document can be.
func noPart(part, kind string) *problem.List {
	list := &problem.List{}
	list.Fail("shelf.part", part, part, problem.Args{"kind": kind, "valid": []string{"yarns.NAME", loomPart, draftPart}})
	return list
}

func (s *Studio) document(ctx context.Context, id record.ID) (record.Document, error) {
	var d record.Document
	err := s.read(ctx, func(r record.Reader) (err error) {
		d, err = r.Document(id)
		return err
	})
	return d, err
}

// use copies a document of a shelf into the body of a warp.
func (b *body) use(part string, d record.Document) *problem.List {
	if kind, ok := kindOfPart(part); !ok || kind != d.Kind {
		return noPart(part, string(d.Kind))
	}
	from, err := openBody(d.Body)
	if err != nil {
		return unread(part, err)
	}
	tree, err := b.plan()
	if err != nil {
		return unread("", err)
	}
	switch d.Kind {
	case record.Loom:
		err = copyLoom(tree, from)
	case record.Draft:
		copyDraft(tree, b, from)
	case record.Yarn:
		err = graft(tree, part, from.Yarn)
	}
	if err != nil {
		return unread(part, err)
	}
	b.Plan = tree.JSON()
	b.cameFrom(part, d)
	return &problem.List{}
}

// graft puts a tree into a plan.
func graft(tree *planfile.Document, at string, data []byte) error {
	copied, err := part{at: rawOf(data)}.tree()
	if err != nil {
		return err
	}
	tree.Remove(at)
	return tree.Graft(at, copied)
}

func rawOf(data []byte) *json.RawMessage {
	raw := json.RawMessage(data)
	return &raw
}

// copyLoom puts a loom with its board into a plan; how a warp is wound stays, where the
// loom does not say it.
func copyLoom(tree *planfile.Document, from *body) error {
	if err := graft(tree, "loom", from.Loom); err != nil || len(from.Winding) == 0 {
		return err
	}
	winding, err := part{at: &from.Winding}.tree()
	if err != nil {
		return err
	}
	for _, key := range []string{"board", "pegs", "mill"} { // a board, or pegs, or a mill
		tree.Remove("winding." + key)
	}
	for _, key := range windingKeys {
		if v, ok := winding.Get(key); ok {
			if err := tree.Set("winding."+key, v); err != nil {
				return err
			}
		}
	}
	return nil
}

var windingKeys = []string{"board", "pegs", "mill", "peg", "raddle", "section", "beam-girth"}

// copyDraft has a plan woven by a draft: what it said of threading and treadling goes.
func copyDraft(tree *planfile.Document, b, from *body) {
	if from.WIF == nil {
		return
	}
	for _, path := range []string{"warp.threading", "draft"} {
		tree.Remove(path)
	}
	b.WIF = &text{from.WIF.Name, from.WIF.Text}
	mustSet(tree, "draft.wif", planfile.TextValue(from.WIF.Name))
}

// TakeNewer copies the newest version of what a part of a warp came from once more. How
// much of a yarn the plan says is in stock stays: the shelf keeps that as entries.
func (s *Studio) TakeNewer(ctx context.Context, e Edit, part string) (Saved, error) {
	list := &problem.List{}
	var from record.Document
	err := s.read(ctx, func(r record.Reader) error {
		_, b, err := openDocument(r, e.ID)
		if err != nil {
			return err
		}
		o := b.originOf(part)
		if o == nil {
			list.Fail("shelf.no-origin", part, part, nil)
			return nil
		}
		d, err := r.Marked(o.Mark)
		if err != nil {
			return err
		}
		from, err = r.Document(d.ID)
		return err
	})
	if err != nil || list.Failed() {
		return refused(list), err
	}
	return s.change(ctx, e, record.Take, func(b *body, _ record.Kind) *problem.List { return b.renew(part, from) })
}

// renew is use of what the part came from.
func (b *body) renew(part string, d record.Document) *problem.List {
	was, err := b.plan()
	if err != nil {
		return unread("", err)
	}
	stock, had := was.Get(part + ".stock")
	list := b.use(part, d)
	if list.Failed() || !had || d.Kind != record.Yarn {
		return list
	}
	now, err := b.plan()
	if err == nil {
		err = now.Set(part+".stock", stock)
	}
	if err != nil {
		return unread(part, err)
	}
	b.Plan = now.JSON()
	return list
}
