package pdf_test

import (
	"bytes"
	"errors"
	"io"
	"strings"
	"sync"
	"testing"

	"sley/internal/edge/render/pdf"
	"sley/internal/engine/draw/scene"
	"sley/internal/engine/draw/specimen"
)

func encode(t testing.TB, doc scene.Document) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := pdf.Encode(&out, doc); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func document(items ...scene.Item) scene.Document {
	return scene.Document{Pages: []scene.Page{{Width: 100, Height: 50, Items: items}}}
}

func TestSameBytesTwiceAndSideBySide(t *testing.T) {
	want := encode(t, specimen.Document())
	var wait sync.WaitGroup
	for range 4 {
		wait.Go(func() {
			var out bytes.Buffer
			if err := pdf.Encode(&out, specimen.Document()); err != nil || !bytes.Equal(out.Bytes(), want) {
				t.Errorf("%d bytes, then %d others, %v", len(want), out.Len(), err)
			}
		})
	}
	wait.Wait()
}

func TestHardTextNeverBreaksIt(t *testing.T) {
	for _, text := range []string{
		"🧶👩‍👩‍👧", "織物", "\x00\x01\x1b\t\r\n", "\xff\xfe\xed\xa0\x80", "\u202e\u2066x", "\U0010ffff", "\uffff\ufffe", "(\\) {nb}",
		strings.Repeat("w", 5000), strings.Repeat("🧶", 5000), strings.Repeat("a\u0301\u0302", 2000), "",
	} {
		doc := document(scene.Text{X: 1, Y: 10, Size: 10, Text: text}, scene.Text{Size: 10, Anchor: scene.End, Angle: 33, Text: text})
		doc.Title, doc.Author, doc.Subject = text, text, text
		if out := encode(t, doc); !bytes.HasPrefix(out, []byte("%PDF-")) {
			t.Errorf("%.20q gave %.20q", text, out)
		}
	}
}

func TestErrors(t *testing.T) {
	late := document()
	late.Date = "25.11.2026"
	for _, c := range []struct {
		name string
		doc  scene.Document
		want string
	}{
		{"no pages", scene.Document{}, "without pages"},
		{"a page of no size", scene.Document{Pages: []scene.Page{{Width: 1, Height: 1}, {}}}, "page 2: page of 0"},
		{"a bad item", document(scene.Rect{Width: -1}), "page 1: item 0: a rectangle"},
		{"a date in another form", late, `date "25.11.2026" is neither`},
	} {
		if err := pdf.Encode(io.Discard, c.doc); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	if err := pdf.Encode(fullDisk{}, document()); err == nil || !strings.Contains(err.Error(), "disk is full") {
		t.Error(err)
	}
}

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, errors.New("the disk is full") }

// brokenPen panics when written to, as fpdf may on letters it did not expect.
type brokenPen struct{}

func (brokenPen) Write([]byte) (int, error) { panic("ink everywhere") }

func TestAPanicBelowBecomesAnError(t *testing.T) {
	if err := pdf.Encode(brokenPen{}, document()); err == nil || !strings.Contains(err.Error(), "ink everywhere") {
		t.Error(err)
	}
}

func BenchmarkTwoPages(b *testing.B) {
	doc := specimen.Document()
	for b.Loop() {
		if err := pdf.Encode(io.Discard, doc); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(2*float64(b.N)/b.Elapsed().Seconds(), "pages/s")
}

// A class kit is the longest print: a hundred sheets in one file.
func BenchmarkHundredPages(b *testing.B) {
	var doc scene.Document
	for range 100 {
		doc.Pages = append(doc.Pages, specimen.Sheet())
	}
	for b.Loop() {
		if err := pdf.Encode(io.Discard, doc); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(100*float64(b.N)/b.Elapsed().Seconds(), "pages/s")
}
