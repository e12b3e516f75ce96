// Package pdf writes a scene as a PDF for paper: pages of the exact size, text as
// text with its letters embedded, and the same scene gives the same bytes.
package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
)

// Encode writes the document. The error is that it has no pages, that a page
// cannot be drawn, that its date cannot be read, or that w cannot be written to.
func Encode(w io.Writer, doc scene.Document) (err error) {
	made, err := dateOf(doc.Date)
	if err != nil {
		return err
	}
	if len(doc.Pages) == 0 {
		return errors.New("pdf: a document without pages")
	}
	for i, page := range doc.Pages {
		if err := page.Validate(); err != nil {
			return fmt.Errorf("pdf: page %d: %w", i+1, err)
		}
	}
	// fpdf gives up by panicking where it meets letters it did not expect. None
	// such should reach it; if one does, the weaver loses a sheet, not the book.
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("pdf: %v", r)
		}
	}()
	return write(w, doc, made)
}

func write(w io.Writer, doc scene.Document, made time.Time) error {
	first := doc.Pages[0]
	f := fpdf.NewCustom(&fpdf.InitType{
		OrientationStr: "P", UnitStr: "mm", Size: fpdf.SizeType{Wd: first.Width, Ht: first.Height},
	})
	f.SetAutoPageBreak(false, 0)
	f.SetCatalogSort(true)
	f.SetCreationDate(made)
	f.SetModificationDate(made)
	f.SetProducer("sley", true)
	describe(f, doc)
	e := &encoder{pdf: f, fonts: map[scene.Font]*subset{}}
	for _, page := range doc.Pages {
		e.page(page)
	}
	var out bytes.Buffer
	if err := f.Output(&out); err != nil {
		return err
	}
	_, err := w.Write(e.tagged(out.Bytes()))
	return err
}

func describe(f *fpdf.Fpdf, doc scene.Document) {
	f.SetTitle(basic(doc.Title), true)
	f.SetAuthor(basic(doc.Author), true)
	f.SetSubject(basic(doc.Subject), true)
}

// basic is text that fpdf can put into the description of a file: without what
// takes more than two bytes of UTF-16.
func basic(text string) string {
	return strings.Map(func(r rune) rune {
		if r > 0xFFFF {
			return letter.Missing
		}
		return r
	}, strings.ToValidUTF8(text, ""))
}

// undated stands for no date, since fpdf would put the clock's.
var undated = time.Unix(0, 0).UTC()

func dateOf(text string) (time.Time, error) {
	if text == "" {
		return undated, nil
	}
	for _, form := range []string{time.DateOnly, time.RFC3339} {
		if made, err := time.Parse(form, text); err == nil {
			return made, nil
		}
	}
	return time.Time{}, fmt.Errorf("pdf: date %q is neither like 2026-11-25 nor like 2026-11-25T12:00:00Z", text)
}

// encoder writes the content of pages itself, in points with three decimals; fpdf
// does the letters and the file around them.
type encoder struct {
	pdf    *fpdf.Fpdf
	fonts  map[scene.Font]*subset // loaded so far
	height float64                // of the page, mm
	out    strings.Builder        // operators not yet handed on
}

func (e *encoder) page(p scene.Page) {
	e.pdf.AddPageFormat("P", fpdf.SizeType{Wd: p.Width, Ht: p.Height})
	e.height = p.Height
	e.put(num(scene.MiterLimit), " M\n")
	e.items(p.Items, 0, 0)
	e.flush()
}

func (e *encoder) put(text ...string) {
	for _, t := range text {
		e.out.WriteString(t)
	}
}

func (e *encoder) flush() {
	if e.out.Len() > 0 {
		e.pdf.RawWriteStr(strings.TrimRight(e.out.String(), "\n "))
		e.out.Reset()
	}
}

// items draws shifted by dx, dy mm.
func (e *encoder) items(items []scene.Item, dx, dy float64) {
	for _, it := range items {
		switch it := it.(type) {
		case scene.Text:
			it.X, it.Y = it.X+dx, it.Y+dy
			e.text(it)
		case scene.Picture:
			e.picture(it, dx, dy)
		case scene.Group:
			e.group(it, dx+it.X, dy+it.Y)
		default:
			path, _ := scene.Outline(it) // validated: every other item has one
			e.path(path, dx, dy)
		}
	}
}

func (e *encoder) group(g scene.Group, dx, dy float64) {
	if g.Clip.IsZero() {
		e.items(g.Items, dx, dy)
		return
	}
	b := g.Clip.Shift(dx, dy)
	e.put("q ", e.at(b.X, b.Y), num(b.Width*scene.PointsPerMM), " ", num(-b.Height*scene.PointsPerMM), " re W n\n")
	e.items(g.Items, dx, dy)
	e.put("Q\n")
}
