package book

import (
	"path/filepath"
	"testing"

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
