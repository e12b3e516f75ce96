package main

import (
	"fmt"
	"image"
	"image/color"
	"os"
	"path/filepath"
	"slices"
	"testing"
)

// paint leaves a picture of one colour in a folder.
func paint(t *testing.T, folder, name string, wide, high int, c color.Color) {
	t.Helper()
	picture := image.NewRGBA(image.Rect(0, 0, wide, high))
	for i := range wide * high {
		picture.Set(i%wide, i/wide, c)
	}
	if err := writePicture(filepath.Join(folder, name), picture); err != nil {
		t.Fatal(err)
	}
}

var red, blue = color.RGBA{R: 0xff, A: 0xff}, color.RGBA{B: 0xff, A: 0xff}

func TestShotsAreInOrder(t *testing.T) {
	folder := t.TempDir()
	for _, name := range []string{"02-new-390-dark.png", "02-new-390-light.png", "01-bench-1440-light.png", "10-guide-begin-390-dark.png", "boat.png", "sheet-390-1.png"} {
		paint(t, folder, name, 4, 4, red)
	}
	shots, err := shotsIn(folder)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, s := range shots {
		got = append(got, fmt.Sprint(s.page, " ", s.width, " ", s.theme))
	}
	want := []string{"02-new 390 light", "02-new 390 dark", "10-guide-begin 390 dark", "01-bench 1440 light"}
	if !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
}

// A sheet shows each picture in its place, cut off where it is too long, with ink of the
// name above it; what an earlier run left is gone.
func TestSheets(t *testing.T) {
	folder := t.TempDir()
	paint(t, folder, "sheet-390-7.png", 4, 4, red)
	paint(t, folder, "01-bench-390-light.png", 390, 500, red)
	paint(t, folder, "01-bench-390-dark.png", 390, 9000, blue)
	paint(t, folder, "01-bench-1440-light.png", 1440, 900, red)
	if err := lay(folder); err != nil {
		t.Fatal(err)
	}
	if left, _ := filepath.Glob(filepath.Join(folder, "sheet-*")); len(left) != 2 {
		t.Fatalf("sheets: %q", left)
	}
	sheet, err := readPicture(filepath.Join(folder, "sheet-390-1.png"))
	if err != nil {
		t.Fatal(err)
	}
	if high := sheet.Bounds().Dy(); high != gap+label+tall+gap {
		t.Errorf("the sheet is %d high", high)
	}
	second := gap + thumb(390) + gap
	for _, c := range []struct {
		x, y int
		want color.Color
	}{
		{gap + 5, gap + label + 5, red},
		{gap + 5, gap + label + tall - 5, ground}, // under the short one
		{second + 5, gap + label + 5, blue},
		{second + 5, gap + label + tall - 5, blue},
	} {
		if got := color.RGBAModel.Convert(sheet.At(c.x, c.y)); got != color.RGBAModel.Convert(c.want) {
			t.Errorf("at %d, %d it is %v, not %v", c.x, c.y, got, c.want)
		}
	}
	if !inked(sheet, image.Rect(gap, gap, second, gap+label)) {
		t.Error("no name stands above the picture")
	}
}

func inked(sheet image.Image, in image.Rectangle) bool {
	for y := in.Min.Y; y < in.Max.Y; y++ {
		for x := in.Min.X; x < in.Max.X; x++ {
			if r, _, _, _ := sheet.At(x, y).RGBA(); r < 0x3000 {
				return true
			}
		}
	}
	return false
}

func TestManyShotsAreSeveralSheets(t *testing.T) {
	folder := t.TempDir()
	inRow := (across - gap) / (thumb(1440) + gap) / 2 * 2
	for i := range inRow*rows/2 + 1 {
		for _, theme := range []string{"light", "dark"} {
			paint(t, folder, fmt.Sprintf("%02d-page-1440-%s.png", i, theme), 16, 10, red)
		}
	}
	if err := lay(folder); err != nil {
		t.Fatal(err)
	}
	if sheets, _ := filepath.Glob(filepath.Join(folder, "sheet-1440-*")); len(sheets) != 2 {
		t.Errorf("sheets: %q", sheets)
	}
}

func TestNothingToLay(t *testing.T) {
	folder := t.TempDir()
	if err := lay(folder); err == nil {
		t.Error("no picture, and no word of it")
	}
	if err := os.WriteFile(filepath.Join(folder, "01-bench-390-light.png"), []byte("no picture"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := lay(folder); err == nil {
		t.Error("what is no picture was laid")
	}
}
