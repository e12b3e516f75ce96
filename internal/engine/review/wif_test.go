package review

import (
	"os"
	"testing"

	"sley/internal/edge/wif"
)

// TestQuietOnDraftsOfOthers: the drafts that the interchange text is tested with.
func TestQuietOnDraftsOfOthers(t *testing.T) {
	for _, name := range []string{"tidy/twill", "tidy/whole", "wild/bare", "wild/strangers", "wild/spelling"} {
		text, err := os.ReadFile("../../edge/wif/testdata/" + name + ".wif")
		if err != nil {
			t.Fatal(err)
		}
		doc, list := wif.Decode(name, text)
		if doc.Draft == nil {
			t.Fatal(list.All())
		}
		for _, f := range Review(doc.Draft, Context{}) {
			t.Errorf("%s: %+v", name, f)
		}
	}
}
