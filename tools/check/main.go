// Command check runs the checks of the house, each with a name:
//
//	./check             every step
//	./check vet tests   these steps only
//	./check list        the steps and what each looks at
//	./check -v vet      also what a passing step printed
//	./check shots DIR   pictures of every page; see shots.go
//
// A failing step does not stop the next one: every problem is shown in one go.
// Exit codes: 0 all passed, 1 a step failed, 2 the command line was not
// understood. It uses the standard library only, so it runs before any module
// has been fetched.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"slices"
)

const (
	exitFailed = 1
	exitUsage  = 2
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	code := run(ctx, os.Args[1:], os.Stdout, os.Stderr)
	stop()
	os.Exit(code)
}

// run is main with its surroundings handed in; it returns the exit code.
func run(ctx context.Context, args []string, out, errs io.Writer) int {
	flags := flag.NewFlagSet("check", flag.ContinueOnError)
	flags.SetOutput(errs)
	verbose := flags.Bool("v", false, "print what passing steps printed, too")
	if err := flags.Parse(args); err != nil {
		return exitUsage
	}
	if flags.NArg() == 1 && flags.Arg(0) == "list" {
		listSteps(out, slices.Concat(allSteps, namedSteps))
		return 0
	}
	names, shots := shotsFolder(flags.Args())
	chosen, err := choose(allSteps, namedSteps, names)
	if err != nil {
		fmt.Fprintln(errs, "check:", err)
		return exitUsage
	}
	house, err := findHouse(out, *verbose)
	house.shots = shots
	if err != nil {
		fmt.Fprintln(errs, "check:", err)
		return exitFailed
	}
	return report(out, house.runAll(ctx, chosen))
}

// findHouse reads the surroundings: the root folder, CI and who we are.
func findHouse(out io.Writer, verbose bool) (house, error) {
	root, err := findRoot()
	h := house{
		root:    root,
		out:     out,
		verbose: verbose,
		ci:      os.Getenv("CI") != "",
		admin:   os.Geteuid() == 0,
	}
	return h, err
}

// findRoot climbs from the working folder to the one that holds go.mod.
func findRoot() (string, error) {
	dir, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir, nil
		}
		up := filepath.Dir(dir)
		if up == dir {
			return "", errors.New("no go.mod here or above; run ./check in the project's folder")
		}
		dir = up
	}
}
