package main

import (
	"image"
	"image/draw"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"

	"sley/third_party/fonts"
)

// letters are those of the names, 20 pixels high.
var letters = sync.OnceValues(func() (font.Face, error) {
	parsed, err := opentype.Parse(fonts.SansBold)
	if err != nil {
		return nil, err
	}
	return opentype.NewFace(parsed, &opentype.FaceOptions{Size: 20, DPI: 72, Hinting: font.HintingFull})
})

// write writes a name on a line that begins at x and stands at y, as much as has room.
func write(on draw.Image, name string, x, y, room int) error {
	face, err := letters()
	if err != nil {
		return err
	}
	pen := font.Drawer{Dst: on, Src: image.Black, Face: face, Dot: fixed.P(x, y)}
	for len(name) > 0 && pen.MeasureString(name).Ceil() > room {
		name = name[:len(name)-1]
	}
	pen.DrawString(name)
	return nil
}
