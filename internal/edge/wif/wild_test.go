package wif

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
)

var update = flag.Bool("update", false, "write the rewritten texts of testdata/wild anew")

// Untidy files as they are met are written strictly: NAME.wif is read and NAME.out
// is what Encode makes of it, byte for byte. What is said of them is held beside the
// words, in package present.
func TestWildFilesAreTidied(t *testing.T) {
	files, err := filepath.Glob("testdata/wild/*.wif")
	if err != nil || len(files) < 10 {
		t.Fatalf("%d wild files: %v", len(files), err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		f, list := Decode(filepath.Base(file), text)
		if list.Failed() {
			t.Errorf("%s: %s", file, codes(list))
		}
		golden(t, strings.TrimSuffix(file, ".wif")+".written", Encode(f))
	}
}

func golden(t *testing.T, file string, got []byte) {
	t.Helper()
	if *update {
		if err := os.WriteFile(file, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(want, got) {
		t.Errorf("%s is written otherwise now; run go test ./internal/edge/wif -update and look at the difference\n%s", file, got)
	}
}

// wild decodes a file of testdata/wild.
func wild(t *testing.T, name string) *draft.Draft {
	t.Helper()
	f, _ := Decode(name, read(t, "wild/"+name+".wif"))
	return f.Draft
}

// However the text is spelt, it is the same draft.
func TestSpelling(t *testing.T) {
	d := wild(t, "spelling")
	want := sound(t, read(t, "tidy/twill.wif")).Draft
	if !slices.Equal(d.Threading, want.Threading[:4]) || !slices.Equal(d.Ties, want.Ties) || !slices.Equal(d.Treadling, want.Treadling) {
		t.Errorf("got %+v", d)
	}
	if d.Shed != loom.Rising || d.Name != "Galley towel; the blue one" || d.Shafts != 4 || d.Treadles != 4 {
		t.Errorf("got %+v", d)
	}
}

// A file of one byte a character is written as one, and a character that it cannot
// hold makes it UTF-8.
func TestLatin(t *testing.T) {
	text := read(t, "wild/carriage-returns.wif")
	f, list := Decode("latin.wif", text)
	if f.Draft.Name != "Decksläufer „Ebbe“" || f.Draft.Note != "Köper, 20 × 20" {
		t.Errorf("read %q, %q: %s", f.Draft.Name, f.Draft.Note, codes(list))
	}
	if got := Encode(f); !bytes.Equal(got, text) {
		t.Errorf("written %q", got)
	}
	f.Draft.Name = "Läufer Ψ"
	if got := Encode(f); !bytes.Contains(got, []byte("Title=Läufer Ψ\r")) {
		t.Errorf("written %q", got)
	}
	f.Draft.Name, f.Draft.Note = "Ã©", "" // these two bytes would be read as one letter
	if back, _ := Decode("latin.wif", Encode(f)); back.Draft.Name != "Ã©" {
		t.Errorf("read back %q", back.Draft.Name)
	}
}

// Two treadles at once: on a sinking shed what is up is what neither lowers. An end
// that the threading leaves out is in no heddle.
func TestTwoFeet(t *testing.T) {
	d := wild(t, "two-feet")
	if !slices.Equal(d.Threading, []int{0, 1, 2, 3, 4, 3, 2, 0}) {
		t.Errorf("threaded %v", d.Threading)
	}
	if got := d.LiftPlan(); !slices.Equal(got, []draft.Set{draft.Of(2, 4), draft.Of(1, 3), draft.Of(4)}) {
		t.Errorf("lifts %v", got)
	}
}

// 65535 is to 255 as 257 is to 1: 9509 = 37 × 257, and 128 and 129 lie on the two
// sides of half a step.
func TestRanges(t *testing.T) {
	d := wild(t, "wide-colours")
	want := []draft.Colour{{R: 255, G: 255, B: 255}, {R: 37, G: 64, B: 124}, {R: 0, G: 0, B: 1}}
	if !slices.Equal(d.Palette, want) {
		t.Errorf("got %v", d.Palette)
	}
	if !slices.Equal(d.Warp.Colours, []int{0, 1, 0, 2}) || d.Weft.Colour != 1 {
		t.Errorf("colours %v, %d", d.Warp.Colours, d.Weft.Colour)
	}
	for _, s := range []scale{{0, 255}, {0, 999}, {0, 65535}, {10, 300}} {
		for c := range 256 {
			if back := s.from(s.to(uint8(c))); int(back) != c {
				t.Errorf("%d in %v is %d and comes back as %d", c, s, s.to(uint8(c)), back)
			}
		}
	}
}

// Colours that stand beside their numbers make a table where there is none.
func TestColoursBesideNumbers(t *testing.T) {
	d := wild(t, "no-table")
	if want := []draft.Colour{{R: 37, G: 64, B: 124}, {R: 255, G: 255, B: 255}}; !slices.Equal(d.Palette, want) || d.Warp.Colour != 1 || d.Weft.Colour != 0 {
		t.Errorf("%v, warp %d, weft %d", d.Palette, d.Warp.Colour, d.Weft.Colour)
	}
}

// What no draft here can hold is left out of it and stays in the text.
func TestTooLarge(t *testing.T) {
	text := read(t, "wild/too-large.wif")
	f, _ := Decode("large.wif", text)
	d := f.Draft
	if d.Shafts != 64 || !slices.Equal(d.Threading, []int{1, 0, 64}) || !slices.Equal(d.Lifts, []draft.Set{draft.Of(1), draft.Of(64)}) {
		t.Errorf("got %+v", d)
	}
	if got := Encode(f); !bytes.Equal(got, text) {
		t.Errorf("written\n%s", got)
	}
}

// A cut file is the draft as far as it goes.
func TestCutFile(t *testing.T) {
	if d := wild(t, "cut"); d.Picks() != 6 || d.Ends() != 4 {
		t.Errorf("%d picks, %d ends", d.Picks(), d.Ends())
	}
}
