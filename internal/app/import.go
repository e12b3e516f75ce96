package app

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"io/fs"
	"maps"
	"slices"

	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// Imported is what an import did.
type Imported struct {
	Added, Updated, Same int // documents
	Events               int
	Edited               []string // files that were edited since the export, and taken as newer versions
}

// Import takes a folder that Export wrote into the book, with everything that happened.
// What the book has already is left as it is; a document of which the folder has later
// versions gets those; a readable file that was edited since becomes a newer version.
// When anything is wrong with the folder, or a document went two ways, the list says all
// of it and nothing is written.
func (s *Studio) Import(ctx context.Context, window string, folder fs.FS) (Imported, *problem.List, error) {
	in := &importing{
		s: s, folder: folder, window: window, list: &problem.List{}, ids: map[string]record.ID{}, touched: map[record.ID]bool{},
	}
	in.read()
	if in.list.Failed() {
		return Imported{}, in.list, nil
	}
	err := s.write(ctx, func(w record.Writer) ([]Changed, error) { return in.into(w) })
	if errors.Is(err, errRefused) {
		return Imported{}, in.list, nil
	}
	return in.done, in.list, err
}

// errRefused rolls back an import that has problems.
var errRefused = errors.New("the import has problems")

type importing struct {
	s       *Studio
	folder  fs.FS
	window  string
	list    *problem.List
	index   index
	bodies  [][]string // by document and version
	history [][]told
	events  []exportedEvent
	frozen  []exportedFrozen
	ids     map[string]record.ID // by mark
	touched map[record.ID]bool   // documents that something was written of
	done    Imported
	changed []Changed
}

// into writes what was read into the book.
func (in *importing) into(w record.Writer) ([]Changed, error) {
	for i, d := range in.index.Documents {
		if err := in.document(w, d, in.history[i], in.bodies[i]); err != nil {
			return nil, err
		}
	}
	if in.list.Failed() {
		return nil, errRefused
	}
	if err := in.happened(w); err != nil {
		return nil, err
	}
	for i, d := range in.index.Documents {
		if err := in.takeEdited(w, d, in.bodies[i]); err != nil {
			return nil, err
		}
	}
	if in.list.Failed() {
		return nil, errRefused
	}
	if err := in.settings(w); err != nil {
		return nil, err
	}
	return in.changed, in.cards(w)
}

// settings takes those that the book has not, and none that belongs to another place.
func (in *importing) settings(w record.Writer) error {
	have, err := w.Settings()
	if err != nil {
		return err
	}
	for name, value := range in.index.Settings {
		if have[name] != "" || slices.Contains(leftOut, name) {
			continue
		}
		if err := w.Set(name, value); err != nil {
			return err
		}
	}
	return nil
}

// document adds a document, or the versions that the book has not.
func (in *importing) document(w record.Writer, d indexed, history []told, bodies []string) error {
	on, err := w.Marked(d.Mark)
	if err != nil && !record.Is(err, record.NotFound) {
		return err
	}
	have := 0
	if err == nil {
		if have, err = in.common(w, on, d, history, bodies); err != nil || have < 0 {
			return err
		}
	}
	first := bodyOf(bodies[0])
	written := in.done.Added + in.done.Updated
	if have == 0 {
		in.done.Added++
		card := record.Card{Name: nameOr(first.name(d.Kind)), Sort: sortKey(first.name(d.Kind))}
		on = record.Document{Kind: d.Kind, Mark: d.Mark, Demo: d.Demo, Card: card}
		if on.ID, err = w.Add(on, in.version(0, 1, history[0], bodies[0])); err != nil {
			return err
		}
		have = 1
	} else if have < len(bodies) {
		in.done.Updated++
	} else {
		in.done.Same++
	}
	in.ids[d.Mark] = on.ID
	in.touched[on.ID] = in.done.Added+in.done.Updated > written
	return in.later(w, on.ID, d.Kind, have, history, bodies)
}

func bodyOf(data string) *body { return mustOpen([]byte(data)) }

