package main

import (
	"errors"
	"fmt"
	"os/exec"
	"strings"
)

// judge is a program by others that the checks need, and the Debian package it comes
// in.
type judge struct{ program, pkg string }

// judges let the tests read what sley writes.
var judges = []judge{
	{"qpdf", "qpdf"},
	{"pdfinfo", "poppler-utils"},
	{"pdffonts", "poppler-utils"},
	{"pdftotext", "poppler-utils"},
	{"pdftoppm", "poppler-utils"},
	{"strace", "strace"},
	{"zbarimg", "zbar-tools"},
}

// checkJudges sees to the programs before the tests ask for them.
func checkJudges(j *job) error {
	_, err := j.provide(judges)
	return err
}

// provide sees to programs: where CI is set no test may be skipped, so there they are
// installed, by root, or it is an error. Elsewhere it says what is missing; there tells
// whether all can be used.
func (j *job) provide(needed []judge) (there bool, err error) {
	missing := absent(needed)
	if len(missing) == 0 {
		return true, nil
	}
	j.say("%s", missingJudges(missing))
	if !j.ci {
		return false, nil
	}
	if j.admin {
		j.run(nil, "apt-get", "update") // without it the install below may still work
		if _, err := j.run(nil, "apt-get", append([]string{"install", "-y"}, packagesOf(missing)...)...); err != nil {
			return false, fmt.Errorf("installing %s failed: %w", strings.Join(packagesOf(missing), " "), err)
		}
		missing = absent(needed)
	}
	if len(missing) > 0 {
		return false, errors.New("CI is set and allows no skipped test: " + missingJudges(missing))
	}
	return true, nil
}

// absent are the judges that are not on the PATH.
func absent(all []judge) []judge {
	var missing []judge
	for _, one := range all {
		if _, err := exec.LookPath(one.program); err != nil {
			missing = append(missing, one)
		}
	}
	return missing
}

// missingJudges says which programs are missing and how to get them.
func missingJudges(missing []judge) string {
	var programs []string
	for _, one := range missing {
		programs = append(programs, one.program)
	}
	return fmt.Sprintf("no %s: apt-get install -y %s", strings.Join(programs, ", "), strings.Join(packagesOf(missing), " "))
}

// packagesOf are the packages of the judges, each once.
func packagesOf(missing []judge) []string {
	var packages []string
	seen := map[string]bool{}
	for _, one := range missing {
		if !seen[one.pkg] {
			seen[one.pkg] = true
			packages = append(packages, one.pkg)
		}
	}
	return packages
}
