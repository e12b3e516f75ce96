package app_test

import (
	"archive/zip"
	"bytes"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"testing"
	"testing/fstest"
	"time"

	"sley/internal/app"
	"sley/internal/trade/record"
)

// bomb is a small archive of a large file.
func bomb(t *testing.T) []byte {
	t.Helper()
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	f, err := w.Create("book.json")
	if err == nil {
		_, err = f.Write(make([]byte, 100<<20))
	}
	if err != nil || w.Close() != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// picture is a small file of a large picture.
func picture(t *testing.T) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := png.Encode(&out, image.NewGray(image.Rect(0, 0, 20000, 5000))); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// Archives and pictures are nothing that the book takes in: they are never unpacked, and
// told to be no plan, no draft, no folder and no copy. Nothing is written.
func TestBombsAreNotUnpacked(t *testing.T) {
	oneAtATime(t)
	s := openStudio(t)
	for what, data := range map[string][]byte{"an archive": bomb(t), "a picture": picture(t), "nothing": nil, "noughts": make([]byte, 1<<20)} {
		for _, name := range []string{"x.toml", "x.wif", "x.zip", ""} {
			saved, err := s.AddWarp(t.Context(), "w", app.Source{Name: name, Text: data})
			if err != nil || !saved.Refused || saved.Problems.Len() == 0 {
				t.Errorf("%s as a plan %q: %+v %v", what, name, saved, err)
			}
			saved, err = s.AddDraft(t.Context(), "w", app.Source{Name: name, Text: data})
			if err != nil || !saved.Refused || saved.Problems.Len() == 0 {
				t.Errorf("%s as a draft %q: %+v %v", what, name, saved, err)
			}
		}
		folder := fstest.MapFS{"book.json": {Data: data}, "events.json": {Data: data}, "frozen.json": {Data: data}}
		if done, list, err := s.Import(t.Context(), "w", folder); err != nil || !list.Failed() || done.Added > 0 {
			t.Errorf("%s as a folder: %+v %v %v", what, done, codesOf(list), err)
		}
		path := filepath.Join(t.TempDir(), "copy.sley")
		if err := os.WriteFile(path, data, 0o600); err != nil {
			t.Fatal(err)
		}
		if err := app.CheckFile(t.Context(), path); !record.Is(err, record.NotABook) {
			t.Errorf("%s as a copy: %v", what, err)
		}
		if _, _, err := app.Restore(t.Context(), filepath.Join(t.TempDir(), "book.sley"), path, time.Now()); !record.Is(err, record.NotABook) {
			t.Errorf("%s put in the place of the book: %v", what, err)
		}
	}
	if c, err := s.Counts(t.Context()); err != nil || c.Of[record.Warp]+c.Of[record.Draft] > 0 {
		t.Errorf("something was written: %v %v", c, err)
	}
}

// What is put on a shelf is what the weaver saw: of a warp that another window changed
// since, nothing is put there.
func TestPutOnShelfOfAnOlderVersion(t *testing.T) {
	s := withDemo(t)
	towels := find(t, s, record.Warp, "Galley towels")
	save(t, s, towels.ID, "another-window", "note=changed")
	before, err := s.Counts(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	saved, err := s.PutOnShelf(t.Context(), app.Edit{ID: towels.ID, Base: towels.Version, Window: "w"}, "yarns.white", "white, mine")
	if err != nil || saved.Conflict == nil || saved.Conflict.Head != towels.Version+1 {
		t.Errorf("%+v, %v", saved, err)
	}
	if after, err := s.Counts(t.Context()); err != nil || after.Of[record.Yarn] != before.Of[record.Yarn] {
		t.Errorf("%v, before %v, %v", after, before, err)
	}
}

// A path may hold an equals sign inside a quoted key; what parts path and value is the
// first outside of one.
func TestReadSetPartsOutsideQuotes(t *testing.T) {
	set, ok := app.ReadSet(`yarns."a=b".count = 8/2 Ne`)
	if !ok || set.Path != `yarns."a=b".count` || string(set.Value) != `"8/2 Ne"` {
		t.Errorf("%v %+v %s", ok, set, set.Value)
	}
}
