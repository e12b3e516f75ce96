package app_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"io/fs"
	"maps"
	"strings"
	"testing"
	"testing/fstest"

	"sley/internal/app"
	"sley/internal/trade/record"
)

// put replaces a file.
func put(folder fstest.MapFS, name string, data []byte) {
	folder[name] = &fstest.MapFile{Data: data}
}

// change puts something else in a file, which must have what it is put for.
func change(file, old, with string) func(*testing.T, fstest.MapFS) {
	return func(t *testing.T, f fstest.MapFS) {
		t.Helper()
		if f[file] == nil || !bytes.Contains(f[file].Data, []byte(old)) {
			t.Fatalf("%s lacks %s", file, old)
		}
		put(f, file, bytes.Replace(f[file].Data, []byte(old), []byte(with), 1))
	}
}

func gone(file string) func(*testing.T, fstest.MapFS) {
	return func(t *testing.T, f fstest.MapFS) {
		if f[file] == nil {
			t.Fatalf("there is no %s", file)
		}
		delete(f, file)
	}
}

// In the folder of damagedFolder the warp has the mark id-00000001, and the yarn the next.
const (
	warpHistory = "history/id-00000001.json"
	yarnHistory = "history/id-00000002.json"
)

// damages are all the ways in which a folder can be wrong, and what is said of it.
var damages = []struct {
	what   string
	damage func(*testing.T, fstest.MapFS)
	want   []string
}{
	{"no list", gone("book.json"), []string{"book.json import.missing"}},
	{"no entries", gone("events.json"), []string{"events.json import.missing"}},
	{"no frozen plans", gone("frozen.json"), []string{"frozen.json import.missing"}},
	{"no history", gone(warpHistory), []string{warpHistory + " import.missing"}},
	{"no plan file", gone("warps/towels.toml"), []string{"warps/towels.toml import.missing"}},
	{"no yarn file", gone("yarns/white.json"), []string{"yarns/white.json import.missing"}},
	{"a list that is no JSON", change("book.json", "{", "["), []string{"book.json import.json"}},
	{"a history that is no JSON", change(warpHistory, "[", ""), []string{warpHistory + " import.json"}},
	{"entries that are no JSON", change("events.json", "[", "{"), []string{"events.json import.json"}},
	{"more behind the list", func(t *testing.T, f fstest.MapFS) {
		put(f, "book.json", append(bytes.Clone(f["book.json"].Data), "{}"...))
	}, []string{"book.json import.json"}},
	{"more behind a yarn", func(t *testing.T, f fstest.MapFS) {
		put(f, "yarns/white.json", append(bytes.Clone(f["yarns/white.json"].Data), "}"...))
	}, []string{"yarns/white.json import.json"}},
	{"something unknown in the list", change("book.json", `"mark"`, `"girth": 3, "mark"`), []string{"book.json import.json"}},
	{"something unknown in a yarn", change("yarns/white.json", `"name"`, `"girth": 3, "name"`), []string{"yarns/white.json import.json"}},
	{"a yarn with something wrong", change("yarns/white.json", "8/2 Ne", "eight"), []string{"count count.number"}},
	{"a plan that is no TOML", change("warps/towels.toml", "=", ""), []string{" toml.syntax"}},
	{"a plan without a name", change("warps/towels.toml", `name = "Towels"`, ""), []string{"warps/towels.toml name.missing"}},
	{"a later format", change("book.json", `"format": 2`, `"format": 3`), []string{"book.json import.format"}},
	{"no format", change("book.json", `"format": 2`, `"format": 0`), []string{"book.json import.format"}},
	{"a history outside", change("book.json", warpHistory, "../"+warpHistory), []string{"../" + warpHistory + " import.name"}},
	{"a history at the root", change("book.json", warpHistory, "/etc/passwd"), []string{"/etc/passwd import.name"}},
	{"a file outside", change("book.json", "warps/towels.toml", "../towels.toml"), []string{"../towels.toml import.name"}},
	{"a file that is a folder", change("book.json", warpHistory, "warps"), []string{"warps import.missing"}},
	{"a mark that leads outside", change("book.json", `"id-00000001"`, `"../../../id-00000001"`), []string{"book.json import.document"}},
	{"a mark too short", change("book.json", `"id-00000002"`, `"id"`), []string{"book.json import.document"}},
	{"a mark twice", change("book.json", `"id-00000002"`, `"id-00000001"`), []string{"book.json import.document"}},
	{"a kind there is not", change("book.json", `"kind": "yarn"`, `"kind": "basket"`), []string{"book.json import.document"}},
	{"a file twice", change("book.json", "yarns/white.json", "warps/towels.toml"), []string{"book.json import.document"}},
	{"an empty history", func(_ *testing.T, f fstest.MapFS) { put(f, yarnHistory, []byte("[]")) }, []string{yarnHistory + " import.version"}},
	{"a number left out", change(warpHistory, `"number": 2`, `"number": 3`), []string{warpHistory + " import.version"}},
	{"a state that is to come", change(warpHistory, `"state": 2`, `"state": 3`), []string{warpHistory + " import.version"}},
	{"a state before the first", change(warpHistory, `"state": 2`, `"state": 0`), []string{warpHistory + " import.version"}},
	{"an act there is not", change(warpHistory, `"act": "edit"`, `"act": "dye"`), []string{warpHistory + " import.version"}},
	{"a first version that was not added", change(warpHistory, `"act": "add"`, `"act": "redo"`), []string{warpHistory + " import.version"}},
	{"a redo of nothing", change(warpHistory, `"act": "edit"`, `"act": "redo"`), []string{warpHistory + " import.version"}},
	{"a cut outside", change(warpHistory, `"begins": `, `"begins": 9`), []string{warpHistory + " import.version"}},
	{"a cut before the beginning", change(warpHistory, `"begins": `, `"begins": -`), []string{warpHistory + " import.version"}},
	{"a body that is none", change(yarnHistory, `"whole": "{`, `"whole": "`), []string{yarnHistory + " import.version"}},
	{"a body of a later format", change(yarnHistory, `\"format\":1`, `\"format\":7`), []string{yarnHistory + " import.version"}},
	{"no body", change(yarnHistory, `"whole"`, `"between"`), []string{yarnHistory + " import.version"}},
	{"an entry of nothing", change("events.json", `"document": "id-00000002"`, `"document": "id-00000009"`), []string{"events.json import.event"}},
	{"stock of a warp", change("events.json", `"document": "id-00000002"`, `"document": "id-00000001"`), []string{"events.json import.event"}},
	{"used by a yarn", change("events.json", `"warp": "id-00000001"`, `"warp": "id-00000002"`), []string{"events.json import.event"}},
	{"used by nothing", change("events.json", `"warp": "id-00000001"`, `"warp": "id-00000009"`), []string{"events.json import.event"}},
	{"a topic there is not", change("events.json", `"topic": "stock"`, `"topic": "dye"`), []string{"events.json import.event"}},
	{"what does not happen", change("events.json", `"what": "bought"`, `"what": "woven"`), []string{"events.json import.event"}},
	{"an amount below nothing", change("events.json", `"mass_ng": `, `"mass_ng": -`), []string{"events.json import.event"}},
	{"a length and a weight", change("events.json", `"mass_ng": `, `"length_nm": 1, "mass_ng": `), []string{"events.json import.event"}},
	{"an entry that cancels what comes later", change("events.json", `"id": "id-00000004"`, `"id": "id-00000004", "cancels": "id-00000005"`), []string{"events.json import.event"}},
	{"a mark of an entry twice", change("events.json", `"id": "id-00000005"`, `"id": "id-00000004"`), []string{"events.json import.event"}},
	{"a start without its plan", func(_ *testing.T, f fstest.MapFS) { put(f, "frozen.json", []byte("[]")) }, []string{"events.json import.event"}},
	{"a plan frozen by nothing", change("frozen.json", `"event": "id-00000003"`, `"event": "id-00000004"`), []string{"events.json import.event", "frozen.json import.event"}},
	{"a frozen plan of a yarn", change("frozen.json", `"warp": "id-00000001"`, `"warp": "id-00000002"`), []string{"events.json import.event", "frozen.json import.event"}},
	{"a frozen version there is not", change("frozen.json", `"version": 2`, `"version": 7`), []string{"frozen.json import.event"}},
	{"a frozen plan that is none", change("frozen.json", `"body": {`, `"body": 5, "b": {`), []string{"frozen.json import.json"}},
	{"a frozen plan of a later format", change("frozen.json", `"format": 1`, `"format": 7`), []string{"frozen.json import.event"}},
	{"frozen numbers that are none", change("frozen.json", `"nodes": [`, `"nodes": 5, "program": [`), []string{"frozen.json import.json"}},
	{"several at once", func(t *testing.T, f fstest.MapFS) {
		gone("events.json")(t, f)
		gone(yarnHistory)(t, f)
		change(warpHistory, `"number": 2`, `"number": 3`)(t, f)
	}, []string{"events.json import.missing", warpHistory + " import.version", yarnHistory + " import.missing"}},
}

