package photo

import (
	"image"
	"image/color"
)

// What decoding takes for each dot, in bytes. A progressive JPEG keeps every coefficient
// as 32 bits until its last part is there.
const (
	ofJPEG        = 4
	ofProgressive = 16
	ofWebP        = 5
)

// bytesOfDot is how much memory a decoder takes for each dot of a picture.
func bytesOfDot(head image.Config, read format, jpegs jpegFacts) int64 {
	switch {
	case jpegs.progressive:
		return ofProgressive
	case read.name == jpegFile.name:
		return ofJPEG
	case read.name == webpFile.name:
		return ofWebP
	}
	switch head.ColorModel {
	case color.RGBA64Model, color.NRGBA64Model:
		return 8
	case color.Gray16Model:
		return 2
	case color.GrayModel:
		return 1
	}
	if _, few := head.ColorModel.(color.Palette); few {
		return 1
	}
	return 4
}
