package app_test

import (
	"bytes"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"sley/internal/app"
	"sley/internal/edge/photo/taken"
	"sley/internal/trade/record"
)

// photographed enters a photograph, and everything is right with it.
func photographed(t testing.TB, s *app.Studio, h app.Happened, file []byte) record.Event {
	t.Helper()
	e, list, err := s.Photographed(t.Context(), h, file)
	if err != nil || list.Failed() {
		t.Fatal(err, codesOf(list))
	}
	return e
}

// A photograph is kept with its entry, upright and without its place; said twice it is one.
func TestPhotographed(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, towels)
	start(t, s, warp.ID)
	if list, err := s.Wove(t.Context(), app.Happened{Document: warp.ID}, 104); err != nil || list.Failed() {
		t.Fatal(err, codesOf(list))
	}
	file := taken.JPEG(90, 60, 6)
	h := app.Happened{Document: warp.ID, ID: "photo-00000001", Note: "first border"}
	for range 2 {
		if e := photographed(t, s, h, file); e.ID != h.ID || e.Place != 104 || e.What != record.Pictured {
			t.Errorf("the entry is %+v", e)
		}
	}
	all, err := s.Photographs(t.Context(), warp.ID)
	if err != nil || len(all) != 1 || all[0].Wide != 90 || all[0].High != 60 || all[0].Note != "first border" {
		t.Fatalf("%+v, %v", all, err)
	}
	p, err := s.Photograph(t.Context(), h.ID)
	if err != nil || p.Kind != "image/jpeg" || len(p.Body) != all[0].Bytes || bytes.Contains(p.Body, taken.Place) {
		t.Errorf("%s of %d bytes, %v", p.Kind, len(p.Body), err)
	}
	if e := photographed(t, s, app.Happened{Document: warp.ID, Place: 12}, file); e.Place != 12 {
		t.Errorf("the place that is said counts: %d", e.Place)
	}
}

// A photograph that was taken back is shown no more, nor exported.
func TestPhotographTakenBack(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, towels)
	e := photographed(t, s, app.Happened{Document: warp.ID}, taken.JPEG(90, 60, 1))
	cancel(t, s, e.ID)
	if _, err := s.Photograph(t.Context(), e.ID); !record.Is(err, record.NotFound) {
		t.Errorf("it is shown: %v", err)
	}
	if all, err := s.Photographs(t.Context(), warp.ID); err != nil || len(all) != 0 {
		t.Errorf("it is listed: %+v, %v", all, err)
	}
	for name := range exported(t, s) {
		if strings.HasPrefix(name, "photographs/") {
			t.Errorf("%s is exported", name)
		}
	}
	other := openStudio(t)
	imported(t, other, exported(t, s))
	wantSame(t, "a book with a photograph taken back", exported(t, other), exported(t, s))
}

// What is wrong is said at once, and nothing is written.
func TestWhatIsNoPhotograph(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, towels)
	yarn := addYarn(t, s, "white")
	jpg := taken.JPEG(90, 60, 1)
	for _, test := range []struct {
		what string
		h    app.Happened
		file []byte
		want []string
	}{
		{"nothing", app.Happened{}, nil, []string{"photograph photo.empty"}},
		{"half", app.Happened{}, jpg[:len(jpg)/2], []string{"photograph photo.cut"}},
		{"another type", app.Happened{}, []byte("\x00\x00\x00\x18ftypheic"), []string{"photograph photo.format"}},
		{"all wrong", app.Happened{ID: "x", Place: -1}, []byte("x"), []string{"id event.id", "photograph photo.unknown", "place log.place"}},
		{"a mark that leads out of a folder", app.Happened{ID: "../../../etc/passwd"}, jpg, []string{"id event.id"}},
	} {
		test.h.Document = warp.ID
		_, list, err := s.Photographed(t.Context(), test.h, test.file)
		if err != nil {
			t.Fatal(test.what, err)
		}
		wantCodes(t, test.what, list, test.want...)
	}
	if _, _, err := s.Photographed(t.Context(), app.Happened{Document: yarn.ID}, jpg); !record.Is(err, record.NotFound) {
		t.Errorf("of a yarn: %v", err)
	}
	if all := events(t, s, warp.ID, record.Log); len(all) != 0 {
		t.Errorf("written all the same: %+v", all)
	}
	if _, err := s.Photograph(t.Context(), "nothing-there"); !record.Is(err, record.NotFound) {
		t.Errorf("of nothing: %v", err)
	}
	note, _, err := s.Logged(t.Context(), app.Happened{Document: warp.ID, What: record.Noted, Note: "tight", ID: "note-00000001"}, 0)
	if err != nil {
		t.Fatal(err)
	}
	if e := photographed(t, s, app.Happened{Document: warp.ID, ID: note.ID}, jpg); e.What != record.Noted {
		t.Errorf("the mark of a note became %+v", e)
	}
	if _, err := s.Photograph(t.Context(), note.ID); !record.Is(err, record.NotFound) {
		t.Errorf("a note has a photograph: %v", err)
	}
}

