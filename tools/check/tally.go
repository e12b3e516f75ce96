package main

import (
	"bufio"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"
)

// event is one line of go test -json; the fields are described by
// "go doc test2json", those of builds by "go help buildjson".
type event struct {
	Action, Package, Test, Output string
	ImportPath, FailedBuild       string
	Elapsed                       float64 // seconds
}

// tally counts the tests of a run and prints one line for each package as it
// ends, with the output of what failed before it.
type tally struct {
	out                     io.Writer
	verbose                 bool // print the output of passing tests, too
	passed, failed, skipped int
	packages                map[string]*packageRun
	builds                  map[string]string // what the compiler said, by build
}

func newTally(out io.Writer, verbose bool) *tally {
	return &tally{out: out, verbose: verbose, packages: map[string]*packageRun{}, builds: map[string]string{}}
}

// packageRun is what is known of one package's tests so far.
type packageRun struct {
	lines []outputLine
	ended map[string]string // pass, fail or skip by test; "" while it runs
}

type outputLine struct{ test, text string }

// read takes in all events. A line that is no event is shown as it stands.
func (t *tally) read(r io.Reader) error {
	lines := bufio.NewReader(r)
	for {
		line, err := lines.ReadBytes('\n')
		var e event
		if json.Unmarshal(line, &e) == nil {
			t.add(e)
		} else if len(line) > 0 {
			fmt.Fprintf(t.out, "%s\n", strings.TrimRight(string(line), "\n"))
		}
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return err
		}
	}
}

func (t *tally) add(e event) {
	p := t.packageRun(e.Package)
	switch e.Action {
	case "build-output":
		t.builds[e.ImportPath] += e.Output
	case "run":
		p.ended[e.Test] = ""
	case "output":
		p.lines = append(p.lines, outputLine{e.Test, e.Output})
	case "pass", "fail", "skip":
		if e.Test != "" {
			p.ended[e.Test] = e.Action
			return
		}
		t.close(e, p)
	}
}

func (t *tally) packageRun(name string) *packageRun {
	if t.packages[name] == nil {
		t.packages[name] = &packageRun{ended: map[string]string{}}
	}
	return t.packages[name]
}

// close counts a package that has ended and prints what there is to say of it.
func (t *tally) close(e event, p *packageRun) {
	c := p.count(e.Action)
	t.passed, t.failed, t.skipped = t.passed+c.passed, t.failed+c.failed, t.skipped+c.skipped
	fmt.Fprint(t.out, t.builds[e.FailedBuild], p.shown(e.Action, t.verbose))
	delete(t.builds, e.FailedBuild)
	delete(t.packages, e.Package)
	if len(p.ended) > 0 || e.Action == "fail" {
		fmt.Fprintf(t.out, "%-4s  %-40s %7.2fs  %s\n", mark(e.Action), e.Package, e.Elapsed, c)
	}
}

func mark(action string) string {
	if action == "fail" {
		return "FAIL"
	}
	return "ok"
}
