package png_test

import (
	"bytes"
	"errors"
	"flag"
	"image"
	"image/color"
	stdpng "image/png"
	"io"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"sley/internal/edge/render/png"
	"sley/internal/engine/draw/scene"
	"sley/internal/engine/draw/specimen"
)

var update = flag.Bool("update", false, "write the golden anew")

func draw(t interface{ Fatal(...any) }, dpi, wide, high float64, items ...scene.Item) *image.RGBA {
	picture, err := png.Draw(scene.Page{Width: wide, Height: high, Items: items}, dpi)
	if err != nil {
		t.Fatal(err)
	}
	return picture
}

// shades are characters from white to black in nine steps.
const shades = " .:-=+*#@"

// asText is a picture as lines of characters, one for each pixel.
func asText(picture *image.RGBA) string {
	var out strings.Builder
	for y := range picture.Rect.Dy() {
		for x := range picture.Rect.Dx() {
			dark := 255 - int(color.GrayModel.Convert(picture.At(x, y)).(color.Gray).Y)
			out.WriteByte(shades[(dark*8+127)/255])
		}
		out.WriteByte('\n')
	}
	return out.String()
}

func small() []scene.Item {
	return []scene.Item{
		scene.Rect{X: 1, Y: 1, Width: 8, Height: 6, Pen: scene.Solid(0.5)},
		scene.Circle{X: 16, Y: 4, Radius: 3, Pen: scene.Solid(0.6), Fill: scene.Grey(0.7)},
		scene.Line{X1: 21, Y1: 7, X2: 27, Y2: 1, Pen: scene.Pen{Width: 0.8, Dash: []float64{1.5, 1}}},
		scene.Line{X1: 1, Y1: 9, X2: 28, Y2: 9, Pen: scene.Pen{Width: 0.6, Dash: []float64{0, 1.2}, Round: true}},
		scene.Polyline{Points: []scene.Point{{X: 29, Y: 8}, {X: 32, Y: 1}, {X: 35, Y: 8}}, Pen: scene.Solid(0.8)},
		scene.Text{X: 1, Y: 16, Size: 18, Text: "1¹⁄₂ ay"},
		scene.Group{X: 24, Y: 10, Clip: scene.Box{Width: 6, Height: 6}, Items: []scene.Item{
			scene.Circle{X: 6, Y: 3, Radius: 4, Fill: scene.Black},
		}},
		scene.Text{X: 34, Y: 17, Size: 14, Angle: 90, Text: "ef", Font: scene.Font{Family: scene.Serif, Bold: true}},
	}
}

func TestSmallPictureAsText(t *testing.T) {
	const golden = "testdata/small.txt"
	got := asText(draw(t, 76.2, 36, 19, small()...)) // 3 pixels to the millimetre
	if *update {
		if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")); diff != "" {
		t.Errorf("the picture has changed; when it should, go test -update (-want +got):\n%s", diff)
	}
}

func TestABarOf100MillimetresIsAsManyPixels(t *testing.T) {
	for _, dpi := range []float64{25.4, 96, 254, 300} {
		picture := draw(t, dpi, 120, 10, scene.Rect{X: 10, Y: 4, Width: 100, Height: 2, Fill: scene.Black})
		dark := 0.0
		row := int(5 * dpi / 25.4)
		for x := range picture.Rect.Dx() {
			dark += 1 - float64(picture.RGBAAt(x, row).R)/255
		}
		// Full pixels and the shares of the two at the ends.
		if want := 100 * dpi / 25.4; math.Abs(dark-want) > 0.02 {
			t.Errorf("at %v dots per inch: %v pixels, want %v", dpi, dark, want)
		}
	}
}

func TestSize(t *testing.T) {
	// A4 at 96 dots per inch: 210 x 96 / 25.4 = 793.7 and 1122.5.
	if got := draw(t, 96, 210, 297).Rect; got.Dx() != 794 || got.Dy() != 1123 {
		t.Errorf("A4 is %v", got)
	}
}

func TestGreysAreWrittenAsGreys(t *testing.T) {
	for _, c := range []struct {
		ink  scene.Ink
		want color.Model
	}{{scene.Black, color.GrayModel}, {scene.RGB(0x9b, 0x2c, 0x24), color.RGBAModel}} {
		var out bytes.Buffer
		p := scene.Page{Width: 10, Height: 10, Items: []scene.Item{scene.Circle{X: 5, Y: 5, Radius: 3, Fill: c.ink}}}
		if err := png.Encode(&out, p, 96); err != nil {
			t.Fatal(err)
		}
		picture, err := stdpng.Decode(&out)
		if err != nil {
			t.Fatal(err)
		}
		if picture.ColorModel() != c.want {
			t.Errorf("%s: %T", c.ink.Hex(), picture)
		}
		if r, g, b, _ := picture.At(19, 19).RGBA(); byte(r) != c.ink.R || byte(g) != c.ink.G || byte(b) != c.ink.B {
			t.Errorf("%s: the middle is %x %x %x", c.ink.Hex(), r, g, b)
		}
	}
}

