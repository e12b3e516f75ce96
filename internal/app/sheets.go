package app

import (
	"bytes"

	"sley/internal/edge/render/pdf"
	"sley/internal/engine/draw/scene"
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
