package photo

import "encoding/binary"

// upright is the orientation of a picture that is as it was taken.
const upright = 1

// What is read of the Exif of a picture (CIPA DC-008, "Exif 2.32", 4.6): a TIFF header, and
// in its first directory the tag of the orientation, one unsigned 16-bit number.
const (
	tagOrientation = 0x0112
	typeShort      = 3
	entrySize      = 12
)

// orientation reads how a picture was held from a TIFF block; upright where the block does
// not say it, or not as it must. It reads nothing else, and follows no further directory.
func orientation(tiff []byte) int {
	order, ok := byteOrder(tiff)
	if !ok || order.Uint16(tiff[2:]) != 42 {
		return upright
	}
	first := int64(order.Uint32(tiff[4:]))
	if first < 8 || first+2 > int64(len(tiff)) {
		return upright
	}
	entries := tiff[first+2:]
	for range order.Uint16(tiff[first:]) {
		if len(entries) < entrySize {
			break
		}
		if order.Uint16(entries) == tagOrientation {
			return oriented(order, entries)
		}
		entries = entries[entrySize:]
	}
	return upright
}

func byteOrder(tiff []byte) (binary.ByteOrder, bool) {
	if len(tiff) < 8 {
		return nil, false
	}
	switch string(tiff[:2]) {
	case "II":
		return binary.LittleEndian, true
	case "MM":
		return binary.BigEndian, true
	}
	return nil, false
}

// oriented reads the entry of the orientation.
func oriented(order binary.ByteOrder, entry []byte) int {
	value := int(order.Uint16(entry[8:]))
	if order.Uint16(entry[2:]) != typeShort || order.Uint32(entry[4:]) != 1 || value < 1 || value > 8 {
		return upright
	}
	return value
}
