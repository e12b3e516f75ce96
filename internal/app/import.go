package app

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"slices"
	"strings"

	"sley/internal/edge/planfile"
	"sley/internal/edge/wif"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// mostFile is how large a file of a folder may be that is imported, in bytes.
const mostFile = 64 << 20

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

// file reads a file of the folder; what is wrong with it is a problem at its name.
func (in *importing) file(name string) ([]byte, bool) {
	if !fs.ValidPath(name) {
		in.list.Fail("import.name", name, name, nil)
		return nil, false
	}
	f, err := in.folder.Open(name)
	if err != nil {
		in.list.Fail("import.missing", name, name, nil)
		return nil, false
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil || !info.Mode().IsRegular() {
		in.list.Fail("import.missing", name, name, nil)
		return nil, false
	}
	data, err := io.ReadAll(io.LimitReader(f, mostFile+1))
	switch {
	case err != nil:
		in.list.Fail("import.unreadable", name, name, problem.Args{"error": err.Error()})
	case len(data) > mostFile:
		in.list.Fail("import.large", name, name, problem.Args{"most": mostFile})
	default:
		return data, true
	}
	return nil, false
}

// json reads a file of JSON, all of it and nothing it does not know.
func (in *importing) json(name string, to any) bool {
	data, ok := in.file(name)
	if !ok {
		return false
	}
	d := json.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	err := d.Decode(to)
	if err == nil && d.More() {
		err = errMore
	}
	if err != nil {
		in.list.Fail("import.json", name, name, problem.Args{"error": err.Error()})
	}
	return err == nil
}

// errMore is what a file of JSON has that goes on behind its end.
var errMore = errors.New("more stands behind its end")

// read reads the whole folder before anything is written.
func (in *importing) read() {
	if !in.json(indexFile, &in.index) {
		return
	}
	if in.index.Format < 1 || in.index.Format > ExportFormat {
		in.list.Fail("import.format", indexFile, fmt.Sprint(in.index.Format), problem.Args{"most": ExportFormat})
		return
	}
	kinds := in.documents()
	whole := in.json(eventsFile, &in.events)
	whole = in.json(frozenFile, &in.frozen) && whole && len(kinds) == len(in.index.Documents)
	for _, d := range in.index.Documents {
		history, bodies := in.versions(d)
		in.history, in.bodies = append(in.history, history), append(in.bodies, bodies)
	}
	if whole {
		in.readEvents(kinds)
		in.readFrozen(kinds)
	}
}

// documents looks whether the list of documents can be right, and gives the kinds of
// those that can, by mark. Marks are names of files: of letters, digits and hyphens.
func (in *importing) documents() map[string]record.Kind {
	kinds := map[string]record.Kind{}
	files := map[string]bool{}
	for _, d := range in.index.Documents {
		if kinds[d.Mark] != "" || files[d.File] || !isMark(d.Mark) || !known(string(d.Kind), record.Kinds()) {
			in.list.Fail("import.document", indexFile, d.Mark, nil)
			continue
		}
		kinds[d.Mark], files[d.File] = d.Kind, true
	}
	return kinds
}

func isMark(text string) bool {
	for _, c := range text {
		if c != '-' && (c < '0' || c > '9') && (c < 'a' || c > 'z') && (c < 'A' || c > 'Z') {
			return false
		}
	}
	return len(text) >= 8 && len(text) <= 64
}

func known[K ~string](word string, all []K) bool {
	for _, k := range all {
		if string(k) == word {
			return true
		}
	}
	return false
}

// versions reads a history and puts every body together again.
func (in *importing) versions(d indexed) ([]told, []string) {
	var history []told
	if !in.json(d.History, &history) {
		return nil, nil
	}
	var bodies []string
	for i, t := range history {
		now, ok := untell(t, i, bodies)
		if ok {
			_, err := openBody([]byte(now))
			ok = err == nil
		}
		if !ok || !t.canBe(i) {
			in.list.Fail("import.version", d.History, fmt.Sprint(t.Number), nil)
			return nil, nil
		}
		bodies = append(bodies, now)
	}
	if len(bodies) == 0 {
		in.list.Fail("import.version", d.History, "", nil)
	}
	return history, bodies
}

// canBe says whether a version can be the one at that place in a history: only the first
// was added, and only undo and redo go to an earlier state.
func (t told) canBe(at int) bool {
	back := t.Act == record.Undo || t.Act == record.Redo
	return known(string(t.Act), record.Acts()) && len(t.Window) <= 64 &&
		(t.Act == record.Add) == (at == 0) && back == (t.State < t.Number)
}

// untell gives the body of a version from those before.
func untell(t told, at int, before []string) (string, bool) {
	switch {
	case t.Number != at+1 || t.State < 1 || t.State > t.Number:
		return "", false
	case t.State < t.Number:
		return before[t.State-1], true
	case t.Whole != nil:
		return *t.Whole, true
	case t.Between == nil || at == 0:
		return "", false
	}
	last := before[at-1]
	if t.Begins < 0 || t.Ends < 0 || t.Begins+t.Ends > len(last) {
		return "", false
	}
	return last[:t.Begins] + *t.Between + last[len(last)-t.Ends:], true
}

// readEvents looks whether what happened can have happened to the documents of the folder.
func (in *importing) readEvents(kinds map[string]record.Kind) {
	before := map[string]exportedEvent{}
	for _, e := range in.events {
		_, twice := before[e.ID]
		cancelled, earlier := before[e.Cancels]
		wrong := twice || len(e.ID) < 8 || len(e.ID) > 64 || !e.fits(kinds) ||
			e.Cancels != "" && (!earlier || cancelled.Document != e.Document || cancelled.Topic != e.Topic)
		if wrong {
			in.list.Fail("import.event", eventsFile, e.ID, nil)
		}
		before[e.ID] = e
	}
}

// fits says whether an entry is one that its document can have.
func (e exportedEvent) fits(kinds map[string]record.Kind) bool {
	of := record.Warp
	if e.Topic == record.Stock {
		of = record.Yarn
	}
	return kinds[e.Document] == of && (e.Warp == "" || kinds[e.Warp] == record.Warp) && known(e.What, e.Topic.Whats()) &&
		e.Amount.Length >= 0 && e.Amount.Mass >= 0 && (e.Amount.Length == 0 || e.Amount.Mass == 0) && e.Place >= 0 && e.Minutes >= 0
}

// isStart says whether an entry says that work began.
func (e exportedEvent) isStart() bool { return e.What == record.Started && e.Cancels == "" }

// readFrozen looks whether each start has the plan that was frozen then, and each plan
// its start.
func (in *importing) readFrozen(kinds map[string]record.Kind) {
	starts := map[string]string{} // the warp, by the entry
	for _, e := range in.events {
		if e.isStart() {
			starts[e.ID] = e.Document
		}
	}
	versions := map[string]int{}
	for i, d := range in.index.Documents {
		versions[d.Mark] = len(in.bodies[i])
	}
	for _, f := range in.frozen {
		warp, ok := starts[f.Event]
		if !ok || warp != f.Warp || !f.opens() || f.Version < 1 || versions[warp] > 0 && f.Version > versions[warp] {
			in.list.Fail("import.event", frozenFile, f.Event, nil)
		}
		if warp == f.Warp {
			delete(starts, f.Event)
		}
	}
	for _, e := range in.events {
		if _, left := starts[e.ID]; left && e.isStart() {
			in.list.Fail("import.event", eventsFile, e.ID, nil)
		}
	}
}

// opens says whether a frozen plan and its numbers can be read.
func (f exportedFrozen) opens() bool {
	_, err := openBody(f.Body)
	var nodes []frozenNode
	return err == nil && json.Unmarshal(f.Nodes, &nodes) == nil
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

// takeEdited takes what was edited in the folder as the next version. Where the book
// went on otherwise since, or the warp is on the loom, that is a problem: neither may be
// lost. An edit that the book took before is not taken again.
func (in *importing) takeEdited(w record.Writer, d indexed, bodies []string) error {
	edited, ok := in.edited(d, bodyOf(bodies[len(bodies)-1]))
	if !ok {
		return nil
	}
	on, err := w.Document(in.ids[d.Mark])
	if err != nil {
		return err
	}
	taken, err := in.tookBefore(w, on, len(bodies), string(edited.bytes()))
	switch {
	case err != nil || taken:
		return err
	case on.Version > len(bodies):
		in.list.Fail("import.two-ways", d.File, d.Name, problem.Args{"have": on.Version, "folder": len(bodies)})
		return nil
	}
	return in.append(w, on, edited, d.File)
}

// tookBefore says whether a version from that of the folder on has that body.
func (in *importing) tookBefore(w record.Reader, on record.Document, from int, edited string) (bool, error) {
	for n := from; n <= on.Version; n++ {
		data, err := w.Body(on.ID, n)
		if err != nil || string(data) == edited {
			return err == nil, err
		}
	}
	return false, nil
}

// append writes an edited document as the next version. What was removed stays so.
func (in *importing) append(w record.Writer, on record.Document, edited *body, file string) error {
	v := record.Version{
		Document: on.ID, Number: on.Version + 1, At: in.s.moment(), Window: in.window, Act: record.Edit,
		State: on.Version + 1, Removed: on.Removed, Body: edited.bytes(),
	}
	if on.Kind == record.Warp {
		_, begun, err := started(w, on.ID)
		if err != nil {
			return err
		}
		if begun {
			v.Act = record.Amend
			in.list.Append(edited.onlyAmends(on.Body))
		}
	}
	if in.list.Failed() {
		return nil
	}
	in.done.Edited = append(in.done.Edited, file)
	in.touched[on.ID] = true
	return in.s.appendVersion(w, on, v, edited)
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

// edited is the body of a document whose readable file says something else than its
// newest version in the folder.
func (in *importing) edited(d indexed, last *body) (*body, bool) {
	name := strings.TrimSuffix(d.File, ending(d.Kind))
	changed := false
	for file, was := range last.files(d.Kind, name) {
		now, ok := in.file(file)
		if !ok {
			return nil, false
		}
		if bytes.Equal(now, was) {
			continue
		}
		changed = true
		last.takeFile(d.Kind, file, now, in.list)
	}
	return last, changed && !in.list.Failed()
}

// takeFile reads an edited file into a body.
func (b *body) takeFile(kind record.Kind, file string, data []byte, list *problem.List) {
	isWIF := len(file) > 4 && file[len(file)-4:] == ".wif"
	switch {
	case isWIF:
		if _, found := wif.Decode(file, data); found.Failed() {
			list.Append(found)
			return
		}
		b.WIF = &text{b.WIF.Name, string(data)}
	case kind == record.Warp:
		tree, found := planfile.ReadText(file, data)
		list.Append(found)
		if tree != nil {
			checkName(textAt(tree, "name"), file, list)
			b.Plan = tree.JSON()
		}
	default:
		other, err := openEdited(data)
		if err != nil {
			list.Fail("import.json", file, file, problem.Args{"error": err.Error()})
			return
		}
		checkName(other.name(kind), file, list)
		for _, p := range other.check(kind).All() {
			p.Place = problem.Place{File: file}
			list.Add(p)
		}
		*b = *other
	}
}

// openEdited reads a document that a person edited: nothing in it is ignored.
func openEdited(data []byte) (*body, error) {
	d := json.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	if err := d.Decode(&body{}); err != nil {
		return nil, err
	}
	if d.More() {
		return nil, errMore
	}
	return openBody(data)
}

// happened adds the events and the frozen plans that the book has not.
func (in *importing) happened(w record.Writer) error {
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
		in.touched[event.Document] = true
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
