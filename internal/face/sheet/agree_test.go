package sheet

import (
	"bytes"
	"fmt"
	"image"
	stdpng "image/png"
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"sley/internal/app"
	"sley/internal/engine/draw/scene"
	"sley/internal/engine/reckon"
)

// What the pictures are compared at: dots per inch, blocks to an inch, and by how
// much of the way from white to black the mean of a block may differ. Poppler makes
// every thin stroke a whole number of dots, so what is finely ruled wants more dots;
// what it moves by less than a dot cancels within a block. A word that is missing
// differs by more: see TestDifferentPicturesDiffer.
const (
	agreeDPI     = 72
	agreeFineDPI = 216
	agreeBlocks  = 6
	agreeMost    = 0.095
)

// The picture of a page is what another program makes of the page in the PDF.
func TestPicturesAgreeWithThePDF(t *testing.T) {
	for name, text := range demo(t) {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			r := reckoned(t, name, text)
			for _, part := range byRule(r) {
				agrees(t, mustMake(t, r, Options{Sheets: part.sheets}), part.dpi)
			}
		})
	}
}

// demo is the plans of the demo, and the awkward one.
func demo(t testing.TB) map[string][]byte {
	t.Helper()
	out := plans(t)
	delete(out, "large.toml")
	delete(out, "P1.toml")
	if testing.Short() { // with the race detector, which has little to find in pages
		return map[string][]byte{"galley-towels.toml": out["galley-towels.toml"]}
	}
	return out
}

// part is sheets of a plan that are judged alike.
type part struct {
	sheets []string
	margin float64 // mm
	slack  float64 // mm
	dpi    int
}

// byRule is the sheets of a plan in three parts: the tape goes nearer to the edge of
// the paper, and it, the glance with its hatchings, the draft and the cloth of the first inch are finely
// ruled.
func byRule(r *reckon.Result) []part {
	all := everything(r)
	ruled := []string{"glance", "draft", "first-inch"}
	ours := slices.DeleteFunc(slices.Clone(all), func(s string) bool { return s == "tape" || slices.Contains(ruled, s) })
	fine := slices.DeleteFunc(ruled, func(s string) bool { return !slices.Contains(all, s) })
	out := []part{{ours, margin, drawnSlack, agreeDPI}, {fine, margin, drawnSlack, agreeFineDPI}}
	if slices.Contains(all, "tape") {
		out = append(out, part{[]string{"tape"}, 8, tapeSlack, agreeFineDPI})
	}
	return out
}

func agrees(t *testing.T, doc scene.Document, dpi int) {
	t.Helper()
	theirs := rastered(t, doc, dpi)
	ours, err := app.SheetFiles(doc, app.PNG, dpi)
	if err != nil || len(ours) != len(theirs) {
		t.Fatalf("%d pictures and %d of poppler's: %v", len(ours), len(theirs), err)
	}
	for i, file := range ours {
		if at, by := unlike(decoded(t, file), theirs[i], dpi/agreeBlocks); by > agreeMost {
			t.Errorf("page %d of %d at %d dots per inch differs at %v by %.3f", i+1, len(ours), dpi, at, by)
		}
	}
}

// rastered is the pages as poppler draws them from the PDF, in greys.
func rastered(t *testing.T, doc scene.Document, dpi int) []*image.Gray {
	t.Helper()
	file, err := app.Sheets(doc)
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	name := filepath.Join(dir, "sheets.pdf")
	if err := os.WriteFile(name, file, 0o600); err != nil {
		t.Fatal(err)
	}
	judge(t, "pdftoppm", "-r", fmt.Sprint(dpi), "-gray", name, filepath.Join(dir, "page"))
	found, err := filepath.Glob(filepath.Join(dir, "page-*.pgm"))
	if err != nil {
		t.Fatal(err)
	}
	var out []*image.Gray
	for _, name := range found {
		file, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, grey(t, file))
	}
	return out
}

// grey reads a PGM: its size and the lightest value as text, then a byte for each
// dot.
func grey(t *testing.T, file []byte) *image.Gray {
	t.Helper()
	var wide, high, light int
	if _, err := fmt.Fscanf(bytes.NewReader(file), "P5\n%d %d\n%d\n", &wide, &high, &light); err != nil || light != 255 {
		t.Fatalf("no PGM of 255 greys: %v", err)
	}
	return &image.Gray{Pix: file[len(file)-wide*high:], Stride: wide, Rect: image.Rect(0, 0, wide, high)}
}

// decoded is a picture as greys; the sheets have no other ink.
func decoded(t *testing.T, file []byte) *image.Gray {
	t.Helper()
	picture, err := stdpng.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	grey, ok := picture.(*image.Gray)
	if !ok {
		t.Fatalf("a picture is %T and not of greys alone", picture)
	}
	return grey
}

// unlike is where the means of a block differ most, and by what share of black.
// Poppler rounds the size of a page up, so a row of dots may be more.
func unlike(a, b *image.Gray, side int) (image.Point, float64) {
	if d := a.Bounds().Size().Sub(b.Bounds().Size()); d.X < -1 || d.X > 1 || d.Y < -1 || d.Y > 1 {
		return image.Point{}, 1
	}
	all := a.Bounds().Intersect(b.Bounds())
	where, most := image.Point{}, 0.0
	for y := 0; y < all.Dy(); y += side {
		for x := 0; x < all.Dx(); x += side {
			block := image.Rect(x, y, x+side, y+side).Intersect(all)
			if by := math.Abs(dark(a, block) - dark(b, block)); by > most {
				where, most = block.Min, by
			}
		}
	}
	return where, most
}

// dark is how dark a block is in the mean, from 0, white, to 1.
func dark(picture *image.Gray, block image.Rectangle) float64 {
	sum := 0
	for y := block.Min.Y; y < block.Max.Y; y++ {
		row := picture.Pix[picture.PixOffset(block.Min.X, y):]
		for _, light := range row[:block.Dx()] {
			sum += 255 - int(light)
		}
	}
	return float64(sum) / float64(255*block.Dx()*block.Dy())
}

// A word that is missing, or stands a line too low, is seen.
func TestDifferentPicturesDiffer(t *testing.T) {
	r := reckoned(t, "galley-towels.toml", plans(t)["galley-towels.toml"])
	doc := mustMake(t, r, Options{Sheets: []string{"glance"}})
	theirs := rastered(t, doc, agreeFineDPI)[0]
	for _, change := range []func(*scene.Text){
		func(s *scene.Text) { s.Text = "" },
		func(s *scene.Text) { s.Y += 5 },
		func(s *scene.Text) { s.X += 3 },
	} {
		page := changedIn(t, doc.Pages[0], change)
		ours, err := app.SheetFiles(scene.Document{Pages: []scene.Page{page}}, app.PNG, agreeFineDPI)
		if err != nil {
			t.Fatal(err)
		}
		if at, by := unlike(decoded(t, ours[0]), theirs, agreeFineDPI/agreeBlocks); by <= agreeMost {
			t.Errorf("a changed page differs by %.2f at most, at %v", by, at)
		}
	}
}

// changedIn is a page with its last text of the usual size changed.
func changedIn(t *testing.T, p scene.Page, change func(*scene.Text)) scene.Page {
	t.Helper()
	p.Items = slices.Clone(p.Items)
	for i, it := range slices.Backward(p.Items) {
		if s, ok := it.(scene.Text); ok && s.Size == body.pt {
			change(&s)
			p.Items[i] = s
			return p
		}
	}
	t.Fatal("the page has no text of the usual size")
	return p
}
