package app

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"

	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// mostFile is how large a file of a folder may be that is imported, in bytes.
const mostFile = 64 << 20

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
	err := strictly(data, to)
	if err != nil {
		in.list.Fail("import.json", name, name, problem.Args{"error": err.Error()})
	}
	return err == nil
}

// strictly reads JSON that holds nothing unknown, and behind which nothing stands.
func strictly(data []byte, to any) error {
	d := json.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	if err := d.Decode(to); err != nil {
		return err
	}
	if _, err := d.Token(); err != io.EOF {
		return errMore
	}
	return nil
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
		in.readPhotographs()
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
