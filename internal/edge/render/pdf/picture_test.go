package pdf_test

import (
	"bytes"
	"image"
	"image/color"
	"testing"

	"sley/internal/edge/render/pdf"
	"sley/internal/engine/draw/scene"
)

// The same cells are in the file once, however often they are drawn; others beside
// them. Greys are set as greys.
func TestPicturesAreHeldOnce(t *testing.T) {
	grey := image.NewPaletted(image.Rect(0, 0, 3, 2), color.Palette{color.Black, color.White})
	dyed := image.NewPaletted(image.Rect(0, 0, 3, 2), color.Palette{color.RGBA{37, 64, 124, 255}, color.White})
	at := func(x float64, cells *image.Paletted) scene.Item {
		return scene.Group{X: x, Items: []scene.Item{scene.Picture{Y: 5, Width: 10, Height: 10, Cells: cells}}}
	}
	one := scene.Page{Width: 100, Height: 50, Items: []scene.Item{at(5, grey), at(20, grey), at(35, dyed)}}
	var out bytes.Buffer
	if err := pdf.Encode(&out, scene.Document{Pages: []scene.Page{one, one}}); err != nil {
		t.Fatal(err)
	}
	for what, want := range map[string]int{"/Subtype /Image": 2, "/ColorSpace /DeviceGray": 1, "/ColorSpace [/Indexed": 1} {
		if got := bytes.Count(out.Bytes(), []byte(what)); got != want {
			t.Errorf("%d times %q, want %d", got, what, want)
		}
	}
}