func TestSameBytesTwice(t *testing.T) {
	for _, page := range specimen.Document().Pages {
		var a, b bytes.Buffer
		if err := errors.Join(png.Encode(&a, page, 60), png.Encode(&b, page, 60)); err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(a.Bytes(), b.Bytes()) {
			t.Error("the same page gave other bytes")
		}
	}
}

// winding is how often a polygon winds round a point: the slow, obvious way.
func winding(polygon []scene.Point, p scene.Point) int {
	n := 0
	for i, a := range polygon {
		b := polygon[(i+1)%len(polygon)]
		if cross := (b.X-a.X)*(p.Y-a.Y) - (p.X-a.X)*(b.Y-a.Y); a.Y <= p.Y && b.Y > p.Y && cross > 0 {
			n++
		} else if a.Y > p.Y && b.Y <= p.Y && cross < 0 {
			n--
		}
	}
	return n
}

// A pixel all of whose samples lie inside a shape is black, one with none is white.
// Corners may lie beyond the page and beyond the clip.
func TestFillsAgreeWithTheSlowTwin(t *testing.T) {
	clip := scene.Box{X: 5, Y: 4, Width: 21.5, Height: 20}
	rapid.Check(t, func(t *rapid.T) {
		polygon := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) scene.Point {
			return scene.Point{X: rapid.Float64Range(-20, 50).Draw(t, "x"), Y: rapid.Float64Range(-20, 50).Draw(t, "y")}
		}), 3, 3).Draw(t, "polygon") // a triangle: more corners may cancel within a pixel
		shape := scene.Polyline{Points: polygon, Closed: true, Fill: scene.Black}
		picture := draw(t, 25.4, 30, 30, scene.Group{Clip: clip, Items: []scene.Item{shape}})
		for y := range 30 {
			for x := range 30 {
				want, sure := coverage(polygon, clip, x, y)
				if got := 1 - float64(picture.RGBAAt(x, y).R)/255; sure && math.Abs(got-want) > 0.02 {
					t.Fatalf("pixel %d,%d: %v, want %v", x, y, got, want)
				}
			}
		}
	})
}

// coverage samples a pixel; it is sure when all samples agree.
func coverage(polygon []scene.Point, clip scene.Box, x, y int) (share float64, sure bool) {
	const n = 8
	in := 0
	for i := range n {
		for j := range n {
			p := scene.Point{X: float64(x) + float64(i)/(n-1), Y: float64(y) + float64(j)/(n-1)}
			if clip.Contains(p) && winding(polygon, p) != 0 {
				in++
			}
		}
	}
	return float64(in) / (n * n), in == 0 && !thin(polygon) || in == n*n
}

// thin says whether a triangle may pass between samples.
func thin(polygon []scene.Point) bool {
	for i, a := range polygon {
		b, c := polygon[(i+1)%3], polygon[(i+2)%3]
		area := math.Abs((b.X-a.X)*(c.Y-a.Y) - (c.X-a.X)*(b.Y-a.Y))
		if math.Hypot(b.X-a.X, b.Y-a.Y)*4 > area || math.Hypot(c.X-b.X, c.Y-b.Y) < 4 {
			return true
		}
	}
	return false
}

func TestHolesRunTheOtherWay(t *testing.T) {
	ring := scene.Path{Fill: scene.Black}.
		Move(1, 1).Line(9, 1).Line(9, 9).Line(1, 9).Shut().
		Move(3, 3).Line(3, 7).Line(7, 7).Line(7, 3).Shut()
	picture := draw(t, 25.4, 10, 10, ring)
	if picture.RGBAAt(2, 2).R != 0 || picture.RGBAAt(5, 5).R != 255 || picture.RGBAAt(0, 0).R != 255 {
		t.Errorf("\n%s", asText(picture))
	}
}

