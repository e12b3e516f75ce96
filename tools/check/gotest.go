package main

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"
)

// pagePackages is where the tests stand that drive the page in a browser: they are a step
// of their own, so that its seconds are seen, and are not run twice.
const pagePackages = "/internal/face/web"

// checkTests runs every test once, those of the page left out.
func checkTests(j *job) error {
	packages, err := j.packages(func(path string) bool { return !strings.Contains(path, pagePackages) })
	if err != nil {
		return err
	}
	return j.goTests(packages)
}

// packages lists the packages that are wanted.
func (j *job) packages(wanted func(path string) bool) ([]string, error) {
	got, err := j.run(nil, "go", "list", "./...")
	if err != nil {
		return nil, err
	}
	j.detail.Reset() // the list was only for us
	return slices.DeleteFunc(strings.Fields(got.out), func(path string) bool { return !wanted(path) }), nil
}

// goTests runs the tests of packages and reads the machine form of what go prints, so
// that it can count, and can tell a skipped test from one that passed.
func (j *job) goTests(packages []string) error {
	var stray bytes.Buffer
	cmd := j.command(nil, "go", append([]string{"test", "-count=1", "-timeout=30m", "-json"}, packages...)...)
	cmd.Stderr = &stray
	pipe, err := cmd.StdoutPipe()
	if err != nil {
		return err
	}
	if err := cmd.Start(); err != nil {
		return err
	}
	t := newTally(j.out, j.verbose)
	err = errors.Join(t.read(pipe), cmd.Wait())
	j.out.Write(stray.Bytes())
	j.say("%s", t.closing())
	return t.judge(j.ci, err)
}

// closing is the line that ends the tests. Tests and subtests count alike, as
// go test -v prints them; a package that fails outside any test counts as one
// failed test.
func (t *tally) closing() string {
	return fmt.Sprintf("%d passed, %d failed, %d skipped", t.passed, t.failed, t.skipped)
}

// judge returns why the tests do not pass, or nil; runErr is how go test ended.
// Where CI is set a skipped test fails too: a check that ran nowhere checks
// nothing.
func (t *tally) judge(ci bool, runErr error) error {
	var reasons []error
	if t.failed > 0 {
		reasons = append(reasons, fmt.Errorf("failing tests: %d", t.failed))
	} else if runErr != nil {
		reasons = append(reasons, fmt.Errorf("go test: %w", runErr))
	}
	if ci && t.skipped > 0 {
		reasons = append(reasons, fmt.Errorf("CI is set and allows no skipped test: see the %d --- SKIP above", t.skipped))
	}
	if t.passed+t.failed+t.skipped == 0 {
		reasons = append(reasons, errors.New("no test ran"))
	}
	return errors.Join(reasons...)
}
