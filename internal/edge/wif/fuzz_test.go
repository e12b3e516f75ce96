package wif

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"sley/internal/trade/problem"
)

// stays are the problems of a text that stay when it is written: the text says what
// is legal, and a draft here cannot hold it.
var stays = map[string]bool{
	"wif.latin": true, "wif.lift-plan-sinking": true, "wif.gap": true, "wif.ends-float": true,
	"wif.section-unknown": true, "wif.key-unknown": true, "wif.shafts-many": true, "wif.treadles-many": true,
	"wif.shaft-beyond": true, "wif.treadle-beyond": true, "wif.tie-beyond": true, "wif.end-in-two": true,
	"wif.treadling-untied": true, "wif.units": true, "wif.palette-form": true, "wif.no-colours": true,
	"wif.colour-differs": true, "wif.more": true,
}

// corpus gives every file of the testdata.
func corpus(t testing.TB) map[string][]byte {
	t.Helper()
	files, err := filepath.Glob("testdata/*/*.wif")
	if err != nil || len(files) < 90 {
		t.Fatalf("the corpus has %d files: %v", len(files), err)
	}
	out := map[string][]byte{}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		out[file] = text
	}
	return out
}

// FuzzDecode: whatever the bytes, reading ends without a panic, every problem stands
// within the file, no list is longer than the file lets it be, and what is accepted
// is written and read back the same, with nothing left to repair.
func FuzzDecode(f *testing.F) {
	for _, text := range corpus(f) {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text []byte) { holds(t, text) })
}

func TestCorpusHolds(t *testing.T) {
	for name, text := range corpus(t) {
		t.Run(name, func(t *testing.T) { holds(t, text) })
	}
}

// judge is a test of either kind.
type judge interface {
	Errorf(string, ...any)
	Fatalf(string, ...any)
}

func holds(t judge, text []byte) {
	f, list := Decode("draft.wif", text)
	for _, p := range list.All() {
		standsWithin(t, text, p)
	}
	bounded(t, f, text)
	first := Encode(f)
	if list.Failed() {
		return
	}
	again, left := Decode("draft.wif", first)
	if left.Failed() || !same(again, f) {
		t.Fatalf("read again: %s\n%+v\nwant\n%+v\nin\n%s", codes(left), again.Draft, f.Draft, first)
	}
	if got, want := strings.Join(again.Kept(), "/"), strings.Join(f.Kept(), "/"); got != want {
		t.Fatalf("keeps %q, want %q", got, want)
	}
	for _, p := range left.All() {
		if !stays[p.Code] && !strings.HasPrefix(p.Code, "draft.") {
			t.Fatalf("%s is left at %v, read %q, in\n%s", p.Code, p.Place, p.Read, first)
		}
	}
	if second := Encode(again); !bytes.Equal(first, second) {
		t.Fatalf("written again\n%q\nwas\n%q", second, first)
	}
}

// standsWithin proves that a problem has a code and a place that the file has.
func standsWithin(t judge, text []byte, p problem.Problem) {
	place := p.Place
	if p.Code == "" || place.File == "" {
		t.Errorf("%+v has no code or no file", p)
	}
	if place.Line == 0 {
		return
	}
	if most := 1 + bytes.Count(text, []byte("\n")) + bytes.Count(text, []byte("\r")); place.Line < 0 || place.Line > most {
		t.Fatalf("%s on line %d of %d", p.Code, place.Line, most)
	}
	if width := utf8.RuneCountInString(place.Excerpt); place.Col < 1 || place.Width < 1 || place.Col+place.Width-1 > width+1 {
		t.Errorf("%s covers %d characters from %d in a line of %d", p.Code, place.Width, place.Col, width)
	}
}

// bounded proves that no list is longer than the lines of the text allow.
func bounded(t judge, f *File, text []byte) {
	d := f.Draft
	most := aheadBy + floating + aheadTimes*(1+bytes.Count(text, []byte("\n"))+bytes.Count(text, []byte("\r")))
	for what, n := range map[string]int{
		"ends": len(d.Threading), "picks": len(d.Treadling), "lifts": len(d.Lifts), "ties": len(d.Ties), "colours": len(d.Palette),
		"colours of ends": len(d.Warp.Colours), "colours of picks": len(d.Weft.Colours), "sizes": len(d.Warp.Thicks) + len(d.Weft.Aparts),
	} {
		if n > 2*most {
			t.Fatalf("%d %s from %d bytes", n, what, len(text))
		}
	}
}
