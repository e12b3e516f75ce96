package present_test

import (
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"sley/internal/edge/planfile"
	"sley/internal/face/present"
	"sley/internal/trade/problem"
)

var update = flag.Bool("update", false, "write the messages and docs/errors.md anew")

// corpus holds a plan file with one fault for each code, and beside it what
// people read. A name is CODE.toml or CODE--variant.toml.
const corpus = "../../edge/planfile/testdata/faults"

// unfilled finds a name in braces that no Arg of the problem stood for.
var unfilled = regexp.MustCompile(`\{[a-z]+\}`)

// noFile are the codes that no plan file of a few lines can bring about.
var noFile = map[string]string{
	"file.large":          "needs a file of a megabyte: TestLargeFile of planfile",
	"pieces.many":         "needs a thousand kinds of pieces: TestManyKinds of planfile",
	"count.empty":         "a plan file says value.empty of every empty text",
	"colour.empty":        "a plan file says value.empty of every empty text",
	"putup.empty":         "a plan file says value.empty of every empty text",
	"reed.empty":          "a plan file says value.empty of every empty text",
	"label.long":          "a plan file has no labels: TestReadLabel of yarn",
	"label.unread":        "a plan file has no labels: TestReadLabel of yarn",
	"samples.many":        "needs a hundred samples: TestManySamples of planfile",
	"yarns.many":          "needs hundreds of yarns: TestManyYarns of planfile",
	"price.per":           "a plan file reads such a price as that of one put-up",
	"rounding.unknown":    "a plan file offers the three choices first",
	"density.none":        "qty's own code for no threads comes first",
	"draft.shafts":        "a plan file cannot say it so: TestFaultyDrafts of draft",
	"draft.treadles":      "a plan file cannot say it so: TestFaultyDrafts of draft",
	"draft.no-ends":       "a plan file cannot say it so: TestFaultyDrafts of draft",
	"draft.no-picks":      "a plan file cannot say it so: TestFaultyDrafts of draft",
	"draft.end-shaft":     "a plan file cannot say it so: TestFaultyDrafts of draft",
	"draft.end-nowhere":   "a plan file cannot say it so: TestFaultyDrafts of draft",
	"draft.ties":          "a plan file cannot say it so: TestFaultyDrafts of draft",
	"draft.tie-shaft":     "a plan file cannot say it so: TestFaultyDrafts of draft",
	"draft.tie-both":      "a plan file cannot say it so: TestFaultyDrafts of draft",
	"draft.tie-lowers":    "a plan file cannot say it so: TestFaultyDrafts of draft",
	"draft.pick-treadle":  "a plan file cannot say it so: TestFaultyDrafts of draft",
	"draft.lift-shaft":    "a plan file cannot say it so: TestFaultyDrafts of draft",
	"draft.locked":        "a plan file cannot say it so: TestFaultyDrafts of draft",
	"draft.free":          "a plan file cannot say it so: TestFaultyDrafts of draft",
	"draft.none-up":       "a plan file cannot say it so: TestFaultyDrafts of draft",
	"draft.all-up":        "a plan file cannot say it so: TestFaultyDrafts of draft",
	"draft.uneven-shed":   "a plan file cannot say it so: TestFaultyDrafts of draft",
	"draft.plans-length":  "a plan file cannot say it so: TestFaultyDrafts of draft",
	"draft.plans-differ":  "a plan file cannot say it so: TestFaultyDrafts of draft",
	"draft.colour":        "a plan file cannot say it so: TestFaultyDrafts of draft",
	"draft.more":          "a plan file cannot say it so: TestFaultyDrafts of draft",
	"document.large":      "not of a file: TestLargeDocuments of planfile",
	"text.not-utf8":       "not of a file: TestFaultsOfJSON of planfile",
	"json.syntax":         "not of a file: TestFaultsOfJSON of planfile",
	"json.object":         "not of a file: TestFaultsOfJSON of planfile",
	"json.half":           "not of a file: TestFaultsOfJSON of planfile",
	"json.null":           "not of a file: TestFaultsOfJSON of planfile",
	"json.twice":          "not of a file: TestFaultsOfJSON of planfile",
	"json.number":         "not of a file: TestFaultsOfJSON of planfile",
	"path.syntax":         "not of a file: TestFaultsOfPaths of planfile",
	"path.empty":          "not of a file: TestFaultsOfPaths of planfile",
	"path.through":        "not of a file: TestFaultsOfPaths of planfile",
	"path.list":           "not of a file: TestFaultsOfPaths of planfile",
	"path.table":          "not of a file: TestFaultsOfPaths of planfile",
	"path.index":          "not of a file: TestFaultsOfPaths of planfile",
	"path.item":           "not of a file: TestFaultsOfPaths of planfile",
	"path.nothing":        "not of a file: TestFaultsOfPaths of planfile",
	"value.none":          "not of a file: TestFaultsOfPaths of planfile",
	"block.system":        "the command line names the system: draft.txtar of cli",
	"draft.colour-yarn":   "needs a file beside the plan: TestColoursOfADraft of app",
	"draft.none":          "what asks for a draft says it: draft.txtar of cli",
	"draft.not-found":     "needs a file beside the plan: TestDraftsThatCannotBeTaken of app",
	"draft.unreadable":    "needs a file beside the plan: TestDraftsThatCannotBeTaken of app",
	"draft.no-folder":     "needs a file beside the plan: TestDraftsThatCannotBeTaken of app",
	"draft.faulty":        "needs a file beside the plan: TestDraftsThatCannotBeTaken of app",
	"weave.sign":          "a plan file holds no weave: TestFaultyTexts of weave",
	"weave.uneven":        "a plan file holds no weave: TestFaultyTexts of weave",
	"weave.empty":         "a plan file holds no weave: TestFaultyTexts of weave",
	"weave.large":         "a plan file holds no weave",
	"skein.skeins":        "a plan file bounds the number first",
	"catalogue.entry":     "a plan file makes no weave by rule: TestFaulty of catalogue",
	"catalogue.parameter": "a plan file makes no weave by rule: TestFaulty of catalogue",
	"catalogue.number":    "a plan file makes no weave by rule: TestFaulty of catalogue",
	"catalogue.range":     "a plan file makes no weave by rule: TestFaulty of catalogue",
	"catalogue.even":      "a plan file makes no weave by rule: TestFaulty of catalogue",
	"catalogue.choice":    "a plan file makes no weave by rule: TestFaulty of catalogue",
	"catalogue.ratio":     "a plan file makes no weave by rule: TestFaulty of catalogue",
	"catalogue.sum":       "a plan file makes no weave by rule: TestFaulty of catalogue",
	"catalogue.apart":     "a plan file makes no weave by rule: TestFaulty of catalogue",
	"catalogue.unbroken":  "a plan file makes no weave by rule: TestFaulty of catalogue",
	"catalogue.still":     "a plan file makes no weave by rule: TestFaulty of catalogue",
	"catalogue.coprime":   "a plan file makes no weave by rule: TestFaulty of catalogue",
	"catalogue.unlike":    "a plan file makes no weave by rule: TestFaulty of catalogue",
	"catalogue.no-satin":  "a plan file makes no weave by rule: TestFaulty of catalogue",
	"catalogue.move":      "a plan file makes no weave by rule: TestFaulty of catalogue",
	"catalogue.wide":      "a plan file makes no weave by rule: TestFaulty of catalogue",
	"catalogue.long":      "a plan file makes no weave by rule: TestFaulty of catalogue",
	"block.blocks":        "a plan file holds no profile: TestFaultyProfiles and TestCapacity of block",
	"block.units":         "a plan file holds no profile: TestFaultyProfiles and TestCapacity of block",
	"block.unknown":       "a plan file holds no profile: TestFaultyProfiles and TestCapacity of block",
	"block.in-turn":       "a plan file holds no profile: TestFaulty of catalogue",
	"block.treadle":       "a plan file holds no profile: TestFaultyProfiles and TestCapacity of block",
	"block.together":      "a plan file holds no profile: TestFaultyProfiles and TestCapacity of block",
	"block.ground":        "a plan file holds no profile: TestFaultyProfiles and TestCapacity of block",
	"block.shafts":        "a plan file holds no profile: TestFaultyProfiles and TestCapacity of block",
	"block.treadles":      "a plan file holds no profile: TestFaultyProfiles and TestCapacity of block",
	"block.two-feet":      "a plan file holds no profile: TestFaultyProfiles and TestCapacity of block",
}