func TestMitresAndRoundCorners(t *testing.T) {
	corner := []scene.Point{{X: 10, Y: 50}, {X: 50, Y: 50}, {X: 50, Y: 90}}
	sharp := draw(t, 25.4, 100, 100, scene.Polyline{Points: corner, Pen: scene.Solid(20)})
	round := draw(t, 25.4, 100, 100, scene.Polyline{Points: corner, Pen: scene.Pen{Width: 20, Round: true}})
	if sharp.RGBAAt(59, 40).R != 0 || round.RGBAAt(59, 40).R != 255 || round.RGBAAt(55, 45).R != 0 {
		t.Error("the outer corner is filled to its point by a mitre, and cut round otherwise")
	}
	if sharp.RGBAAt(8, 50).R != 255 || round.RGBAAt(2, 50).R != 0 || round.RGBAAt(1, 41).R != 255 {
		t.Error("an end is cut square at its point, and round ends reach beyond")
	}
	needle := []scene.Point{{X: 10, Y: 50}, {X: 60, Y: 50}, {X: 10, Y: 51}} // far more than 10 widths
	if got := draw(t, 25.4, 100, 100, scene.Polyline{Points: needle, Pen: scene.Solid(4)}); got.RGBAAt(64, 50).R != 255 {
		t.Error("a mitre beyond the limit is cut off")
	}
}

func TestAClosedStrokeHasAllItsCorners(t *testing.T) {
	picture := draw(t, 25.4, 20, 20, scene.Rect{X: 5, Y: 5, Width: 10, Height: 10, Pen: scene.Solid(4)})
	for _, p := range []image.Point{{3, 3}, {16, 3}, {3, 16}, {16, 16}} {
		if picture.RGBAAt(p.X, p.Y).R != 0 {
			t.Errorf("corner %v is missing:\n%s", p, asText(picture))
		}
	}
	if picture.RGBAAt(10, 10).R != 255 {
		t.Error("a stroke fills nothing")
	}
}

func TestDashes(t *testing.T) {
	line := func(pen scene.Pen) scene.Line { return scene.Line{X1: 0, Y1: 5, X2: 20, Y2: 5, Pen: pen} }
	for _, c := range []struct {
		name string
		pen  scene.Pen
		want string
	}{
		{"two", scene.Pen{Width: 2, Dash: []float64{3, 2}}, "@@@  @@@  @@@  @@@  "},
		{"odd patterns run twice", scene.Pen{Width: 2, Dash: []float64{3}}, "@@@   @@@   @@@   @@"},
		{"gaps of nothing", scene.Pen{Width: 2, Dash: []float64{5, 0}}, "@@@@@@@@@@@@@@@@@@@@"},
		{"whole", scene.Pen{Width: 2}, "@@@@@@@@@@@@@@@@@@@@"},
	} {
		rows := strings.Split(asText(draw(t, 25.4, 20, 10, line(c.pen))), "\n")
		if rows[4] != c.want || rows[5] != c.want || strings.TrimSpace(rows[3]) != "" {
			t.Errorf("%s: %q", c.name, rows[3:7])
		}
	}
}

func TestFarAwayAndFine(t *testing.T) {
	draw(t, 96, 10, 10,
		scene.Line{X1: -1e5, Y1: -1e5, X2: 1e5, Y2: 1e5, Pen: scene.Pen{Width: 0.2, Dash: []float64{0, 0.06}, Round: true}},
		scene.Circle{X: 5, Y: 5, Radius: 9e4, Pen: scene.Solid(9e4), Fill: scene.Grey(0.5)},
		scene.Path{Pen: scene.Solid(1)}.Move(1, 1).Shut().Line(3, 3).Shut().Shut(),
		scene.Polyline{Closed: true, Pen: scene.Solid(1), Fill: scene.Black},
	)
}

func TestErrors(t *testing.T) {
	page := scene.Page{Width: 100, Height: 100}
	for _, c := range []struct {
		name string
		page scene.Page
		dpi  float64
		want string
	}{
		{"no page", scene.Page{}, 96, "page of 0"},
		{"no pixels", page, 0, "no picture"},
		{"no number", page, math.NaN(), "no picture"},
		{"far too many", page, 1e9, "no picture"},
	} {
		if err := png.Encode(io.Discard, c.page, c.dpi); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	if err := png.Encode(fullDisk{}, page, 96); err == nil || !strings.Contains(err.Error(), "disk is full") {
		t.Error(err)
	}
}

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, errors.New("the disk is full") }

func BenchmarkSheetAt96(b *testing.B) {
	page := specimen.Sheet()
	for b.Loop() {
		if err := png.Encode(io.Discard, page, 96); err != nil {
			b.Fatal(err)
		}
	}
}
