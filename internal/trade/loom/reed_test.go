package loom

import (
	"errors"
	"os"
	"strings"
	"testing"

	"sley/internal/trade/qty"
)

// TestPublishedReeds holds every numbering against published figures; the
// sources stand in the file.
func TestPublishedReeds(t *testing.T) {
	text, err := os.ReadFile("testdata/reeds.tsv")
	if err != nil {
		t.Fatal(err)
	}
	rows := 0
	for line := range strings.Lines(string(text)) {
		if strings.HasPrefix(line, "#") {
			continue
		}
		f := strings.Split(strings.TrimSpace(line), "\t")
		if len(f) != 6 || f[5] == "" {
			t.Fatalf("a row has six columns, the last its source: %q", line)
		}
		published(t, f)
		rows++
	}
	if rows != 30 {
		t.Errorf("read %d rows, want 30", rows)
	}
}

func published(t *testing.T, f []string) {
	reed, err := ParseReed(f[0])
	if err != nil {
		t.Errorf("%s: %v", f[0], err)
		return
	}
	got := reed.Dents.Is.Per(qty.Inch)
	if want := number(t, f[1]); !got.Equal(want) {
		t.Errorf("%s: %s dents in an inch, want %s (%s)", f[0], got, want, f[5])
	}
	ends := got.Mul(number(t, f[2]))
	if number(t, f[4]).Less(ends.Sub(number(t, f[3])).Abs()) {
		t.Errorf("%s: %s ends in an inch, printed %s ± %s (%s)", f[0], ends, f[3], f[4], f[5])
	}
}

func number(t *testing.T, text string) qty.Rat {
	t.Helper()
	n, err := qty.ParseNumber(text)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// TestReedSystems holds the table against the definitions of J. T. Taylor,
// Cotton Weaving and Designing, pp. 243-244, and the dictionary of English
// textile terms, "Sett systems", written once more by hand: dents of one, over
// quarters of an inch.
func TestReedSystems(t *testing.T) {
	want := map[string][2]int64{
		"Stockport": {1, 8}, "Bolton": {20, 97}, "Blackburn": {20, 180}, "Bradford": {20, 144},
		"Scotch": {1, 148}, "Scotch tweed": {20, 148}, "Dewsbury": {19, 360},
		"Huddersfield": {1, 4}, "Irish": {1, 160}, "silk": {1, 144},
		"6-4": {20, 232}, "9-8": {20, 176}, "4-4": {20, 156}, "7-8": {20, 136},
	}
	if len(ReedSystems()) != len(want) {
		t.Errorf("%d systems, want %d", len(ReedSystems()), len(want))
	}
	for _, s := range ReedSystems() {
		w, known := want[s.Name]
		if !known {
			t.Errorf("%s is no system of the sources", s.Name)
			continue
		}
		exact := qty.Frac(7*w[0]*4, w[1])
		reed, err := ParseReed("7 " + s.Name)
		if err != nil || !reed.Dents.Is.Per(qty.Inch).Equal(exact) {
			t.Errorf("7 %s: %v %v, want %s dents in an inch", s.Name, reed.Dents.Is, err, exact)
		}
		if s.Source == "" || s.Says == "" {
			t.Errorf("%s: no source, or nothing said of it", s.Name)
		}
	}
}

func TestReedSpellings(t *testing.T) {
	for want, texts := range map[string][]string{
		"12":     {"12 dpi", "12/in", "12 dents per inch", "12 DPI", " 12 dpi ", "12 Huddersfield"},
		"127/10": {"50/10 cm", "50 dents/10 cm", "50 dents per 10 cm", "50/10cm", "5 dents/cm"},
		"15/2":   {"7 1/2 dpi", "7½ dpi", "7.5/in", "15 Stockport"},
		"30":     {"60 Stockport", "60s Stockport", "60 stockport reed", "Stockport 60", "Manchester 60s"},
		"29":     {"84.1 6-4", "84.1 6-4 counts"},
	} {
		for _, text := range texts {
			reed, err := ParseReed(text)
			if err != nil || reed.Dents.Is.Per(qty.Inch).String() != want {
				t.Errorf("%q: %v dents in an inch, %v, want %s", text, reed.Dents.Is.Per(qty.Inch), err, want)
			}
			if reed.Dents.Typed != text {
				t.Errorf("%q is kept as %q", text, reed.Dents.Typed)
			}
		}
	}
}

func TestReedFaults(t *testing.T) {
	for _, c := range []struct {
		text, code, read string
		at               int
	}{
		{"", "reed.empty", "", 0},
		{"12", "reed.no-unit", "12", 0},
		{" 50/10", "reed.no-unit", "50/10", 1},
		{"60 Stokport", "reed.unknown", "Stokport", 3},
		{"60 Stockport 30", "reed.unknown", "Stockport 30", 3},
		{"0 Stockport", "reed.range", "0 Stockport", 0},
		{"-60 Stockport", "reed.range", "-60 Stockport", 0},
		{"5000 dpi", "reed.range", "5000 dpi", 0},
		{"12 dpo", "density.unknown-unit", "dpo", 3},
		{"1,234 dpi", "number.grouped", "1,234", 0},
		{"Stockport", "number.missing", "Stockport", 0},
	} {
		reed, err := ParseReed(c.text)
		var f *qty.Fault
		if !errors.As(err, &f) {
			t.Errorf("%q gives %v, want %s", c.text, reed.Dents.Is, c.code)
			continue
		}
		if f.Code != c.code || f.Read != c.read || f.At != c.at {
			t.Errorf("%q: %s %q at %d, want %s %q at %d", c.text, f.Code, f.Read, f.At, c.code, c.read, c.at)
		}
	}
}

// TestBareReedOffersBoth: 50 and 50/10 could each be meant in inches or in
// centimetres.
func TestBareReedOffersBoth(t *testing.T) {
	for text, want := range map[string][2]string{
		"50": {"50 dpi", "50/10 cm"}, "50/10": {"50/10 in", "50/10 cm"},
	} {
		_, err := ParseReed(text)
		var f *qty.Fault
		if !errors.As(err, &f) || f.Args["inch"] != want[0] || f.Args["metric"] != want[1] {
			t.Errorf("%q: %+v, want the readings %v", text, f, want)
		}
	}
}

func TestShedNames(t *testing.T) {
	for _, name := range ShedNames() {
		if s, ok := ParseShed(name); !ok || s.String() != name {
			t.Errorf("%q is read as %v, %v", name, s, ok)
		}
	}
	if s, ok := ParseShed("jack"); ok || s.String() != "" {
		t.Errorf("jack is read as %v", s)
	}
}

func TestReedWithItsWidth(t *testing.T) {
	r, err := ParseReed("50/10 cm, 90 cm wide")
	if err != nil {
		t.Fatal(err)
	}
	if r.Width.Is != 90*qty.Centimetre || r.Dents.Typed != "50/10 cm" {
		t.Errorf("got %v wide, dents %q", r.Width, r.Dents.Typed)
	}
	for _, text := range []string{"12 dpi, wide", "12 dpi, 0 cm", "12 dpi, 90"} {
		if _, err := ParseReed(text); err == nil {
			t.Errorf("%q was read", text)
		}
	}
}
