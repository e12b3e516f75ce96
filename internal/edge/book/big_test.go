package book

import (
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"sley/internal/trade/record"
)

// A big book: 10,000 warps and 100,000 drafts, made once for all benchmarks of a run.
const (
	bigWarps  = 10_000
	bigDrafts = 100_000
	atOnce    = 5_000
)

var bigWords = []string{
	"towel", "scarf", "runner", "blanket", "napkin", "curtain", "sampler", "shawl", "band", "rug",
	"linen", "wool", "cotton", "hemp", "blue", "grey", "white", "natural", "undyed", "striped",
}

func bigDocument(r *rand.Rand, kind record.Kind, n int) (record.Document, record.Version) {
	word := func() string { return bigWords[r.IntN(len(bigWords))] }
	name := fmt.Sprintf("%s %s %d", word(), word(), n)
	d := record.Document{Kind: kind, Mark: fmt.Sprintf("mark-%s-%d", kind, n), Card: record.Card{
		Name: name, Sort: []byte(name), Words: strings.Join([]string{word(), word(), word(), fmt.Sprintf("unique%d", n)}, " "),
		Facts: record.Facts{
			Of: 1, Engine: 1, Shafts: 2 + r.IntN(30), Treadles: r.IntN(30), Ends: r.IntN(500), Picks: r.IntN(500), LongestFloat: 1 + r.IntN(12),
			Weave: []string{"plain", "twill", "satin", "lace", ""}[r.IntN(5)], Figures: []byte(`{"width":"45 cm","length":"3.2 m","ends":420}`),
		},
	}}
	return d, record.Version{Act: record.Add, At: noon, Window: "window", Body: threads(40+r.IntN(80), uint64(n))}
}

// bigVariable names a big book that is there from a run before.
const bigVariable = "SLEY_BIG"

var theBigBook = sync.OnceValues(func() (string, error) {
	if path := os.Getenv(bigVariable); path != "" {
		return path, nil
	}
	dir, err := os.MkdirTemp("", "sley-big-")
	if err != nil {
		return "", err
	}
	path := filepath.Join(dir, "book.sley")
	b, err := Open(context.Background(), Asked{Path: path, Now: at(noon), Create: true})
	if err != nil {
		return "", err
	}
	defer b.Close()
	r := rand.New(rand.NewPCG(1, 2))
	for _, part := range []struct {
		kind record.Kind
		n    int
	}{{record.Warp, bigWarps}, {record.Draft, bigDrafts}} {
		for from := 0; from < part.n; from += atOnce {
			err := b.Write(context.Background(), func(w record.Writer) error {
				for n := from; n < from+atOnce; n++ {
					if _, err := w.Add(bigDocument(r, part.kind, n)); err != nil {
						return err
					}
				}
				return nil
			})
			if err != nil {
				return "", err
			}
		}
	}
	return path, nil
})

// bigBook opens it. It is left in the system's folder for temporary files when the
// benchmarks end; BenchmarkBigList prints its place.
func bigBook(b *testing.B) *Book {
	b.Helper()
	path, err := theBigBook()
	if err != nil {
		b.Fatal(err)
	}
	book, err := Open(b.Context(), Asked{Path: path, Now: at(noon)})
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { book.Close() })
	return book
}

// lists are what is asked of a big book.
func lists(late record.Document) map[string]record.Query {
	return map[string]record.Query{
		"first":        {},
		"late":         {After: late.Sort, AfterID: late.ID},
		"filters":      {MostShafts: 8, MostTreadles: 10, MostFloat: 5, Weave: "twill"},
		"few of them":  {MostShafts: 2, MostTreadles: 1, MostFloat: 1, Weave: "lace"},
		"none of them": {Weave: "none"},
		"many words":   {Words: "t"},
		"usual words":  {Words: "linen tow"},
		"few words":    {Words: "unique777"},
		"one":          {Words: "unique77777 linen"},
		"no words":     {Words: "nothing"},
		"all at once":  {Words: "blue", MostShafts: 12, Weave: "twill"},
		"late in many": {Words: "s", After: late.Sort, AfterID: late.ID},
	}
}

