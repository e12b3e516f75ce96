package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"strings"
)

// pageSources are the sources of the page in the browser.
const pageSources = "internal/face/web/page"

// typeChecker checks the types of the page. It is fetched for the check alone, into a
// folder outside the tree.
const typeChecker = "typescript@7.0.2"

var (
	// node runs the type checker and the tests of the page's sources: building sley
	// needs neither.
	node = []judge{{"node", "nodejs"}, {"npm", "npm"}}
	// browsers drive the page in tests.
	browsers = []judge{{"chromium", "chromium"}}
)

// checkBundle needs Go alone, so that whoever changes the page can prove it.
func checkBundle(j *job) error {
	_, err := j.run(nil, "go", "run", "./tools/bundle", "-check")
	return err
}

func checkFrontend(j *job) error {
	there, err := j.provide(node)
	if !there {
		return err
	}
	dir, remove, err := scratch()
	if err != nil {
		return err
	}
	defer remove()
	return errors.Join(j.pageTypes(dir), j.pageTests(dir))
}

// pageTypes fetches the type checker and asks it. Where the network is out of reach
// nothing is known, which is said, and is a failure only where CI is set.
func (j *job) pageTypes(dir string) error {
	got, err := j.run(nil, "npm", "install", "--prefix", dir, "--no-save", "--no-package-lock", "--no-audit", "--no-fund", typeChecker)
	if err != nil && !j.ci && npmOutOfReach(got.all) {
		j.say("could not fetch %s; types not checked", typeChecker)
		return nil
	}
	if err != nil {
		return fmt.Errorf("fetching %s: %w", typeChecker, err)
	}
	return j.mustPrintNothing("the types of the page do not fit: see the lines above",
		"node", filepath.Join(dir, "node_modules", "typescript", "bin", "tsc"), "--noEmit", "-p", pageSources)
}

// npmOutOfReach tells a network that is not there by what npm says then.
func npmOutOfReach(printed string) bool {
	return containsAny(printed, []string{"ENOTFOUND", "ECONNREFUSED", "ECONNRESET", "ETIMEDOUT", "EAI_AGAIN", "ENETUNREACH", "network"})
}

// pageTests runs the tests of the sources. node is given files, not the folder: its
// versions differ in what they make of one.
func (j *job) pageTests(dir string) error {
	dir = filepath.Join(dir, "tests")
	if _, err := j.run(nil, "go", "run", "./tools/bundle", "-tests", dir); err != nil {
		return err
	}
	tests, err := filepath.Glob(filepath.Join(dir, "*.test.mjs"))
	if err != nil || len(tests) == 0 {
		return fmt.Errorf("no test of the page was made: %w", errors.Join(err, errors.New("see tools/bundle")))
	}
	_, err = j.run(nil, "node", append([]string{"--test", "--test-reporter=tap"}, tests...)...)
	return err
}

// checkBrowser runs the tests of the page and its server; without Chromium those that
// need it are skipped.
func checkBrowser(j *job) error {
	if _, err := j.provide(browsers); err != nil {
		return err
	}
	packages, err := j.packages(func(path string) bool { return strings.Contains(path, pagePackages) })
	if err != nil {
		return err
	}
	return j.goTests(packages)
}
