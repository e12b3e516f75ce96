package png_test

import (
	"bytes"
	"encoding/binary"
	stdpng "image/png"
	"testing"

	"sley/internal/edge/render/png"
	"sley/internal/engine/draw/specimen"
)

// chunks are the parts of a PNG by name, the first of each, in order.
func chunks(t *testing.T, file []byte) (names []string, bodies map[string][]byte) {
	t.Helper()
	bodies = map[string][]byte{}
	for at := 8; at < len(file); {
		size := int(binary.BigEndian.Uint32(file[at:]))
		name := string(file[at+4 : at+8])
		if bodies[name] == nil {
			names, bodies[name] = append(names, name), file[at+8:at+8+size]
		}
		at += 12 + size
	}
	return names, bodies
}

// A picture says how many dots make an inch: in metres, 300/0.0254 = 11811.02.
func TestAPictureSaysItsSize(t *testing.T) {
	for dpi, want := range map[float64]uint32{25.4: 1000, 150: 5906, 300: 11811} {
		var out bytes.Buffer
		if err := png.Encode(&out, specimen.Sheet(), dpi); err != nil {
			t.Fatal(err)
		}
		if _, err := stdpng.Decode(bytes.NewReader(out.Bytes())); err != nil {
			t.Error(err)
		}
		names, bodies := chunks(t, out.Bytes())
		said := bodies["pHYs"]
		if len(names) < 3 || names[1] != "pHYs" || len(said) != 9 || said[8] != 1 {
			t.Fatalf("the chunks are %v, and pHYs is %v", names, said)
		}
		if across, down := binary.BigEndian.Uint32(said), binary.BigEndian.Uint32(said[4:]); across != want || down != want {
			t.Errorf("at %v dots per inch: %d and %d in a metre, want %d", dpi, across, down, want)
		}
	}
}
