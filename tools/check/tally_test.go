package main

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// trial is a module whose tests end in every way a test can.
var trial = map[string]string{
	"go.mod": "module trial\n\ngo 1.26\n",
	"good/good_test.go": `package good
import "testing"
func TestWarp(t *testing.T) { t.Log("a quiet word"); t.Run("ends", func(t *testing.T) {}) }
func TestReed(t *testing.T) { t.Skip("no reed here") }`,
	"bad/bad_test.go": `package bad
import "testing"
func TestWarp(t *testing.T) { t.Log("another quiet word") }
func TestFence(t *testing.T) {
	t.Run("short", func(t *testing.T) { t.Error("the fence is 3 m short") })
	t.Run("long", func(t *testing.T) {})
}`,
	"panics/panics_test.go": `package panics
import "testing"
func TestBeam(t *testing.T) { panic("the beam broke") }`,
	"broken/broken_test.go": `package broken
import "testing"
func TestDraft(t *testing.T) { undefinedTreadle() }`,
	"exits/exits_test.go": `package exits
import ("os"; "testing")
func TestMain(m *testing.M) { println("went home early"); os.Exit(1) }
func TestNothing(t *testing.T) {}`,
	"untested/untested.go": "package untested\n",
}

func newTrial(t *testing.T, files map[string]string) (*job, *bytes.Buffer) {
	t.Helper()
	j, out := testJob(t)
	for name, text := range files {
		file := filepath.Join(j.root, name)
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return j, out
}

func TestTestsOfATrialModule(t *testing.T) {
	j, out := newTrial(t, trial)
	err := checkTests(j)
	text := out.String()
	// Passed: good has two, bad has two. Failed: bad has two (the test and its
	// subtest), the other three one each.
	if !strings.HasSuffix(text, "\n4 passed, 5 failed, 1 skipped\n") {
		t.Errorf("closing line wrong in\n%s", text)
	}
	if err == nil || err.Error() != "failing tests: 5" {
		t.Errorf("verdict: %v", err)
	}
	for _, want := range []string{
		"the fence is 3 m short", "--- FAIL: TestFence/short", "the beam broke",
		"undefined: undefinedTreadle", "went home early", "--- SKIP: TestReed", "no reed here",
		"\nok    trial/good ", "\nFAIL  trial/bad ", "\nFAIL  trial/broken ",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing in\n%s", want, text)
		}
	}
	for _, unwanted := range []string{"quiet word", "=== RUN", "untested"} {
		if strings.Contains(text, unwanted) {
			t.Errorf("%q is shown in\n%s", unwanted, text)
		}
	}
}

func TestSkippedTestFailsOnlyWhereCIIsSet(t *testing.T) {
	j, out := newTrial(t, map[string]string{"go.mod": trial["go.mod"], "good/good_test.go": trial["good/good_test.go"]})
	if err := checkTests(j); err != nil {
		t.Errorf("without CI: %v\n%s", err, out)
	}
	j.ci = true
	if err := checkTests(j); err == nil || !strings.Contains(err.Error(), "CI is set and allows no skipped test") {
		t.Errorf("with CI: %v\n%s", err, out)
	}
}

func TestJudge(t *testing.T) {
	ended := errors.New("exit status 1")
	for _, c := range []struct {
		name  string
		tally tally
		ci    bool
		run   error
		fails bool
	}{
		{"all passed", tally{passed: 3}, true, nil, false},
		{"one failed", tally{passed: 3, failed: 1}, false, nil, true},
		{"skipped at home", tally{passed: 3, skipped: 1}, false, nil, false},
		{"skipped where CI is set", tally{passed: 3, skipped: 1}, true, nil, true},
		{"go test failed and no test did", tally{passed: 3}, false, ended, true},
		{"no test at all", tally{}, false, nil, true},
	} {
		if err := c.tally.judge(c.ci, c.run); (err != nil) != c.fails {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

func TestJudgeNamesEveryProblem(t *testing.T) {
	err := (&tally{passed: 1, failed: 2, skipped: 3}).judge(true, errors.New("exit status 1"))
	if err == nil || !strings.Contains(err.Error(), "failing tests: 2") || !strings.Contains(err.Error(), "the 3 --- SKIP") {
		t.Errorf("verdict: %v", err)
	}
}

func TestLinesThatAreNoEventAreShown(t *testing.T) {
	var out bytes.Buffer
	tally := newTally(&out, false)
	err := tally.read(strings.NewReader("go: go.mod is not readable\n" +
		`{"Action":"run","Package":"p","Test":"T"}` + "\n" +
		`{"Action":"pass","Package":"p","Test":"T"}` + "\n" +
		`{"Action":"pass","Package":"p","Elapsed":0.25}`)) // no line end: the last one counts too
	if err != nil || !strings.Contains(out.String(), "go.mod is not readable\n") || !strings.Contains(out.String(), "0.25s  1 passed") {
		t.Errorf("%v, printed\n%s", err, &out)
	}
	if got := tally.closing(); got != "1 passed, 0 failed, 0 skipped" {
		t.Error(got)
	}
}

func TestATestThatNeverEndedHasFailed(t *testing.T) {
	p := packageRun{ended: map[string]string{"TestA": "pass", "TestB": ""}}
	if got := p.count("fail"); got != (counts{passed: 1, failed: 1}) {
		t.Errorf("%+v", got)
	}
}
