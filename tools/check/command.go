package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"os/exec"
	"strings"
	"sync"
)

// answer is what a command printed: its standard output alone, and all of it.
type answer struct{ out, all string }

// command prepares a program in the root folder with CGO off; env comes last
// and so wins.
func (j *job) command(env []string, name string, args ...string) *exec.Cmd {
	cmd := exec.CommandContext(j.ctx, name, args...)
	cmd.Dir = j.root
	cmd.Env = append(append(os.Environ(), "CGO_ENABLED=0"), env...)
	return cmd
}

// run runs a command and keeps all it printed for when the step fails. The
// error says which command failed and how.
func (j *job) run(env []string, name string, args ...string) (answer, error) {
	var out, all shared
	cmd := j.command(env, name, args...)
	cmd.Stderr = &all
	cmd.Stdout = io.MultiWriter(&out, &all)
	err := cmd.Run()
	j.detail.WriteString(all.String())
	if err != nil {
		err = fmt.Errorf("%s: %w", commandName(name, args), err)
	}
	return answer{out.String(), all.String()}, err
}

// shared is a buffer that two goroutines write to, as they do for the two
// outputs of a command.
type shared struct {
	mu   sync.Mutex
	text bytes.Buffer
}

func (s *shared) Write(p []byte) (int, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.text.Write(p)
}

// String is for after the command has ended.
func (s *shared) String() string { return s.text.String() }

// mustPrintNothing runs a command that passes by printing nothing on its
// standard output; remedy says what to do about what it printed.
func (j *job) mustPrintNothing(remedy, name string, args ...string) error {
	got, err := j.run(nil, name, args...)
	if strings.TrimSpace(got.out) != "" {
		return fmt.Errorf("%s", remedy)
	}
	return err
}

// commandName is the command as a person says it: "go vet", without flags.
func commandName(name string, args []string) string {
	words := []string{name}
	for _, arg := range args {
		if !strings.HasPrefix(arg, "-") && len(words) < 3 && !strings.ContainsAny(arg, "./") {
			words = append(words, arg)
		}
	}
	return strings.Join(words, " ")
}
