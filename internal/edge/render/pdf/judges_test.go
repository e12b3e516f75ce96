package pdf_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
	"sley/internal/engine/draw/specimen"
)

// judge runs a program that was written by others to read PDF, on a file, and
// returns what it printed. Where it is not installed the test is skipped, and
// fails where CI is set.
func judge(t *testing.T, file string, name string, args ...string) (string, error) {
	t.Helper()
	if _, err := exec.LookPath(name); err != nil {
		const remedy = "apt-get install -y qpdf poppler-utils"
		if os.Getenv("CI") != "" {
			t.Fatalf("no %s: %s", name, remedy)
		}
		t.Skipf("no %s: %s", name, remedy)
	}
	for i, arg := range args {
		args[i] = strings.ReplaceAll(arg, "FILE", file)
	}
	out, err := exec.Command(name, args...).CombinedOutput()
	return string(out), err
}

// must is judge for what has to succeed.
func must(t *testing.T, file string, name string, args ...string) string {
	t.Helper()
	out, err := judge(t, file, name, args...)
	if err != nil {
		t.Fatalf("%s: %v\n%s", name, err, out)
	}
	return out
}

func saved(t *testing.T, doc scene.Document) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "sheet.pdf")
	if err := os.WriteFile(file, encode(t, doc), 0o600); err != nil {
		t.Fatal(err)
	}
	return file
}

// rulers is pages of several sizes, each with a line of 100 mm across and one down.
func rulers() scene.Document {
	var doc scene.Document
	for i, size := range []scene.Size{scene.A4, scene.Letter, {Width: 297, Height: 210}, {Width: 111.1, Height: 123.4}} {
		x, y := 3.3+float64(i)/7, 4.4+float64(i)/3
		doc.Pages = append(doc.Pages, scene.Page{Width: size.Width, Height: size.Height, Items: []scene.Item{
			scene.Line{X1: x, Y1: y, X2: x + 100, Y2: y, Pen: scene.Solid(0.2)},
			scene.Group{X: 1.7, Y: 2.9, Items: []scene.Item{scene.Line{X1: x, Y1: y, X2: x, Y2: y + 100, Pen: scene.Solid(0.2)}}},
			scene.ScaleBar(x, y+20, "100 mm", "4 in", scene.Text{Size: 8}),
		}})
	}
	return doc
}

func TestQpdfFindsNothing(t *testing.T) {
	for _, doc := range []scene.Document{specimen.Document(), rulers(), document()} {
		if out := must(t, saved(t, doc), "qpdf", "--check", "FILE"); !strings.Contains(out, "No syntax or stream encoding errors") {
			t.Error(out)
		}
	}
	broken := filepath.Join(t.TempDir(), "broken.pdf")
	if err := os.WriteFile(broken, encode(t, rulers())[:500], 0o600); err != nil {
		t.Fatal(err)
	}
	if out, err := judge(t, broken, "qpdf", "--check", "FILE"); err == nil {
		t.Errorf("half a file passes:\n%s", out)
	}
}

