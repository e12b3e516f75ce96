package book

import (
	"path/filepath"
	"testing"
	"time"

	"sley/internal/trade/record"
)

func BenchmarkAppend(b *testing.B) {
	for _, size := range []struct {
		name    string
		threads int
	}{{"small", 20}, {"usual", 400}, {"largest", 40000}} {
		b.Run(size.name, func(b *testing.B) {
			book := open(b, filepath.Join(b.TempDir(), "book.sley"))
			body := threads(size.threads, 1)
			id := add(b, book, record.Draft, "draft", string(body))
			number := 1
			for b.Loop() {
				number++
				body[number*7%len(body)] = 'x'
				v := record.Version{Document: id, Number: number, State: number, Act: record.Edit, Body: body}
				err := book.Write(b.Context(), func(w record.Writer) error { return w.Append(v, record.Card{Name: "draft"}) })
				if err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkAgainstBare is how many times as long as a bare insert, which waits for the disk
// as well, an append takes; the two take turns.
func BenchmarkAgainstBare(b *testing.B) {
	book := open(b, filepath.Join(b.TempDir(), "book.sley"))
	bare, err := connect(filepath.Join(b.TempDir(), "bare"), writing, 1)
	if err != nil {
		b.Fatal(err)
	}
	defer bare.Close()
	run(b, bare, "CREATE TABLE bare (id INTEGER PRIMARY KEY, body BLOB)")
	body := threads(400, 1)
	id := add(b, book, record.Draft, "draft", string(body))
	var append, insert time.Duration
	number := 1
	for b.Loop() {
		number++
		body[number*7%len(body)] = 'x'
		start := time.Now()
		v := record.Version{Document: id, Number: number, State: number, Act: record.Edit, Body: body}
		if err := book.Write(b.Context(), func(w record.Writer) error { return w.Append(v, record.Card{Name: "draft"}) }); err != nil {
			b.Fatal(err)
		}
		append += time.Since(start)
		start = time.Now()
		if _, err := bare.Exec("INSERT INTO bare (body) VALUES (?)", body[:100]); err != nil {
			b.Fatal(err)
		}
		insert += time.Since(start)
	}
	b.ReportMetric(float64(append)/float64(insert), "times/bare")
}

// BenchmarkBody reads versions of the largest draft, whole ones and differences.
func BenchmarkBody(b *testing.B) {
	book := open(b, filepath.Join(b.TempDir(), "book.sley"))
	body := threads(40000, 1)
	id := add(b, book, record.Draft, "draft", string(body))
	err := book.Write(b.Context(), func(w record.Writer) error {
		for number := 2; number <= 40; number++ {
			body[number*997%len(body)] = 'x'
			v := record.Version{Document: id, Number: number, State: number, Act: record.Edit, Body: body}
			if err := w.Append(v, record.Card{Name: "draft"}); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		b.Fatal(err)
	}
	for n := 0; b.Loop(); n++ {
		if err := book.Read(b.Context(), func(r record.Reader) error { _, err := r.Body(id, 1+n%40); return err }); err != nil {
			b.Fatal(err)
		}
	}
}
