package planfile

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"sley/internal/trade/problem"
)

const formatDoc = "../../../docs/planfile.md"

// tablesOfDoc are the tables of the format in the order in which the page has
// tables with a column of keys.
var tablesOfDoc = []string{
	topTable, unitsTable, piecesTable, hemTable, fringeTable, linksTable, yarnTable, skeinTable, sampleTable,
	warpTable, floatsTable, doubledTable, secondTable, draftTable, weftTable, samplingTable, windingTable, loomTable,
	wasteTable, roundingTable, workTable, classTable, builtTable, wovenTable, findTable,
}

func docLines(t *testing.T) []string {
	t.Helper()
	text, err := os.ReadFile(formatDoc)
	if err != nil {
		t.Fatal(err)
	}
	return strings.Split(string(text), "\n")
}

var keyRow = regexp.MustCompile("^\\| `([a-z-]+)` \\| (.*) \\| (.*) \\| (.*) \\|$")

// TestDocHasEveryKey: the page has a row with an example for every key that is
// read, and none for a key that is not.
func TestDocHasEveryKey(t *testing.T) {
	var found [][]string
	for _, line := range docLines(t) {
		switch {
		case strings.HasPrefix(line, "| key |"):
			found = append(found, nil)
		case len(found) > 0 && keyRow.MatchString(line):
			m := keyRow.FindStringSubmatch(line)
			if m[2] == "" || !strings.HasPrefix(m[4], "`") {
				t.Errorf("the row of %s has an empty column", m[1])
			}
			found[len(found)-1] = append(found[len(found)-1], m[1])
		}
	}
	if len(found) != len(tablesOfDoc) || len(tablesOfDoc) != len(keys)-1 { // the keys of pieceLinks are among those of linksTable
		t.Fatalf("%d tables on the page, %d listed, %d in the format", len(found), len(tablesOfDoc), len(keys))
	}
	for i, name := range tablesOfDoc {
		if !slices.Equal(found[i], keys[name]) {
			t.Errorf("of %q the page has %v, the format has %v", name, found[i], keys[name])
		}
	}
}

// TestDocExamples reads every example of the page: whole files as they stand,
// fragments with what every file needs around them.
func TestDocExamples(t *testing.T) {
	whole, fragments := 0, 0
	text := strings.Join(docLines(t), "\n")
	for _, block := range strings.Split(text, "```toml")[1:] {
		body, _, _ := strings.Cut(block, "```")
		if fragment, ok := strings.CutPrefix(body, " fragment\n"); ok {
			body = around(fragment)
			fragments++
		} else {
			whole++
		}
		_, _, list := Decode("docs/planfile.md", []byte(body))
		for _, p := range list.All() {
			t.Errorf("%s at %s, read %q, in\n%s", p.Code, p.Path, p.Read, body)
		}
	}
	if whole < 3 || fragments < 4 {
		t.Errorf("%d files and %d fragments", whole, fragments)
	}
}

// around makes a file of a fragment: a piece, and a sett where it has none.
func around(fragment string) string {
	const piece = "[[pieces]]\nlength = \"28 in\"\nwidth = \"18 in\"\n"
	switch {
	case strings.Contains(fragment, "sett = "):
		return "sley = 1\n" + piece + fragment
	case strings.Contains(fragment, "[warp]\n"):
		return "sley = 1\n" + piece + strings.Replace(fragment, "[warp]\n", "[warp]\nsett = \"24 epi\"\n", 1)
	}
	return "sley = 1\nwarp.sett = \"24 epi\"\n" + piece + fragment
}

// TestDocRows reads the example of every row at its key: it is never a fault by
// itself.
func TestDocRows(t *testing.T) {
	table := -1
	for _, line := range docLines(t) {
		if strings.HasPrefix(line, "| key |") {
			table++
		}
		m := keyRow.FindStringSubmatch(line)
		if table < 0 || m == nil || strings.HasPrefix(m[4], "`[[") || strings.HasPrefix(m[4], "`[a-z]") {
			continue
		}
		readRow(t, tablesOfDoc[table], m[1], strings.Trim(m[4], "`"))
	}
}

func readRow(t *testing.T, name, key, example string) {
	if name == topTable && (strings.HasPrefix(example, "[") || strings.Contains(example, " = ")) || key == "sley" {
		return // the heading of a table, or a line of it
	}
	file := tablesInFiles[name]
	line := key + " = " + example
	text := strings.Replace(file[0], "%s", line, 1)
	if key == "hem" || key == "fringe" {
		text = strings.NewReplacer(`hem = "1 in", `, "", `fringe = "1 in", `, "").Replace(text)
	}
	_, _, list := Decode("plan.toml", []byte(text))
	for _, p := range list.All() {
		if p.Path == file[1]+key && !needsMore[p.Code] && p.Severity == problem.Error {
			t.Errorf("%s of %q: %s is %s, read %q", key, name, example, p.Code, p.Read)
		}
	}
}

// needsMore are the faults of an example that only lacks the rest of a file.
var needsMore = map[string]bool{
	"yarn.none": true, "order.name-unknown": true, "border.missing": true, "find.piece": true,
	"skein.length": true, "skein.mass": true, "waste.fringe": true, "key.missing": true, "treadling.no-ties": true, "draft.colours-alone": true,
}

// TestDocOfBothWritings: the JSON of the page is the plan file above it.
func TestDocOfBothWritings(t *testing.T) {
	text := strings.Join(docLines(t), "\n")
	before, after, ok := strings.Cut(text, "```json\n")
	typed, _, _ := strings.Cut(after, "```")
	file := before[strings.LastIndex(before, "```toml\n")+len("```toml\n"):]
	file, _, _ = strings.Cut(file, "```")
	d, list := ReadText(formatDoc, []byte(file))
	if !ok || d == nil || string(d.JSON())+"\n" != typed || string(d.Text()) != file {
		t.Errorf("%v: the page has\n%s%s", told(list), file, typed)
	}
}
