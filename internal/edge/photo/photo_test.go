package photo

import (
	"bytes"
	"encoding/base64"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"image"
	"image/color"
	"image/gif"
	"image/jpeg"
	"image/png"
	"slices"
	"strings"
	"testing"

	"sley/internal/edge/photo/taken"
	"sley/internal/trade/problem"
)

// take takes a picture in that nothing is wrong with.
func take(t testing.TB, data []byte) (Picture, image.Image) {
	t.Helper()
	list := &problem.List{}
	p := Take(data, list)
	if list.Failed() {
		t.Fatalf("refused: %v", list.All()[0])
	}
	from, _, err := image.Decode(bytes.NewReader(p.Body))
	if err != nil || !Is(p) {
		t.Fatalf("what was made of it is no %s of %d by %d: %v", p.Kind, p.Wide, p.High, err)
	}
	return p, from
}

func like(a, b color.Color) bool {
	ar, ag, ab, _ := a.RGBA()
	br, bg, bb, _ := b.RGBA()
	for _, d := range []int{int(ar>>8) - int(br>>8), int(ag>>8) - int(bg>>8), int(ab>>8) - int(bb>>8)} {
		if d > 12 || d < -12 {
			return false
		}
	}
	return true
}

// wantUpright looks at the quarters.
func wantUpright(t *testing.T, what string, from image.Image) {
	t.Helper()
	w, h := from.Bounds().Dx(), from.Bounds().Dy()
	for _, q := range []struct {
		where string
		x, y  int
		is    color.Color
	}{
		{"top left", w / 4, h / 4, taken.TopLeft},
		{"top right", 3 * w / 4, h / 4, taken.TopRight},
		{"bottom left", w / 4, 3 * h / 4, taken.BottomLeft},
		{"bottom right", 3 * w / 4, 3 * h / 4, taken.BottomRight},
	} {
		if got := from.At(q.x, q.y); !like(got, q.is) {
			t.Errorf("%s: %s is %v, not %v", what, q.where, got, q.is)
		}
	}
}

// However a camera was held, the picture stands upright, and nothing is told of camera and
// place.
func TestEveryWayToHoldACamera(t *testing.T) {
	for orientation := 1; orientation <= 8; orientation++ {
		file := taken.JPEG(160, 120, orientation)
		if !bytes.Contains(file, taken.Place) || !bytes.Contains(file, taken.Camera) {
			t.Fatal("the picture says nothing that could be kept from others")
		}
		p, from := take(t, file)
		if p.Kind != "image/jpeg" || p.Wide != 160 || p.High != 120 {
			t.Errorf("%d: %s, %d by %d", orientation, p.Kind, p.Wide, p.High)
		}
		wantUpright(t, fmt.Sprint(orientation), from)
		for _, told := range [][]byte{taken.Place, taken.Camera, []byte("Exif")} {
			if bytes.Contains(p.Body, told) {
				t.Errorf("%d: what is kept tells %q", orientation, told)
			}
		}
	}
}

// Large pictures are made smaller, by their longer side and in proportion.
func TestLargePictures(t *testing.T) {
	for _, test := range []struct{ wide, high, orientation, w, h int }{
		{2048, 1536, 1, 2048, 1536},
		{2049, 1536, 1, 2048, 1535},
		{4000, 3000, 6, 2048, 1536},
		{3000, 4000, 8, 1536, 2048},
		{5000, 1, 1, 2048, 1},
		{2600, 600, 3, 2048, 473},
	} {
		p, from := take(t, taken.JPEG(test.wide, test.high, test.orientation))
		if p.Wide != test.w || p.High != test.h {
			t.Errorf("%d by %d: %d by %d, want %d by %d", test.wide, test.high, p.Wide, p.High, test.w, test.h)
		}
		if test.high > 1 {
			wantUpright(t, fmt.Sprint(test), from)
		}
	}
}

// The mean of black and white is that of their light: 188, as IEC 61966-2-1 gives for half
// the light, and not the tone half way.
func TestThreadsKeepTheirLight(t *testing.T) {
	stripes := image.NewGray(image.Rect(0, 0, 4096, 64))
	for i := range stripes.Pix {
		stripes.Pix[i] = uint8(255 * (i % 2))
	}
	to, shrunk := shrink(stripes, 2048)
	if at := to.RGBAAt(1000, 16); !shrunk || at.R < 187 || at.R > 189 || at.R != at.G || at.G != at.B {
		t.Errorf("half the light is %v", at)
	}
}

