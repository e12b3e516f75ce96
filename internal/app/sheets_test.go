package app

import (
	"bytes"
	"testing"

	"sley/internal/engine/draw/scene"
)

func twoPages(second scene.Page) scene.Document {
	first := scene.Page{Width: 50, Height: 50, Items: []scene.Item{scene.Text{X: 5, Y: 9, Size: 10, Text: "towel"}}}
	return scene.Document{Title: "Galley towels", Pages: []scene.Page{first, second}}
}

func TestSheetFiles(t *testing.T) {
	doc := twoPages(scene.Page{Width: 50, Height: 50})
	for form, want := range map[Form]struct {
		files  int
		begins string
	}{PDF: {1, "%PDF-"}, SVG: {2, "<svg "}, PNG: {2, "\x89PNG\r\n"}} {
		files, err := SheetFiles(doc, form, 50)
		if err != nil || len(files) != want.files {
			t.Errorf("%s: %d files, %v, want %d", form, len(files), err, want.files)
		}
		for i, file := range files {
			if !bytes.HasPrefix(file, []byte(want.begins)) {
				t.Errorf("%s: file %d begins with %q", form, i+1, file[:min(8, len(file))])
			}
		}
	}
}

// Where one page cannot be drawn there are no files.
func TestSheetFilesAreAllOrNone(t *testing.T) {
	for _, form := range []Form{PDF, SVG, PNG} {
		if files, err := SheetFiles(twoPages(scene.Page{}), form, 50); err == nil || files != nil {
			t.Errorf("%s: %d files, %v", form, len(files), err)
		}
	}
	if files, err := SheetFiles(twoPages(scene.Page{Width: 5000, Height: 5000}), PNG, 600); err == nil || files != nil {
		t.Errorf("a picture of 14 thousand million dots: %d files, %v", len(files), err)
	}
}
