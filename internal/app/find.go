package app

import (
	"context"
	"strconv"
	"strings"

	"sley/internal/trade/near"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// mostListed is how many documents a list gives at once.
const mostListed = 200

// List gives the documents that are asked for, in the order of names, and how many there
// are in all. At most 200 come at once.
func (s *Studio) List(ctx context.Context, q record.Query) (cards []Card, total int, err error) {
	q.Most = min(max(q.Most, 1), mostListed)
	err = s.read(ctx, func(r record.Reader) error {
		found, n, err := r.List(q)
		total = n
		if err == nil {
			cards, err = cardsOf(r, found)
		}
		return err
	})
	return cards, total, err
}

// cardsOf reads what a list shows of documents, of warps with how far they are woven.
func cardsOf(r record.Reader, found []record.Document) (cards []Card, err error) {
	units, err := unitsOf(r)
	if err != nil {
		return nil, err
	}
	for _, d := range found {
		c := cardOf(d)
		c.Units.Book = units
		if c.Facts.Stage == record.OnTheWay || c.Facts.Stage == record.Done {
			if c.Woven, err = wovenOf(r, d.ID); err != nil {
				return nil, err
			}
		}
		cards = append(cards, c)
	}
	return cards, nil
}

// Counts counts the documents of the book that were not removed.
func (s *Studio) Counts(ctx context.Context) (record.Counts, error) {
	var counts record.Counts
	err := s.read(ctx, func(r record.Reader) (err error) {
		counts, err = r.Counts()
		return err
	})
	return counts, err
}

// Named finds a document by its name or its number. Without any, or with several of the
// name, the list says so and the card is nil.
func (s *Studio) Named(ctx context.Context, kind record.Kind, name string) (*Card, *problem.List, error) {
	var found []record.Document
	var alike string
	err := s.read(ctx, func(r record.Reader) (err error) {
		if found, err = named(r, kind, name); err == nil && len(found) == 0 {
			alike, err = nearest(r, kind, name)
		}
		return err
	})
	list := &problem.List{}
	switch {
	case err != nil:
		return nil, nil, err
	case len(found) == 0:
		list.Fail("document.none", "", name, problem.Args{"kind": string(kind), "near": alike})
		return nil, list, nil
	case len(found) > 1:
		list.Fail("document.several", "", name, problem.Args{"kind": string(kind), "valid": numbersOf(found)})
		return nil, list, nil
	}
	c := cardOf(found[0])
	return &c, list, nil
}

// nearest is the name of a document of the kind that may have been meant; nothing when
// all are too far.
func nearest(r record.Reader, kind record.Kind, name string) (string, error) {
	all, err := r.All()
	var names []string
	for _, d := range all {
		if d.Kind == kind && !d.Removed {
			names = append(names, d.Name)
		}
	}
	return near.To(strings.TrimSpace(name), names), err
}

// named gives the document of that number, or those of that name: the same in every
// letter, or else whatever the case. What was removed is found when nothing else is.
func named(r record.Reader, kind record.Kind, name string) ([]record.Document, error) {
	name = strings.TrimSpace(name)
	if n, err := strconv.ParseInt(name, 10, 64); err == nil {
		d, err := r.Card(record.ID(n))
		if err == nil && d.Kind == kind {
			return []record.Document{d}, nil
		}
		if err != nil && !record.Is(err, record.NotFound) {
			return nil, err
		}
	}
	for _, removed := range []bool{false, true} {
		found, err := ofName(r, record.Query{Kind: kind, Words: name, Removed: removed, Most: mostListed}, name)
		if err != nil || len(found) > 0 {
			return found, err
		}
	}
	return nil, nil
}

// ofName gives the documents among those asked for that have the name.
func ofName(r record.Reader, q record.Query, name string) ([]record.Document, error) {
	var same, alike []record.Document
	for {
		found, _, err := r.List(q)
		if err != nil {
			return nil, err
		}
		for _, d := range found {
			if d.Name == name {
				same = append(same, d)
			}
			if strings.EqualFold(d.Name, name) {
				alike = append(alike, d)
			}
		}
		if len(found) < q.Most {
			break
		}
		last := found[len(found)-1]
		q.After, q.AfterID = last.Sort, last.ID
	}
	if len(same) > 0 {
		return same, nil
	}
	return alike, nil
}

func numbersOf(found []record.Document) []string {
	var out []string
	for _, d := range found {
		out = append(out, strconv.FormatInt(int64(d.ID), 10))
	}
	return out
}

// Show gives a document as it stands: its card, and what was typed, for reading.
func (s *Studio) Show(ctx context.Context, id record.ID) (*Shown, error) {
	var out *Shown
	err := s.read(ctx, func(r record.Reader) (err error) {
		out, err = shown(r, id)
		return err
	})
	return out, err
}

// Shown is a document that was opened.
type Shown struct {
	Card
	Text     []byte // as a plan file has it; of a draft its interchange text
	Note     string // of a yarn, a loom, a draft; that of a warp is in its text
	Problems *problem.List
	Origins  []Origin
	Started  bool
	Stock    *Stock    // of a yarn
	Plan     []byte    // JSON, its values by the paths that Save takes; of a draft its name and note
	Samples  []Sampled // of a yarn
}

func shown(r record.Reader, id record.ID) (*Shown, error) {
	d, b, err := openDocument(r, id)
	if err != nil {
		return nil, err
	}
	out := &Shown{Card: cardOf(d), Note: b.Note, Origins: b.Origins, Problems: b.problems(d.Kind)}
	if out.Units.Book, err = unitsOf(r); err != nil {
		return nil, err
	}
	if out.Text, err = b.readable(d.Kind); err != nil {
		return nil, err
	}
	if out.Plan, err = b.values(d.Kind); err != nil {
		return nil, err
	}
	switch d.Kind {
	case record.Warp:
		if _, out.Started, err = started(r, id); err == nil {
			out.Woven, err = wovenOf(r, id)
		}
	case record.Yarn:
		out.Samples = b.samples()
		out.Stock, err = stockOf(r, id, b)
	}
	return out, err
}

// problems are those of a document as it stands.
func (b *body) problems(kind record.Kind) *problem.List {
	if kind != record.Warp {
		return b.check(kind)
	}
	return b.reckon().list
}

// unplaced takes the places in a file away, where there is no file: the paths stay.
func unplaced(list *problem.List) *problem.List {
	out := &problem.List{}
	for _, p := range list.All() {
		p.Place = problem.Place{}
		out.Add(p)
	}
	return out
}

// readable is a document as text.
func (b *body) readable(kind record.Kind) ([]byte, error) {
	if kind == record.Draft {
		if b.WIF == nil {
			return nil, nil
		}
		return []byte(b.WIF.Text), nil
	}
	var out []byte
	parts := b.parts(kind)
	for i := len(parts) - 1; i >= 0; i-- {
		tree, err := parts[i].tree()
		if err != nil {
			return nil, err
		}
		if text := tree.Text(); len(text) > 0 && parts[i].before != "" {
			out = append(out, "\n["+parts[i].before+"]\n"...)
			out = append(out, text...)
		} else {
			out = append(out, text...)
		}
	}
	return out, nil
}