// damagedFolder is a folder with a warp on the loom, a yarn, and entries.
func damagedFolder(t *testing.T) fstest.MapFS {
	s := openStudio(t)
	warp := addWarp(t, s, towels)
	yarn := addYarn(t, s, "white", "count=8/2 Ne")
	save(t, s, warp.ID, left, "note=a")
	start(t, s, warp.ID)
	stocked(t, s, app.Happened{Document: yarn.ID, What: record.Bought, Typed: "500 g"})
	stocked(t, s, app.Happened{Document: yarn.ID, What: record.Used, Typed: "120 g", Warp: warp.ID})
	return exported(t, s)
}

// Every kind of damage to a folder is a problem, and nothing is written.
func TestDamagedFolders(t *testing.T) {
	whole := damagedFolder(t)
	s := openStudio(t)
	empty := exported(t, s)
	for _, test := range damages {
		t.Run(test.what, func(t *testing.T) {
			folder := maps.Clone(whole)
			test.damage(t, folder)
			done, list, err := s.Import(t.Context(), left, folder)
			if err != nil {
				t.Fatal(err)
			}
			wantCodes(t, test.what, list, test.want...)
			if !list.Failed() || done.Added > 0 {
				t.Errorf("imported %+v", done)
			}
			wantSame(t, "after that", exported(t, s), empty)
		})
	}
	if done := imported(t, s, whole); done.Added != 2 || done.Events != 3 {
		t.Errorf("the whole folder: %+v", done)
	}
}