func TestPagesHaveTheirSizes(t *testing.T) {
	doc := rulers()
	out := must(t, saved(t, doc), "pdfinfo", "-l", "9", "FILE")
	sizes := regexp.MustCompile(`Page +\d+ size: +([\d.]+) x ([\d.]+) pts`).FindAllStringSubmatch(out, -1)
	if len(sizes) != len(doc.Pages) {
		t.Fatalf("%d pages, want %d:\n%s", len(sizes), len(doc.Pages), out)
	}
	for i, page := range doc.Pages {
		wide, high := number(t, sizes[i][1])*scene.MMPerPoint, number(t, sizes[i][2])*scene.MMPerPoint
		if math.Abs(wide-page.Width) > 0.01 || math.Abs(high-page.Height) > 0.01 {
			t.Errorf("page %d is %v x %v mm, want %v x %v", i+1, wide, high, page.Width, page.Height)
		}
	}
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func TestDescription(t *testing.T) {
	doc := document()
	doc.Title, doc.Author, doc.Subject, doc.Date = "Győr (½) 🧶", "Łucja\\", "織", "2026-11-25T14:30:00Z"
	out := must(t, saved(t, doc), "pdfinfo", "-isodates", "FILE")
	for _, want := range []string{"Győr (½) \uFFFD", "Łucja\\", "織", "CreationDate:    2026-11-25T14:30:00", "ModDate:         2026-11-25T14:30:00"} {
		if !strings.Contains(out, want) {
			t.Errorf("no %q in\n%s", want, out)
		}
	}
}

func TestEveryFontIsEmbedded(t *testing.T) {
	out := must(t, saved(t, specimen.Document()), "pdffonts", "FILE")
	lines := strings.Split(strings.TrimSpace(out), "\n")[2:]
	if len(lines) != 5 {
		t.Errorf("%d fonts, want the five of the house:\n%s", len(lines), out)
	}
	for _, line := range lines {
		if !wholeFont.MatchString(line) {
			t.Error(line)
		}
	}
}

// wholeFont is a line of pdffonts about a font that is embedded, a subset with its
// tag, and has a table back to Unicode.
var wholeFont = regexp.MustCompile(`^[A-Z]{6}\+Sley\S+ +CID TrueType +Identity-H +yes yes yes `)

// Two files that draw other characters in one font give it other tags.
func TestTagsTellSubsetsApart(t *testing.T) {
	tag := regexp.MustCompile(`/([A-Z]{6})\+SleySans\b`)
	tags := map[string]bool{}
	for _, words := range []string{"warp", "weft", "warp "} {
		file := encode(t, document(scene.Text{X: 10, Y: 30, Size: 12, Text: words}))
		found := tag.FindAllSubmatch(file, -1)
		if len(found) != 3 || bytes.Contains(file, []byte("/utf8")) {
			t.Fatalf("%q: %d names with a tag, want those of two fonts and a descriptor", words, len(found))
		}
		tags[string(found[0][1])] = true
	}
	if len(tags) != 3 {
		t.Errorf("three subsets have %d tags", len(tags))
	}
	same := encode(t, document(scene.Text{X: 10, Y: 30, Size: 12, Text: "praw"}))
	if name := tag.FindSubmatch(same); name == nil || !tags[string(name[1])] {
		t.Error("the same characters in another order give another tag")
	}
}

// texts are the words of a page in the order drawn, with where they stand.
func texts(items []scene.Item, dx, dy float64) []scene.Text {
	var found []scene.Text
	for _, it := range items {
		switch it := it.(type) {
		case scene.Text:
			it.X, it.Y = it.X+dx, it.Y+dy
			found = append(found, it)
		case scene.Group:
			found = append(found, texts(it.Items, dx+it.X, dy+it.Y)...)
		}
	}
	return found
}

func TestTextComesBack(t *testing.T) {
	file := saved(t, specimen.Document())
	for i, page := range specimen.Document().Pages {
		at := strconv.Itoa(i + 1)
		out := words(must(t, file, "pdftotext", "-raw", "-f", at, "-l", at, "FILE", "-"))
		for _, text := range texts(page.Items, 0, 0) {
			if want := words(letter.Clean(text.Text, text.Font)); !strings.Contains(out, want) {
				t.Errorf("page %s has no %q in\n%s", at, want, out)
			}
		}
	}
}

// words is text without its spaces, which readers of PDF guess at.
func words(text string) string { return strings.Join(strings.Fields(text), "") }

// contents is what is drawn on each page, in the words of PDF.
func contents(t *testing.T, doc scene.Document) []string {
	t.Helper()
	file := saved(t, doc)
	plain := file + ".qdf"
	must(t, file, "qpdf", "--qdf", "--object-streams=disable", "FILE", plain)
	all, err := os.ReadFile(plain)
	if err != nil {
		t.Fatal(err)
	}
	var pages []string
	for _, part := range strings.Split(string(all), "%% Contents for page ")[1:] {
		_, after, _ := strings.Cut(part, "stream\n")
		stream, _, _ := strings.Cut(after, "endstream")
		pages = append(pages, stream)
	}
	if len(pages) != len(doc.Pages) {
		t.Fatalf("%d pages of content, want %d", len(pages), len(doc.Pages))
	}
	return pages
}

var lineDrawn = regexp.MustCompile(`([\d.]+) ([\d.]+) m ([\d.]+) ([\d.]+) l S Q`)

func TestAHundredMillimetresAreSo(t *testing.T) {
	doc := rulers()
	for i, content := range contents(t, doc) {
		lines := lineDrawn.FindAllStringSubmatch(content, -1)
		if len(lines) != 2 {
			t.Fatalf("page %d: %d lines, want 2:\n%s", i+1, len(lines), content)
		}
		across := doc.Pages[i].Items[0].(scene.Line)
		for _, line := range lines {
			x1, y1, x2, y2 := number(t, line[1]), number(t, line[2]), number(t, line[3]), number(t, line[4])
			if mm := math.Hypot(x2-x1, y2-y1) * 25.4 / 72; math.Abs(mm-100) > 0.01 {
				t.Errorf("page %d: a line of %v mm, want 100", i+1, mm)
			}
		}
		if x := number(t, lines[0][1]) * 25.4 / 72; math.Abs(x-across.X1) > 0.01 {
			t.Errorf("page %d: the line begins at %v mm, want %v", i+1, x, across.X1)
		}
		bar := fmt.Sprintf("%.3f ", (across.X1+scene.ScaleBarMM)*72/25.4)
		if !strings.Contains(content, strings.TrimRight(bar[:len(bar)-2], "0")) {
			t.Errorf("page %d: nothing ends at %s, where the bar does", i+1, bar)
		}
	}
}

var wordsDrawn = regexp.MustCompile(`BT ([\d.-]+) ([\d.-]+) Td [(<]`)

func TestTextStandsWhereTheSceneSays(t *testing.T) {
	doc := specimen.Document()
	for i, content := range contents(t, doc) {
		want := texts(doc.Pages[i].Items, 0, 0)
		got := wordsDrawn.FindAllStringSubmatch(content, -1)
		if len(got) != len(want) {
			t.Fatalf("page %d: %d texts, want %d", i+1, len(got), len(want))
		}
		for k, place := range got {
			x, y := letter.Origin(want[k])
			atX, atY := number(t, place[1])*25.4/72, doc.Pages[i].Height-number(t, place[2])*25.4/72
			if math.Abs(atX-x) > 0.01 || math.Abs(atY-y) > 0.01 {
				t.Errorf("%q stands at %v,%v, want %v,%v", want[k].Text, atX, atY, x, y)
			}
		}
	}
}

// Poppler reckons where words end from the widths in the file: they must be ours.
func TestWidthsInTheFileAreOurs(t *testing.T) {
	const pt, words = 20.0, "Countermarch"
	for _, font := range []scene.Font{{}, {Bold: true}, {Family: scene.Serif}, {Family: scene.Serif, Bold: true}, {Family: scene.Serif, Italic: true}} {
		out := must(t, saved(t, document(scene.Text{X: 10, Y: 30, Size: pt, Font: font, Text: words})), "pdftotext", "-bbox", "FILE", "-")
		box := regexp.MustCompile(`xMin="([\d.]+)".*xMax="([\d.]+)".*>` + words).FindStringSubmatch(out)
		if box == nil {
			t.Fatalf("no word in\n%s", out)
		}
		got, want := (number(t, box[2])-number(t, box[1]))*25.4/72, letter.Width(words, font, pt)
		if math.Abs(got-want) > 0.05 {
			t.Errorf("%s: %v mm, want %v", font, got, want)
		}
	}
}
