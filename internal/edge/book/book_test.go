package book

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"testing"
	"time"

	"sley/internal/trade/record"
)

var noon = time.Date(2026, 3, 2, 12, 0, 0, 0, time.UTC)

func at(t time.Time) func() time.Time { return func() time.Time { return t } }

// scratch is a new book, closed when the test ends.
func scratch(t testing.TB) *Book {
	t.Helper()
	return open(t, filepath.Join(t.TempDir(), "book.sley"))
}

func open(t testing.TB, path string) *Book {
	t.Helper()
	b, err := Open(t.Context(), Asked{Path: path, Now: at(noon), Create: true})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { b.Close() })
	return b
}

// add writes a document of one version.
func add(t testing.TB, b record.Book, kind record.Kind, name, body string) record.ID {
	t.Helper()
	var id record.ID
	err := b.Write(t.Context(), func(w record.Writer) (err error) {
		d := record.Document{Kind: kind, Mark: "mark-" + name, Card: record.Card{Name: name, Sort: []byte(name)}}
		id, err = w.Add(d, record.Version{At: noon, Window: "test", Act: record.Add, Body: []byte(body)})
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return id
}

func TestAVersionIsThereAfterClosing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a folder?#%", "book.sley")
	b := open(t, path)
	id := add(t, b, record.Warp, "towels", `{"name":"towels"}`)
	if err := b.Check(t.Context()); err != nil {
		t.Fatal(err)
	}
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(path); err != nil {
		t.Fatal("the book is not where it was asked for:", err)
	}
	again := open(t, path)
	err := again.Read(t.Context(), func(r record.Reader) error {
		d, err := r.Document(id)
		if err == nil && string(d.Body) != `{"name":"towels"}` {
			err = fmt.Errorf("the body is %s", d.Body)
		}
		return err
	})
	if err != nil {
		t.Error(err)
	}
}

func TestACopyIsWhole(t *testing.T) {
	b := scratch(t)
	add(t, b, record.Yarn, "white", "{}")
	copied := filepath.Join(t.TempDir(), "copy.sley")
	if err := b.Copy(t.Context(), copied); err != nil {
		t.Fatal(err)
	}
	if err := b.Copy(t.Context(), copied); !record.Is(err, record.Exists) {
		t.Errorf("copied over a copy: %v", err)
	}
	other, err := Peek(context.Background(), b.Path()) // as another process would
	if err != nil {
		t.Fatal(err)
	}
	defer other.Close()
	if err := other.Copy(t.Context(), copied+"2"); err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{copied, copied + "2"} {
		if err := Check(t.Context(), path); err != nil {
			t.Error(err)
		}
	}
	if err := other.Write(t.Context(), nil); err == nil {
		t.Error("wrote to a book that is only read")
	}
}

// Nobody else may read a book, nor what stands beside it.
func TestABookIsPrivate(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("Windows keeps rights by folders")
	}
	b := scratch(t)
	add(t, b, record.Yarn, "white", "{}")
	found, err := filepath.Glob(b.Path() + "*")
	if err != nil || len(found) < 3 {
		t.Fatal(found, err)
	}
	for _, path := range found {
		info, err := os.Stat(path)
		if err != nil || info.Mode().Perm()&0o077 != 0 {
			t.Errorf("%s: %v %v", filepath.Base(path), info.Mode(), err)
		}
	}
}

// oneAtATime leaves a test out of the short form, which the race detector runs: it takes
// long and does one thing at a time.
func oneAtATime(t *testing.T) {
	t.Helper()
	if testing.Short() {
		t.Skip("does one thing at a time, and takes long")
	}
}
