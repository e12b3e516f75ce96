package main

import (
	"strings"
	"testing"
)

// bare is a project with nothing in it but a page whose bundler says what it is told.
func bare(t *testing.T) *job {
	t.Helper()
	j, _ := newTrial(t, map[string]string{
		"go.mod": trial["go.mod"],
		"tools/bundle/main.go": `package main

import "os"

func main() { println("main-ABC.js differs"); os.Exit(1) }
`,
	})
	return j
}

func TestBundleThatIsNotFreshFails(t *testing.T) {
	j := bare(t)
	if err := checkBundle(j); err == nil || !strings.Contains(j.detail.String(), "main-ABC.js differs") {
		t.Errorf("%v, kept %q", err, &j.detail)
	}
}

// TestPageWithoutItsPrograms takes every program off the PATH.
func TestPageWithoutItsPrograms(t *testing.T) {
	t.Setenv("PATH", t.TempDir())
	for _, c := range []struct {
		name, says string
		check      func(*job) error
	}{
		{"frontend", "no node, npm: apt-get install -y nodejs npm", checkFrontend},
		{"browser", "no chromium: apt-get install -y chromium", checkBrowser},
	} {
		j, out := testJob(t)
		// The tests of the page go on without a browser, and there is no go on this PATH.
		if err := c.check(j); err != nil && c.name != "browser" || !strings.Contains(out.String(), c.says) {
			t.Errorf("%s at home: %v, said %q", c.name, err, out)
		}
		j.ci = true
		if err := c.check(j); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s where CI is set, without rights: %v", c.name, err)
		}
		j.admin = true // there is no apt-get on this PATH
		if err := c.check(j); err == nil || !strings.Contains(err.Error(), "failed") {
			t.Errorf("%s where CI is set, as root: %v", c.name, err)
		}
	}
}

func TestPageTestsThatCannotBeMadeFail(t *testing.T) {
	j := bare(t)
	if err := j.pageTests(t.TempDir()); err == nil || !strings.Contains(err.Error(), "go run") {
		t.Errorf("%v", err)
	}
}

func TestNpmOutOfReach(t *testing.T) {
	for printed, want := range map[string]bool{
		"npm ERR! code ENOTFOUND":                        true,
		"npm error code EAI_AGAIN":                       true,
		"npm error code ETARGET No matching version":     false,
		"npm error code EACCES: permission denied":       false,
		"npm error network request to example.org fails": true,
	} {
		if got := npmOutOfReach(printed); got != want {
			t.Errorf("%q: %v", printed, got)
		}
	}
}
