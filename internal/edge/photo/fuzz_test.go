package photo

import (
	"bytes"
	"encoding/binary"
	"image/png"
	"testing"

	"sley/internal/edge/photo/taken"
	"sley/internal/trade/problem"
)

// Whatever a block of Exif holds, it says one of eight orientations.
func FuzzExif(f *testing.F) {
	f.Add(taken.Exif(binary.BigEndian, 6))
	f.Add(taken.Exif(binary.LittleEndian, 8))
	f.Add([]byte("MM\x00*\xff\xff\xff\xff"))
	f.Fuzz(func(t *testing.T, tiff []byte) {
		if got := orientation(tiff); got < 1 || got > 8 {
			t.Errorf("orientation %d", got)
		}
	})
}

// Whatever a file holds, there is either a picture, upright and whole, or one problem.
func FuzzTake(f *testing.F) {
	for orientation := range 9 {
		f.Add(taken.JPEG(24, 16, orientation))
	}
	var b bytes.Buffer
	if err := png.Encode(&b, taken.Held(24, 16, 1)); err != nil {
		f.Fatal(err)
	}
	f.Add(b.Bytes())
	f.Add([]byte("GIF89a\x02\x00\x02\x00\x80\x00\x00\x00\x00\x00\xff\xff\xff,\x00\x00\x00\x00\x02\x00\x02\x00\x00\x02\x02D\x01\x00;"))
	f.Add(manyScans(3))
	f.Fuzz(func(t *testing.T, data []byte) {
		if tooSlow(data) {
			return
		}
		list := &problem.List{}
		p := Take(data, list)
		switch {
		case list.Failed() && (len(list.All()) != 1 || p.Body != nil):
			t.Errorf("%d problems, and a picture of %d bytes", len(list.All()), len(p.Body))
		case !list.Failed() && (!Is(p) || max(p.Wide, p.High) > Longest):
			t.Errorf("a %s of %d by %d that is none", p.Kind, p.Wide, p.High)
		}
	})
}

// tooSlow leaves out what takes long to decode: large pictures are the benchmark's.
func tooSlow(data []byte) bool {
	known, _ := sniff(data)
	if known.name == "" {
		return false
	}
	head, err := known.config(bytes.NewReader(data))
	return err == nil && int64(head.Width)*int64(head.Height) > 1<<18
}

// The memory that a photograph of 12 and of 50 megapixels takes; docs/book.md says it.
func BenchmarkTake(b *testing.B) {
	for name, size := range map[string][2]int{"12-megapixels": {4000, 3000}, "50-megapixels": {8160, 6120}} {
		file := taken.JPEG(size[0], size[1], 6)
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				list := &problem.List{}
				if p := Take(file, list); p.Wide != 2048 || list.Failed() {
					b.Fatal(p.Wide, list.All())
				}
			}
		})
	}
}
