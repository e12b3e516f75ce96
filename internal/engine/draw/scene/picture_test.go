package scene_test

import (
	"image"
	"image/color"
	"strings"
	"testing"

	"sley/internal/engine/draw/scene"
)

func cells(w, h int, inks ...color.Color) *image.Paletted {
	return image.NewPaletted(image.Rect(0, 0, w, h), inks)
}

func TestPicturesThatCannotBeDrawn(t *testing.T) {
	beyond := cells(2, 2, color.White)
	beyond.Pix[3] = 1
	for name, p := range map[string]scene.Picture{
		"no cells":            {Width: 1, Height: 1},
		"an empty row":        {Width: 1, Height: 1, Cells: cells(0, 1, color.White)},
		"no width":            {Height: 1, Cells: cells(1, 1, color.White)},
		"out of reach":        {X: 2 * scene.MaxReach, Width: 1, Height: 1, Cells: cells(1, 1, color.White)},
		"an ink that is none": {Width: 1, Height: 1, Cells: beyond},
		"a veil":              {Width: 1, Height: 1, Cells: cells(1, 1, color.RGBA{0, 0, 0, 128})},
	} {
		page := scene.Page{Width: 10, Height: 10, Items: []scene.Item{p}}
		if page.Validate() == nil {
			t.Errorf("%s can be drawn", name)
		}
	}
	good := scene.Picture{Width: 1, Height: 1, Cells: cells(3, 2, color.White, color.Black)}
	if err := (scene.Page{Width: 10, Height: 10, Items: []scene.Item{good}}).Validate(); err != nil {
		t.Error(err)
	}
}

// The mark tells other cells, inks and sizes, and not where the cells are held.
func TestMarkOfAPicture(t *testing.T) {
	a, other, inked, long := cells(2, 3, color.White, color.Black), cells(2, 3, color.White, color.Black), cells(2, 3, color.Black, color.White), cells(3, 2, color.White, color.Black)
	other.Pix[5] = 1
	wide := cells(4, 4, color.White, color.Black)
	wide.Pix[15] = 1
	part := wide.SubImage(image.Rect(1, 0, 3, 3)).(*image.Paletted)
	mark := func(c *image.Paletted) uint32 { return scene.Picture{Cells: c}.Mark() }
	for name, c := range map[string]*image.Paletted{"cells": other, "inks": inked, "size": long} {
		if mark(c) == mark(a) {
			t.Errorf("the mark of other %s is the same", name)
		}
	}
	if mark(part) != mark(a) {
		t.Error("the mark of a part is another than that of the same cells")
	}
	if !(scene.Picture{Cells: a}).IsGrey() || (scene.Picture{Cells: cells(1, 1, color.RGBA{1, 2, 3, 255})}).IsGrey() {
		t.Error("greys are not told from colours")
	}
}

func TestDumpOfAPicture(t *testing.T) {
	p := scene.Picture{X: 1, Y: 2, Width: 3, Height: 4.5, Cells: cells(2, 3, color.White)}
	got := scene.Dump(scene.Document{Pages: []scene.Page{{Width: 9, Height: 9, Items: []scene.Item{p}}}})
	if want := "picture 1,2 size 3,4.5 cells 2 x 3 of 1 inks, mark "; !strings.Contains(got, want) {
		t.Errorf("no %q in\n%s", want, got)
	}
}
