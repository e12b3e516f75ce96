package sheet

import (
	"os"
	"os/exec"
	"strings"
	"testing"

	"sley/internal/engine/draw/letter"
	"sley/internal/face/present"
)

// judge runs a program that was written by others to read PDF, on a file, and
// returns what it printed. Where it is not installed the test is skipped, and fails
// where CI is set.
func judge(t *testing.T, name string, args ...string) string {
	t.Helper()
	if _, err := exec.LookPath(name); err != nil {
		const remedy = "apt-get install -y qpdf poppler-utils"
		if os.Getenv("CI") != "" {
			t.Fatalf("no %s: %s", name, remedy)
		}
		t.Skipf("no %s: %s", name, remedy)
	}
	out, err := exec.Command(name, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s: %v\n%s", name, err, out)
	}
	return string(out)
}

// printed is a plan's sheets as a file.
func printed(t *testing.T, name string, text []byte) (file string, figure func(id string) string) {
	t.Helper()
	r := reckoned(t, name, text)
	file = onPaper(t, mustMake(t, r, Options{Sheets: everything(r)}))
	return file, func(id string) string {
		n, ok := r.Node(id)
		if !ok {
			t.Fatalf("%s: no node %s", name, id)
		}
		return letter.FractionText(present.UnitsOf(r.Plan).Bench(n))
	}
}

// What others read from the file says the figures of the nodes beside their words.
func TestOthersReadTheSheets(t *testing.T) {
	for name, wanted := range map[string]map[string]string{
		"galley-towels.toml":  {"wind the warp": "warp.wound", "ends to wind": "ends.wound", "white, needed": "yarns[white].need", "blue, needed": "yarns[blue].need"},
		"berth-blanket.toml":  {"wind the warp": "warp.wound", "ends to wind": "ends.wound", "harbour, needed": "yarns[harbour].need"},
		"bookmark-class.toml": {"wind the warp": "warp.wound", "ends to wind": "ends.wound", "sand, needed": "yarns[sand].need"},
	} {
		file, figure := printed(t, name, plans(t)[name])
		read := judge(t, "pdftotext", "-layout", file, "-")
		for words, id := range wanted {
			if !beside(read, words, figure(id)) {
				t.Errorf("%s: no line with %q and %q", name, words, figure(id))
			}
		}
	}
}

// beside says whether a line begins with the words and has the figure after them.
func beside(read, words, figure string) bool {
	for line := range strings.Lines(read) {
		if rest, ok := strings.CutPrefix(strings.TrimSpace(line), words+" "); ok && strings.HasPrefix(strings.TrimSpace(rest), figure) {
			return true
		}
	}
	return false
}
