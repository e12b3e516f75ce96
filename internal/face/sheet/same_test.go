package sheet

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"sley/internal/app"
	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
)

// drawnAs is a plan's sheets, all of them, in a form.
func drawnAs(t testing.TB, name string, form app.Form) [][]byte {
	t.Helper()
	r := reckoned(t, name, plans(t)[name])
	files, err := app.SheetFiles(mustMake(t, r, Options{Sheets: everything(r)}), form, 50)
	if err != nil {
		t.Fatal(err)
	}
	return files
}

func TestSamePlanSameBytesInEveryForm(t *testing.T) {
	for _, form := range []app.Form{app.PDF, app.SVG, app.PNG} {
		first, second := drawnAs(t, "bookmark-class.toml", form), drawnAs(t, "bookmark-class.toml", form)
		if len(first) != len(second) {
			t.Errorf("%s: %d files and %d", form, len(first), len(second))
		}
		for i := range min(len(first), len(second)) {
			if !bytes.Equal(first[i], second[i]) {
				t.Errorf("%s: file %d has other bytes", form, i+1)
			}
		}
	}
}

// An SVG has the texts of its page, in their order, and as many shapes of each kind.
func TestSVGHasWhatThePageHas(t *testing.T) {
	for name, text := range demo(t) {
		r := reckoned(t, name, text)
		doc := mustMake(t, r, Options{Sheets: everything(r)})
		files, err := app.SheetFiles(doc, app.SVG, 0)
		if err != nil || len(files) != len(doc.Pages) {
			t.Fatalf("%s: %d files of %d pages: %v", name, len(files), len(doc.Pages), err)
		}
		for i, p := range doc.Pages {
			want := shapes{count: map[string]int{}}
			want.gather(p.Items)
			got := readShapes(t, files[i])
			if a, b := strings.Join(want.said, "\n"), strings.Join(got.said, "\n"); a != b {
				t.Errorf("%s, page %d says\n%s\nand not\n%s", name, i+1, b, a)
			}
			for kind, n := range want.count {
				if got.count[kind] != n {
					t.Errorf("%s, page %d: %d times %s, want %d", name, i+1, got.count[kind], kind, n)
				}
			}
		}
	}
}

// shapes are what a page says and how many shapes of each element it has.
type shapes struct {
	said  []string
	count map[string]int
}

func (s *shapes) gather(items []scene.Item) {
	for _, it := range items {
		switch it := it.(type) {
		case scene.Group:
			s.count["g"]++
			s.gather(it.Items)
		case scene.Text:
			if words := letter.Clean(it.Text, it.Font); strings.Trim(words, " ") != "" {
				s.said = append(s.said, words)
			}
		case scene.Line:
			s.count["line"]++
		case scene.Circle:
			s.count["circle"]++
		case scene.Path:
			s.count["path"]++
		}
	}
}

// readShapes reads an SVG as the browser does, tag by tag.
func readShapes(t *testing.T, file []byte) shapes {
	t.Helper()
	out := shapes{count: map[string]int{}}
	inText := false
	for d := xml.NewDecoder(bytes.NewReader(file)); ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return out
		}
		if err != nil {
			t.Fatal(err)
		}
		switch token := token.(type) {
		case xml.StartElement:
			out.count[token.Name.Local]++
			inText = token.Name.Local == "text"
		case xml.EndElement:
			inText = false
		case xml.CharData:
			if inText {
				out.said = append(out.said, string(token))
			}
		}
	}
}

// BenchmarkSheets lays the sheets of the towels out and draws them: all of them, in
// each form.
func BenchmarkSheets(b *testing.B) {
	r := reckoned(b, "galley-towels.toml", plans(b)["galley-towels.toml"])
	for _, form := range []app.Form{app.PDF, app.SVG, app.PNG} {
		b.Run(string(form), func(b *testing.B) {
			pages := 0
			for b.Loop() {
				doc := mustMake(b, r, Options{Sheets: everything(r)})
				if _, err := app.SheetFiles(doc, form, 150); err != nil {
					b.Fatal(err)
				}
				pages += len(doc.Pages)
			}
			b.ReportMetric(float64(pages)/b.Elapsed().Seconds(), "pages/s")
		})
	}
}
