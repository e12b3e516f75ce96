package web_test

import (
	"os"
	"regexp"
	"slices"
	"testing"

	"sley/internal/app"
)

// listed are the texts in single or double quotes, or the keys, that a pattern finds in
// the one stretch of a source of the page which lies between two others.
func listed(t *testing.T, path, stretch, each string) []string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	within := regexp.MustCompile(stretch).FindSubmatch(data)
	if within == nil {
		t.Fatalf("%s: nothing is like %s", path, stretch)
	}
	var all []string
	for _, m := range regexp.MustCompile(each).FindAllSubmatch(within[1], -1) {
		all = append(all, string(slices.Concat(m[1:]...)))
	}
	return all
}

// The page offers to find drafts by all the weaves that drafts are found by, in their
// order, and no other.
func TestWeavesOfTheFilter(t *testing.T) {
	got := listed(t, "page/words/en_draft.ts", `(?s)\n  weaves: \{\n(.*?)\n  \}`, `(?:'([a-z-]+)'|\b([a-z]+)): '`)
	if want := app.DraftWeaves(); !slices.Equal(got, want) {
		t.Errorf("the page finds drafts by %q\nthe book by %q", got, want)
	}
}

// The page offers for a plan the weaves that a plan may name, in their order.
func TestWeavesOfAPlan(t *testing.T) {
	got := listed(t, "page/words/weaves.ts", `(?s)= \[\n(.*?)\n\]`, `'([^']+)'|"([^"]+)"`)
	if want := app.WeaveNames(); !slices.Equal(got, want) {
		t.Errorf("the page offers %q\na plan may name %q", got, want)
	}
}
