package main

import (
	"bytes"
	"context"
	"errors"
	"slices"
	"strings"
	"testing"
)

// testJob is a job in an empty folder that writes to the buffer returned.
func testJob(t *testing.T) (*job, *bytes.Buffer) {
	t.Helper()
	out := &bytes.Buffer{}
	return &job{house: house{root: t.TempDir(), out: out}, ctx: context.Background()}, out
}

func TestChoose(t *testing.T) {
	for _, c := range []struct {
		names []string
		want  []string
	}{
		{nil, stepNames(allSteps)},
		{[]string{"tests"}, []string{"tests"}},
		{[]string{"tests", "vet", "tests"}, []string{"vet", "tests"}},
		{[]string{"shots", "vet"}, []string{"vet", "shots"}},
	} {
		got, err := choose(allSteps, namedSteps, c.names)
		if err != nil || !slices.Equal(stepNames(got), c.want) {
			t.Errorf("%v: got %v, %v; want %v", c.names, stepNames(got), err, c.want)
		}
	}
	_, err := choose(allSteps, namedSteps, []string{"vet", "weave"})
	if err == nil || !strings.Contains(err.Error(), `"weave"`) || !strings.Contains(err.Error(), "staticcheck") {
		t.Errorf("an unknown step must be named, with the steps there are: %v", err)
	}
}

func TestCommandLine(t *testing.T) {
	for _, c := range []struct {
		args      []string
		code      int
		out, errs string
	}{
		{[]string{"list"}, 0, "staticcheck", ""},
		{[]string{"list"}, 0, "only when named", ""},
		{[]string{"weave"}, exitUsage, "", `no step "weave"`},
		{[]string{"-loud"}, exitUsage, "", "-loud"},
	} {
		var out, errs bytes.Buffer
		code := run(context.Background(), c.args, &out, &errs)
		if code != c.code || !strings.Contains(out.String(), c.out) || !strings.Contains(errs.String(), c.errs) {
			t.Errorf("%v: code %d, printed %q and %q", c.args, code, &out, &errs)
		}
	}
}

// noSuchTool is a command that fails and says why.
func noSuchTool(j *job) error {
	_, err := j.run(nil, "go", "tool", "nosuchtool")
	return err
}

func goVersion(j *job) error {
	_, err := j.run(nil, "go", "version")
	return err
}

func TestFailingStepShowsItsOutputAndTheRestStillRun(t *testing.T) {
	steps := []step{{"lint", "", noSuchTool}, {"version", "", goVersion}}
	j, out := testJob(t)
	code := report(out, j.runAll(j.ctx, steps))
	text := out.String()
	if code != exitFailed {
		t.Errorf("code %d", code)
	}
	for _, want := range []string{`no such tool "nosuchtool"`, "lint: FAILED (go tool nosuchtool: exit status", "version: passed", "1 of 2 steps passed"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing in\n%s", want, text)
		}
	}
	if strings.Contains(text, "go version go") {
		t.Errorf("a passing step printed its output:\n%s", text)
	}
}

func TestVerboseShowsPassingOutput(t *testing.T) {
	j, out := testJob(t)
	j.verbose = true
	code := report(out, j.runAll(j.ctx, []step{{"version", "", goVersion}}))
	if code != 0 || !strings.Contains(out.String(), "go version go") {
		t.Errorf("code %d, printed\n%s", code, out)
	}
}

func TestSeveralProblemsStayOnOneLineOfTheTable(t *testing.T) {
	r := result{"tidy", 0, errors.Join(errors.New("out of date"), errors.New("not verified"))}
	if got := r.verdict(); got != "FAILED (out of date; not verified)" {
		t.Error(got)
	}
}

func TestMustPrintNothing(t *testing.T) {
	j, _ := testJob(t)
	err := j.mustPrintNothing("it speaks", "go", "version")
	if err == nil || err.Error() != "it speaks" || !strings.Contains(j.detail.String(), "go version") {
		t.Errorf("%v, kept %q", err, &j.detail)
	}
	err = j.mustPrintNothing("it speaks", "go", "tool", "nosuchtool")
	if err == nil || err.Error() == "it speaks" {
		t.Errorf("a command that fails and prints beside its output: %v", err)
	}
	if err := j.mustPrintNothing("it speaks", "go", "env", "NOSUCHVARIABLE"); err != nil {
		t.Errorf("an empty line is nothing: %v", err)
	}
}
