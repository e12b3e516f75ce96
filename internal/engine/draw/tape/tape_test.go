package tape_test

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

	"sley/internal/edge/render/pdf"
	"sley/internal/engine/draw/check"
	"sley/internal/engine/draw/scene"
	"sley/internal/engine/draw/tape"
)

const inch = 25.4

var words = tape.Words{
	Heading:     "Galley towels: the tape",
	Page:        func(page, of int) string { return fmt.Sprintf("page %d of %d", page, of) },
	Note:        "Cut the strips out. Lay the foot of each under the head with the same letter, up to the dashed line. Pin the tape to the cloth, its beginning at the first pick.",
	Running:     func(from, to float64) string { return fmt.Sprintf("%.0f–%.0f cm", from/10, to/10) },
	Centimetres: "cm", Inches: "in", BarMetric: "100 mm", BarIn: "4 in",
}

// towel is 34.2 in on the loom with 14 marks, some 3 mm apart.
func towel() tape.Strip {
	return tape.Strip{Title: "Galley towel 1", Length: 34.2 * inch, Marks: []tape.Mark{
		{0, "start", true},
		{3, "hem turns in", false},
		{33, "fold of the hem", false},
		{63, "body begins", true},
		{120, "change to indigo", false},
		{123, "back to natural", false},
		{126, "indigo", false},
		{129, "natural", false},
		{434.34, "half way", true},
		{740, "indigo", false},
		{743, "natural", false},
		{805, "body ends", true},
		{835, "fold of the hem", false},
		{34.2 * inch, "end of towel", true},
	}}
}

func blanket() tape.Strip {
	s := tape.Strip{Title: "Berth blanket in fulled wool twill, fringed", Length: 2700}
	for at := 0.0; at <= 2700; at += 150 {
		s.Marks = append(s.Marks, tape.Mark{At: at, Label: "measure the width at the fell"})
	}
	return s
}

func bookmark() tape.Strip {
	return tape.Strip{Title: "Bookmark", Length: 50, Marks: []tape.Mark{{0, "start", true}, {12.5, "red", false}, {50, "end", true}}}
}

// many is a piece of a hundred marks, closer together towards its end.
func many() tape.Strip {
	s := tape.Strip{Title: "Sampler", Length: 900}
	for i := range 100 {
		at := 900 * math.Sqrt(float64(i)/99)
		s.Marks = append(s.Marks, tape.Mark{At: at, Label: "sett " + strconv.Itoa(i), Strong: i%10 == 0})
	}
	return s
}

var cases = map[string][]tape.Strip{
	"towel":     {towel()},
	"blanket":   {blanket()},
	"bookmark":  {bookmark()},
	"bookmarks": {bookmark(), bookmark(), bookmark(), bookmark(), bookmark(), bookmark(), bookmark(), bookmark(), bookmark()},
	"many":      {many()},
	"all":       {towel(), blanket(), bookmark(), many()},
}

var papers = map[string]scene.Size{"A4": scene.A4, "Letter": scene.Letter}

// each draws every case on both papers.
func each(t *testing.T, try func(t *testing.T, strips []tape.Strip, pages []scene.Page, places []tape.Place)) {
	for name, strips := range cases {
		for paper, size := range papers {
			t.Run(name+" on "+paper, func(t *testing.T) {
				pages, places := tape.Pages(strips, size, words)
				if len(pages) == 0 {
					t.Fatal("no pages")
				}
				try(t, strips, pages, places)
			})
		}
	}
}

func TestAPrinterFindsNothing(t *testing.T) {
	each(t, func(t *testing.T, _ []tape.Strip, pages []scene.Page, _ []tape.Place) {
		for _, f := range check.Read(scene.Document{Pages: pages}, check.Rules{MinPt: 10, Margin: 7.9}) {
			t.Error(f)
		}
	})
}

// What a ruler would measure: every mark is drawn where its place says, as far from
// the beginning of its part as the loom has it, and no mark is lost.
func TestMarksAreTrue(t *testing.T) {
	each(t, func(t *testing.T, strips []tape.Strip, pages []scene.Page, places []tape.Place) {
		seen := map[[2]int]bool{}
		for _, p := range places {
			seen[[2]int{p.Strip, p.Mark}] = true
			m := strips[p.Strip].Marks[p.Mark]
			if got := p.Start - p.Y + p.Offset; math.Abs(got-m.At) > 0.05 {
				t.Errorf("%q is %v mm from the beginning, want %v", m.Label, got, m.At)
			}
			if !drawn(pages[p.Page-1].Items, p.X, p.Y, 0, 0) {
				t.Errorf("nothing is drawn at %v, %v for %q", p.X, p.Y, m.Label)
			}
			if !p.Labelled {
				t.Errorf("%q has no label", m.Label)
			}
		}
		count := 0
		for _, s := range strips {
			count += len(s.Marks)
		}
		if len(seen) != count || len(places) != count {
			t.Errorf("%d places of %d marks, want %d", len(places), len(seen), count)
		}
	})
}

