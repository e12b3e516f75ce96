package drafting

import (
	"image/color"
	"math"

	"sley/internal/engine/draw/scene"
	"sley/internal/trade/draft"
)

// The inks of a drawing.
var (
	black  = scene.Black
	white  = scene.White
	madder = scene.RGB(0x9b, 0x2c, 0x24) // marks; dark enough to print as black
)

// inkOf is the ink of a colour, grey where greys are asked for.
func (l Look) inkOf(c draft.Colour) scene.Ink {
	if l.Grey {
		v := lightness(c)
		return scene.RGB(v, v, v)
	}
	return scene.RGB(c.R, c.G, c.B)
}

// palette is the inks of a draft's colours. A draft without a palette has one: white.
func (l Look) palette(d *draft.Draft) []scene.Ink {
	var out []scene.Ink
	for _, c := range d.Palette {
		out = append(out, l.inkOf(c))
	}
	if len(out) == 0 {
		out = append(out, white)
	}
	return out
}

// lightness is the grey, 0 to 255, that is as light as a colour: of the same relative
// luminance (IEC 61966-2-1, with the luminance of ITU-R BT.709 primaries).
func lightness(c draft.Colour) uint8 {
	y := 0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B)
	if y <= 0.0031308 {
		return uint8(math.Round(255 * 12.92 * y))
	}
	return uint8(math.Round(255 * (1.055*math.Pow(y, 1/2.4) - 0.055)))
}

// linear is the light of one part of a colour (IEC 61966-2-1).
func linear(part uint8) float64 {
	v := float64(part) / 255
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

// half is the lightness below which white can be read better than black: contrast
// against both is the same at a luminance of 0.179 (WCAG 2.2, contrast ratio).
const half = 0.179

// against is black or white, whichever stands out.
func against(k scene.Ink) scene.Ink {
	y := 0.2126*linear(k.R) + 0.7152*linear(k.G) + 0.0722*linear(k.B)
	if y < half {
		return white
	}
	return black
}

func colourOf(k scene.Ink) color.RGBA { return color.RGBA{k.R, k.G, k.B, 0xFF} }

// at is the ink of a place in the palette; one beyond it is white.
func at(palette []scene.Ink, i int) scene.Ink {
	if i < 0 || i >= len(palette) {
		return white
	}
	return palette[i]
}