func BenchmarkBigList(b *testing.B) {
	book := bigBook(b)
	var late record.Document
	err := book.Read(b.Context(), func(r record.Reader) error {
		docs, total, err := r.List(record.Query{Kind: record.Draft, Most: bigDrafts * 9 / 10})
		late = docs[len(docs)-1]
		b.Logf("%d drafts in %s, %.0f MB", total, book.path, float64(fileSize(b, book))/1e6)
		return err
	})
	if err != nil {
		b.Fatal(err)
	}
	all := lists(late)
	for _, name := range sorted(all) {
		q := all[name]
		q.Kind, q.Most = record.Draft, 50
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if err := book.Read(b.Context(), func(r record.Reader) error { _, _, err := r.List(q); return err }); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func sorted[V any](m map[string]V) []string {
	var out []string
	for name := range m {
		out = append(out, name)
	}
	slices.Sort(out)
	return out
}

func BenchmarkBigRead(b *testing.B) {
	book := bigBook(b)
	asks := map[string]func(record.Reader) error{
		"counts":      func(r record.Reader) error { _, err := r.Counts(); return err },
		"none stale":  func(r record.Reader) error { _, err := r.Stale(record.Draft, 1, 100); return err },
		"all stale":   func(r record.Reader) error { _, err := r.Stale(record.Draft, 2, 100); return err },
		"a document":  func(r record.Reader) error { _, err := r.Document(55_555); return err },
		"by its mark": func(r record.Reader) error { _, err := r.Marked("mark-draft-77777"); return err },
	}
	for _, name := range sorted(asks) {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if err := book.Read(b.Context(), asks[name]); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkBigOpen(b *testing.B) {
	bigBook(b).Close()
	for b.Loop() {
		bigBook(b).Close()
	}
}

// BenchmarkBigOpenUnclean opens it after a sley that was killed: then all of it is read.
func BenchmarkBigOpenUnclean(b *testing.B) {
	book := bigBook(b)
	path := book.Path()
	book.Close()
	open := func() {
		if err := os.WriteFile(lockPath(path), []byte("{}"), 0o600); err != nil {
			b.Fatal(err)
		}
		book, err := Open(b.Context(), Asked{Path: path, Now: at(noon)})
		if err != nil {
			b.Fatal(err)
		}
		book.Close()
	}
	for b.Loop() {
		open()
	}
}

// BenchmarkBigAppend says how long the slowest of a hundred takes, and what memory is in use.
func BenchmarkBigAppend(b *testing.B) {
	book := bigBook(b)
	var took []time.Duration
	r := rand.New(rand.NewPCG(3, 4))
	for b.Loop() {
		id := record.ID(1 + r.IntN(bigWarps+bigDrafts))
		d, v := bigDocument(r, record.Draft, int(id))
		start := time.Now()
		err := book.Write(b.Context(), func(w record.Writer) error {
			head, err := w.Card(id)
			if err != nil {
				return err
			}
			v.Document, v.Number, v.State, v.Act = id, head.Version+1, head.Version+1, record.Edit
			d.Facts.Of = v.Number
			return w.Append(v, d.Card)
		})
		if err != nil {
			b.Fatal(err)
		}
		took = append(took, time.Since(start))
	}
	slices.Sort(took)
	b.ReportMetric(float64(took[len(took)*99/100].Microseconds())/1000, "ms/p99")
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	b.ReportMetric(float64(m.HeapInuse)/1e6, "MB/heap")
}

// Of few documents with the words each is looked up by its number.
func TestFewFoundAreLookedUp(t *testing.T) {
	b := scratch(t)
	for i := range 30 {
		add(t, b, record.Draft, fmt.Sprintf("twill %d", i), "{}")
	}
	err := b.read(t.Context(), func(r *Reader) error {
		f, err := r.foundFor(record.Query{Kind: record.Draft, Words: "twill 2"})
		if err != nil || f.ids == "" || f.none {
			t.Errorf("%+v, %v", f, err)
		}
		where, _ := conditions(record.Query{Kind: record.Draft}, f)
		where = strings.NewReplacer("d.kind = ?", "d.kind = 'draft'", "d.removed = ?", "d.removed = 0", "json_each(?)", "json_each('"+f.ids+"')").Replace(where)
		lines, err := complaints(t.Context(), r.tx, "EXPLAIN QUERY PLAN "+f.from()+"WHERE "+where+" ORDER BY d.sort_key")
		if err != nil || !strings.Contains(strings.Join(lines, "\n"), "SEARCH d USING INTEGER PRIMARY KEY") {
			t.Errorf("%q, %v", lines, err)
		}
		found, total, err := r.List(record.Query{Kind: record.Draft, Words: "twill 2", Most: 5})
		if len(found) != 5 || total != 11 || found[0].Name != "twill 2" || found[1].Name != "twill 20" {
			t.Errorf("%d of %d", len(found), total)
		}
		if none, total, err := r.List(record.Query{Kind: record.Draft, Words: "satin", Most: 5}); len(none) > 0 || total > 0 || err != nil {
			t.Errorf("%d of %d, %v", len(none), total, err)
		}
		return err
	})
	if err != nil {
		t.Error(err)
	}
}

// A list walks the index by name, which has all it filters by, and sorts nothing.
func TestListsWalkAnIndex(t *testing.T) {
	b := scratch(t)
	for name, q := range lists(record.Document{ID: 5, Card: record.Card{Sort: []byte("s")}}) {
		where, args := conditions(q, found{match: matching(q.Words)}) // many have the words
		plan := func(query string, args []any) string {
			rows, err := b.reader.QueryContext(t.Context(), "EXPLAIN QUERY PLAN "+query, args...)
			if err != nil {
				t.Fatal(err)
			}
			defer rows.Close()
			var lines []string
			for rows.Next() {
				var n int
				var line string
				if err := rows.Scan(&n, &n, &n, &line); err != nil {
					t.Fatal(err)
				}
				lines = append(lines, line)
			}
			return strings.Join(lines, "\n")
		}
		from := "INDEX documents_by_name (kind=? AND removed=?)"
		if q.AfterID > 0 {
			from = "INDEX documents_by_name (kind=? AND removed=? AND sort_key>?)"
		}
		page, more := after(where, args, q)
		if got := plan(named+"WHERE "+page+" ORDER BY d.sort_key, d.id LIMIT 50", more); !strings.Contains(got, from) || strings.Contains(got, "TEMP B-TREE") {
			t.Errorf("%s: %s", name, got)
		}
		if got := plan("SELECT count(*) FROM documents d WHERE "+where, args); !strings.Contains(got, "COVERING INDEX documents_to_count (kind=? AND removed=?") {
			t.Errorf("%s: counting: %s", name, got)
		}
	}
}
