package app_test

import (
	"context"
	"fmt"
	"path/filepath"
	"sync/atomic"
	"testing"
	"time"

	"sley/examples"
	"sley/internal/app"
	"sley/internal/edge/book"
	"sley/internal/edge/book/memory"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

var noon = time.Date(2026, 3, 2, 12, 0, 0, 0, time.UTC)

// clock goes on by a second each time it is asked.
func clock() func() time.Time {
	var n atomic.Int64
	return func() time.Time { return noon.Add(time.Duration(n.Add(1)) * time.Second) }
}

// numbered gives ids that count, so that goldens are the same each time.
func numbered() func() string {
	var n atomic.Int64
	return func() string { return fmt.Sprintf("id-%08d", n.Add(1)) }
}

// openFile is a new book.
func openFile(t testing.TB) *book.Book {
	t.Helper()
	b, err := book.Open(context.Background(), book.Asked{
		Path: filepath.Join(t.TempDir(), "book.sley"), Now: clock(), Create: true,
	})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { b.Close() })
	return b
}

// openStudio is a studio on a new book.
func openStudio(t testing.TB) *app.Studio {
	t.Helper()
	return app.NewStudio(openFile(t), clock(), numbered(), "test")
}

// inMemory is a studio on a new book in memory, for what is drawn many times.
func inMemory() *app.Studio { return app.NewStudio(memory.New(), clock(), numbered(), "test") }

// withDemo is a studio whose book holds the demo.
func withDemo(t testing.TB) *app.Studio {
	t.Helper()
	s := openStudio(t)
	if err := s.FillDemo(context.Background(), examples.Demo()); err != nil {
		t.Fatal(err)
	}
	return s
}

// find gives a document by name.
func find(t testing.TB, s *app.Studio, kind record.Kind, name string) app.Card {
	t.Helper()
	card, list, err := s.Named(context.Background(), kind, name)
	if err != nil || card == nil {
		t.Fatalf("%s %q: %v %v", kind, name, err, codesOf(list))
	}
	return *card
}

func codesOf(list *problem.List) []string {
	var out []string
	if list == nil {
		return nil
	}
	for _, p := range list.All() {
		out = append(out, p.Path+" "+p.Code)
	}
	return out
}

func TestTheDemoFillsABook(t *testing.T) {
	s := withDemo(t)
	counts, err := s.Counts(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	t.Log(counts)
	for _, kind := range record.Kinds() {
		cards, total, err := s.List(t.Context(), record.Query{Kind: kind, Most: 100})
		if err != nil || total != len(cards) || total == 0 {
			t.Fatal(kind, total, len(cards), err)
		}
		for _, c := range cards {
			if c.Facts.Errors > 0 || !c.Demo || c.Facts.Of != c.Version {
				t.Errorf("%s %q: %+v", c.Kind, c.Name, c.Facts)
			}
			t.Log(c.Kind, c.Name, c.Facts.Stage, c.Facts.Weave, c.Facts.Shafts, c.Facts.LongestFloat, len(c.Figures))
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
