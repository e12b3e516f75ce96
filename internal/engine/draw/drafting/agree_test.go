package drafting

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"image"
	"image/color"
	stdpng "image/png"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"

	"sley/internal/edge/render/pdf"
	"sley/internal/edge/render/png"
	"sley/internal/edge/render/svg"
	"sley/internal/engine/draw/scene"
	"sley/internal/trade/draft"
)

// agreed are drafts and manners of drawing that the three forms are compared on: cells
// as shapes and as a picture, in black and in colour.
func agreed() map[string]scene.Page {
	marks := Marks{Repeat: Part{Picks: 4, Ends: 4}, Ends: []int{5}, Floats: []Float{{Pick: 3, End: 1, Long: 3, Warp: true}}}
	out := map[string]scene.Page{}
	for name, c := range map[string]struct {
		d    *draft.Draft
		look Look
	}{
		"twill": {twill(), Look{}}, "towel": {towel(), Look{Bars: true, Numbers: true}},
		"houndstooth": {houndstooth(), Look{Cells: Colours, Alone: true, Face: Back}}, "squares": {houndstooth(), Look{Cells: Both}},
		"rib":     {rib(), Look{Cells: Colours, ToScale: true, Bars: true}},
		"picture": {large(230), Look{Cells: Colours, Cell: 0.8}},
	} {
		out[name], _ = Draw(c.d, c.look, marks, words)
	}
	return out
}

// large is a draft whose crossings are too many for shapes, in colours.
func large(n int) *draft.Draft {
	d := advancing(8, n, n)
	d.Palette = palette
	d.Warp.Colours = round(n, round(60, 1)...)
	for i := range d.Warp.Colours {
		d.Warp.Colours[i] = i / 30 % 4
	}
	d.Weft.Colour = 3
	return d
}

