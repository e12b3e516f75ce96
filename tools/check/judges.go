package main

import (
	"fmt"
	"os/exec"
	"strings"
)

// judge is a program by others that the tests let read what sley writes, and the
// Debian package it comes in.
type judge struct{ program, pkg string }

var judges = []judge{
	{"qpdf", "qpdf"},
	{"pdfinfo", "poppler-utils"},
	{"pdffonts", "poppler-utils"},
	{"pdftotext", "poppler-utils"},
	{"pdftoppm", "poppler-utils"},
	{"strace", "strace"},
}

// checkJudges sees to the programs before the tests ask for them: where CI is set
// no test may be skipped, so there they are installed, by root, or the step fails.
// Elsewhere it says what is missing, and the tests that need it are skipped.
func checkJudges(j *job) error {
	missing := absent(judges)
	if len(missing) == 0 {
		return nil
	}
	j.say("%s", missingJudges(missing))
	if !j.ci {
		return nil
	}
	if j.admin {
		j.run(nil, "apt-get", "update") // without it the install below may still work
		if _, err := j.run(nil, "apt-get", append([]string{"install", "-y"}, packagesOf(missing)...)...); err != nil {
			return fmt.Errorf("installing the judges failed: %w", err)
		}
		missing = absent(judges)
	}
	if len(missing) > 0 {
		return fmt.Errorf("CI is set and allows no skipped test: %s", missingJudges(missing))
	}
	return nil
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
