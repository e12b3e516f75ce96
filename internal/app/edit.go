package app

import (
	"context"

	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// Edit is one finished gesture of a weaver's: what she set in a document, and the version
// that she saw when she did.
type Edit struct {
	ID     record.ID
	Base   int
	Window string
	Sets   []Set
}

// Conflict is what two windows did to a document at once, side by side.
type Conflict struct {
	ID          record.ID
	Kind        record.Kind
	Base, Head  int
	Removed     bool // the other removed it
	Differences []Apart
}

// Apart is a value that the two left different from what it was, or from one another.
type Apart struct {
	Path               string `json:"path"`
	Base, Theirs, Mine string `json:"-"`
}

// Save writes an edit as a new version. Half-typed values are kept as they are, and told
// among the problems; a path that the document cannot have is refused, with everything
// else that is wrong. When the document has a newer version than Base, nothing is
// written and the conflict is given.
func (s *Studio) Save(ctx context.Context, e Edit) (Saved, error) {
	return s.change(ctx, e, record.Edit, func(b *body, kind record.Kind) *problem.List {
		return b.apply(kind, e.Sets)
	})
}

// change makes a new version of a document by a function of its body. The list that it
// gives is of what refuses the change.
func (s *Studio) change(ctx context.Context, e Edit, act record.Act, do func(*body, record.Kind) *problem.List) (Saved, error) {
	return s.saving(ctx, func(w record.Writer) (Saved, []Changed, error) { return s.changeIn(w, e, act, do) })
}

// saving does what gives a new version, or says why there is none, in one change of the
// book.
func (s *Studio) saving(ctx context.Context, do func(record.Writer) (Saved, []Changed, error)) (Saved, error) {
	var saved Saved
	err := s.write(ctx, func(w record.Writer) (changed []Changed, err error) {
		saved, changed, err = do(w)
		return changed, err
	})
	return saved, err
}

// changeIn does so as a part of a larger change.
func (s *Studio) changeIn(w record.Writer, e Edit, act record.Act, do func(*body, record.Kind) *problem.List) (saved Saved, changed []Changed, err error) {
	d, b, err := openDocument(w, e.ID)
	if err != nil {
		return Saved{}, nil, err
	}
	if e.Base != d.Version || d.Removed {
		saved, err = s.conflict(w, d, e, do)
		return saved, nil, err // nothing is written
	}
	if list, err := s.mayChange(w, d, b, do); err != nil || list.Failed() {
		return refused(list), nil, err
	}
	if on, act, err := s.actOf(w, d, b, act); err != nil || on {
		saved, changed, err = s.append(w, d, b, act, e.Window)
		return saved, changed, err
	}
	return Saved{ID: d.ID, Version: d.Version, Problems: b.problems(d.Kind)}, nil, nil
}

// mayChange makes the change of the body and says what refuses it.
func (s *Studio) mayChange(w record.Reader, d record.Document, b *body, do func(*body, record.Kind) *problem.List) (*problem.List, error) {
	list := do(b, d.Kind)
	checkName(b.name(d.Kind), "name", list)
	if list.Failed() || d.Kind != record.Warp {
		return list, nil
	}
	_, on, err := started(w, d.ID)
	if err == nil && on {
		list.Append(b.onlyAmends(d.Body))
	}
	return list, err
}

// actOf says whether the body differs from what stands, and what the act is: what is
// changed of a warp after work began is an amendment.
func (s *Studio) actOf(w record.Reader, d record.Document, b *body, act record.Act) (bool, record.Act, error) {
	if string(b.bytes()) == string(d.Body) {
		return false, act, nil
	}
	if d.Kind == record.Warp && act == record.Edit {
		if _, on, err := started(w, d.ID); err != nil || on {
			return true, record.Amend, err
		}
	}
	return true, act, nil
}

// append writes a body as the next version of a document.
func (s *Studio) append(w record.Writer, d record.Document, b *body, act record.Act, window string) (Saved, []Changed, error) {
	saved, changed, err := s.appendVersion(w, d, b, record.Version{
		Window: window, Act: act, State: d.Version + 1, Body: b.bytes(),
	})
	if err == nil {
		saved.Problems = b.problems(d.Kind)
	}
	return saved, changed, err
}

// appendVersion writes the next version of a document, whose body b is, with the card of
// that. The facts of a large draft are left for later.
func (s *Studio) appendVersion(w record.Writer, d record.Document, b *body, v record.Version) (Saved, []Changed, error) {
	v.Document, v.Number, v.At = d.ID, d.Version+1, s.moment()
	stage, err := stageOf(w, d)
	if err != nil {
		return Saved{}, nil, err
	}
	var card record.Card
	if d.Kind == record.Draft && b.waits() {
		card = record.Card{Name: b.name(d.Kind), Words: b.Note}
		card.Sort = sortKey(card.Name)
	} else {
		card = b.card(d.Kind, v.Number, stage)
	}
	if err := w.Append(v, card); err != nil {
		return Saved{}, nil, err
	}
	saved := Saved{ID: d.ID, Version: v.Number, Problems: &problem.List{}}
	return saved, []Changed{{d.Kind, d.ID, v.Number, string(v.Act), v.Window}}, nil
}
