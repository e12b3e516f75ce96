package photo

import (
	"bytes"
	"encoding/binary"
)

// chunkHead is the head of a chunk of a PNG or a WebP: how long it is, and its name.
const chunkHead = 8

// pngTurned reads the orientation from the chunk eXIf of a PNG (PNG, third edition,
// 11.3.4.5).
func pngTurned(data []byte) int {
	return chunkTurned(data, 8, "eXIf", func(head []byte) (name string, size, whole uint64) {
		n := uint64(binary.BigEndian.Uint32(head))
		return string(head[4:8]), n, n + 4 // with the sum behind it
	})
}

// webpTurned reads the orientation from the chunk EXIF of a WebP (RFC 9649, 2.7.1.5).
func webpTurned(data []byte) int {
	return chunkTurned(data, 12, "EXIF", func(head []byte) (name string, size, whole uint64) {
		n := uint64(binary.LittleEndian.Uint32(head[4:]))
		return string(head[:4]), n, n + n%2 // chunks begin at even places
	})
}

// chunkTurned looks through the chunks of a file, from the first on, for the one of that
// name.
func chunkTurned(data []byte, first int, name string, read func(head []byte) (string, uint64, uint64)) int {
	for rest := data[min(first, len(data)):]; len(rest) >= chunkHead; {
		is, size, whole := read(rest[:chunkHead])
		rest = rest[chunkHead:]
		if whole > uint64(len(rest)) {
			break
		}
		if is == name {
			return orientation(bytes.TrimPrefix(rest[:size], exifHead))
		}
		rest = rest[whole:]
	}
	return upright
}