// drawn says whether a level line begins at the place.
func drawn(items []scene.Item, x, y, dx, dy float64) bool {
	for _, it := range items {
		switch it := it.(type) {
		case scene.Group:
			if drawn(it.Items, x, y, dx+it.X, dy+it.Y) {
				return true
			}
		case scene.Line:
			if it.Y1 == it.Y2 && math.Hypot(it.X1+dx-x, it.Y1+dy-y) < 1e-9 {
				return true
			}
		}
	}
	return false
}

// contents is what is drawn on each page of the PDF.
func contents(t *testing.T, pages []scene.Page) []string {
	t.Helper()
	if _, err := exec.LookPath("qpdf"); err != nil {
		const remedy = "no qpdf: apt-get install -y qpdf"
		if os.Getenv("CI") != "" {
			t.Fatal(remedy)
		}
		t.Skip(remedy)
	}
	var out bytes.Buffer
	if err := pdf.Encode(&out, scene.Document{Pages: pages}); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "tape.pdf")
	if err := os.WriteFile(file, out.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	if text, err := exec.Command("qpdf", "--qdf", "--object-streams=disable", file, file+".qdf").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	all, err := os.ReadFile(file + ".qdf")
	if err != nil {
		t.Fatal(err)
	}
	parts := strings.Split(string(all), "%% Contents for page ")[1:]
	if len(parts) != len(pages) {
		t.Fatalf("%d pages of content, want %d", len(parts), len(pages))
	}
	return parts
}

var (
	stroke = regexp.MustCompile(`([\d.]+) ([\d.]+) m ([\d.]+) ([\d.]+) l`)
	oblong = regexp.MustCompile(`([\d.]+) ([\d.]+) m\s+([\d.]+) ([\d.]+) l\s+([\d.]+) ([\d.]+) l\s+([\d.]+) ([\d.]+) l\s+h`)
)

func mm(t *testing.T, points string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(points, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v * 25.4 / 72
}

// On every page of the PDF the bar is 100 mm, and the marks and the graduation 10 mm
// above the beginning of their part are where they should be.
func TestAHundredMillimetresAreSo(t *testing.T) {
	each(t, func(t *testing.T, strips []tape.Strip, pages []scene.Page, places []tape.Place) {
		heights := make([]map[[2]int]bool, len(pages))
		for i, content := range contents(t, pages) {
			bar := false
			for _, box := range oblong.FindAllStringSubmatch(content, -1) {
				bar = bar || math.Abs(mm(t, box[3])-mm(t, box[1])-scene.ScaleBarMM) < 0.01
			}
			if !bar {
				t.Errorf("page %d has no bar of 100 mm", i+1)
			}
			heights[i] = map[[2]int]bool{}
			for _, s := range stroke.FindAllStringSubmatch(content, -1) {
				if s[2] == s[4] {
					heights[i][hundredths(mm(t, s[1]), pages[i].Height-mm(t, s[2]))] = true
				}
			}
		}
		for _, p := range places {
			m := strips[p.Strip].Marks[p.Mark]
			if y := p.Start - (m.At - p.Offset); !near(heights[p.Page-1], p.X, y) {
				t.Errorf("page %d: nothing at %v mm for %q", p.Page, y, m.Label)
			}
			if y := p.Start - 10; !near(heights[p.Page-1], p.X, y) {
				t.Errorf("page %d: no graduation 10 mm above the beginning", p.Page)
			}
		}
	})
}

// hundredths is a place in hundredths of a millimetre.
func hundredths(x, y float64) [2]int {
	return [2]int{int(math.Round(x * 100)), int(math.Round(y * 100))}
}

// near says whether a stroke begins within 0.05 mm of the place.
func near(strokes map[[2]int]bool, x, y float64) bool {
	at := hundredths(x, y)
	for dx := -4; dx <= 4; dx++ {
		for dy := -4; dy <= 4; dy++ {
			if strokes[[2]int{at[0] + dx, at[1] + dy}] {
				return true
			}
		}
	}
	return false
}
