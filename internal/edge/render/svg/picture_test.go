package svg_test

import (
	"bytes"
	"encoding/base64"
	"image"
	"image/color"
	"image/png"
	"regexp"
	"strings"
	"testing"

	"sley/internal/engine/draw/scene"
)

// A picture is an image of a dot for each cell, inside the file, in its place.
func TestPicture(t *testing.T) {
	cells := image.NewPaletted(image.Rect(0, 0, 3, 2), color.Palette{color.RGBA{37, 64, 124, 255}, color.White})
	cells.Pix = []uint8{0, 1, 0, 1, 1, 0}
	got := encode(t, page(scene.Picture{X: 1, Y: 2, Width: 30, Height: 4, Cells: cells}), "")
	if want := `<image x="1" y="2" width="30" height="4" preserveAspectRatio="none" image-rendering="optimizeSpeed"`; !strings.Contains(got, want) {
		t.Errorf("no %s in\n%s", want, got)
	}
	if err := wellFormed(got); err != nil {
		t.Error(err)
	}
	held := regexp.MustCompile(`data:image/png;base64,([^"]*)"`).FindStringSubmatch(got)
	if held == nil {
		t.Fatalf("no image in\n%s", got)
	}
	file, err := base64.StdEncoding.DecodeString(held[1])
	if err != nil {
		t.Fatal(err)
	}
	drawn, err := png.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	for y := range 2 {
		for x := range 3 {
			if r, g, b, _ := drawn.At(x, y).RGBA(); !same(r, g, b, cells.At(x, y)) {
				t.Errorf("dot %d, %d is %v, want %v", x, y, drawn.At(x, y), cells.At(x, y))
			}
		}
	}
}

func same(r, g, b uint32, c color.Color) bool {
	r1, g1, b1, _ := c.RGBA()
	return r == r1 && g == g1 && b == b1
}
