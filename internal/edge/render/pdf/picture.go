package pdf

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"

	"codeberg.org/go-pdf/fpdf"

	"sley/internal/engine/draw/scene"
)

// picture puts the cells into the file as an image of a dot for each, once for all
// pages, and draws it; readers do not smooth it, since nothing asks them to (ISO
// 32000-1, 8.9.5.3).
func (e *encoder) picture(p scene.Picture, dx, dy float64) {
	e.flush()
	options := fpdf.ImageOptions{ImageType: "PNG", AllowNegativePosition: true}
	name := fmt.Sprintf("cells-%08x-%dx%d", p.Mark(), p.Cells.Rect.Dx(), p.Cells.Rect.Dy())
	if e.pdf.GetImageInfo(name) == nil {
		var out bytes.Buffer
		if err := png.Encode(&out, lean(p)); err != nil {
			e.pdf.SetError(err)
			return
		}
		e.pdf.RegisterImageOptionsReader(name, options, &out)
	}
	e.pdf.ImageOptions(name, p.X+dx, p.Y+dy, p.Width, p.Height, false, options, 0, "")
}

// lean is the cells as greys when they have no other ink, which printers set in
// black alone.
func lean(p scene.Picture) image.Image {
	if !p.IsGrey() {
		return p.Cells
	}
	var light [256]uint8
	for i, c := range p.Cells.Palette {
		light[i] = color.GrayModel.Convert(c).(color.Gray).Y
	}
	grey := image.NewGray(p.Cells.Rect)
	for y := range p.Cells.Rect.Dy() {
		from := p.Cells.Pix[y*p.Cells.Stride:]
		for x := range p.Cells.Rect.Dx() {
			grey.Pix[y*grey.Stride+x] = light[from[x]]
		}
	}
	return grey
}