// withPhotographs is a folder with two photographs, of a border and of a drawing.
func withPhotographs(t *testing.T) fstest.MapFS {
	s := openStudio(t)
	warp := addWarp(t, s, towels)
	start(t, s, warp.ID)
	photographed(t, s, app.Happened{Document: warp.ID, ID: "photo-00000001"}, taken.JPEG(90, 60, 8))
	photographed(t, s, app.Happened{Document: warp.ID, ID: "photo-00000002"}, taken.JPEG(60, 40, 1))
	sat(t, s, warp.ID)
	return exported(t, s)
}

// sat begins and ends a sitting.
func sat(t *testing.T, s *app.Studio, id record.ID) {
	t.Helper()
	for _, do := range []func() error{
		func() error { _, _, err := s.SitDown(t.Context(), app.Happened{Document: id}); return err },
		func() error { _, _, err := s.StandUp(t.Context(), app.Happened{Document: id}, 0); return err },
	} {
		if err := do(); err != nil {
			t.Fatal(err)
		}
	}
}

// A folder with photographs makes the same book, and says what is wrong with them.
func TestPhotographsOfAFolder(t *testing.T) {
	whole := withPhotographs(t)
	const first = "photographs/photo-00000001.jpg"
	if whole[first] == nil || !bytes.Contains(whole["events.json"].Data, []byte(`"path": "id-`)) {
		t.Fatalf("the folder lacks photographs or sittings: %s", whole["events.json"].Data)
	}
	other := openStudio(t)
	imported(t, other, whole)
	wantSame(t, "imported and exported", exported(t, other), whole)
	imported(t, other, whole)
	wantSame(t, "imported twice", exported(t, other), whole)
	for what, test := range map[string]struct {
		damage func(*testing.T, fstest.MapFS)
		want   []string
	}{
		"no file":          {gone(first), []string{first + " import.missing"}},
		"no picture":       {func(_ *testing.T, f fstest.MapFS) { put(f, first, []byte("<html>")) }, []string{first + " import.photograph"}},
		"another type":     {change("book.json", `"kind": "image/jpeg"`, `"kind": "text/html"`), []string{first + " import.photograph"}},
		"another size":     {change("book.json", `"wide": 90`, `"wide": 91`), []string{first + " import.photograph"}},
		"of no entry":      {change("book.json", `"event": "photo-00000001"`, `"event": "photo-00000009"`), []string{"events.json import.event", first + " import.photograph"}},
		"twice of one":     {change("book.json", `"event": "photo-00000001"`, `"event": "photo-00000002"`), []string{"events.json import.event", "photographs/photo-00000002.jpg import.photograph"}},
		"of a start":       {change("book.json", `"event": "photo-00000001"`, `"event": "id-00000002"`), []string{"events.json import.event", first + " import.photograph"}},
		"a file outside":   {change("book.json", first, "../"+first), []string{"../" + first + " import.name"}},
		"one not told of":  {change("events.json", `"what": "photograph"`, `"what": "note"`), []string{first + " import.photograph"}},
		"one without file": {change("events.json", `"what": "sat-down"`, `"what": "photograph"`), []string{"events.json import.event"}},
	} {
		t.Run(what, func(t *testing.T) {
			folder := fstest.MapFS{}
			for name, file := range whole {
				folder[name] = file
			}
			test.damage(t, folder)
			s := openStudio(t)
			_, list, err := s.Import(t.Context(), left, folder)
			if err != nil {
				t.Fatal(err)
			}
			wantCodes(t, what, list, test.want...)
			if n := len(exported(t, s)); n != 3 {
				t.Errorf("%d files are in the book", n)
			}
		})
	}
}

// A folder that was exported before there were photographs is read as it was, and is
// exported the same but for its version.
func TestFolderOfFormat1(t *testing.T) {
	folder := fstest.MapFS{}
	if err := copyInto(folder, "testdata/format-1"); err != nil {
		t.Fatal(err)
	}
	s := openStudio(t)
	if done := imported(t, s, folder); done.Added != 2 || done.Events != 9 || len(done.Edited) != 0 {
		t.Errorf("imported %+v", done)
	}
	change("book.json", `"format": 1`, `"format": 2`)(t, folder)
	wantSame(t, "exported anew", exported(t, s), folder)
}

// copyInto puts the files below a folder of the disk into one in memory.
func copyInto(to fstest.MapFS, folder string) error {
	files := os.DirFS(folder)
	names := []string{
		"book.json", "events.json", "frozen.json", "history/id-00000001.json", "history/id-00000002.json",
		"warps/towels.toml", "yarns/cottolin-white.json",
	}
	for _, name := range names {
		f, err := files.Open(name)
		if err != nil {
			return err
		}
		var b bytes.Buffer
		if _, err := b.ReadFrom(f); err != nil {
			return err
		}
		if err := f.Close(); err != nil {
			return err
		}
		put(to, name, b.Bytes())
	}
	return nil
}
