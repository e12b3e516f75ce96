package main

import (
	"errors"
	"fmt"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// besideEachOther are the packages that do several things at once, as patterns
// of the go command. A pattern that matches nothing yet does no harm.
var besideEachOther = []string{
	"./internal/app/...",
	"./internal/face/web/...", // the other faces do one thing at a time
	"./internal/edge/book/...",
}

// compilerRemedy is how to get the C compiler that the race detector links with.
const compilerRemedy = "apt-get install -y gcc libc6-dev"

// checkRace runs the tests in their short form: races are found in what runs at
// once, not in how many pages are drawn. It needs CGO, and so a C compiler: nothing else here does.
func checkRace(j *job) error {
	listed, err := j.run(nil, "go", "list", "./...")
	if err != nil {
		return err
	}
	j.detail.Reset() // the list was only for us
	packages := matching(strings.Fields(listed.out), besideEachOther)
	if len(packages) == 0 {
		j.say("no package of the list exists yet: %s", strings.Join(besideEachOther, " "))
		return nil
	}
	compiler, err := j.needCompiler()
	if err != nil {
		return err
	}
	got, err := j.run([]string{"CGO_ENABLED=1", "CC=" + compiler}, "go",
		append([]string{"test", "-race", "-short", "-count=1"}, packages...)...)
	for _, line := range closingLines(got.out) {
		j.say("%s", line)
	}
	return err
}

// matching picks the packages that a pattern such as ./internal/app/... covers.
func matching(packages, patterns []string) []string {
	return slices.DeleteFunc(slices.Clone(packages), func(path string) bool {
		_, folder, _ := strings.Cut(path, "/") // without the module's name
		return !slices.ContainsFunc(patterns, func(pattern string) bool {
			prefix := strings.TrimSuffix(strings.TrimPrefix(pattern, "./"), "/...")
			return folder == prefix || strings.HasPrefix(folder, prefix+"/")
		})
	})
}

// closingLines are the lines with which go test ends tests and packages.
func closingLines(text string) []string {
	var lines []string
	for line := range strings.Lines(text) {
		line = strings.TrimRight(line, "\r\n")
		if strings.HasPrefix(line, "ok") || strings.HasPrefix(line, "FAIL") || strings.HasPrefix(line, "---") {
			lines = append(lines, line)
		}
	}
	return lines
}

// needCompiler returns a C compiler that works, after installing one where that
// is ours to do: as root, with CI set.
func (j *job) needCompiler() (string, error) {
	if found := j.findCompiler(); found != "" {
		return found, nil
	}
	j.say("the race detector needs a C compiler: %s", compilerRemedy)
	if !j.admin || !j.ci {
		return "", errors.New("no C compiler: " + compilerRemedy)
	}
	j.run(nil, "apt-get", "update") // without it the install below may still work
	if _, err := j.run(nil, "apt-get", "install", "-y", "gcc", "libc6-dev"); err != nil {
		return "", fmt.Errorf("no C compiler, and installing one failed: %w", err)
	}
	if found := j.findCompiler(); found != "" {
		return found, nil
	}
	return "", errors.New("no C compiler that works, even after " + compilerRemedy)
}

// findCompiler tries the compiler that go is set to, then the usual names.
func (j *job) findCompiler() string {
	set, _ := j.command([]string{"CGO_ENABLED=1"}, "go", "env", "CC").Output()
	for _, name := range []string{strings.TrimSpace(string(set)), "cc", "gcc", "clang"} {
		if name != "" && j.compiles(name) {
			return name
		}
	}
	return ""
}

// compiles tries a program of one line: a compiler without the C library's
// headers is of no use.
func (j *job) compiles(compiler string) bool {
	words := strings.Fields(compiler)
	if _, err := exec.LookPath(words[0]); err != nil {
		return false
	}
	dir, remove, err := scratch()
	if err != nil {
		return false
	}
	defer remove()
	args := append(words[1:], "-x", "c", "-", "-o", filepath.Join(dir, "trial"))
	cmd := j.command(nil, words[0], args...)
	cmd.Stdin = strings.NewReader("#include <stdlib.h>\nint main(void) { return EXIT_SUCCESS; }\n")
	return cmd.Run() == nil
}
