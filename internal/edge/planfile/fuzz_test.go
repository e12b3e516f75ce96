package planfile

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"sley/internal/trade/problem"
)

// FuzzPlanFile: whatever the bytes, reading ends soon and without a panic,
// every problem stands within the file, and a plan without errors can be used.
func FuzzPlanFile(f *testing.F) {
	files, err := filepath.Glob("testdata/faults/*.toml")
	if err != nil || len(files) < 150 {
		f.Fatalf("the corpus has %d files: %v", len(files), err)
	}
	for _, file := range append(files, "testdata/whole.toml", largePlan) {
		text, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		start := time.Now()
		plan, places, list := Decode("plan.toml", text)
		if took := time.Since(start); took > tooSlow {
			t.Errorf("reading %d bytes took %v", len(text), took)
		}
		lines := strings.Split(strings.TrimPrefix(string(text), "\ufeff"), "\n")
		for _, p := range list.All() {
			standsWithin(t, lines, p)
		}
		if plan == nil {
			t.Fatal("no plan")
		}
		if _, ok := places.Find("pieces[0].width"); !ok {
			t.Error("a file has no place at all")
		}
		if !list.Failed() && (len(plan.Pieces) == 0 || !plan.Pieces[0].Length.Given() && plan.Find.What == "") {
			t.Error("no piece with a length, and no error")
		}
	})
}

// standsWithin proves that a problem has a code and a place that the file has.
func standsWithin(t *testing.T, lines []string, p problem.Problem) {
	place := p.Place
	if p.Code == "" || place.File == "" {
		t.Errorf("%+v has no code or no file", p)
	}
	if place.Line == 0 {
		return
	}
	if place.Line < 0 || place.Line > len(lines) {
		t.Fatalf("%s on line %d of %d", p.Code, place.Line, len(lines))
	}
	width := utf8.RuneCountInString(lines[place.Line-1])
	if utf8.ValidString(lines[place.Line-1]) && (place.Col < 1 || place.Width < 1 || place.Col+place.Width-1 > width+1) {
		t.Errorf("%s covers %d characters from %d in a line of %d", p.Code, place.Width, place.Col, width)
	}
}

// tooSlow is far above what any file of the size takes (2 s, for 30,000 unknown
// yarns among 200), so that a busy machine is no fault.
const tooSlow = 15 * time.Second

// TestHugeAndHostile: files made to be slow are read in reasonable time.
func TestHugeAndHostile(t *testing.T) {
	const n = 120_000
	for what, text := range map[string]string{
		"unknown keys":  "sley = 1\n" + numbered("k%d = 1\n", n/2),
		"one long line": "sley = 1\nloom.reeds = [" + strings.Repeat("1, ", n) + "]\n",
		"wide letters":  "sley = 1\nloom.reeds = [" + strings.Repeat("\"ø\", ", n) + "]\n",
		"yarns":         "sley = 1\n" + numbered("[yarns.y%d]\ncount = 8\n", n/8) + "[weft]\nyarn = \"y\"\n",
		"dots":          "sley = 1\n" + strings.Repeat("a.", n) + "b = 1\n",
		"brackets":      "sley = 1\na = " + strings.Repeat("[", n) + strings.Repeat("]", n) + "\n",
		"pieces":        "sley = 1\n" + strings.Repeat("[[pieces]]\n", n/2),
		"headings":      "sley = 1\n" + strings.Repeat("[warp]\n", n),
		"strange yarns": "sley = 1\n" + numbered("[yarns.yarn%d]\n", mostYarns) + "[warp]\nstripes = \"" + numbered("yarm%d 4 ", n/4) + "\"\n",
		"strange parts": "sley = 1\n" + numbered("[yarns.yarn%d]\n", mostYarns) + "[weft.shares]\n" + numbered("yarm%d = \"1 %%\"\n", n/4) + "\n",
		"order":         "sley = 1\nwarp.threading = \"" + strings.Repeat("1 2 ", n) + "\"\n",
		"bad order":     "sley = 1\nwarp.threading = \"" + strings.Repeat("99 ", n) + "\"\n",
		"allowance":     "sley = 1\nallowances.take-up = \"" + strings.Repeat("1 % + ", n) + "\"\n",
		"then":          "sley = 1\nallowances.take-up = \"" + strings.Repeat("then ", n) + "\"\n",
		"sleying":       "sley = 1\nwarp.sleying = \"" + strings.Repeat("1-", n) + "1\"\n",
		"quotes":        "sley = 1\nname = \"" + strings.Repeat("a", 4*n) + "\n",
		"spaces":        "sley = 1\nallowances.take-up = \"" + strings.Repeat(" ", 4*n) + "1 %\"\n",
	} {
		start := time.Now()
		_, _, list := Decode("plan.toml", []byte(text))
		if took := time.Since(start); took > tooSlow {
			t.Errorf("%s: %d bytes took %v", what, len(text), took)
		}
		if !list.Failed() {
			t.Errorf("%s: no error", what)
		}
	}
}

func numbered(line string, n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, line, i)
	}
	return b.String()
}
