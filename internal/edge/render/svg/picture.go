package svg

import (
	"bytes"
	"encoding/base64"
	"image/png"

	"sley/internal/engine/draw/scene"
)

// picture writes cells as an image inside the file, one dot for each cell. Programs
// are asked to keep its edges sharp by the word of SVG 1.1 (section 11.7.4), which
// browsers read as the newer "pixelated" of CSS Images 3.
func (e *encoder) picture(p scene.Picture) {
	var out bytes.Buffer
	if err := png.Encode(&out, p.Cells); err != nil {
		return // a buffer takes all, and validation has seen the cells
	}
	e.print("<image", attr("x", p.X), attr("y", p.Y), attr("width", p.Width), attr("height", p.Height),
		` preserveAspectRatio="none" image-rendering="`, sharp, `" xmlns:xlink="http://www.w3.org/1999/xlink" xlink:href="data:image/png;base64,`,
		base64.StdEncoding.EncodeToString(out.Bytes()), "\"/>\n")
}

// sharp asks for cells that are not smoothed.
const sharp = "optimizeSpeed"
