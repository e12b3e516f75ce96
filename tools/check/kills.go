package main

import (
	"errors"
	"os"
	"strings"
)

// killsVariable says how many kills there are; killsHere is how many where it does not.
const (
	killsVariable = "SLEY_KILLS"
	killsHere     = "300"
)

// checkKills kills a process that writes to a book, again and again, and says how often,
// and what was lost.
func checkKills(j *job) error {
	var env []string
	if os.Getenv(killsVariable) == "" {
		env = append(env, killsVariable+"="+killsHere)
	}
	got, err := j.run(env, "go", "test", "-count=1", "-v", "-run", "^TestKills$", "./internal/edge/book")
	lines := killLines(got.out)
	for _, line := range lines {
		j.say("%s", line)
	}
	if err == nil && len(lines) == 0 {
		return errors.New("nothing was killed")
	}
	return err
}

// killLines are the lines that count the kills.
func killLines(text string) []string {
	var lines []string
	for line := range strings.Lines(text) {
		if _, counts, ok := strings.Cut(line, "kills: "); ok {
			lines = append(lines, "kills: "+strings.TrimSpace(counts))
		}
	}
	return lines
}
