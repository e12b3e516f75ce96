package main

import (
	"fmt"
	"io"
	"slices"
	"strings"
)

// step is one check: a name to ask for it by, what it looks at, and the work,
// which returns why it failed or nil.
type step struct {
	name, says string
	run        func(*job) error
}

// allSteps in the order they run: the quick ones first.
var allSteps = []step{
	{"format", "gofmt and gofumpt would change no Go file", checkFormat},
	{"vet", "go vet finds nothing", checkVet},
	{"staticcheck", "staticcheck finds nothing", checkStatic},
	{"deadcode", "every function is reached from a main package or a test", checkDead},
	{"tidy", "go.mod names what is used, and the modules are the ones it was written for", checkTidy},
	{"judges", "the programs that judge what sley writes are there: qpdf, poppler, strace and zbar", checkJudges},
	{"bundle", "the page that is served is what its sources give", checkBundle},
	{"frontend", "the types of the page fit and its tests pass; needs Node, and where CI is set gets it", checkFrontend},
	{"browser", "the page works in Chromium, for everyone; needs it, and where CI is set gets it", checkBrowser},
	{"tests", "every test passes; where CI is set, none is skipped", checkTests},
	{"kills", "a book loses nothing that was answered, however often its writer is killed", checkKills},
	{"race", "the packages that work side by side pass under the race detector", checkRace},
	{"build", "sley builds for every system, each file under 40 MB", checkBuild},
	{"vulns", "no published fault of Go or of a module is reached by our code", checkVulns},
}

// namedSteps run only when they are asked for: they make something to look at.
var namedSteps = []step{
	{shotsName, "pictures of every page in a folder, and sheets of them; only when named, with the FOLDER after it", checkShots},
}

// choose returns the steps named, in the order they run; the usual ones when none is
// named. A name that is no step is an error that lists the right ones.
func choose(usual, named []step, names []string) ([]step, error) {
	if len(names) == 0 {
		return usual, nil
	}
	steps := slices.Concat(usual, named)
	for _, name := range names {
		if !slices.ContainsFunc(steps, func(s step) bool { return s.name == name }) {
			return nil, fmt.Errorf("there is no step %q; the steps are %s", name, strings.Join(stepNames(steps), ", "))
		}
	}
	var chosen []step
	for _, s := range steps {
		if slices.Contains(names, s.name) {
			chosen = append(chosen, s)
		}
	}
	return chosen, nil
}

func stepNames(steps []step) []string {
	var names []string
	for _, s := range steps {
		names = append(names, s.name)
	}
	return names
}

func listSteps(out io.Writer, steps []step) {
	for _, s := range steps {
		fmt.Fprintf(out, "%-12s %s\n", s.name, s.says)
	}
}
