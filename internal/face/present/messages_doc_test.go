package present_test

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"sley/internal/face/present"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// errorsDoc is made of the words and of the corpus of faults, by the same
// -update that writes the messages of the corpus.
const errorsDoc = "../../../docs/errors.md"

const errorsHead = `# Messages

Every message has a code that does not change, so that it can be looked up here
and sorted by programs. In the words below, a name in braces stands for what the
message says at that place: {read} is what was written.

An error means that no figure can be trusted until it is mended, a warning that
the figures stand but the cloth may disappoint, a note is worth knowing. A message
tells where it stands (file, line and character), what is wrong, and what to do;
a path such as pieces[0].width counts the first piece as 0.

This page is made by ` + "`go test ./internal/face/present -update`" + ` and never
written by hand.
`

func TestErrorsDocIsFresh(t *testing.T) {
	got := errorsPage(t)
	if *update {
		if err := os.WriteFile(errorsDoc, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(errorsDoc)
	if err != nil {
		t.Fatal(err)
	}
	if string(want) != got {
		t.Error("docs/errors.md is not what the words say: run go test ./internal/face/present -update")
	}
}

func errorsPage(t *testing.T) string {
	var b strings.Builder
	b.WriteString(errorsHead)
	for _, code := range present.Codes() {
		p := problem.Problem{Code: code, Read: "{read}"}
		fmt.Fprintf(&b, "\n## %s\n\n%s\n", code, plainText(present.Wrong(p)))
		if why := present.Why(p); why != "" {
			fmt.Fprintf(&b, "\nWhy: %s\n", plainText(why))
		}
		fmt.Fprintf(&b, "\nFix: %s\n", plainText(present.Fix(p)))
		if text := example(t, code); text != "" {
			fmt.Fprintf(&b, "\n```text\n%s```\n", text)
		}
	}
	troublesPage(&b)
	return b.String()
}

const troublesHead = `
# Trouble with the book

These say why the book, or something in it, could not be had. What such a message
does not know it leaves out.
`

// troublesPage writes the words of the book's troubles.
func troublesPage(b *strings.Builder) {
	b.WriteString(troublesHead)
	for _, code := range record.TroubleCodes() {
		says, do := present.Trouble(&record.Trouble{
			Code: code, Path: "{path}", Address: "{address}", PID: 4711, Found: "{found}",
			Known: "{known}", Copy: "{copy}", Err: errors.New("{err}"),
		})
		fmt.Fprintf(b, "\n## %s\n\n%s\n\nFix: %s\n", code, plainText(says), plainText(do))
	}
}

// plainText keeps a text from being read as markup.
func plainText(text string) string {
	return strings.NewReplacer("<", "\\<", "*", "\\*", "_", "\\_", "[", "\\[").Replace(text)
}

// example gives the message of the smallest file with the fault.
func example(t *testing.T, code string) string {
	var names []string
	for _, of := range []string{corpus, wifCorpus} {
		found, err := filepath.Glob(of + "/" + code + "*.txt")
		if err != nil {
			t.Fatal(err)
		}
		names = append(names, found...)
	}
	for _, name := range names {
		base := strings.TrimSuffix(filepath.Base(name), ".txt")
		if own, _, _ := strings.Cut(base, "--"); own != code {
			continue
		}
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		first, _, _ := strings.Cut(string(text), "\n\n") // of several
		return strings.TrimSuffix(first, "\n") + "\n"
	}
	return ""
}