// What is not made smaller keeps every tone; what can be seen through lies on white.
func TestTonesStay(t *testing.T) {
	from := image.NewNRGBA(image.Rect(3, 5, 3+256, 5+2))
	for x := range 256 {
		from.SetNRGBA(3+x, 5, color.NRGBA{uint8(x), uint8(255 - x), 7, 255})
	}
	to, shrunk := shrink(from, Longest)
	for x := range 256 {
		if to.RGBAAt(x, 0) != (color.RGBA{uint8(x), uint8(255 - x), 7, 255}) || to.RGBAAt(x, 1) != (color.RGBA{255, 255, 255, 255}) {
			t.Fatalf("dot %d: %v %v", x, to.RGBAAt(x, 0), to.RGBAAt(x, 1))
		}
	}
	if shrunk {
		t.Error("it was made smaller")
	}
}

// Shares of a dot are all of it, whatever the sizes.
func TestSharesAreWhole(t *testing.T) {
	for was := 1; was < 60; was++ {
		for now := 1; now <= was; now++ {
			sums := make([]uint64, now+1)
			for i := range was {
				at, in, next := shares(i, now, was)
				sums[at] += in
				sums[at+1] += next
			}
			for x, sum := range sums[:now] {
				if sum != uint64(was) {
					t.Fatalf("%d of %d: dot %d has %d", now, was, x, sum)
				}
			}
		}
	}
}

func encoded(t testing.TB, write func(*bytes.Buffer) error) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// smallWebP is a lossless WebP of 2 by 2 dots.
const smallWebP = "UklGRh4AAABXRUJQVlA4TBEAAAAvAUAAAAfQ//73v/+BiOh/AAA="

// Drawings stay PNG, all else becomes JPEG.
func TestTypes(t *testing.T) {
	drawing := taken.Held(80, 60, 1)
	paletted := image.NewPaletted(image.Rect(0, 0, 80, 60), color.Palette{taken.TopLeft, taken.TopRight})
	photograph := image.NewRGBA(image.Rect(0, 0, 80, 60))
	for i := range photograph.Pix {
		photograph.Pix[i] = uint8(i * i / 701)
		if i%4 == 3 {
			photograph.Pix[i] = 255
		}
	}
	webp, err := base64.StdEncoding.DecodeString(smallWebP)
	if err != nil {
		t.Fatal(err)
	}
	for _, test := range []struct {
		what, kind string
		data       []byte
	}{
		{"a drawing as PNG", "image/png", encoded(t, func(b *bytes.Buffer) error { return png.Encode(b, drawing) })},
		{"a photograph as PNG", "image/jpeg", encoded(t, func(b *bytes.Buffer) error { return png.Encode(b, photograph) })},
		{"a drawing as GIF", "image/png", encoded(t, func(b *bytes.Buffer) error { return gif.Encode(b, paletted, nil) })},
		{"a WebP", "image/jpeg", webp},
	} {
		if p, _ := take(t, test.data); p.Kind != test.kind {
			t.Errorf("%s is kept as %s", test.what, p.Kind)
		}
	}
	large := encoded(t, func(b *bytes.Buffer) error { return png.Encode(b, taken.Held(2100, 40, 1)) })
	if p, _ := take(t, large); p.Kind != "image/jpeg" {
		t.Errorf("a large drawing is kept as %s", p.Kind)
	}
}

// The orientation of a PNG and of a WebP is read where those say it.
func TestTurnedInChunks(t *testing.T) {
	plain := encoded(t, func(b *bytes.Buffer) error { return png.Encode(b, taken.Held(80, 60, 6)) })
	for _, order := range []binary.AppendByteOrder{binary.BigEndian, binary.LittleEndian} {
		body := append([]byte("eXIf"), taken.Exif(order, 6)...)
		chunk := binary.BigEndian.AppendUint32(nil, uint32(len(body)-4))
		chunk = binary.BigEndian.AppendUint32(append(chunk, body...), crc32.ChecksumIEEE(body))
		_, from := take(t, slices.Concat(plain[:33], chunk, plain[33:])) // behind IHDR
		wantUpright(t, "a PNG", from)
		exif := append([]byte("Exif\x00\x00"), taken.Exif(order, 8)...)
		file := binary.LittleEndian.AppendUint32([]byte("RIFF----WEBPodd 1---?-EXIF"), uint32(len(exif)))
		copy(file[16:], "\x01\x00\x00\x00")
		if got := webpTurned(append(file, exif...)); got != 8 {
			t.Errorf("a WebP: %d", got)
		}
	}
}

