package present_test

import (
	"os"
	"strings"
	"testing"

	"sley/internal/app"
	"sley/internal/face/present"
)

// Every change has its words, and the paper on drafts tells of it.
func TestEveryChangeHasWords(t *testing.T) {
	paper, err := os.ReadFile("../../../docs/drafts.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range app.Changes() {
		if present.ChangeSays(c.Name) == "" {
			t.Errorf("the change %s has no words", c.Name)
		}
		if !strings.Contains(string(paper), "`"+c.Name) {
			t.Errorf("docs/drafts.md says nothing of the change %s", c.Name)
		}
	}
	if present.ChangeSays("dyed") != "" {
		t.Error("a change that is not there has words")
	}
}
