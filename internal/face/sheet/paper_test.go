package sheet

import (
	"encoding/xml"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"sley/internal/app"
	"sley/internal/engine/draw/scene"
)

// The printed file, not the scene, is held to what a printer holds it to: on both
// papers, with the tape apart because it goes nearer to the edge.
func TestThePaperIsSound(t *testing.T) {
	for name, text := range demo(t) {
		for _, paper := range PaperNames() {
			t.Run(name+" on "+paper, func(t *testing.T) {
				t.Parallel()
				r := reckoned(t, name, text)
				for _, part := range byRule(r) {
					file := onPaper(t, mustMake(t, r, Options{Sheets: part.sheets, Paper: paper}))
					soundFile(t, file)
					largeEnough(t, file)
					for i, p := range pagesOf(t, file) {
						for _, fault := range p.faults(part.margin) {
							t.Errorf("%v, page %d: %s", part.sheets, i+1, fault)
						}
					}
				}
			})
		}
	}
}

func onPaper(t *testing.T, doc scene.Document) string {
	t.Helper()
	file, err := app.Sheets(doc)
	if err != nil {
		t.Fatal(err)
	}
	name := filepath.Join(t.TempDir(), "sheets.pdf")
	if err := os.WriteFile(name, file, 0o600); err != nil {
		t.Fatal(err)
	}
	return name
}

// wholeFont is a line of pdffonts about a font that is embedded, a subset, and can
// be read back.
var wholeFont = regexp.MustCompile(`^[A-Z]{6}\+Sley\S+ +CID TrueType +Identity-H +yes yes yes `)

func soundFile(t *testing.T, file string) {
	t.Helper()
	if out := judge(t, "qpdf", "--check", file); !strings.Contains(out, "No syntax or stream encoding errors") {
		t.Error(out)
	}
	fonts := strings.Split(strings.TrimSpace(judge(t, "pdffonts", file)), "\n")
	if len(fonts) < 3 {
		t.Error("the file has no fonts")
	}
	for _, line := range fonts[min(2, len(fonts)):] {
		if !wholeFont.MatchString(line) {
			t.Error(line)
		}
	}
}

var (
	sizeSet = regexp.MustCompile(`/F\w+ ([\d.]+) Tf`)
	matrix  = regexp.MustCompile(`(?m)(-?[\d.]+) (-?[\d.]+) (-?[\d.]+) (-?[\d.]+) -?[\d.]+ -?[\d.]+ cm`)
)

// largeEnough reads the sizes of letters in the drawing itself; what turns it must
// not make it smaller.
func largeEnough(t *testing.T, file string) {
	t.Helper()
	drawing := judge(t, "qpdf", "--qdf", "--object-streams=disable", file, "-")
	sizes := sizeSet.FindAllStringSubmatch(drawing, -1)
	if len(sizes) == 0 {
		t.Error("no size of letters is set")
	}
	for _, size := range sizes {
		if pt := parsed(t, size[1]); pt < 10 {
			t.Errorf("letters of %v points", pt)
		}
	}
	for _, m := range matrix.FindAllStringSubmatch(drawing, -1) {
		if by := parsed(t, m[1])*parsed(t, m[4]) - parsed(t, m[2])*parsed(t, m[3]); by < 0.999 || by > 1.001 {
			t.Errorf("%s makes the drawing %v times as large", m[0], by)
		}
	}
}

func parsed(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// printedPage and printedWord are what pdftotext reads, in points from the top left.
type printedPage struct {
	Width  float64       `xml:"width,attr"`
	Height float64       `xml:"height,attr"`
	Words  []printedWord `xml:"flow>block>line>word"`
}

type printedWord struct {
	Left   float64 `xml:"xMin,attr"`
	Top    float64 `xml:"yMin,attr"`
	Right  float64 `xml:"xMax,attr"`
	Bottom float64 `xml:"yMax,attr"`
	Text   string  `xml:",chardata"`
}

func pagesOf(t *testing.T, file string) []printedPage {
	t.Helper()
	var read struct {
		Pages []printedPage `xml:"body>doc>page"`
	}
	text := judge(t, "pdftotext", "-bbox-layout", file, "-")
	if err := xml.Unmarshal([]byte(text), &read); err != nil {
		t.Fatal(err)
	}
	if len(read.Pages) == 0 || len(read.Pages[0].Words) == 0 {
		t.Fatal("no words are read")
	}
	return read.Pages
}

// A word's box is as high as its font allows, for two accents and the deepest
// tail: about 1.6 of its size, of which capitals without accents, and tails, fill
// the part from a quarter below the top to a tenth above the bottom.
const (
	overCapital = 0.25
	underTail   = 0.1
)

// slackPt is how far words may share ground, or reach beyond a margin, in points:
// half a millimetre, for the boxes are the advances of the letters and not their
// ink.
const slackPt = 0.5 * scene.PointsPerMM

func (w printedWord) box() scene.Box {
	high := w.Bottom - w.Top
	return scene.Box{X: w.Left, Y: w.Top + overCapital*high, Width: w.Right - w.Left, Height: (1 - overCapital - underTail) * high}
}

// faults are the words that stand beyond a margin, in mm, and the pairs that lie
// over one another.
func (p printedPage) faults(mm float64) []string {
	var out []string
	inside := scene.Box{Width: p.Width, Height: p.Height}.Inset(mm*scene.PointsPerMM - slackPt)
	for i, w := range p.Words {
		b := w.box()
		if !inside.Contains(scene.Point{X: b.X, Y: b.Y}) || !inside.Contains(scene.Point{X: b.Right(), Y: b.Bottom()}) {
			out = append(out, strconv.Quote(w.Text)+" stands in the margin")
		}
		for _, before := range p.Words[:i] {
			if both := b.Intersect(before.box()); both.Width > slackPt && both.Height > slackPt {
				out = append(out, strconv.Quote(w.Text)+" lies over "+strconv.Quote(before.Text))
			}
		}
	}
	return out
}

// The judge sees what it is to see.
func TestFaultsOfAPage(t *testing.T) {
	r := reckoned(t, "galley-towels.toml", plans(t)["galley-towels.toml"])
	for want, change := range map[string]func(*scene.Text){
		"stands in the margin": func(s *scene.Text) { s.X = 13 },
		`lies over "`:          func(s *scene.Text) { s.X, s.Y = margin, margin+4 }, // where the plan's name stands
	} {
		doc := mustMake(t, r, Options{Sheets: []string{"glance"}})
		doc.Pages[0] = changedIn(t, doc.Pages[0], change)
		got := pagesOf(t, onPaper(t, doc))[0].faults(margin)
		if len(got) == 0 || !strings.Contains(strings.Join(got, "\n"), want) {
			t.Errorf("got %v, want one that %s", got, want)
		}
	}
}
