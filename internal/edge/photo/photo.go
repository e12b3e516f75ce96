// Package photo takes in photographs: decodes what a camera or a phone made, sets it
// upright, makes it smaller, and writes it anew, so that nothing of where, when and with
// what it was taken goes along.
package photo

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/gif"
	"image/jpeg"
	"image/png"
	"io"

	"golang.org/x/image/webp"

	"sley/internal/trade/problem"
)

// The limits of a picture that is taken in. Each is held before the picture is decoded.
const (
	MostBytes  = 25 << 20   // of its file
	MostDots   = 60_000_000 // in all
	mostSide   = 65535      // dots on one side
	mostMemory = 256 << 20  // bytes that decoding it may take
	mostScans  = 100        // parts that a JPEG may be written in; a camera writes ten or so
)

// Longest is how many dots the longer side of a picture has at most once it is taken in.
const Longest = 2048

// Picture is a photograph as it is kept: upright, and with nothing but what is seen.
type Picture struct {
	Kind       string // image/jpeg or image/png
	Wide, High int    // in dots
	Body       []byte // its file
}

// format is a kind of file that can be decoded.
type format struct {
	name   string
	config func(io.Reader) (image.Config, error)
	decode func(io.Reader) (image.Image, error)
	turned func([]byte) int  // the orientation that the file says, 1 to 8
	ends   func([]byte) bool // whether its end is there, of one that cannot be decoded
}

var (
	jpegFile = format{"JPEG", jpeg.DecodeConfig, jpeg.Decode, jpegTurned, jpegEnds}
	pngFile  = format{"PNG", png.DecodeConfig, png.Decode, pngTurned, func(b []byte) bool { return bytes.Contains(b, []byte("IEND")) }}
	gifFile  = format{"GIF", gif.DecodeConfig, gif.Decode, func([]byte) int { return upright }, func(b []byte) bool { return bytes.HasSuffix(b, []byte(";")) }}
	webpFile = format{"WebP", webp.DecodeConfig, webp.Decode, webpTurned, webpEnds}
)

// Take reads a picture of type JPEG, PNG, GIF (of several pictures the first) or WebP. What
// is wrong with it is a problem at the path photograph, and then there is no picture:
//
//	photo.empty   there is nothing
//	photo.large   the file has more than MostBytes
//	photo.format  it is of a type that cannot be decoded, which is named
//	photo.unknown it is of no type that is known
//	photo.dots    it has more dots than can be decoded
//	photo.cut     its end is missing
//	photo.damaged it cannot be decoded
func Take(data []byte, list *problem.List) Picture {
	read, ok := formatOf(data, list)
	if !ok || !fits(read, data, list) {
		return Picture{}
	}
	from, err := read.decode(bytes.NewReader(data))
	if err != nil || from.Bounds().Empty() {
		broken(read, data, list)
		return Picture{}
	}
	small, shrunk := shrink(from, Longest)
	return written(turn(small, read.turned(data)), !shrunk && (read.name == pngFile.name || read.name == gifFile.name))
}

// formatOf says how a file is to be decoded.
func formatOf(data []byte, list *problem.List) (format, bool) {
	known, foreign := sniff(data)
	switch {
	case len(data) == 0:
		list.Fail("photo.empty", at, "", nil)
	case len(data) > MostBytes:
		list.Fail("photo.large", at, "", problem.Args{"most": MostBytes >> 20})
	case foreign != "":
		list.Fail("photo.format", at, "", problem.Args{"format": foreign})
	case known.name == "":
		list.Fail("photo.unknown", at, "", nil)
	default:
		return known, true
	}
	return format{}, false
}

// at is the path of what is wrong with a picture.
const at = "photograph"

// broken says why a picture cannot be decoded.
func broken(read format, data []byte, list *problem.List) {
	if !read.ends(data) {
		list.Fail("photo.cut", at, "", problem.Args{"format": read.name})
		return
	}
	list.Fail("photo.damaged", at, "", problem.Args{"format": read.name})
}

// webpEnds says whether a WebP is as long as it says.
func webpEnds(data []byte) bool {
	return len(data) >= 8 && uint64(binary.LittleEndian.Uint32(data[4:])) <= uint64(len(data)-8)
}

// fits says whether a picture can be decoded in the memory there is, from its head alone:
// a small file may say that it is huge.
func fits(read format, data []byte, list *problem.List) bool {
	head, err := read.config(bytes.NewReader(data))
	jpegs := jpegFacts{}
	if read.name == jpegFile.name {
		jpegs = factsOf(data)
	}
	if err != nil || jpegs.scans > mostScans {
		broken(read, data, list)
		return false
	}
	dots := int64(head.Width) * int64(head.Height)
	if head.Width > mostSide || head.Height > mostSide || dots > MostDots || dots*bytesOfDot(head, read, jpegs) > mostMemory {
		list.Fail("photo.dots", at, "", problem.Args{"wide": head.Width, "high": head.Height, "most": MostDots / 1_000_000})
		return false
	}
	return true
}
