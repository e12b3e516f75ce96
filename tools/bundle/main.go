// Command bundle makes the files that the page in the browser is served as, from the
// sources in internal/face/web/page:
//
//	go run ./tools/bundle             writes internal/face/web/static
//	go run ./tools/bundle -check      fails when that folder is not what the sources give
//	go run ./tools/bundle -tests DIR  writes the tests of the sources to DIR, for node --test
//
// It runs esbuild, pinned in tools/bundle.mod, by the go command: no Node is needed.
// The same sources give the same bytes on every machine. Exit codes: 0 done, 1 not, 2
// the command line was not understood.
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
)

// Folders, from the project's root.
const (
	sources = "internal/face/web/page"
	static  = "internal/face/web/static"
)

func main() { os.Exit(run(os.Args[1:], os.Stderr)) }

func run(args []string, errs io.Writer) int {
	flags := flag.NewFlagSet("bundle", flag.ContinueOnError)
	flags.SetOutput(errs)
	check := flags.Bool("check", false, "compare with the committed files, write nothing")
	tests := flags.String("tests", "", "write the tests of the sources to this `folder`")
	if err := flags.Parse(args); err != nil || flags.NArg() > 0 {
		return 2
	}
	if err := do(*check, *tests); err != nil {
		fmt.Fprintln(errs, "bundle:", err)
		return 1
	}
	return 0
}

func do(check bool, tests string) error {
	root, err := findRoot()
	if err != nil {
		return err
	}
	if tests != "" {
		return bundleTests(root, tests)
	}
	made, err := bundlePage(root)
	if err != nil {
		return err
	}
	folder := filepath.Join(root, filepath.FromSlash(static))
	if check {
		return compare(folder, made)
	}
	return replace(folder, made)
}

// findRoot climbs from the working folder to the one that holds go.mod.
func findRoot() (string, error) {
	dir, err := os.Getwd()
	for err == nil {
		if _, missing := os.Stat(filepath.Join(dir, "go.mod")); missing == nil {
			return dir, nil
		}
		up := filepath.Dir(dir)
		if up == dir {
			err = errors.New("no go.mod here or above; run it in the project's folder")
		}
		dir = up
	}
	return "", err
}
