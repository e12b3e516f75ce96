package memory_test

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"sley/internal/edge/book"
	"sley/internal/edge/book/memory"
	"sley/internal/trade/record"
)

// Every test of the suite runs on both books: what one does, the other does.

var noon = time.Date(2026, 3, 2, 12, 0, 0, 123456789, time.FixedZone("east", 3600))

// kept is a time as a book keeps it.
func kept(t time.Time) time.Time { return t.UTC().Truncate(time.Millisecond) }

// same compares what books give: no bytes are as good as none.
func same(want, got any) string { return cmp.Diff(want, got, cmpopts.EquateEmpty()) }

func both(t *testing.T, do func(t *testing.T, b record.Book)) {
	t.Run("file", func(t *testing.T) { do(t, inFile(t)) })
	t.Run("memory", func(t *testing.T) { do(t, memory.New()) })
}

// inFile is a new book that must be whole when the test ends.
func inFile(t testing.TB) *book.Book {
	t.Helper()
	b := openAt(t, filepath.Join(t.TempDir(), "book.sley"))
	t.Cleanup(func() {
		if err := b.Check(context.Background()); err != nil {
			t.Error(err)
		}
		b.Close()
	})
	return b
}

func openAt(t testing.TB, path string) *book.Book {
	t.Helper()
	b, err := book.Open(t.Context(), book.Asked{Path: path, Now: func() time.Time { return noon }, Create: true})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func write(t testing.TB, b record.Book, do func(record.Writer) error) {
	t.Helper()
	if err := b.Write(t.Context(), do); err != nil {
		t.Fatal(err)
	}
}

func read(t testing.TB, b record.Book, do func(record.Reader) error) {
	t.Helper()
	if err := b.Read(t.Context(), do); err != nil {
		t.Fatal(err)
	}
}

// refused writes and expects that code, and that nothing was changed.
func refused(t *testing.T, b record.Book, code string, do func(record.Writer) error) {
	t.Helper()
	before := dump(t, b)
	if err := b.Write(t.Context(), do); !record.Is(err, code) {
		t.Errorf("%v, not %s", err, code)
	}
	if diff := same(before, dump(t, b)); diff != "" {
		t.Error("a change that failed is there:", diff)
	}
}

// everything is all that a book holds.
type everything struct {
	Documents   []record.Document
	Versions    map[record.ID][]record.Version
	Events      []record.Event
	Frozen      []record.Frozen
	Settings    map[string]string
	Counts      record.Counts
	Devices     []record.Device
	Photographs []record.Photograph
}

func dump(t testing.TB, b record.Book) everything {
	t.Helper()
	e := everything{Versions: map[record.ID][]record.Version{}}
	read(t, b, func(r record.Reader) (err error) {
		if e.Documents, err = r.All(); err != nil {
			return err
		}
		for _, d := range e.Documents {
			if e.Versions[d.ID], err = versionsOf(r, d.ID); err != nil {
				return err
			}
		}
		var failed [5]error
		e.Events, failed[0] = r.AllEvents()
		e.Frozen, failed[1] = r.AllFrozen()
		e.Settings, failed[2] = r.Settings()
		e.Counts, failed[3] = r.Counts()
		e.Devices, failed[4] = r.Devices()
		for _, one := range e.Events {
			p, err := r.Photograph(one.ID)
			if err == nil {
				e.Photographs = append(e.Photographs, p)
			} else if !record.Is(err, record.NotFound) {
				return err
			}
		}
		return errors.Join(failed[:]...)
	})
	return e
}

// versionsOf gives the versions of a document with their bodies.
func versionsOf(r record.Reader, id record.ID) ([]record.Version, error) {
	out, err := r.Versions(id, 0, 1000)
	for i := range out {
		var failed error
		out[i].Body, failed = r.Body(id, out[i].Number)
		err = errors.Join(err, failed)
	}
	return out, err
}

func mark(name string) string { return "mark-of-" + name }

func card(name string) record.Card {
	return record.Card{Name: name, Sort: []byte(strings.ToLower(name))}
}

func draft(name string) record.Document {
	return record.Document{Kind: record.Draft, Mark: mark(name), Card: card(name)}
}

func first(body string) record.Version {
	return record.Version{At: noon, Window: "a window", Act: record.Add, Body: []byte(body)}
}

func edit(id record.ID, number int, body string) record.Version {
	return record.Version{
		Document: id, Number: number, State: number, At: noon.Add(time.Duration(number) * time.Minute),
		Window: "a window", Act: record.Edit, Body: []byte(body),
	}
}

// add adds a document, most with the body of its name.
func add(t testing.TB, b record.Book, d record.Document, body string) (id record.ID) {
	t.Helper()
	write(t, b, func(w record.Writer) (err error) {
		id, err = w.Add(d, first(body))
		return err
	})
	return id
}

func TestAddedDocumentsAreThere(t *testing.T) {
	both(t, func(t *testing.T, b record.Book) {
		d := draft("Näpkin")
		d.Demo, d.Words = true, "linen"
		d.Facts = record.Facts{Of: 1, Engine: 3, Weave: "twill", Shafts: 4, Treadles: 6, Ends: 8, Picks: 9, LongestFloat: 2, Figures: []byte(`{"a":1}`), Errors: 1, Warnings: 2, Stage: "plan"}
		id := add(t, b, d, "{}")
		want := d
		want.ID, want.Version, want.Made, want.Changed, want.Words = id, 1, kept(noon), kept(noon), ""
		read(t, b, func(r record.Reader) error {
			byMark, err := r.Marked(d.Mark)
			one, failed := r.Card(id)
			if diff := same(want, byMark) + same(want, one); diff != "" {
				t.Error(diff)
			}
			want.Body = []byte("{}")
			whole, worse := r.Document(id)
			if diff := same(want, whole); diff != "" {
				t.Error(diff)
			}
			return errors.Join(err, failed, worse)
		})
		if other := add(t, b, draft("other"), ""); other <= id {
			t.Errorf("the second document has id %d, the first %d", other, id)
		}
	})
}

func TestWhatIsNotThereIsNotFound(t *testing.T) {
	both(t, func(t *testing.T, b record.Book) {
		id := add(t, b, draft("one"), "{}")
		read(t, b, func(r record.Reader) error {
			_, e1 := r.Document(id + 1)
			_, e2 := r.Card(0)
			_, e3 := r.Marked("mark-of-two")
			_, e4 := r.Body(id, 2)
			_, e5 := r.Body(id, 0)
			_, e6 := r.Body(id+1, 1)
			_, e7 := r.Event("an event")
			for i, err := range []error{e1, e2, e3, e4, e5, e6, e7} {
				if !record.Is(err, record.NotFound) {
					t.Errorf("%d: %v", i+1, err)
				}
			}
			got, err := r.Versions(id+1, 0, 5)
			if len(got) > 0 {
				t.Error("versions of a document that is not there:", got)
			}
			return err
		})
		refused(t, b, record.NotFound, func(w record.Writer) error { return w.Append(edit(id+1, 2, ""), card("x")) })
	})
}

func TestVersionsFollowOneAnother(t *testing.T) {
	both(t, func(t *testing.T, b record.Book) {
		id := add(t, b, draft("one"), "first")
		large := strings.Repeat("threads ", 5000)
		undo, gone, back := edit(id, 4, ""), edit(id, 5, large+"2"), edit(id, 6, large+"2")
		undo.Act, undo.State = record.Undo, 1
		gone.Act, gone.Removed = record.Remove, true
		back.Act = record.BringBack
		for _, v := range []record.Version{edit(id, 2, large), edit(id, 3, large+"2"), undo, gone, back} {
			write(t, b, func(w record.Writer) error { return w.Append(v, card(fmt.Sprintf("name %d", v.Number))) })
		}
		bodies := map[int]string{1: "first", 2: large, 3: large + "2", 4: "first", 5: large + "2", 6: large + "2"}
		read(t, b, func(r record.Reader) error {
			for number, want := range bodies {
				if got, err := r.Body(id, number); string(got) != want || err != nil {
					t.Errorf("version %d: %d bytes, not %d, %v", number, len(got), len(want), err)
				}
			}
			all, err := r.Versions(id, 0, 100)
			want := []record.Version{back, gone, undo, edit(id, 3, ""), edit(id, 2, "")}
			for i := range want {
				want[i].Body, want[i].At = nil, kept(want[i].At)
			}
			if len(all) != 6 || same(want, all[:5]) != "" {
				t.Error(same(want, all))
			}
			some, failed := r.Versions(id, 5, 2)
			if diff := same(all[2:4], some); diff != "" {
				t.Error(diff)
			}
			d, worse := r.Card(id)
			if d.Version != 6 || d.Removed || d.Name != "name 6" || !d.Changed.Equal(kept(back.At)) || !d.Made.Equal(kept(noon)) {
				t.Errorf("%+v", d)
			}
			return errors.Join(err, failed, worse)
		})
	})
}

func TestOnlyTheNextVersionIsTaken(t *testing.T) {
	both(t, func(t *testing.T, b record.Book) {
		id := add(t, b, draft("one"), "first")
		for _, number := range []int{0, 1, 3, -1} {
			refused(t, b, record.Changed, func(w record.Writer) error { return w.Append(edit(id, number, "x"), card("x")) })
		}
		later, none := edit(id, 2, "x"), edit(id, 2, "x")
		later.State, none.State = 3, 0
		refused(t, b, record.Unforeseen, func(w record.Writer) error { return w.Append(later, card("x")) })
		refused(t, b, record.NotFound, func(w record.Writer) error { return w.Append(none, card("x")) })
		// One who finds that another was there first may go on with the newest.
		write(t, b, func(w record.Writer) error {
			if err := w.Append(edit(id, 1, "x"), card("x")); !record.Is(err, record.Changed) {
				t.Error(err)
			}
			return w.Append(edit(id, 2, "second"), card("x"))
		})
	})
}

func TestRemovedDocumentsLeaveTheLists(t *testing.T) {
	both(t, func(t *testing.T, b record.Book) {
		id := add(t, b, draft("one"), "{}")
		other := draft("two")
		other.Demo = true
		add(t, b, other, "{}")
		gone := edit(id, 2, "{}")
		gone.Act, gone.Removed = record.Remove, true
		write(t, b, func(w record.Writer) error { return w.Append(gone, card("one")) })
		read(t, b, func(r record.Reader) error {
			there, n, err := r.List(record.Query{Kind: record.Draft, Most: 9})
			removed, m, failed := r.List(record.Query{Kind: record.Draft, Removed: true, Most: 9})
			if n != 1 || m != 1 || names(there) != "two" || names(removed) != "one" {
				t.Errorf("%d: %s; removed %d: %s", n, names(there), m, names(removed))
			}
			c, worse := r.Counts()
			if diff := same(record.Counts{Of: map[record.Kind]int{record.Draft: 1}, Demo: 1}, c); diff != "" {
				t.Error(diff)
			}
			return errors.Join(err, failed, worse)
		})
	})
}

func names(docs []record.Document) string {
	var out []string
	for _, d := range docs {
		out = append(out, d.Name)
	}
	return strings.Join(out, " ")
}

func TestFactsOfAnOlderVersionAreLetGo(t *testing.T) {
	both(t, func(t *testing.T, b record.Book) {
		id := add(t, b, draft("one"), "{}")
		stale := func(want ...record.ID) {
			t.Helper()
			read(t, b, func(r record.Reader) error {
				got, err := r.Stale(record.Draft, 7, 10)
				slices.Sort(got)
				if diff := same(want, got); diff != "" {
					t.Error(diff)
				}
				return err
			})
		}
		put := func(f record.Facts) { write(t, b, func(w record.Writer) error { return w.PutFacts(id, f) }) }
		stale(id)
		put(record.Facts{Of: 1, Engine: 7, Shafts: 4, Figures: []byte("{}")})
		stale()
		write(t, b, func(w record.Writer) error { return w.Append(edit(id, 2, "{ }"), card("one")) })
		stale(id)
		put(record.Facts{Of: 1, Engine: 7, Shafts: 5})
		put(record.Facts{Of: 3, Engine: 7, Shafts: 6})
		put(record.Facts{Of: 0, Engine: 7, Shafts: 6})
		stale(id)
		read(t, b, func(r record.Reader) error {
			d, err := r.Card(id)
			if diff := same(record.Facts{Of: 1, Engine: 7, Shafts: 4, Figures: []byte("{}")}, d.Facts); diff != "" {
				t.Error(diff)
			}
			return err
		})
		put(record.Facts{Of: 2, Engine: 8})
		stale(id)
		put(record.Facts{Of: 2, Engine: 6})
		stale(id)
		put(record.Facts{Of: 2, Engine: 7})
		stale()
		write(t, b, func(w record.Writer) error { return w.PutFacts(id+5, record.Facts{Of: 1, Engine: 7}) })
	})
}
