package photo

import (
	"bytes"
	"encoding/binary"
)

// The markers of a JPEG (ITU-T T.81, table B.1).
const (
	markerStart       = 0xd8
	markerEnd         = 0xd9
	markerScan        = 0xda
	markerProgressive = 0xc2
	markerRestart0    = 0xd0
	markerRestart7    = 0xd7
	markerTemporary   = 0x01
	markerApp1        = 0xe1
)

// exifHead is what Exif begins with in a JPEG, and what some writers put before it elsewhere.
var exifHead = []byte("Exif\x00\x00")

// jpegFacts are what must be known of a JPEG before it is decoded.
type jpegFacts struct {
	progressive bool
	scans       int
}

func factsOf(data []byte) jpegFacts {
	var out jpegFacts
	segments(data, func(marker byte, _ []byte) bool {
		out.progressive = out.progressive || marker == markerProgressive
		if marker == markerScan {
			out.scans++
		}
		return out.scans <= mostScans
	})
	return out
}

// jpegTurned reads the orientation from the first Exif of a JPEG.
func jpegTurned(data []byte) int {
	turned := upright
	segments(data, func(marker byte, body []byte) bool {
		tiff, is := bytes.CutPrefix(body, exifHead)
		if marker == markerApp1 && is {
			turned = orientation(tiff)
			return false
		}
		return marker != markerScan
	})
	return turned
}

// jpegEnds says whether the end of a JPEG is there.
func jpegEnds(data []byte) bool {
	return segments(data, func(byte, []byte) bool { return true })
}

// segments calls do for each segment of a JPEG with its marker and its body, until do
// says that it is enough, or the picture ends, which it tells. What is coded between
// segments is passed over.
func segments(data []byte, do func(marker byte, body []byte) bool) (ended bool) {
	for at := nextMarker(data, 0); at >= 0; at = nextMarker(data, at) {
		marker := data[at+1]
		at += 2
		if marker == markerStart || marker == markerTemporary {
			continue
		}
		if marker == markerEnd || len(data)-at < 2 {
			return marker == markerEnd
		}
		size := int(binary.BigEndian.Uint16(data[at:]))
		if size < 2 || size > len(data)-at || !do(marker, data[at+2:at+size]) {
			return false
		}
		at += size
	}
	return false
}

// nextMarker finds the next marker from a place on: 0xff and what is no stuffed 0, no
// filling and no restart. Below 0 there is none.
func nextMarker(data []byte, at int) int {
	for at < len(data) {
		step := bytes.IndexByte(data[at:], 0xff)
		if step < 0 || at+step+1 >= len(data) {
			return -1
		}
		at += step
		if m := data[at+1]; m != 0 && m != 0xff && (m < markerRestart0 || m > markerRestart7) {
			return at
		}
		at++
	}
	return -1
}
