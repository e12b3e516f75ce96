package photo

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"io"
)

// quality is that of a photograph which is written anew, of 100: at 85 the threads of a
// cloth show no blocks (tried on the demo's cloths, no source).
const quality = 85

// The most colours and bytes of a drawing that stays a PNG.
const (
	mostColours = 256
	mostDrawing = 512 << 10
)

// written makes the file of a picture: JPEG, or PNG of a drawing with few colours.
func written(from *image.RGBA, drawing bool) Picture {
	out := Picture{Kind: "image/jpeg", Wide: from.Rect.Dx(), High: from.Rect.Dy()}
	if few, ok := withFewColours(from); drawing && ok {
		var b bytes.Buffer
		must(png.Encode(&b, few))
		if b.Len() <= mostDrawing {
			out.Kind, out.Body = "image/png", b.Bytes()
			return out
		}
	}
	var b bytes.Buffer
	must(jpeg.Encode(&b, from, &jpeg.Options{Quality: quality}))
	out.Body = b.Bytes()
	return out
}

// must holds for what is written to memory, in a size that both formats have.
func must(err error) {
	if err != nil {
		panic("internal error: a picture cannot be written: " + err.Error())
	}
}

// withFewColours gives a picture with a palette where it has few colours.
func withFewColours(from *image.RGBA) (*image.Paletted, bool) {
	at := map[color.RGBA]uint8{}
	to := image.NewPaletted(from.Rect, nil)
	for i := range to.Pix {
		c := color.RGBA{from.Pix[4*i], from.Pix[4*i+1], from.Pix[4*i+2], 255}
		index, known := at[c]
		if !known {
			if len(at) == mostColours {
				return nil, false
			}
			index = uint8(len(at))
			at[c] = index
			to.Palette = append(to.Palette, c)
		}
		to.Pix[i] = index
	}
	return to, true
}

// Is says whether a file is a picture of that type (image/jpeg or image/png) and size that
// can be shown, by its head.
func Is(p Picture) bool {
	for kind, read := range map[string]func(io.Reader) (image.Config, error){"image/jpeg": jpeg.DecodeConfig, "image/png": png.DecodeConfig} {
		if kind == p.Kind {
			head, err := read(bytes.NewReader(p.Body))
			return err == nil && head.Width == p.Wide && head.Height == p.High && min(p.Wide, p.High) > 0 && max(p.Wide, p.High) <= mostSide
		}
	}
	return false
}
