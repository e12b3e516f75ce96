package sley_test

import (
	"bytes"
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"
)

// patience is how long one command of the README may take.
const patience = 2 * time.Minute

// TestReadmeNamesTheTwoCommands guards the way in: how to try sley and how to
// check it.
func TestReadmeNamesTheTwoCommands(t *testing.T) {
	var lines []string
	for _, block := range readmeBlocks(t, "sh") {
		lines = append(lines, commandLines(block)...)
	}
	for _, command := range []string{"go run ./cmd/sley", "./check"} {
		if !beginsAny(lines, command) {
			t.Errorf("README.md has no ```sh block with a line that begins with %q", command)
		}
	}
}

// TestReadmeCommands runs every line of every sh block. The lines of a block run
// one after another in one folder, a fresh copy of the project.
func TestReadmeCommands(t *testing.T) {
	for _, block := range readmeBlocks(t, "sh") {
		var toRun []string
		for _, line := range commandLines(block) {
			if line == firstCommand {
				continue // it serves until it is interrupted: TestFirstCommand
			} else if startsChecks(line) {
				mustBeExecutable(t, strings.Fields(line)[0])
			} else {
				toRun = append(toRun, line)
			}
		}
		mustRun(t, toRun)
	}
}

func mustRun(t *testing.T, lines []string) {
	t.Helper()
	if len(lines) == 0 {
		return
	}
	d := newDesk(t)
	for _, line := range lines {
		if out, err := d.run(line); err != nil {
			t.Errorf("README.md says %s\n%s%v", line, out, err)
		}
	}
}

// TestReadmeSessions compares what the commands of every session block print
// with what the README says they print.
func TestReadmeSessions(t *testing.T) {
	for _, block := range readmeBlocks(t, "session") {
		d := newDesk(t)
		for _, step := range sessionSteps(block) {
			out, err := d.run(step.command)
			if err != nil {
				t.Errorf("README.md says $ %s\n%s%v", step.command, out, err)
			} else if !matches(step.prints, splitLines(out)) {
				t.Errorf("README.md says $ %s\nand that it prints\n%s\nbut it prints\n%s",
					step.command, strings.Join(step.prints, "\n"), out)
			}
		}
	}
}

func readmeBlocks(t *testing.T, kind string) []string {
	t.Helper()
	text, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal("the README is the way in, and it is missing:", err)
	}
	return fencedBlocks(string(text), kind)
}

// startsChecks names what would run this test again, from inside itself.
func startsChecks(line string) bool {
	return beginsAny([]string{line}, "./check") || beginsAny([]string{line}, ".ci/run") || beginsAny([]string{line}, "go test")
}

// beginsAny says whether a line is the command, alone or with arguments.
func beginsAny(lines []string, command string) bool {
	for _, line := range lines {
		if line == command || strings.HasPrefix(line, command+" ") {
			return true
		}
	}
	return false
}

func mustBeExecutable(t *testing.T, name string) {
	t.Helper()
	if name == "go" {
		return
	}
	info, err := os.Stat(name)
	if err != nil {
		t.Error("README.md names a file that is not there:", err)
	} else if runtime.GOOS != "windows" && info.Mode()&0o111 == 0 {
		t.Errorf("README.md says to run %s, and it is not executable", name)
	}
}

// desk is a copy of the project with a home of its own, so that no command
// reads or writes anything of whoever runs the tests.
type desk struct {
	dir string
	env []string
}

// newDesk copies the project and puts a freshly built sley on the PATH.
func newDesk(t *testing.T) desk {
	t.Helper()
	dir, home, bin := t.TempDir(), t.TempDir(), t.TempDir()
	if err := copyTree(dir, "."); err != nil {
		t.Fatal(err)
	}
	d := desk{dir, deskEnv(t, home, bin)}
	if out, err := d.run("go build -o '" + filepath.ToSlash(bin) + "/' ./cmd/sley"); err != nil {
		t.Fatalf("go build ./cmd/sley\n%s%v", out, err)
	}
	return d
}

// deskEnv keeps Go's caches, which else would follow HOME. With -trimpath what
// was built in one copy serves the next.
func deskEnv(t *testing.T, home, bin string) []string {
	t.Helper()
	env := append(os.Environ(), "CGO_ENABLED=0", "HOME="+home, "USERPROFILE="+home,
		"XDG_CONFIG_HOME="+home, "XDG_DATA_HOME="+home, "XDG_CACHE_HOME="+home,
		"PATH="+bin+string(os.PathListSeparator)+os.Getenv("PATH"))
	for _, name := range []string{"GOCACHE", "GOMODCACHE", "GOPATH", "GOPROXY", "GOSUMDB"} {
		env = append(env, name+"="+goEnv(t, name))
	}
	return append(env, strings.TrimSpace("GOFLAGS="+goEnv(t, "GOFLAGS")+" -trimpath"))
}

func goEnv(t *testing.T, name string) string {
	t.Helper()
	out, err := exec.Command("go", "env", name).Output()
	if err != nil {
		t.Fatal("go env:", err)
	}
	return strings.TrimSpace(string(out))
}

// run gives one line to the shell and returns all it printed.
func (d desk) run(line string) (string, error) {
	ctx, stop := context.WithTimeout(context.Background(), patience)
	defer stop()
	var out bytes.Buffer
	cmd := exec.CommandContext(ctx, "sh", "-c", line)
	cmd.Dir, cmd.Env, cmd.Stdout, cmd.Stderr = d.dir, d.env, &out, &out
	cmd.WaitDelay = time.Second // a program it started may hold the output open
	err := cmd.Run()
	return out.String(), err
}

// copyTree copies the files of the project, without hidden folders, keeping who
// may execute what.
func copyTree(to, from string) error {
	return filepath.WalkDir(from, func(name string, entry os.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() {
			if name != from && strings.HasPrefix(entry.Name(), ".") {
				return filepath.SkipDir
			}
			return os.MkdirAll(filepath.Join(to, name), 0o755)
		}
		info, err := entry.Info()
		if err != nil || !info.Mode().IsRegular() {
			return err
		}
		text, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		return os.WriteFile(filepath.Join(to, name), text, info.Mode().Perm())
	})
}