func TestFaults(t *testing.T) {
	for _, file := range files(t) {
		name := strings.TrimSuffix(filepath.Base(file), ".toml")
		t.Run(name, func(t *testing.T) { checkFault(t, name, file) })
	}
}

func files(t *testing.T) []string {
	t.Helper()
	list, err := filepath.Glob(corpus + "/*.toml")
	if err != nil || len(list) < 150 {
		t.Fatalf("the corpus has %d files: %v", len(list), err)
	}
	return list
}

func checkFault(t *testing.T, name, file string) {
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	_, _, list := planfile.Decode(name+".toml", text)
	code, _, _ := strings.Cut(name, "--")
	for _, p := range list.All() {
		if p.Code != code && name != "six-faults" {
			t.Errorf("found %s at %s", p.Code, p.Path)
		}
		checkPlace(t, string(text), p)
	}
	if want := map[bool]int{false: 1, true: 6}[name == "six-faults"]; list.Len() != want {
		t.Errorf("found %d problems, want %d", list.Len(), want)
	}
	if left := unfilled.FindString(say(list.All())); left != "" {
		t.Errorf("the words name %s, which the problem does not have", left)
	}
	golden(t, strings.TrimSuffix(file, ".toml")+".txt", say(list.All()))
}

func say(problems []problem.Problem) string {
	var said []string
	for _, p := range problems {
		said = append(said, present.Problem(p))
	}
	return strings.Join(said, "\n")
}

