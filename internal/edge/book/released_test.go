package book

import (
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"sley/internal/trade/record"
)

var update = flag.Bool("update", false, "make the books of released versions that are missing, and write their texts anew")

// A book of every version of the schema is kept in testdata/released, as a sley of that
// version left it, with something in every table. One that is there is never written
// again: it stands for the books that are on weavers' disks. When a version is added,
// go test ./internal/edge/book -run Released -update makes its book, and writes the
// texts of all as they read once they are of the newest version.

func released(version int, end string) string {
	return filepath.Join("testdata", "released", fmt.Sprint(version)+end)
}

func TestReleasedBooksMigrate(t *testing.T) {
	for version := 1; version <= len(allSteps(t)); version++ {
		t.Run(fmt.Sprint(version), func(t *testing.T) {
			if _, err := os.Stat(released(version, ".sley")); errors.Is(err, fs.ErrNotExist) && *update {
				release(t, version)
			}
			data, err := os.ReadFile(released(version, ".sley"))
			if err != nil {
				t.Fatalf("%v: make it with go test ./internal/edge/book -run Released -update", err)
			}
			path := filepath.Join(t.TempDir(), "book.sley")
			if err := os.WriteFile(path, data, 0o600); err != nil {
				t.Fatal(err)
			}
			seeReleased(t, path, version)
		})
	}
}

// release makes the book of a version.
func release(t *testing.T, version int) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "book.sley")
	older(t, path, version)
	if err := os.MkdirAll(filepath.Dir(released(version, "")), 0o755); err != nil {
		t.Fatal(err)
	}
	db := raw(t, path)
	defer db.Close()
	run(t, db, "VACUUM INTO '"+released(version, ".sley")+"'")
}

// seeReleased opens a released book and holds all that is in it against its text.
func seeReleased(t *testing.T, path string, version int) {
	t.Helper()
	if err := Check(t.Context(), path); err != nil {
		t.Fatal("before it is migrated:", err)
	}
	b, err := Open(t.Context(), Asked{Path: path, Now: at(noon)})
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	if b.Version() != version || b.Fresh() {
		t.Errorf("it has version %d, fresh %v", b.Version(), b.Fresh())
	}
	if err := b.Check(t.Context()); err != nil {
		t.Error(err)
	}
	got := textOf(t, path) + bodiesOf(t, b)
	if *update {
		if err := os.WriteFile(released(version, ".txt"), []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(released(version, ".txt"))
	if err != nil || got != string(want) {
		t.Errorf("migrated it reads otherwise than %s, %v", released(version, ".txt"), err)
	}
	if err := b.Write(t.Context(), func(w record.Writer) error { return edits(otherNumbers{w}, 4) }); err != nil {
		t.Error("it cannot be written to:", err)
	}
}

// otherNumbers appends after what is there.
type otherNumbers struct{ record.Writer }

func (o otherNumbers) Append(v record.Version, c record.Card) error {
	d, err := o.Card(v.Document)
	if err != nil {
		return err
	}
	if v.State == v.Number {
		v.State = d.Version + 1
	}
	v.Number = d.Version + 1
	return o.Writer.Append(v, c)
}

// bodiesOf is what the versions and the frozen plans say, by length and sum.
func bodiesOf(t *testing.T, b *Book) string {
	t.Helper()
	var out string
	err := b.Read(t.Context(), func(r record.Reader) error {
		all, err := r.All()
		for _, d := range all {
			for number := 1; number <= d.Version; number++ {
				body, err := r.Body(d.ID, number)
				if err != nil {
					return err
				}
				out += fmt.Sprintf("body of version %d of document %d: %s\n", number, d.ID, summed(body))
			}
		}
		plans, failed := r.AllFrozen()
		for _, f := range plans {
			out += fmt.Sprintf("frozen plan of %d: %s, nodes %s\n", f.Warp, summed(f.Body), f.Nodes)
		}
		return errors.Join(err, failed)
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func summed(body []byte) string { return fmt.Sprintf("%d bytes, %x", len(body), sha(body)) }
