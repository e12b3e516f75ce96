package app

import (
	"bytes"
	"fmt"
	"io"

	"sley/internal/edge/render/pdf"
	"sley/internal/edge/render/png"
	"sley/internal/edge/render/svg"
	"sley/internal/engine/draw/scene"
)

// Form is the kind of file that sheets are drawn as, named as such files end.
type Form string

// The forms: one file of all pages, or a file for each page.
const (
	PDF Form = "pdf"
	SVG Form = "svg"
	PNG Form = "png"
)

// Sheets sets pages for paper, as the bytes of a PDF: whole, or not at all. The
// same pages give the same bytes. The error is that they cannot be drawn.
func Sheets(pages scene.Document) ([]byte, error) {
	var out bytes.Buffer
	if err := pdf.Encode(&out, pages); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// SheetFiles draws pages in a form: a PDF is one file, SVG and PNG are a file for
// each page in their order. A PNG has so many dots per inch; an SVG carries its
// letters. The same pages give the same bytes. The error is that a page cannot be
// drawn or would have too many dots; then there are no files.
func SheetFiles(pages scene.Document, form Form, dpi int) ([][]byte, error) {
	switch form {
	case SVG:
		return eachPage(pages, func(w io.Writer, p scene.Page) error { return svg.EncodeAlone(w, p, pages.Title) })
	case PNG:
		return eachPage(pages, func(w io.Writer, p scene.Page) error { return png.Encode(w, p, float64(dpi)) })
	}
	file, err := Sheets(pages)
	if err != nil {
		return nil, err
	}
	return [][]byte{file}, nil
}

func eachPage(pages scene.Document, encode func(io.Writer, scene.Page) error) ([][]byte, error) {
	files := make([][]byte, len(pages.Pages))
	for i, p := range pages.Pages {
		var out bytes.Buffer
		if err := encode(&out, p); err != nil {
			return nil, fmt.Errorf("page %d: %w", i+1, err)
		}
		files[i] = out.Bytes()
	}
	return files, nil
}
