package main

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"strings"
	"time"
)

// house is where the checks run and what they may do there.
type house struct {
	root    string    // the folder with go.mod
	out     io.Writer // what people read
	verbose bool      // show what passing steps printed
	ci      bool      // the CI variable is set: no test may be skipped
	admin   bool      // may install packages of the system
	shots   string    // the folder that pictures of the page go to
}

// result is how one step ended.
type result struct {
	name string
	took time.Duration
	err  error // nil when it passed
}

// runAll runs every step, also after one has failed.
func (h house) runAll(ctx context.Context, steps []step) []result {
	var results []result
	for _, s := range steps {
		results = append(results, h.runOne(ctx, s))
	}
	return results
}

// runOne runs a step between its heading and its verdict. What its commands
// printed is shown only when it failed, or when asked for.
func (h house) runOne(ctx context.Context, s step) result {
	fmt.Fprintf(h.out, "== %s\n", s.name)
	start := time.Now()
	j := &job{house: h, ctx: ctx}
	err := s.run(j)
	if err != nil || h.verbose {
		h.out.Write(j.detail.Bytes())
	}
	r := result{s.name, time.Since(start), err}
	fmt.Fprintf(h.out, "%s: %s in %.1f s\n", s.name, r.verdict(), r.took.Seconds())
	return r
}

func (r result) verdict() string {
	if r.err != nil {
		return "FAILED (" + strings.ReplaceAll(r.err.Error(), "\n", "; ") + ")"
	}
	return "passed"
}

// report prints the closing table and returns the exit code.
func report(out io.Writer, results []result) int {
	var total time.Duration
	failed := 0
	fmt.Fprintf(out, "\n%-12s %8s  %s\n", "step", "seconds", "result")
	for _, r := range results {
		fmt.Fprintf(out, "%-12s %8.1f  %s\n", r.name, r.took.Seconds(), r.verdict())
		total += r.took
		if r.err != nil {
			failed++
		}
	}
	fmt.Fprintf(out, "%-12s %8.1f  %d of %d steps passed\n", "all", total.Seconds(), len(results)-failed, len(results))
	if failed > 0 {
		return exitFailed
	}
	return 0
}

// job is one step at work.
type job struct {
	house
	ctx    context.Context
	detail bytes.Buffer // shown when the step fails
}

// say prints a line that is always shown.
func (j *job) say(format string, args ...any) {
	fmt.Fprintf(j.out, format+"\n", args...)
}
