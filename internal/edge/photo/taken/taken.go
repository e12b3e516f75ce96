// Package taken makes pictures as cameras make them, for tests: held in every way, and with
// more in them than is seen.
package taken

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/color"
	"image/jpeg"
)

// Camera and Place stand in the Exif of every picture: what made it, and where, as the
// degrees, minutes and seconds of a latitude.
var (
	Camera = []byte("SALTMARSH CAMERA 7")
	Place  = []byte{0, 0, 0, 54, 0, 0, 0, 1, 0, 0, 0, 31, 0, 0, 0, 1, 0, 0, 0, 59, 0, 0, 0, 1}
)

// The colours of the quarters of a picture, as they stand when it is upright.
var (
	TopLeft     = color.RGBA{200, 30, 30, 255}
	TopRight    = color.RGBA{30, 160, 30, 255}
	BottomLeft  = color.RGBA{30, 30, 200, 255}
	BottomRight = color.RGBA{230, 230, 230, 255}
)

// JPEG gives a picture that is wide and high so many dots when it is upright, held as an
// orientation of Exif says, with camera and place.
func JPEG(wide, high, orientation int) []byte {
	var b bytes.Buffer
	if err := jpeg.Encode(&b, Held(wide, high, orientation), &jpeg.Options{Quality: 95}); err != nil {
		panic("internal error: " + err.Error())
	}
	exif := append([]byte("Exif\x00\x00"), Exif(binary.BigEndian, orientation)...)
	return With(b.Bytes(), 0xe1, exif)
}

// With gives a JPEG with one more segment at its beginning.
func With(file []byte, marker byte, body []byte) []byte {
	head := binary.BigEndian.AppendUint16([]byte{0xff, 0xd8, 0xff, marker}, uint16(len(body)+2))
	return append(append(head, body...), file[2:]...)
}

// Held gives the dots of a picture as a camera keeps them that was held so: the standard
// says of each orientation on which sides the first row and the first column are seen.
func Held(wide, high, orientation int) image.Image {
	rows, columns := high, wide
	if orientation >= 5 {
		rows, columns = wide, high
	}
	to := image.NewRGBA(image.Rect(0, 0, columns, rows))
	for r := range rows {
		for c := range columns {
			x, y := seen(wide, high, orientation, r, c)
			to.Set(c, r, quarter(wide, high, x, y))
		}
	}
	return to
}

// seen is where a dot of row r and column c is seen.
func seen(wide, high, orientation, r, c int) (x, y int) {
	right, bottom := wide-1, high-1
	switch orientation {
	case 2: // first row at the top, first column at the right
		return right - c, r
	case 3: // bottom, right
		return right - c, bottom - r
	case 4: // bottom, left
		return c, bottom - r
	case 5: // left, top
		return r, c
	case 6: // right, top
		return right - r, c
	case 7: // right, bottom
		return right - r, bottom - c
	case 8: // left, bottom
		return r, bottom - c
	}
	return c, r // top, left
}

func quarter(wide, high, x, y int) color.Color {
	switch {
	case x < wide/2 && y < high/2:
		return TopLeft
	case y < high/2:
		return TopRight
	case x < wide/2:
		return BottomLeft
	}
	return BottomRight
}

// Exif gives a block of Exif: the maker, the orientation, and a directory of the place.
func Exif(order binary.AppendByteOrder, orientation int) []byte {
	mark := "MM"
	if order == binary.AppendByteOrder(binary.LittleEndian) {
		mark = "II"
	}
	out := order.AppendUint32(order.AppendUint16([]byte(mark), 42), 8)
	const places = 8 + 2 + 3*12 + 4 // behind the first directory
	out = order.AppendUint16(out, 3)
	out = entry(order, out, 0x010f, 2, uint32(len(Camera)), places)
	out = order.AppendUint32(order.AppendUint16(order.AppendUint16(out, 0x0112), 3), 1)
	out = order.AppendUint16(order.AppendUint16(out, uint16(orientation)), 0)
	out = entry(order, out, 0x8825, 4, 1, places+uint32(len(Camera)))
	out = append(order.AppendUint32(out, 0), Camera...)
	out = order.AppendUint16(out, 1)
	out = entry(order, out, 2, 5, 3, places+uint32(len(Camera))+2+12+4)
	return append(order.AppendUint32(out, 0), Place...)
}

func entry(order binary.AppendByteOrder, out []byte, tag, kind uint16, count, value uint32) []byte {
	return order.AppendUint32(order.AppendUint32(order.AppendUint16(order.AppendUint16(out, tag), kind), count), value)
}
