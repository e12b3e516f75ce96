package drafting

import (
	"bytes"
	"io"
	"testing"

	"sley/internal/edge/render/pdf"
	"sley/internal/edge/render/png"
	"sley/internal/edge/render/svg"
	"sley/internal/engine/draw/scene"
)

// BenchmarkPicture draws a cloth of a megapixel: a dot for each of 1,000 × 1,000
// crossings, and four by four for 250 × 250.
func BenchmarkPicture(b *testing.B) {
	for name, c := range map[string]struct{ threads, dots int }{"1000x1": {1000, 1}, "250x4": {250, 4}} {
		d := large(c.threads)
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, ok := Picture(d, Look{Cells: Colours}, c.dots, c.dots); !ok {
					b.Fatal("no picture")
				}
			}
		})
	}
}

// BenchmarkDrawdown is a drawdown of 1,000 × 1,000 crossings as files: as a picture
// of a dot for each, and as a page.
func BenchmarkDrawdown(b *testing.B) {
	d := large(1000)
	b.Run("picture", func(b *testing.B) {
		for b.Loop() {
			p, _ := Picture(d, Look{Cells: Colours}, 2, 2)
			if err := png.EncodeCells(io.Discard, p, 100); err != nil {
				b.Fatal(err)
			}
		}
	})
	for form, encode := range map[string]func(io.Writer, scene.Page) error{
		"png": func(w io.Writer, p scene.Page) error { return png.Encode(w, p, 25.4) },
		"svg": func(w io.Writer, p scene.Page) error { return svg.Encode(w, p, "") },
		"pdf": func(w io.Writer, p scene.Page) error {
			return pdf.Encode(w, scene.Document{Pages: []scene.Page{p}})
		},
	} {
		b.Run(form, func(b *testing.B) {
			var out bytes.Buffer
			for b.Loop() {
				out.Reset()
				page, _ := Draw(d, Look{Alone: true, Cells: Colours, Cell: 2}, Marks{}, words)
				if err := encode(&out, page); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(out.Len()), "bytes")
		})
	}
}

// BenchmarkPages cuts 400 × 400 crossings on 40 shafts into pages.
func BenchmarkPages(b *testing.B) {
	d := advancing(40, 400, 400)
	for b.Loop() {
		Pages(d, Look{}, Marks{}, scene.A4, words)
	}
}