// cut is a file without its end.
func cut(data []byte, left int) []byte { return data[:left] }

// head is the head of a PNG that says so many dots, of so many bits and of a kind.
func head(wide, high uint32, bits, kind byte) []byte {
	body := append([]byte("IHDR"), binary.BigEndian.AppendUint32(binary.BigEndian.AppendUint32(nil, wide), high)...)
	body = append(body, bits, kind, 0, 0, 0)
	out := append([]byte("\x89PNG\r\n\x1a\n\x00\x00\x00\x0d"), body...)
	return binary.BigEndian.AppendUint32(out, crc32.ChecksumIEEE(body))
}

// sized is a JPEG whose head says another size, and perhaps that it is progressive.
func sized(wide, high uint16, marker byte) []byte {
	file := taken.JPEG(16, 16, 1)
	at := bytes.Index(file, []byte{0xff, 0xc0})
	file[at+1] = marker
	binary.BigEndian.PutUint16(file[at+5:], high)
	binary.BigEndian.PutUint16(file[at+7:], wide)
	return file
}

// manyScans is a JPEG that begins again and again.
func manyScans(n int) []byte {
	file := taken.JPEG(16, 16, 1)
	at := bytes.Index(file, []byte{0xff, 0xda})
	scan := file[at : len(file)-2]
	return slices.Concat(file[:at], bytes.Repeat(scan, n), file[len(file)-2:])
}

func TestWhatIsNotTaken(t *testing.T) {
	jpg := taken.JPEG(160, 120, 6)
	drawn := encoded(t, func(b *bytes.Buffer) error { return png.Encode(b, taken.Held(80, 60, 1)) })
	box := func(brand string) []byte { return []byte("\x00\x00\x00\x18ftyp" + brand + "\x00\x00\x00\x00mif1") }
	for _, test := range []struct {
		what string
		data []byte
		want string
	}{
		{"nothing", nil, "photo.empty"},
		{"too many bytes", append(bytes.Clone(jpg), make([]byte, MostBytes)...), "photo.large 25"},
		{"half a JPEG", cut(jpg, len(jpg)/2), "photo.cut JPEG"},
		{"a JPEG without its last bytes", cut(jpg, len(jpg)-3), "photo.cut JPEG"},
		{"the head of a JPEG", cut(jpg, 3), "photo.cut JPEG"},
		{"half a PNG", cut(drawn, len(drawn)/2), "photo.cut PNG"},
		{"half a GIF", []byte("GIF89a\x02\x00"), "photo.cut GIF"},
		{"a JPEG of zeros", append([]byte{0xff, 0xd8}, make([]byte, 200)...), "photo.cut JPEG"},
		{"a JPEG without tables", []byte("\xff\xd8\xff\xd9"), "photo.damaged JPEG"},
		{"a PNG whose sums are wrong", bytes.Replace(drawn, []byte("IDAT"), []byte("IDAT\x01"), 1), "photo.damaged PNG"},
		{"a JPEG in too many parts", manyScans(mostScans + 1), "photo.damaged JPEG"},
		{"HEIC", box("heic"), "photo.format HEIC"},
		{"HEIC of many", box("mif1"), "photo.format HEIC"},
		{"AVIF", box("avif"), "photo.format AVIF"},
		{"a film", box("mp42"), "photo.format MP4"},
		{"a raw file", []byte("II*\x00\x10\x00\x00\x00CR\x02\x00"), "photo.format RAW"},
		{"another raw file", []byte("MM\x00*\x00\x00\x00\x08"), "photo.format TIFF or RAW"},
		{"JPEG XL", []byte("\xff\x0a\x00"), "photo.format JPEG XL"},
		{"text", []byte("Mend end 212"), "photo.unknown"},
		{"a page", []byte("<html><script>"), "photo.unknown"},
		{"another RIFF", []byte("RIFF\x00\x00\x00\x00WAVEfmt "), "photo.unknown"},
		{"a PNG of a million by a million", head(1_000_000, 1_000_000, 8, 2), "photo.dots 60"},
		{"a PNG with a long side", head(65_536, 4, 8, 2), "photo.dots 60"},
		{"a PNG of 16 bits", head(6000, 6000, 16, 6), "photo.dots 60"},
		{"a JPEG of 61 megapixels", sized(10_000, 6_100, 0xc0), "photo.dots 60"},
		{"a progressive JPEG of 20 megapixels", sized(5000, 4000, 0xc2), "photo.dots 60"},
		{"a GIF of everything", []byte("GIF89a\xff\xff\xff\xff\x00\x00\x00"), "photo.dots 60"},
	} {
		list := &problem.List{}
		p := Take(test.data, list)
		if len(list.All()) != 1 || p.Body != nil {
			t.Errorf("%s: %d problems", test.what, len(list.All()))
			continue
		}
		one := list.All()[0]
		said := one.Code
		for _, arg := range []string{"format", "most"} {
			if v, ok := one.Args[arg]; ok {
				said += " " + fmt.Sprint(v)
			}
		}
		if said != test.want || one.Path != "photograph" {
			t.Errorf("%s: %s at %s, want %s", test.what, said, one.Path, test.want)
		}
	}
}