func encoded(t testing.TB, form string, p scene.Page) []byte {
	t.Helper()
	var out bytes.Buffer
	var err error
	switch form {
	case "svg":
		err = svg.EncodeAlone(&out, p, "Galley towels")
	case "png":
		err = png.Encode(&out, p, agreeDPI)
	case "pdf":
		err = pdf.Encode(&out, scene.Document{Pages: []scene.Page{p}})
	}
	if err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func TestSameDraftSameBytes(t *testing.T) {
	first, second := agreed(), agreed()
	for name, p := range first {
		for _, form := range []string{"svg", "png", "pdf"} {
			if !bytes.Equal(encoded(t, form, p), encoded(t, form, second[name])) {
				t.Errorf("%s as %s has other bytes", name, form)
			}
		}
	}
}

// What pictures are compared at: dots per inch, dots to a side of a block, and by how
// much of the way from white to black the mean of a block may differ; poppler makes
// thin strokes whole dots wide.
const (
	agreeDPI  = 200
	agreeSide = 32
	agreeMost = 0.09
)

// The PNG is what another program makes of the PDF.
func TestPNGAgreesWithThePDF(t *testing.T) {
	for name, p := range agreed() {
		theirs, ours := rastered(t, encoded(t, "pdf", p)), decoded(t, encoded(t, "png", p))
		if at, by := unlike(ours, theirs); by > agreeMost {
			t.Errorf("%s differs at %v by %.3f", name, at, by)
		}
	}
}

// A cell that is missing, or of another colour, is seen.
func TestDifferentPicturesDiffer(t *testing.T) {
	for _, name := range []string{"twill", "picture"} {
		p := agreed()[name]
		theirs := rastered(t, encoded(t, "pdf", p))
		for i, it := range p.Items {
			switch it := it.(type) {
			case scene.Path:
				if !it.Fill.IsNone() {
					it.Segments = it.Segments[:max(len(it.Segments)-10, 0)]
					p.Items[i] = it
				}
			case scene.Picture:
				it.X += 8
				p.Items[i] = it
			}
		}
		if _, by := unlike(decoded(t, encoded(t, "png", p)), theirs); by <= agreeMost {
			t.Errorf("%s: a changed page differs by %.3f at most", name, by)
		}
	}
}

// rastered is a page as poppler draws it, in greys.
func rastered(t *testing.T, file []byte) *image.Gray {
	t.Helper()
	if _, err := exec.LookPath("pdftoppm"); err != nil {
		const remedy = "no pdftoppm: apt-get install -y poppler-utils"
		if os.Getenv("CI") != "" {
			t.Fatal(remedy)
		}
		t.Skip(remedy)
	}
	name := filepath.Join(t.TempDir(), "draft")
	if err := os.WriteFile(name+".pdf", file, 0o600); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command("pdftoppm", "-r", strconv.Itoa(agreeDPI), "-gray", "-singlefile", name+".pdf", name).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	pgm, err := os.ReadFile(name + ".pgm")
	if err != nil {
		t.Fatal(err)
	}
	var wide, high, light int
	if _, err := fmt.Fscanf(bytes.NewReader(pgm), "P5\n%d %d\n%d\n", &wide, &high, &light); err != nil || light != 255 {
		t.Fatalf("no PGM of 255 greys: %v", err)
	}
	return &image.Gray{Pix: pgm[len(pgm)-wide*high:], Stride: wide, Rect: image.Rect(0, 0, wide, high)}
}

// decoded is a picture as greys.
func decoded(t *testing.T, file []byte) *image.Gray {
	t.Helper()
	p, err := stdpng.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	grey := image.NewGray(p.Bounds())
	for y := range p.Bounds().Dy() {
		for x := range p.Bounds().Dx() {
			grey.Set(x, y, color.GrayModel.Convert(p.At(x, y)))
		}
	}
	return grey
}

// unlike is where the means of a block differ most, and by what share of black.
func unlike(a, b *image.Gray) (where image.Point, most float64) {
	if d := a.Rect.Size().Sub(b.Rect.Size()); d.X < -1 || d.X > 1 || d.Y < -1 || d.Y > 1 {
		return where, 1
	}
	all := a.Rect.Intersect(b.Rect)
	for y := 0; y < all.Dy(); y += agreeSide {
		for x := 0; x < all.Dx(); x += agreeSide {
			block := image.Rect(x, y, x+agreeSide, y+agreeSide).Intersect(all)
			if by := math.Abs(dark(a, block) - dark(b, block)); by > most {
				where, most = block.Min, by
			}
		}
	}
	return where, most
}

func dark(p *image.Gray, block image.Rectangle) float64 {
	sum := 0
	for y := block.Min.Y; y < block.Max.Y; y++ {
		for x := block.Min.X; x < block.Max.X; x++ {
			sum += 255 - int(p.GrayAt(x, y).Y)
		}
	}
	return float64(sum) / float64(255*block.Dx()*block.Dy())
}

// The cells of the SVG, read tag by tag, are those of the draft.
func TestCellsOfTheSVG(t *testing.T) {
	for name, c := range map[string]struct {
		d    *draft.Draft
		look Look
	}{
		"twill": {twill(), Look{}}, "houndstooth": {houndstooth(), Look{Cells: Colours}}, "back": {houndstooth(), Look{Cells: Colours, Alone: true, Face: Back}},
	} {
		page, _ := Draw(c.d, c.look, Marks{}, words)
		cloth := readPage(page).frames[0]
		r := readSVG(t, encoded(t, "svg", page))
		ends, picks := where(c.d, c.look, cloth)
		for pick, y := range picks {
			for end, x := range ends {
				if _, want := wantInk(c.d, c.look, pick, end); r.ink(x, y) != want {
					t.Fatalf("%s: pick %d, end %d: %v, want %v", name, pick, end, r.ink(x, y).Hex(), want.Hex())
				}
			}
		}
	}
}

var (
	corner = regexp.MustCompile(`[ML](-?[\d.]+),(-?[\d.]+)`)
	oblong = regexp.MustCompile(`M[^MZ]*Z`)
)

// readSVG finds the filled paths of an SVG.
func readSVG(t *testing.T, file []byte) *read {
	t.Helper()
	r := &read{}
	for d := xml.NewDecoder(bytes.NewReader(file)); ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return r
		}
		if err != nil {
			t.Fatal(err)
		}
		tag, ok := token.(xml.StartElement)
		if !ok || tag.Name.Local != "path" {
			continue
		}
		with := map[string]string{"fill": "#000000"}
		for _, a := range tag.Attr {
			with[a.Name.Local] = a.Value
		}
		if with["fill"] == "none" {
			continue
		}
		var red, green, blue uint8
		if _, err := fmt.Sscanf(with["fill"], "#%02x%02x%02x", &red, &green, &blue); err != nil {
			t.Fatal(err)
		}
		for _, one := range oblong.FindAllString(with["d"], -1) {
			var corners []scene.Point
			for _, at := range corner.FindAllStringSubmatch(one, -1) {
				x, _ := strconv.ParseFloat(at[1], 64)
				y, _ := strconv.ParseFloat(at[2], 64)
				corners = append(corners, scene.Point{X: x, Y: y})
			}
			r.fills = append(r.fills, painted{scene.Around(corners), scene.RGB(red, green, blue)})
		}
	}
}
