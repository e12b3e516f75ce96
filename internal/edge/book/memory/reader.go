package memory

import (
	"bytes"
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"sley/internal/edge/book/words"
	"sley/internal/trade/record"
)

// Reader is the book as it stands at one moment.
type Reader struct{ *state }

func notFound(what string) error { return &record.Trouble{Code: record.NotFound, Found: what} }

func changed(version int) error {
	return &record.Trouble{Code: record.Changed, Found: fmt.Sprint(version)}
}

func (r *Reader) find(id record.ID) (document, error) {
	d, ok := r.docs[id]
	if !ok {
		return d, notFound(fmt.Sprintf("document %d", id))
	}
	return d, nil
}

// card is a document as it is handed out.
func (d document) card() record.Document {
	out := d.Document
	out.Sort, out.Facts.Figures = slices.Clone(out.Sort), slices.Clone(out.Facts.Figures)
	return out
}

// Document gives a document whole. Trouble: NotFound.
func (r *Reader) Document(id record.ID) (record.Document, error) {
	d, err := r.Card(id)
	if err != nil {
		return d, err
	}
	d.Body, err = r.Body(id, d.Version)
	return d, err
}

// Card gives a document without its body. Trouble: NotFound.
func (r *Reader) Card(id record.ID) (record.Document, error) {
	d, err := r.find(id)
	return d.card(), err
}

// Marked gives the document of that mark, without its body. Trouble: NotFound.
func (r *Reader) Marked(mark string) (record.Document, error) {
	for _, d := range r.docs {
		if d.Mark == mark {
			return d.card(), nil
		}
	}
	return record.Document{}, notFound("document " + mark)
}

// Body gives the body of a version. Trouble: NotFound.
func (r *Reader) Body(id record.ID, number int) ([]byte, error) {
	d := r.docs[id]
	if number < 1 || number > len(d.versions) {
		return nil, notFound(fmt.Sprintf("version %d of document %d", number, id))
	}
	return slices.Clone(d.versions[number-1].Body), nil
}

// Versions gives versions without bodies, the newest first.
func (r *Reader) Versions(id record.ID, before, most int) ([]record.Version, error) {
	var out []record.Version
	for _, v := range slices.Backward(r.docs[id].versions) {
		if (before == 0 || v.Number < before) && len(out) < most {
			v.Body = nil
			out = append(out, v)
		}
	}
	return out, nil
}

// those gives the documents of which is holds, in the order they were added.
func (r *Reader) those(is func(document) bool) []document {
	var out []document
	for _, id := range slices.Sorted(maps.Keys(r.docs)) {
		if is(r.docs[id]) {
			out = append(out, r.docs[id])
		}
	}
	return out
}

func cards(docs []document) []record.Document {
	var out []record.Document
	for _, d := range docs {
		out = append(out, d.card())
	}
	return out
}

// List gives cards in the order of names, and how many there are in all.
func (r *Reader) List(q record.Query) ([]record.Document, int, error) {
	all := r.those(func(d document) bool { return d.is(q) })
	slices.SortStableFunc(all, byName)
	total := len(all)
	if q.After != nil || q.AfterID > 0 {
		last := document{Document: record.Document{ID: q.AfterID, Card: record.Card{Sort: q.After}}}
		all = slices.DeleteFunc(all, func(d document) bool { return byName(d, last) <= 0 })
	}
	return cards(all[:min(len(all), max(q.Most, 1))]), total, nil
}

func byName(a, b document) int {
	return cmp.Or(bytes.Compare(a.Sort, b.Sort), cmp.Compare(a.ID, b.ID))
}

func (d document) is(q record.Query) bool {
	return d.Kind == q.Kind && d.Removed == q.Removed && d.has(q.Words) &&
		(q.Weave == "" || d.Facts.Weave == q.Weave) &&
		(q.Stage == "" || d.Facts.Stage == q.Stage || q.Stage == record.InHand && d.Facts.Stage != record.Done) &&
		within(d.Facts.Shafts, 1, q.MostShafts) && within(d.Facts.Treadles, 0, q.MostTreadles) &&
		within(d.Facts.LongestFloat, 1, q.MostFloat)
}

// within reports whether n is within least and most; where most is nothing, any is.
func within(n, least, most int) bool { return most <= 0 || least <= n && n <= most }

// has reports whether each word of a search begins one of the document's.
func (d document) has(search string) bool {
	for _, asked := range words.Of(search) {
		if !slices.ContainsFunc(d.words, func(word string) bool { return strings.HasPrefix(word, asked) }) {
			return false
		}
	}
	return true
}

// All gives every card, removed ones too, in the order they were added.
func (r *Reader) All() ([]record.Document, error) {
	return cards(r.those(func(document) bool { return true })), nil
}

// Counts counts the documents that were not removed.
func (r *Reader) Counts() (record.Counts, error) {
	c := record.Counts{Of: map[record.Kind]int{}}
	for _, d := range r.those(func(d document) bool { return !d.Removed }) {
		c.Of[d.Kind]++
		if d.Demo {
			c.Demo++
		}
	}
	return c, nil
}

// Stale gives documents whose facts are not of their newest version and that engine.
func (r *Reader) Stale(kind record.Kind, engine, most int) ([]record.ID, error) {
	var out []record.ID
	for _, d := range r.those(func(d document) bool {
		return d.Kind == kind && (d.Facts.Of != d.Version || d.Facts.Engine != engine)
	}) {
		if len(out) < most {
			out = append(out, d.ID)
		}
	}
	return out, nil
}

// Event gives the event of that id. Trouble: NotFound.
func (r *Reader) Event(id string) (record.Event, error) {
	for _, e := range r.events {
		if e.ID == id {
			return e, nil
		}
	}
	return record.Event{}, notFound("event " + id)
}

// Events gives what happened to a document in a topic, in the order it was taken.
func (r *Reader) Events(id record.ID, topic record.Topic) ([]record.Event, error) {
	return slices.DeleteFunc(slices.Clone(r.events), func(e record.Event) bool {
		return e.Document != id || e.Topic != topic
	}), nil
}

// AllEvents gives everything that happened, in the order it was taken.
func (r *Reader) AllEvents() ([]record.Event, error) { return slices.Clone(r.events), nil }

// Frozen gives the plans of a warp that were frozen, the newest first.
func (r *Reader) Frozen(warp record.ID) ([]record.Frozen, error) {
	all, err := r.AllFrozen()
	slices.Reverse(all)
	return slices.DeleteFunc(all, func(f record.Frozen) bool { return f.Warp != warp }), err
}

// AllFrozen gives every plan that was frozen, in the order they were.
func (r *Reader) AllFrozen() ([]record.Frozen, error) {
	out := slices.Clone(r.frozen)
	for i, f := range out {
		out[i].Body, out[i].Nodes = slices.Clone(f.Body), slices.Clone(f.Nodes)
	}
	return out, nil
}

// Setting gives what was set under a name; nothing where nothing was.
func (r *Reader) Setting(name string) (string, error) { return r.settings[name], nil }

// Settings gives everything that was set.
func (r *Reader) Settings() (map[string]string, error) { return maps.Clone(r.settings), nil }