// A file larger than any of an export is not read to its end.
func TestHugeFile(t *testing.T) {
	oneAtATime(t)
	folder := damagedFolder(t)
	put(folder, warpHistory, bytes.Repeat([]byte(" "), 64<<20+1))
	_, list, err := openStudio(t).Import(t.Context(), left, folder)
	if err != nil {
		t.Fatal(err)
	}
	wantCodes(t, "huge", list, warpHistory+" import.large")
}

// failing is a folder whose file fails while it is read.
type failing struct {
	fs.FS
	name string
}

func (f failing) Open(name string) (fs.File, error) {
	file, err := f.FS.Open(name)
	if err == nil && name == f.name {
		file = broken{file}
	}
	return file, err
}

type broken struct{ fs.File }

func (broken) Read([]byte) (int, error) { return 0, errors.New("the stick was pulled out") }

func TestFileThatCannotBeRead(t *testing.T) {
	_, list, err := openStudio(t).Import(t.Context(), left, failing{damagedFolder(t), yarnHistory})
	if err != nil {
		t.Fatal(err)
	}
	wantCodes(t, "a stick pulled out", list, yarnHistory+" import.unreadable")
}

// A history is told by what differs, and every version comes out of it as it was.
func TestHistoriesOfLongDrafts(t *testing.T) {
	s := openStudio(t)
	id := addRosepath(t, s)
	text := textOf(t, s, id)
	text = strings.Replace(text, "[WIF]", strings.Repeat("; as it was woven at the harbour\n", 100)+"[WIF]", 1)
	for _, note := range []string{"ä", "äß", "ß☃", "☃"} {
		said, _ := json.Marshal(strings.Replace(text, "[WIF]", "; "+note+"\n[WIF]", 1))
		saved, err := s.Save(t.Context(), app.Edit{ID: id, Base: card(t, s, id).Version, Window: left, Sets: []app.Set{{Path: "wif", Value: said}}})
		mustSaved(t, saved, err)
	}
	out := exported(t, s)
	if n := len(out["history/id-00000001.json"].Data); n > 2*len(text) {
		t.Errorf("five versions of %d bytes take %d", len(text), n)
	}
	other := openStudio(t)
	imported(t, other, out)
	for version := 1; version <= 5; version++ {
		if got, want := textOfVersion(t, other, 1, version), textOfVersion(t, s, id, version); got != want {
			t.Errorf("version %d is\n%s", version, got)
		}
	}
}
