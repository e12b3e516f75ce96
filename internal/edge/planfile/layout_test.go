package planfile

import (
	"os"
	"strings"
	"testing"
)

// TestLayout: what documents look like as plan files. The second holds what
// hands and pages can bring about: keys in any order, keys of no format, names
// that need quotes, texts of several lines, long lists.
func TestLayout(t *testing.T) {
	galley, err := os.ReadFile("../../../examples/galley-towels.toml")
	if err != nil {
		t.Fatal(err)
	}
	towels, _ := ReadText("galley-towels.toml", galley)
	typed, err := os.ReadFile("testdata/layout/awkward.json")
	if err != nil {
		t.Fatal(err)
	}
	for file, d := range map[string]*Document{
		"testdata/layout/galley-towels.toml": towels,
		"testdata/layout/awkward.toml":       readJSONOf(t, string(typed)),
	} {
		if *update {
			if err := os.WriteFile(file, d.Text(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if string(want) != string(d.Text()) {
			t.Errorf("%s is laid out otherwise now: run go test ./internal/edge/planfile -update and look at it\n%s", file, d.Text())
		}
		if again, list := ReadText(file, want); again == nil || !again.Equal(d) {
			t.Errorf("%s is another document: %v", file, told(list))
		}
	}
}

// TestLayoutOfExamples: the examples, written by hand, are laid out as Text does
// it, but for the order of tables and keys.
func TestLayoutOfExamples(t *testing.T) {
	for name, text := range plansOfTheHouse(t) {
		if !strings.Contains(name, "/examples/") || strings.HasSuffix(name, "five-lines.toml") {
			continue
		}
		d, _ := ReadText(name, text)
		if got, want := linesOf(d.Text()), linesOf(text); !sameLines(got, want) {
			t.Errorf("%s has other lines: %v, by hand %v", name, got, want)
		}
	}
}

// linesOf counts every line of a text.
func linesOf(text []byte) map[string]int {
	lines := map[string]int{}
	for line := range strings.Lines(string(text)) {
		lines[line]++
	}
	return lines
}

func sameLines(a, b map[string]int) bool {
	for line, n := range a {
		if b[line] != n {
			return false
		}
	}
	return len(a) == len(b)
}
