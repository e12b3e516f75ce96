package app

import (
	"context"
	"strings"

	"sley/internal/edge/planfile"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// PutOnShelf puts a part of a warp on the shelf: as a newer version of what it came from,
// or, where it came from none or name is not empty, as a new document of that name. The
// shelf's own newer version is not written over: that is a conflict. The warp then says
// that its part came from there.
func (s *Studio) PutOnShelf(ctx context.Context, e Edit, part, name string) (Saved, error) {
	return s.saving(ctx, func(w record.Writer) (Saved, []Changed, error) { return s.putOnShelf(w, e, part, name) })
}

func (s *Studio) putOnShelf(w record.Writer, e Edit, part, name string) (Saved, []Changed, error) {
	if err := isWarp(w, e.ID); err != nil {
		return Saved{}, nil, err
	}
	d, warp, err := openDocument(w, e.ID)
	if err != nil {
		return Saved{}, nil, err
	}
	if e.Base != d.Version || d.Removed {
		saved, err := s.behind(w, d, e.Base)
		return saved, nil, err
	}
	b, kind, list, err := warp.take(part, d.Name)
	if err != nil || list.Failed() {
		return refused(list), nil, err
	}
	if name != "" {
		b.rename(kind, name)
	}
	checkName(b.name(kind), "name", list)
	list.Append(b.check(kind))
	if list.Failed() {
		return refused(list), nil, nil
	}
	saved, changed, err := s.shelve(w, e, warp.originOf(part), kind, b, name != "")
	if err != nil || saved.Refused || saved.Conflict != nil {
		return saved, changed, err
	}
	also, err := s.remember(w, d, warp, part, saved.ID, e.Window)
	return saved, append(changed, also...), err
}

// take makes a document for the shelf of a part of a warp that has that name.
func (b *body) take(part, name string) (*body, record.Kind, *problem.List, error) {
	list := &problem.List{}
	tree, err := b.plan()
	if err != nil {
		return nil, "", list, err
	}
	if part == draftPart {
		taken, list := b.draftForShelf(name)
		return taken, record.Draft, list, nil
	}
	copied, ok := tree.Part(part)
	kind, known := kindOfPart(part)
	switch {
	case !known || !ok:
		return nil, "", noPart(part, "yarn, loom or draft"), nil
	case kind == record.Loom:
		return loomForShelf(tree, copied), kind, list, nil
	}
	copied.Remove("stock") // the shelf keeps it as events
	steps, err := problem.ParsePath(part)
	return &body{Name: steps[1].Key, Yarn: copied.JSON()}, kind, list, err
}

// loomForShelf is the loom of a plan, with the board its warp is wound on.
func loomForShelf(tree, copied *planfile.Document) *body {
	b := &body{Loom: copied.JSON()}
	if winding, ok := tree.Part("winding"); ok {
		b.Winding = boardOf(winding).JSON()
	}
	if textAt(copied, "name") == "" {
		b.rename(record.Loom, "loom")
	}
	return b
}

// boardOf leaves of a winding what belongs to the loom and not to the warp.
func boardOf(winding *planfile.Document) *planfile.Document {
	out := planfile.NewDocument()
	for _, key := range windingKeys {
		if v, ok := winding.Get(key); ok {
			mustSet(out, key, v)
		}
	}
	return out
}

func (b *body) draftForShelf(name string) (*body, *problem.List) {
	from, err := b.source(name + ".toml")
	if err != nil {
		return nil, unread(draftPart, err)
	}
	if b.WIF != nil {
		from = Source{Name: b.WIF.Name, Text: []byte(b.WIF.Text)}
	}
	d, list := ReadDraft(from)
	if d == nil {
		return nil, unplaced(list)
	}
	return &body{Name: clipped(name), WIF: &text{interchangeName(from.Name), string(d.asText(from))}}, &problem.List{}
}

// rename calls a document something else.
func (b *body) rename(kind record.Kind, name string) {
	if kind != record.Loom {
		b.Name = strings.TrimSpace(name)
		return
	}
	tree, err := part{at: &b.Loom}.tree()
	if err == nil {
		mustSet(tree, "name", planfile.TextValue(strings.TrimSpace(name)))
		b.Loom = tree.JSON()
	}
}

// shelve writes the document: anew, or as the next version of what the part came from.
func (s *Studio) shelve(w record.Writer, e Edit, from *Origin, kind record.Kind, b *body, anew bool) (Saved, []Changed, error) {
	var on record.Document
	var err error
	if from != nil && !anew {
		if on, err = w.Marked(from.Mark); err != nil && !record.Is(err, record.NotFound) {
			return Saved{}, nil, err
		}
	}
	if on.ID == 0 {
		id, changed, err := s.add(w, fresh{kind: kind, body: b, window: e.Window})
		return Saved{ID: id, Version: 1, Problems: b.problems(kind)}, changed, err
	}
	return s.changeIn(w, Edit{ID: on.ID, Base: from.Version, Window: e.Window}, record.Edit, func(was *body, _ record.Kind) *problem.List {
		b.Note = was.Note
		b.rename(kind, was.name(kind))
		*was = *b
		return &problem.List{}
	})
}

// remember writes into a warp where its part is on the shelf.
func (s *Studio) remember(w record.Writer, d record.Document, warp *body, part string, shelf record.ID, window string) ([]Changed, error) {
	on, err := w.Card(shelf)
	if err != nil {
		return nil, err
	}
	warp.cameFrom(part, on)
	if string(warp.bytes()) == string(d.Body) {
		return nil, nil
	}
	_, changed, err := s.append(w, d, warp, record.Take, window)
	return changed, err
}