// Exif that is not as it must be turns nothing, and reads nothing outside itself.
func TestBrokenExif(t *testing.T) {
	whole := taken.Exif(binary.LittleEndian, 6)
	if orientation(whole) != 6 || orientation(taken.Exif(binary.BigEndian, 8)) != 8 {
		t.Fatal("Exif that is right is not read")
	}
	for left := range 34 {
		if got := orientation(whole[:left]); got != upright {
			t.Errorf("of %d bytes: %d", left, got)
		}
	}
	for _, value := range []int{0, 9, 255, 65535} {
		if got := orientation(taken.Exif(binary.BigEndian, value)); got != upright {
			t.Errorf("%d: %d", value, got)
		}
	}
	for what, change := range map[string]func([]byte){
		"a directory far away":     func(b []byte) { binary.LittleEndian.PutUint32(b[4:], 1<<31+8) },
		"a directory in the head":  func(b []byte) { binary.LittleEndian.PutUint32(b[4:], 2) },
		"another mark":             func(b []byte) { b[2] = 43 },
		"another order":            func(b []byte) { b[0], b[1] = 'X', 'X' },
		"a text":                   func(b []byte) { b[8+2+12+2] = 2 },
		"several orientations":     func(b []byte) { b[8+2+12+4] = 2 },
		"an order that is another": func(b []byte) { b[0], b[1] = 'M', 'M' },
	} {
		b := bytes.Clone(whole)
		change(b)
		if got := orientation(b); got != upright {
			t.Errorf("%s: %d", what, got)
		}
	}
	many := bytes.Clone(whole)
	binary.LittleEndian.PutUint16(many[8:], 65535) // more entries than there are
	if got := orientation(many); got != 6 {
		t.Errorf("a directory that is cut: %d", got)
	}
}

// Only the first Exif counts, not one of a thumbnail or of a second picture behind.
func TestOtherSegments(t *testing.T) {
	file := taken.With(taken.JPEG(40, 30, 6), 0xe1, []byte("http://ns.adobe.com/xap/1.0/\x00<x/>"))
	if jpegTurned(file) != 6 {
		t.Error("a segment before hides it")
	}
	file = taken.With(taken.JPEG(40, 30, 6), 0xe1, append([]byte("Exif\x00\x00"), taken.Exif(binary.BigEndian, 3)...))
	if got := jpegTurned(file); got != 3 {
		t.Errorf("the second counts: %d", got)
	}
	plain := encoded(t, func(b *bytes.Buffer) error { return jpeg.Encode(b, taken.Held(40, 30, 1), nil) })
	if got := jpegTurned(append(plain, taken.JPEG(40, 30, 6)...)); got != upright {
		t.Errorf("a picture behind the picture counts: %d", got)
	}
}

func TestIs(t *testing.T) {
	p, _ := take(t, taken.JPEG(40, 30, 1))
	for what, other := range map[string]Picture{
		"another type": {"image/png", 40, 30, p.Body}, "another size": {"image/jpeg", 30, 40, p.Body},
		"a page": {"text/html", 40, 30, []byte("<html>")}, "nothing": {"image/jpeg", 40, 30, nil},
		"text as a picture": {"image/jpeg", 40, 30, []byte(strings.Repeat("x", 99))},
	} {
		if Is(other) {
			t.Errorf("%s is a picture", what)
		}
	}
}
