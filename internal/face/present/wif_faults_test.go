package present_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"sley/internal/edge/wif"
	"sley/internal/face/present"
	"sley/internal/trade/problem"
)

// wifCorpus holds an interchange text with one fault for each code, named as in
// corpus.
const wifCorpus = "../../edge/wif/testdata/faults"

// noWif are the codes that no text of a few lines can bring about.
var noWif = map[string]string{
	"wif.large":         "needs a file of megabytes: TestHostile of wif",
	"wif.many-lines":    "needs a file of megabytes: TestHostile of wif",
	"wif.many-sections": "needs a file of megabytes: TestHostile of wif",
}

// severalFor are the files with more than one problem, and how many in all.
var severalFor = map[string]int{"wif.more": 21}

func wifFiles(t *testing.T) []string {
	t.Helper()
	list, err := filepath.Glob(wifCorpus + "/*.wif")
	if err != nil || len(list) < 80 {
		t.Fatalf("the corpus has %d files: %v", len(list), err)
	}
	return list
}

func TestWifFaults(t *testing.T) {
	for _, file := range wifFiles(t) {
		name := strings.TrimSuffix(filepath.Base(file), ".wif")
		t.Run(name, func(t *testing.T) { checkWif(t, name, file) })
	}
}

func checkWif(t *testing.T, name, file string) {
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	_, list := wif.Decode(name+".wif", text)
	code, _, _ := strings.Cut(name, "--")
	found := 0
	for _, p := range list.All() {
		if p.Code == code {
			found++
		} else if severalFor[name] == 0 {
			t.Errorf("found %s at %s, read %q", p.Code, p.Path, p.Read)
		}
		checkWifPlace(t, p)
	}
	if found == 0 || list.Len() != max(1, severalFor[name]) {
		t.Errorf("found %d problems, %d of the kind", list.Len(), found)
	}
	if left := unfilled.FindString(say(list.All())); left != "" {
		t.Errorf("the words name %s, which the problem does not have", left)
	}
	golden(t, strings.TrimSuffix(file, ".wif")+".txt", say(list.All()))
}

// TestWildWif: what people read about untidy files as they are met.
func TestWildWif(t *testing.T) {
	files, err := filepath.Glob(wifCorpus + "/../wild/*.wif")
	if err != nil || len(files) < 10 {
		t.Fatalf("%d wild files: %v", len(files), err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		_, list := wif.Decode(filepath.Base(file), text)
		golden(t, strings.TrimSuffix(file, ".wif")+".txt", say(list.All()))
	}
}

// checkWifPlace proves that the carets of a problem mark what was read.
func checkWifPlace(t *testing.T, p problem.Problem) {
	line := []rune(p.Place.Excerpt)
	if p.Place.Line == 0 || strings.HasPrefix(p.Code, "draft.") {
		return
	}
	from, to := p.Place.Col-1, p.Place.Col-1+p.Place.Width
	if from < 0 || to > len(line) {
		t.Fatalf("%s covers characters %d to %d of %d", p.Code, from, to, len(line))
	}
	if marked := string(line[from:to]); marked != p.Read {
		t.Errorf("%s read %q, but its carets mark %q", p.Code, p.Read, marked)
	}
}

// TestEveryWifCodeHasAFile keeps the corpus whole.
func TestEveryWifCodeHasAFile(t *testing.T) {
	have := map[string]bool{}
	for _, file := range wifFiles(t) {
		code, _, _ := strings.Cut(strings.TrimSuffix(filepath.Base(file), ".wif"), "--")
		have[code] = true
	}
	for _, code := range present.Codes() {
		if _, excused := noWif[code]; strings.HasPrefix(code, "wif.") && have[code] == excused {
			t.Errorf("%s: has a file %v, excused %q", code, have[code], noWif[code])
		}
	}
}

// TestNoWifFileIsLeftOver finds messages whose text is gone.
func TestNoWifFileIsLeftOver(t *testing.T) {
	messages, err := filepath.Glob(wifCorpus + "/*.txt")
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range messages {
		if _, err := os.Stat(strings.TrimSuffix(m, ".txt") + ".wif"); err != nil {
			t.Errorf("%s has no text", m)
		}
	}
}
