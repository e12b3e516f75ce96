package letter_test

import (
	"bytes"
	"math"
	"os"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"golang.org/x/image/font/sfnt"
	"pgregory.net/rapid"

	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
)

var (
	sans  = scene.Font{}
	serif = scene.Font{Family: scene.Serif}
	every = []scene.Font{
		sans, {Bold: true}, serif, {Family: scene.Serif, Bold: true}, {Family: scene.Serif, Italic: true},
	}
)

func near(a, b float64) bool { return math.Abs(a-b) < 1e-9 }

// The advances are those of Andika 6.101 and Gentium Plus 6.101 as fontTools reads
// their hmtx tables: units of 2048 to the em. At 72 points an em is 25.4 mm.
func TestWidthsArePublishedOnes(t *testing.T) {
	for _, c := range []struct {
		font  scene.Font
		units float64
	}{
		{every[0], 1200},
		{every[1], 1240},
		{every[2], 961},
		{every[3], 1036},
		{every[4], 823},
	} {
		for _, figure := range "0123456789" { // tabular: all the same
			if got := letter.Width(string(figure), c.font, 72); !near(got, 25.4*c.units/2048) {
				t.Errorf("%s %c: %v mm", c.font, figure, got)
			}
		}
	}
}

// From the hhea and OS/2 tables of the same files: ascender 2500, descender 800,
// capitals 1485 and x 1040 in Andika.
func TestHeights(t *testing.T) {
	for _, c := range []struct {
		name  string
		got   float64
		units float64
	}{
		{"ascent", letter.Ascent(sans, 72), 2500},
		{"descent", letter.Descent(sans, 72), 800},
		{"capital", letter.CapHeight(sans, 72), 1485},
		{"x", letter.XHeight(sans, 72), 1040},
	} {
		if !near(c.got, 25.4*c.units/2048) {
			t.Errorf("%s: %v mm, want %v units", c.name, c.got, c.units)
		}
	}
}

func TestResolve(t *testing.T) {
	for _, c := range []struct{ asked, got string }{
		{"sans italic", "sans"},
		{"sans bold italic", "sans bold"},
		{"serif bold italic", "serif bold"},
		{"serif italic", "serif italic"},
	} {
		f := scene.Font{Bold: strings.Contains(c.asked, "bold"), Italic: strings.Contains(c.asked, "italic")}
		if strings.HasPrefix(c.asked, "serif") {
			f.Family = scene.Serif
		}
		if got := letter.Resolve(f).String(); got != c.got {
			t.Errorf("%s is drawn %s, want %s", c.asked, got, c.got)
		}
	}
}

// The licence forbids the reserved names in what users see.
func TestFilesBearNamesOfTheirOwn(t *testing.T) {
	for _, f := range every {
		font, err := sfnt.Parse(letter.File(f))
		if err != nil {
			t.Fatal(err)
		}
		for _, id := range []sfnt.NameID{sfnt.NameIDFamily, sfnt.NameIDFull, sfnt.NameIDPostScript} {
			name, err := font.Name(nil, id)
			if err != nil || !strings.HasPrefix(name, "Sley") || strings.Contains(name, "Gentium") || strings.Contains(name, "Andika") {
				t.Errorf("%s: name %d is %q, %v", f, id, name, err)
			}
		}
	}
	for _, file := range []string{"SleySerif-OFL.txt", "SleySans-OFL.txt"} {
		text, err := os.ReadFile("../../../../third_party/fonts/" + file)
		if err != nil || !bytes.Contains(text, []byte("SIL OPEN FONT LICENSE Version 1.1")) || !bytes.Contains(text, []byte("Reserved Font Names")) {
			t.Errorf("%s: %v", file, err)
		}
	}
}

func TestEveryCutHasWhatSheetsNeed(t *testing.T) {
	needed := "½¼¾⅓⅔⅛⅜⅝⅞⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉⁄→←↑↓×÷−≤≥≈√°€£¥✓…–—‘’“”•·′″±µ\u00a0\u2009\u202f\u2007ŁłŐőȘșẞÞþ"
	for _, f := range every {
		for _, r := range needed {
			if got := letter.Clean(string(r), f); got != string(r) {
				t.Errorf("%s has no %q: %q", f, r, got)
			}
		}
	}
}

func TestInkOfABar(t *testing.T) {
	ink := letter.Ink("|", sans, 10)
	if ink.Width <= 0 || ink.Width > 0.5 || ink.Height < 3 || ink.Y >= 0 || ink.Bottom() <= 0 {
		t.Errorf("got %+v", ink)
	}
	if !letter.Ink(" \t", sans, 10).IsZero() || letter.Quad(scene.Text{Text: " ", Size: 10}) != nil {
		t.Error("spaces have no ink")
	}
}

func TestQuadFollowsAnchorAndAngle(t *testing.T) {
	text := scene.Text{X: 100, Y: 100, Size: 20, Text: "Halyard"}
	wide := letter.Width(text.Text, sans, 20)
	start := scene.Around(letter.Quad(text))
	text.Anchor = scene.End
	if end := scene.Around(letter.Quad(text)); !near(start.X-end.X, wide) || !near(start.Y, end.Y) {
		t.Errorf("end %+v, start %+v, width %v", end, start, wide)
	}
	text.Anchor = scene.Middle
	if middle := scene.Around(letter.Quad(text)); !near(start.X-middle.X, wide/2) {
		t.Errorf("middle %+v", middle)
	}
	text.Anchor, text.Angle = scene.Start, 90
	up := scene.Around(letter.Quad(text))
	if !near(up.Height, start.Width) || up.Bottom() > 100 || up.X > 100 {
		t.Errorf("upwards %+v, level %+v", up, start)
	}
}

func TestCutsAndBreaksHoldTheirWidth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOf(rapid.OneOf(rapid.RuneFrom([]rune("abcWi -\n½\u00a0é́🧶")), rapid.Rune())).Draw(t, "text")
		font := rapid.SampledFrom(every).Draw(t, "font")
		width := rapid.Float64Range(-5, 80).Draw(t, "width")
		if got := letter.Width(letter.Fit(text, font, 10, width), font, 10); got > max(width, 0)+1e-9 {
			t.Fatalf("cut to %v mm, %v allowed", got, width)
		}
		lines := letter.Wrap(text, font, 10, width)
		for _, line := range lines {
			if letter.Width(line, font, 10) > width+1e-9 && utf8.RuneCountInString(line) > 1 {
				t.Fatalf("line %q is wider than %v mm", line, width)
			}
		}
		if got, want := solid(strings.Join(lines, "")), solid(letter.Clean(text, font)); got != want {
			t.Fatalf("broken, %q became %q", want, got)
		}
	})
}

// solid is text without spaces.
func solid(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) {
			return -1
		}
		return r
	}, text)
}

// The box of the ink is that of all points of the outline.
func TestInkIsTheBoxOfTheOutline(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(every).Draw(t, "font")
		text := rapid.String().Draw(t, "text")
		pt := rapid.Float64Range(1, 100).Draw(t, "pt")
		var points []scene.Point
		for _, s := range letter.Outline(text, f, pt) {
			if s.Step == scene.CubicTo {
				points = append(points, s.C1, s.C2)
			}
			if s.Step != scene.Close {
				points = append(points, s.To)
			}
		}
		got, want := letter.Ink(text, f, pt), scene.Around(points)
		for i, c := range got.Corners() {
			if w := want.Corners()[i]; math.Abs(c.X-w.X) > 1e-6 || math.Abs(c.Y-w.Y) > 1e-6 {
				t.Fatalf("%q: %v, want %v", text, got, want)
			}
		}
	})
}
