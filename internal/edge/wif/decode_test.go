package wif

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"sley/internal/trade/loom"
	"sley/internal/trade/problem"
	"sley/internal/trade/weave"
)

// read reads a file of the testdata.
func read(t testing.TB, name string) []byte {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// clean decodes a text that must be without any problem.
func sound(t testing.TB, text []byte) *File {
	t.Helper()
	f, list := Decode("draft.wif", text)
	for _, p := range list.All() {
		t.Errorf("%v: %s at %s, read %q, %v", p.Place, p.Code, p.Path, p.Read, p.Args)
	}
	return f
}

// The example of our own description of the text (docs/wif.md), by hand: a 2/2
// twill, and on a sinking shed the other thread on top at every crossing.
func TestExample(t *testing.T) {
	text := read(t, "tidy/twill.wif")
	f := sound(t, text)
	want := weave.Must("##..##../.##..##./..##..##/#..##..#")
	if got := f.Draft.Drawdown(); !got.Equal(want) || f.Draft.Shed != loom.Rising {
		t.Errorf("got\n%s", got)
	}
	sinking := bytes.Replace(text, []byte("Rising Shed=true"), []byte("Rising Shed=false"), 1)
	if got := sound(t, sinking).Draft.Drawdown(); !got.Equal(want.Complement()) {
		t.Errorf("on a sinking shed\n%s", got)
	}
}

// tidy are the files that are as sley writes them.
func tidy(t testing.TB) []string {
	t.Helper()
	files, err := filepath.Glob("testdata/tidy/*.wif")
	if err != nil || len(files) < 1 {
		t.Fatalf("%d tidy files: %v", len(files), err)
	}
	return files
}

// Tidy files come back byte for byte, and nothing is said of them.
func TestTidyFilesStay(t *testing.T) {
	for _, file := range tidy(t) {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if got := Encode(sound(t, text)); !bytes.Equal(got, text) {
			t.Errorf("%s is written as\n%s", file, got)
		}
	}
}

// codes lists the codes of a list of problems.
func codes(list *problem.List) string {
	var out []string
	for _, p := range list.All() {
		out = append(out, p.Code)
	}
	return strings.Join(out, " ")
}