// checkPlace proves that a problem points into the file, and that its caret
// stands below what was read.
func checkPlace(t *testing.T, text string, p problem.Problem) {
	lines := strings.Split(text, "\n")
	if p.Place.Line == 0 {
		return
	}
	if p.Place.Line > len(lines) {
		t.Fatalf("%s stands on line %d of %d", p.Code, p.Place.Line, len(lines))
	}
	line := []rune(strings.TrimSuffix(lines[p.Place.Line-1], "\r"))
	from, to := p.Place.Col-1, p.Place.Col-1+p.Place.Width
	if from < 0 || from > len(line) || to > len(line)+1 {
		t.Fatalf("%s covers characters %d to %d of %d", p.Code, from, to, len(line))
	}
	if marked := string(line[from:min(to, len(line))]); p.Read != "" && marked != p.Read && !aside[p.Code] {
		t.Errorf("%s read %q, but its carets mark %q", p.Code, p.Read, marked)
	}
}

// aside are the codes whose carets cannot mark what was read: the name of a
// list or table is quoted where its value is marked, and what a yarn as a whole
// has wrong is no text of the file.
var aside = map[string]bool{
	"heddles.count": true, "keys.both": true, "shares.sum": true, "end.both-kinds": true,
	"end.no-kind": true, "value.kind": true, "name.form": true, "pieces.none": true,
	"skein.length": true, "skein.mass": true, "pegs.count": true, "tie-up.count": true, "draft.colours-alone": true, "sample.name": true,
}

func golden(t *testing.T, file, got string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if string(want) != got {
		t.Errorf("%s is not what people read now; run go test ./internal/face/present -update and look at the difference\n--- now\n%s--- was\n%s", file, got, want)
	}
}

// TestEveryCodeHasAFile keeps the corpus whole.
func TestEveryCodeHasAFile(t *testing.T) {
	have := map[string]bool{}
	for _, file := range files(t) {
		code, _, _ := strings.Cut(strings.TrimSuffix(filepath.Base(file), ".toml"), "--")
		have[code] = true
	}
	for _, code := range present.InputCodes() {
		reason, excused := noFile[code]
		if have[code] == excused {
			t.Errorf("%s: has a file %v, excused %q", code, have[code], reason)
		}
	}
}

// TestNoFileIsLeftOver finds messages whose plan file is gone.
func TestNoFileIsLeftOver(t *testing.T) {
	messages, err := filepath.Glob(corpus + "/*.txt")
	if err != nil {
		t.Fatal(err)
	}
	plans := files(t)
	for _, m := range messages {
		if !slices.Contains(plans, strings.TrimSuffix(m, ".txt")+".toml") {
			t.Errorf("%s has no plan file", m)
		}
	}
}
