package app

import (
	"context"
	"strings"

	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/record"
	"sley/internal/trade/yarn"
)

// Stock is how much of a yarn is there: the sum of what happened to it.
type Stock struct {
	Events []record.Event // all of them, cancelled ones too, in the order of the book
	// What is left, exactly: in nanometres, and in nanograms. Of a yarn whose grist is
	// unknown only what was measured that way counts, and Unknown says that it is not all.
	Length, Mass qty.Rat
	Unknown      bool
}

// Happened is something that happened to a yarn or a warp, as it was typed.
type Happened struct {
	Document record.ID
	Window   string
	ID       string // of the event; empty: a new one. The same one said twice counts once
	What     string
	Typed    string // the amount
	Note     string
	Warp     record.ID // that used it; 0: none
	Place    int       // of a log: the pick that it happened at; 0: not said
}

// Stocked writes down what happened to a yarn's stock: bought, used, measured or lost,
// with the amount as a length or a weight.
func (s *Studio) Stocked(ctx context.Context, h Happened) (record.Event, *problem.List, error) {
	list := &problem.List{}
	e := s.event(h, record.Stock, list)
	amount, err := yarn.ParseAmount(strings.TrimSpace(h.Typed))
	var fault *qty.Fault
	if asFault(err, &fault) {
		list.Fail(fault.Code, "amount", h.Typed, fault.Args)
	} else if amount.IsZero() && h.What != record.Measured {
		list.Fail("stock.nothing", "amount", h.Typed, nil)
	}
	e.Amount, e.Typed, e.Warp = amount, strings.TrimSpace(h.Typed), h.Warp
	if list.Failed() {
		return e, list, nil
	}
	if h.Warp != 0 {
		if err := s.mustBeWarp(ctx, h.Warp); err != nil {
			return e, list, err
		}
	}
	return e, list, s.happen(ctx, e, record.Yarn, h.Window)
}

// event begins an event, and says when it is none of its topic.
func (s *Studio) event(h Happened, topic record.Topic, list *problem.List) record.Event {
	e := record.Event{ID: h.ID, Document: h.Document, Topic: topic, What: h.What, At: s.moment(), Note: h.Note}
	if e.ID == "" {
		e.ID = s.newID()
	}
	if len(e.ID) < 8 || len(e.ID) > 64 {
		list.Fail("event.id", "id", e.ID, nil)
	}
	for _, what := range topic.Whats() {
		if what == h.What {
			return e
		}
	}
	list.Fail("event.what", "what", h.What, problem.Args{"valid": topic.Whats()})
	return e
}

// happen adds an event to a document of that kind, and brings its card up to date.
func (s *Studio) happen(ctx context.Context, e record.Event, kind record.Kind, window string) error {
	return s.write(ctx, func(w record.Writer) ([]Changed, error) { return s.happened(w, e, kind, window) })
}

func (s *Studio) happened(w record.Writer, e record.Event, kind record.Kind, window string) ([]Changed, error) {
	d, err := w.Card(e.Document)
	if err != nil {
		return nil, err
	}
	if d.Kind != kind {
		return nil, &record.Trouble{Code: record.NotFound, Found: string(kind)}
	}
	if err := w.Happen(e); err != nil {
		return nil, err
	}
	stage, err := stageOf(w, d)
	if err != nil {
		return nil, err
	}
	if err := putStage(w, d, stage); err != nil {
		return nil, err
	}
	return []Changed{{d.Kind, d.ID, d.Version, string(e.Topic), window}}, nil
}

// putStage writes where the work of a document stands now. A warp that is finished takes
// nothing more of the shelf, and is no longer found by what it took.
func putStage(w record.Writer, d record.Document, stage string) error {
	switch was := d.Facts.Stage; {
	case d.Facts.Of != d.Version || was == stage:
		return nil
	case was == record.Done || stage == record.Done:
		card, err := cardAnew(w, d.ID)
		if err != nil {
			return err
		}
		return w.PutCard(d.ID, card)
	}
	d.Facts.Stage = stage
	return w.PutFacts(d.ID, d.Facts)
}

// Cancel takes an event back by another that says so: both stay in the book. Cancelled
// twice, it is cancelled. A start that picks were woven after is not cancelled.
func (s *Studio) Cancel(ctx context.Context, window, event, note string) (*problem.List, error) {
	list := &problem.List{}
	err := s.write(ctx, func(w record.Writer) ([]Changed, error) {
		was, err := w.Event(event)
		if err != nil {
			return nil, err
		}
		all, err := w.Events(was.Document, was.Topic)
		if err != nil {
			return nil, err
		}
		for _, e := range all {
			if e.Cancels == event {
				return nil, nil
			}
		}
		if err := mayCancel(w, was, list); err != nil || list.Failed() {
			return nil, err
		}
		d, err := w.Card(was.Document)
		if err != nil {
			return nil, err
		}
		against := record.Event{
			ID: s.newID(), Document: was.Document, Topic: was.Topic, What: was.What,
			At: s.moment(), Note: note, Cancels: event,
		}
		return s.happened(w, against, d.Kind, window)
	})
	return list, err
}

func mayCancel(r record.Reader, was record.Event, list *problem.List) error {
	if was.Cancels != "" {
		list.Fail("event.counter", "", was.ID, nil)
		return nil
	}
	if was.What != record.Started {
		return nil
	}
	woven, err := r.Events(was.Document, record.Progress)
	if record.Said(woven, record.Woven) {
		list.Fail("start.woven", "", was.ID, nil)
	}
	return err
}

// Stock says how much of a yarn there is, and how that came about.
func (s *Studio) Stock(ctx context.Context, id record.ID) (*Stock, error) {
	var out *Stock
	err := s.read(ctx, func(r record.Reader) error {
		_, b, err := openDocument(r, id)
		if err != nil {
			return err
		}
		out, err = stockOf(r, id, b)
		return err
	})
	return out, err
}

// stockOf sums up: what was measured counts in the place of all before it.
func stockOf(r record.Reader, id record.ID, b *body) (*Stock, error) {
	events, err := r.Events(id, record.Stock)
	if err != nil {
		return nil, err
	}
	y, _ := b.yarn()
	out := &Stock{Events: events}
	for _, e := range record.Standing(events) {
		out.add(e, y.Grist())
	}
	return out, nil
}

func (t *Stock) add(e record.Event, grist qty.LinearDensity) {
	length, mass := e.Amount.Holds(grist), e.Amount.Weighs(grist)
	unknown := grist.IsZero() && !e.Amount.IsZero()
	switch e.What {
	case record.Measured:
		t.Length, t.Mass, t.Unknown = length, mass, unknown
		return
	case record.Used, record.Lost:
		length, mass = length.Neg(), mass.Neg()
	}
	t.Length, t.Mass = t.Length.Add(length), t.Mass.Add(mass)
	t.Unknown = t.Unknown || unknown
}
