package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
)

// maxBinary is the size sley stays under, in bytes: docs and the release notes
// promise 40 MB.
const maxBinary = 40_000_000

// target is a system sley is built for.
type target struct{ os, arch string }

var targets = []target{
	{"linux", "amd64"},
	{"linux", "arm64"},
	{"darwin", "amd64"},
	{"darwin", "arm64"},
	{"windows", "amd64"},
	{"windows", "arm64"},
}

func checkBuild(j *job) error {
	dir, remove, err := scratch()
	if err != nil {
		return err
	}
	defer remove()
	var problems []error
	for _, t := range targets {
		problems = append(problems, j.build(t, filepath.Join(dir, "sley-"+t.os+"-"+t.arch)))
	}
	return errors.Join(problems...)
}

// build builds sley for one target and weighs the file.
func (j *job) build(t target, file string) error {
	env := []string{"GOOS=" + t.os, "GOARCH=" + t.arch}
	if _, err := j.run(env, "go", "build", "-trimpath", "-o", file, "./cmd/sley"); err != nil {
		return fmt.Errorf("%s/%s: %w", t.os, t.arch, err)
	}
	info, err := os.Stat(file)
	if err != nil {
		return err
	}
	j.say("%-8s %-6s %5.1f MB", t.os, t.arch, float64(info.Size())/1e6)
	return judgeSize(t, info.Size())
}

// judgeSize returns an error for a binary of the given bytes that is too big.
func judgeSize(t target, bytes int64) error {
	if bytes >= maxBinary {
		return fmt.Errorf("%s/%s is %.1f MB, and must stay under %d", t.os, t.arch, float64(bytes)/1e6, maxBinary/1_000_000)
	}
	return nil
}

// scratch makes a folder for what a step writes; remove takes it away.
func scratch() (dir string, remove func(), err error) {
	dir, err = os.MkdirTemp("", "sley-check-")
	return dir, func() { os.RemoveAll(dir) }, err
}
