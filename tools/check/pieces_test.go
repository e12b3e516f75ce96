package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
)

func TestGoFiles(t *testing.T) {
	got, err := goFiles(fstest.MapFS{
		"doc.go":                      {},
		"internal/a/a.go":             {},
		"internal/a/a_test.go":        {},
		"internal/a/testdata/bad.go":  {},
		"internal/a/notes.md":         {},
		".hidden/a.go":                {},
		"_old/a.go":                   {},
		"dist/a.go":                   {},
		"tools/check/distant/main.go": {},
	})
	want := []string{"doc.go", "internal/a/a.go", "internal/a/a_test.go", "tools/check/distant/main.go"}
	for i := range want {
		want[i] = filepath.FromSlash(want[i])
	}
	if err != nil || !slices.Equal(got, want) {
		t.Errorf("got %v, %v", got, err)
	}
}

func TestFormatListsTheFile(t *testing.T) {
	j, _ := newTrial(t, map[string]string{"go.mod": trial["go.mod"], "a.go": "package a\nvar  x = 1\n", "b.go": "package a\n"})
	err := checkFormat(j)
	if err == nil || !strings.Contains(err.Error(), "not formatted") {
		t.Errorf("verdict: %v", err)
	}
	if got := j.detail.String(); !strings.Contains(got, "a.go") || strings.Contains(got, "b.go") {
		t.Errorf("listed %q", got)
	}
}

func TestVetShowsWhatItFinds(t *testing.T) {
	j, _ := newTrial(t, map[string]string{
		"go.mod": trial["go.mod"],
		"a.go":   "package a\n\nimport \"fmt\"\n\nfunc say() { fmt.Printf(\"%d ends\\n\", \"many\") }\n",
	})
	if err := checkVet(j); err == nil || !strings.Contains(j.detail.String(), "a.go:5") {
		t.Errorf("%v, kept %q", err, &j.detail)
	}
}

func TestTidySeesAModuleNobodyUses(t *testing.T) {
	j, _ := newTrial(t, map[string]string{
		"go.mod": trial["go.mod"] + "\nrequire example.org/unused v1.0.0\n", "a.go": "package a\n",
	})
	t.Setenv("GOPROXY", "off")
	err := checkTidy(j)
	if err == nil || !strings.Contains(err.Error(), "go.mod or go.sum is out of date") ||
		!strings.Contains(j.detail.String(), "-require example.org/unused v1.0.0") {
		t.Errorf("%v, kept %q", err, &j.detail)
	}
}

func TestMatching(t *testing.T) {
	packages := []string{"sley", "sley/internal/app", "sley/internal/app/undo", "sley/internal/apple", "sley/internal/trade/qty"}
	got := matching(packages, []string{"./internal/app/...", "./internal/nobody/..."})
	if !slices.Equal(got, []string{"sley/internal/app", "sley/internal/app/undo"}) {
		t.Errorf("got %v", got)
	}
	if got := matching(packages, []string{"./internal/nobody/..."}); len(got) != 0 {
		t.Errorf("got %v", got)
	}
}

func TestClosingLines(t *testing.T) {
	got := closingLines("=== RUN TestA\n--- FAIL: TestA\n    a_test.go:3: short\nFAIL\nFAIL\ttrial/a\t0.1s\r\nok  \ttrial/b\t0.2s\n")
	if !slices.Equal(got, []string{"--- FAIL: TestA", "FAIL", "FAIL\ttrial/a\t0.1s", "ok  \ttrial/b\t0.2s"}) {
		t.Errorf("got %q", got)
	}
}

func TestRaceWithoutItsPackages(t *testing.T) {
	j, out := newTrial(t, map[string]string{"go.mod": trial["go.mod"], "untested/untested.go": trial["untested/untested.go"]})
	if err := checkRace(j); err != nil || !strings.Contains(out.String(), "no package of the list exists yet") {
		t.Errorf("%v, printed %q", err, out)
	}
}

// TestNoCompiler takes every program off the PATH: nothing can be found, and
// nothing installed.
func TestNoCompiler(t *testing.T) {
	t.Setenv("PATH", t.TempDir())
	for _, c := range []struct {
		admin, ci bool
		want      string
	}{
		{false, false, "no C compiler: apt-get install -y gcc libc6-dev"},
		{true, false, "no C compiler: apt-get install -y gcc libc6-dev"},
		{true, true, "no C compiler, and installing one failed"},
	} {
		j, out := testJob(t)
		j.admin, j.ci = c.admin, c.ci
		_, err := j.needCompiler()
		if err == nil || !strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("%+v: %v", c, err)
		}
		if !strings.Contains(out.String(), "needs a C compiler: apt-get install") {
			t.Errorf("%+v: printed %q", c, out)
		}
	}
}

func TestJudgeSize(t *testing.T) {
	if err := judgeSize(targets[0], 39_999_999); err != nil {
		t.Error(err)
	}
	if err := judgeSize(targets[0], 40_000_000); err == nil || !strings.Contains(err.Error(), "linux/amd64 is 40.0 MB") {
		t.Error(err)
	}
}

func TestBuildNamesEverySystemThatFails(t *testing.T) {
	j, _ := newTrial(t, map[string]string{"go.mod": trial["go.mod"]})
	err := checkBuild(j)
	for _, target := range targets {
		if err == nil || !strings.Contains(err.Error(), target.os+"/"+target.arch) {
			t.Fatalf("%v is not named: %v", target, err)
		}
	}
}

func TestOutOfReach(t *testing.T) {
	const lost = `govulncheck: fetching vulnerabilities: Get "https://example.org/index": dial tcp: lookup example.org: no such host`
	for _, c := range []struct {
		printed string
		code    int
		want    bool
	}{
		{lost, 1, true},
		{"HTTP GET https://example.org/index returned unexpected status: 503", 1, true},
		{"Vulnerability #1: GO-2025-0001\n a fault in dial tcp", exitCalled, false},
		{"no vulnerabilities found", 0, false},
		{"govulncheck: loading packages: a.go:3: undefined: x", 1, false},
	} {
		if got := outOfReach(c.printed, c.code); got != c.want {
			t.Errorf("code %d, %q: %v", c.code, c.printed, got)
		}
	}
}

func TestExitCode(t *testing.T) {
	j, _ := testJob(t)
	_, err := j.run(nil, "go", "tool", "nosuchtool")
	if got := exitCode(err); got <= 0 {
		t.Errorf("a command that failed: %d", got)
	}
	_, err = j.run(nil, "nosuchcommand")
	if got := exitCode(err); got != -1 {
		t.Errorf("a command that is not there: %d", got)
	}
	if got := exitCode(nil); got != 0 {
		t.Errorf("a command that passed: %d", got)
	}
}

// TestStartsWithoutGo runs both scripts where there is no go command.
func TestStartsWithoutGo(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("the scripts are for a POSIX shell")
	}
	shell, err := exec.LookPath("sh")
	if err != nil {
		t.Fatal(err)
	}
	bin := t.TempDir()
	for _, name := range []string{"sh", "dirname", "cat"} {
		found, err := exec.LookPath(name)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.Symlink(found, filepath.Join(bin, name)); err != nil {
			t.Fatal(err)
		}
	}
	for _, script := range []string{"../../check", "../../.ci/run"} {
		cmd := exec.Command(shell, script)
		cmd.Env = []string{"PATH=" + bin}
		out, err := cmd.CombinedOutput()
		if exitCode(err) != exitFailed || !strings.Contains(string(out), "needs Go 1.26 or newer") {
			t.Errorf("%s: %v, printed %q", script, err, out)
		}
	}
}
