package png

import (
	"encoding/binary"
	"hash/crc32"
	"io"
	"math"
)

// headLength is how many bytes of a PNG come before the first chunk that may say
// something of its size: the signature, and the header with its length, name and
// sum (ISO/IEC 15948, sections 5.2 and 11.2.2).
const headLength = 8 + 4 + 4 + 13 + 4

// sizer hands a PNG on with the size of its dots put in after the header, which
// the encoder of the standard library leaves out.
type sizer struct {
	to   io.Writer
	dpi  float64
	seen int
}

func (s *sizer) Write(b []byte) (int, error) {
	head := min(max(headLength-s.seen, 0), len(b))
	s.seen += len(b)
	if head == 0 {
		return s.to.Write(b)
	}
	out := append([]byte{}, b[:head]...)
	if s.seen >= headLength {
		out = append(out, dots(s.dpi)...)
	}
	if _, err := s.to.Write(append(out, b[head:]...)); err != nil {
		return 0, err
	}
	return len(b), nil
}

// dots is the chunk that says how many dots make a metre, both ways (ISO/IEC 15948,
// section 11.3.5.3), to the nearest whole one.
func dots(dpi float64) []byte {
	perMetre := uint32(math.Round(dpi / 0.0254))
	body := []byte("pHYs")
	body = binary.BigEndian.AppendUint32(body, perMetre)
	body = binary.BigEndian.AppendUint32(body, perMetre)
	body = append(body, 1) // the unit is the metre
	chunk := binary.BigEndian.AppendUint32(nil, uint32(len(body)-4))
	return binary.BigEndian.AppendUint32(append(chunk, body...), crc32.ChecksumIEEE(body))
}
