package wif

import (
	"os"
	"strconv"
	"strings"
	"testing"

	"sley/internal/trade/draft"
)

// The page names every section and key that is read, its first example is that of
// the tests, and its limits are those of the code.
func TestDocIsWhole(t *testing.T) {
	raw, err := os.ReadFile("../../../docs/wif.md")
	if err != nil {
		t.Fatal(err)
	}
	text := string(raw)
	for _, s := range specs {
		if !s.raw && !strings.Contains(text, "`"+s.name+"`") {
			t.Errorf("the page does not name %s", s.name)
		}
		for _, key := range s.keys {
			if !strings.Contains(text, "`"+key+"`") {
				t.Errorf("the page does not name the key %s of %s", key, s.name)
			}
		}
	}
	_, example, _ := strings.Cut(text, "```ini\n")
	if example, _, _ = strings.Cut(example, "```"); example != string(read(t, "tidy/twill.wif")) {
		t.Errorf("the example of the page is\n%s", example)
	}
	for _, row := range []string{
		"size of the file | " + strconv.Itoa(largest>>20) + " MiB",
		"lines | " + grouped(mostLines), "sections | " + grouped(mostSections),
		"shafts, treadles | " + strconv.Itoa(draft.MostShafts),
		"thickness, spacing | 1 m, " + strconv.Itoa(longestDigits) + " digits",
		"a number in a list | " + grouped(aheadBy) + " + " + strconv.Itoa(aheadTimes) + " × the lines before it",
		"problems of one kind | " + strconv.Itoa(mostOfAKind),
	} {
		if !strings.Contains(text, "| "+row) {
			t.Errorf("the page has no row %q", row)
		}
	}
}

func grouped(thousands int) string { return strconv.Itoa(thousands/1000) + ",000" }