func nameOr(name string) string {
	if name == "" {
		return "unnamed"
	}
	return clipped(name)
}

func (in *importing) version(id record.ID, number int, t told, data string) record.Version {
	return record.Version{
		Document: id, Number: number, At: t.At, Window: t.Window, Act: t.Act,
		State: t.State, Removed: t.Removed, Body: []byte(data),
	}
}

// later appends the versions that the book has not.
func (in *importing) later(w record.Writer, id record.ID, kind record.Kind, have int, history []told, bodies []string) error {
	for n := have + 1; n <= len(bodies); n++ {
		name := bodyOf(bodies[n-1]).name(kind)
		card := record.Card{Name: nameOr(name), Sort: sortKey(name)}
		if err := w.Append(in.version(id, n, history[n-1], bodies[n-1]), card); err != nil {
			return err
		}
	}
	return nil
}

// common is how many versions the book and the folder share; below 0 where they went two
// ways, which is a problem. A book that is ahead of the folder shares all it has.
func (in *importing) common(w record.Reader, on record.Document, d indexed, history []told, bodies []string) (int, error) {
	if on.Kind != d.Kind {
		in.list.Fail("import.document", indexFile, d.Mark, nil)
		return -1, nil
	}
	n := min(on.Version, len(bodies))
	data, err := w.Body(on.ID, n)
	if err != nil {
		return 0, err
	}
	v, err := w.Versions(on.ID, n+1, 1)
	if err != nil {
		return 0, err
	}
	if string(data) != bodies[n-1] || !v[0].At.Equal(history[n-1].At) || v[0].Act != history[n-1].Act {
		in.list.Fail("import.two-ways", d.File, d.Name, problem.Args{"have": on.Version, "folder": len(bodies)})
		return -1, nil
	}
	return max(n, on.Version), nil
}

// happened adds the events and the frozen plans that the book has not.
func (in *importing) happened(w record.Writer) error {
	added := map[string]bool{}
	for _, e := range in.events {
		_, err := w.Event(e.ID)
		if err == nil {
			continue
		}
		if !record.Is(err, record.NotFound) {
			return err
		}
		event := e.Event
		event.Document, event.Warp = in.ids[e.Document], in.ids[e.Warp]
		if err := w.Happen(event); err != nil {
			return err
		}
		in.done.Events++
		in.touched[event.Document], added[e.ID] = true, true
	}
	if err := in.photographs(w, added); err != nil {
		return err
	}
	for _, f := range in.frozen {
		have, err := w.Frozen(in.ids[f.Warp])
		if err != nil {
			return err
		}
		if frozenAlready(have, f.Event) {
			continue
		}
		if err := w.Freeze(record.Frozen{
			Warp: in.ids[f.Warp], Version: f.Version, At: f.At, Event: f.Event, Program: f.Program,
			Defaults: f.Defaults, Body: plain(f.Body), Nodes: plain(f.Nodes),
		}); err != nil {
			return err
		}
	}
	return nil
}

// plain is JSON as the book has it: the folder's is spread over lines.
func plain(data json.RawMessage) []byte {
	var out bytes.Buffer
	if json.Compact(&out, data) != nil {
		return data
	}
	return out.Bytes()
}

func frozenAlready(have []record.Frozen, event string) bool {
	for _, f := range have {
		if f.Event == event {
			return true
		}
	}
	return false
}

// cards finds anew what documents are listed by, now that all that happened is there.
func (in *importing) cards(w record.Writer) error {
	for _, id := range slices.Sorted(maps.Keys(in.touched)) {
		if !in.touched[id] {
			continue
		}
		d, err := w.Document(id)
		if err != nil {
			return err
		}
		card, err := cardAnew(w, id)
		if err != nil {
			return err
		}
		if err := w.PutCard(id, card); err != nil {
			return err
		}
		in.changed = append(in.changed, Changed{d.Kind, id, d.Version, string(record.Add), in.window})
	}
	return nil
}
