package main

import (
	"strings"
	"testing"
)

func TestMissingJudgesAreNamedWithTheCommand(t *testing.T) {
	missing := absent([]judge{{"go", "golang"}, {"no-such-judge", "one"}, {"nor-this", "two"}, {"nor-that", "one"}})
	if got, want := missingJudges(missing), "no no-such-judge, nor-this, nor-that: apt-get install -y one two"; got != want {
		t.Errorf("said %q, want %q", got, want)
	}
}

func TestMissingJudgesFailOnlyWhereCIIsSet(t *testing.T) {
	j, out := testJob(t)
	t.Setenv("PATH", t.TempDir())
	if err := checkJudges(j); err != nil || !strings.Contains(out.String(), "apt-get install -y qpdf poppler-utils strace zbar-tools") {
		t.Errorf("at home: %v, said %q", err, out)
	}
	j.ci = true
	if err := checkJudges(j); err == nil || !strings.Contains(err.Error(), "no qpdf") {
		t.Errorf("where CI is set, without rights: %v", err)
	}
	j.admin = true // there is no apt-get on this PATH
	if err := checkJudges(j); err == nil || !strings.Contains(err.Error(), "installing qpdf poppler-utils strace zbar-tools failed") {
		t.Errorf("where CI is set, as root: %v", err)
	}
}
