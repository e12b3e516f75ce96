package book

import (
	"bufio"
	"fmt"
	"os"
	"os/exec"
	"strings"
	"testing"
)

// The tests of what happens between processes run this test's own program again, as one
// of these children. What a child prints on its standard output is read line by line.

const childVariable = "SLEY_TEST_CHILD"

var children = map[string]func(args []string) error{}

func TestMain(m *testing.M) {
	name := os.Getenv(childVariable)
	if name == "" {
		os.Exit(m.Run())
	}
	if err := children[name](os.Args[1:]); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// child is a process of this program that is not started yet.
func child(t testing.TB, name string, args ...string) *exec.Cmd {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.CommandContext(t.Context(), self, args...)
	cmd.Env = append(os.Environ(), childVariable+"="+name)
	cmd.Stderr = os.Stderr
	return cmd
}

// say prints a line at once.
func say(format string, args ...any) {
	os.Stdout.WriteString(fmt.Sprintf(format, args...) + "\n")
}

// running is a child that is at work.
type running struct {
	*exec.Cmd
	lines *bufio.Scanner
}

func start(t testing.TB, cmd *exec.Cmd) running {
	t.Helper()
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	return running{cmd, bufio.NewScanner(out)}
}

// until reads lines to one that begins so, and gives the rest of it.
func (r running) until(t testing.TB, beginning string) string {
	t.Helper()
	for r.lines.Scan() {
		if rest, ok := strings.CutPrefix(r.lines.Text(), beginning); ok {
			return rest
		}
	}
	t.Fatalf("the child never said %q", beginning)
	return ""
}
