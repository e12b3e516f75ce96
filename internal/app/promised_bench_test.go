package app

import (
	"context"
	"fmt"
	"math/rand/v2"
	"path/filepath"
	"testing"
	"time"

	"sley/internal/edge/book"
	"sley/internal/trade/record"
)

// benchShelf is a book of 200 yarns and 10,000 warps, of which each has two of the yarns
// and all but one in ten are finished.
func benchShelf(b *testing.B) *Studio {
	b.Helper()
	kept, err := book.Open(context.Background(), book.Asked{Path: filepath.Join(b.TempDir(), "book.sley"), Now: time.Now, Create: true})
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { kept.Close() })
	n := 0
	s := NewStudio(kept, time.Now, func() string { n++; return fmt.Sprintf("mark%06d", n) }, "bench")
	err = s.write(context.Background(), func(w record.Writer) ([]Changed, error) { return nil, s.fillBench(w) })
	if err != nil {
		b.Fatal(err)
	}
	return s
}

func (s *Studio) fillBench(w record.Writer) error {
	const yarns, warps = 200, 10_000
	var marks []string
	for i := range yarns {
		f := fresh{kind: record.Yarn, body: &body{Name: fmt.Sprintf("yarn %d", i), Yarn: []byte(`{"count":"8/2 Ne"}`)}, mark: s.newID()}
		if _, _, err := s.add(w, f); err != nil {
			return err
		}
		marks = append(marks, f.mark)
	}
	at := rand.New(rand.NewPCG(1, 2))
	for i := range warps {
		takes := []listedTake{{marks[at.IntN(yarns)], "6000000000000", "1"}, {marks[at.IntN(yarns)], "7000000000000/3", "1/3"}}
		name := fmt.Sprintf("warp %d", i)
		c := record.Card{Name: name, Sort: sortKey(name), Words: name}
		c.Facts = record.Facts{Of: 1, Engine: FactsEngine, Stage: record.Done, Figures: listed{Takes: takes}.bytes()}
		if i%10 == 0 {
			c.Facts.Stage = record.Planned
			for _, word := range wordsOfTakes(takes) {
				c.Words += " " + word
			}
		}
		d := record.Document{Kind: record.Warp, Mark: s.newID(), Card: c}
		v := record.Version{At: s.moment(), Window: "bench", Act: record.Add, Body: (&body{Plan: []byte(`{"sley":1}`)}).bytes()}
		if _, err := w.Add(d, v); err != nil {
			return err
		}
	}
	return nil
}

// BenchmarkShelf is one page of the shelf, fifty yarns of two hundred.
func BenchmarkShelf(b *testing.B) {
	s := benchShelf(b)
	for b.Loop() {
		yarns, total, err := s.Shelf(context.Background(), record.Query{Most: 50})
		if err != nil || total != 200 || len(yarns[0].Promised) == 0 {
			b.Fatal(total, err)
		}
	}
}
