// Package memory keeps a book in memory: for tests of what stands above the book, and
// as the slow obvious twin of package book. It refuses what the schema refuses.
package memory

import (
	"context"
	"errors"
	"maps"
	"slices"
	"sync"
	"sync/atomic"
	"time"

	"sley/internal/edge/book/words"
	"sley/internal/trade/record"
)

// Book is a book in memory. Its methods may be called from many goroutines.
type Book struct {
	turn sync.Mutex // one writer at a time
	now  atomic.Pointer[state]
}

// New gives an empty book.
func New() *Book {
	b := &Book{}
	b.now.Store(&state{
		docs: map[record.ID]document{}, settings: map[string]string{}, photographs: map[string]record.Photograph{},
	})
	return b
}

// state is a book at one moment. What a slice or a document held is never written
// again; changes are made on a copy.
type state struct {
	docs     map[record.ID]document
	events   []record.Event
	frozen   []record.Frozen
	settings map[string]string

	photographs map[string]record.Photograph
	devices     []record.Device
}

// document is a card, its words and every version with its body.
type document struct {
	record.Document
	words    []string
	versions []record.Version
}

func (s *state) copied() *state {
	return &state{
		docs: maps.Clone(s.docs), events: slices.Clip(s.events), frozen: slices.Clip(s.frozen), settings: maps.Clone(s.settings),
		photographs: maps.Clone(s.photographs), devices: slices.Clone(s.devices),
	}
}

// Read lets do see the book as it stands now, whatever others write meanwhile.
func (b *Book) Read(ctx context.Context, do func(record.Reader) error) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	return do(&Reader{b.now.Load()})
}

// Write lets do change the book, whole or not at all.
func (b *Book) Write(ctx context.Context, do func(record.Writer) error) error {
	b.turn.Lock()
	defer b.turn.Unlock()
	if err := ctx.Err(); err != nil {
		return err
	}
	w := &Writer{Reader: Reader{b.now.Load().copied()}}
	if err := do(w); err != nil {
		return err
	}
	if w.failed != nil {
		return w.failed
	}
	if err := ctx.Err(); err != nil {
		return err
	}
	b.now.Store(w.state)
	return nil
}

// Writer is a change of the book.
type Writer struct {
	Reader
	failed error // why the change cannot be made, whatever do makes of it
}

// keep is why a change is refused, which then is not made at all.
func (w *Writer) keep(why string) error {
	if w.failed == nil && why != "" {
		w.failed = &record.Trouble{Code: record.Unforeseen, Found: why}
	}
	return w.failed
}

// Add writes the first version of a new document and gives its id.
func (w *Writer) Add(d record.Document, first record.Version) (record.ID, error) {
	id := record.ID(len(w.docs) + 1)
	first.Document, first.Number, first.State = id, 1, 1
	card := record.Document{
		ID: id, Kind: d.Kind, Mark: d.Mark, Version: 1, Demo: d.Demo, Removed: first.Removed,
		Made: inBook(first.At), Changed: inBook(first.At), Card: record.Card{Name: d.Name, Sort: slices.Clone(d.Sort)},
	}
	_, err := w.Marked(d.Mark)
	if err := w.keep(firstOf(refuseDocument(card, err == nil), refuseVersion(first))); err != nil {
		return 0, err
	}
	w.docs[id] = document{card, wordsOf(d.Card), []record.Version{inBookVersion(first, first.Body)}}
	if d.Facts.Of == 0 {
		return id, nil
	}
	return id, w.PutFacts(id, d.Facts)
}

func wordsOf(c record.Card) []string { return words.Of(c.Name + " " + c.Words) }

// Append adds the next version.
func (w *Writer) Append(v record.Version, card record.Card) error {
	if w.failed != nil {
		return w.failed
	}
	d, err := w.find(v.Document)
	if err != nil {
		return err
	}
	if v.Number != d.Version+1 {
		return changed(d.Version)
	}
	body := v.Body
	if v.State < v.Number {
		if body, err = w.Body(v.Document, v.State); err != nil {
			return err
		}
	}
	d.Version, d.Removed, d.Changed = v.Number, v.Removed, inBook(v.At)
	d.Name, d.Sort, d.words = card.Name, slices.Clone(card.Sort), wordsOf(card)
	if err := w.keep(firstOf(refuseVersion(v), refuseDocument(d.Document, false))); err != nil {
		return err
	}
	d.versions = append(slices.Clip(d.versions), inBookVersion(v, body))
	w.docs[d.ID] = d
	if card.Facts.Of == 0 {
		return nil
	}
	return w.PutFacts(d.ID, card.Facts)
}

// PutCard writes what a document is listed and found by, unless its facts are of an older
// version.
func (w *Writer) PutCard(id record.ID, c record.Card) error {
	d, err := w.find(id)
	if err != nil || w.failed != nil || d.Version != c.Facts.Of {
		return errors.Join(err, w.failed)
	}
	d.Name, d.Sort, d.words = c.Name, slices.Clone(c.Sort), wordsOf(c)
	if err := w.keep(refuseDocument(d.Document, false)); err != nil {
		return err
	}
	w.docs[id] = d
	return w.PutFacts(id, c.Facts)
}

// PutFacts writes what the engine found of a document, unless it is of an older version.
func (w *Writer) PutFacts(id record.ID, f record.Facts) error {
	d, ok := w.docs[id]
	if w.failed != nil || !ok || d.Version != f.Of {
		return w.failed
	}
	if err := w.keep(refuseFacts(f)); err != nil {
		return err
	}
	f.Figures = slices.Clone(f.Figures)
	d.Facts = f
	w.docs[id] = d
	return nil
}

// Happen adds an event; one whose ID is there already changes nothing.
func (w *Writer) Happen(e record.Event) error {
	if w.failed != nil {
		return w.failed
	}
	if _, err := w.Event(e.ID); err == nil {
		return nil
	}
	if err := w.keep(w.refuseEvent(e)); err != nil {
		return err
	}
	e.Seq, e.At = int64(len(w.events)+1), inBook(e.At)
	w.events = append(w.events, e)
	return nil
}

// Freeze keeps a plan as it is when work begins.
func (w *Writer) Freeze(f record.Frozen) error {
	if err := w.keep(w.refuseFrozen(f)); err != nil {
		return err
	}
	f.At, f.Body, f.Nodes = inBook(f.At), slices.Clone(f.Body), slices.Clone(f.Nodes)
	w.frozen = append(w.frozen, f)
	return nil
}

// Set sets a value under a name; an empty one unsets it.
func (w *Writer) Set(name, value string) error {
	if value == "" {
		delete(w.settings, name)
		return w.failed
	}
	if err := w.keep(unless(between(name, 1, 64), "the name of a setting")); err != nil {
		return err
	}
	w.settings[name] = value
	return nil
}

// inBook is a time as the book keeps it: to the millisecond.
func inBook(t time.Time) time.Time { return time.UnixMilli(t.UnixMilli()).UTC() }

func inBookVersion(v record.Version, body []byte) record.Version {
	v.At, v.Body = inBook(v.At), slices.Clone(body)
	return v
}
