package sley_test

import (
	"slices"
	"strings"
	"testing"
)

// fencedBlocks are the insides of the fenced blocks of a kind: ```sh has the
// kind sh.
func fencedBlocks(text, kind string) []string {
	var blocks []string
	var inside []string
	fence, open := "", ""
	for _, line := range splitLines(text) {
		mark := strings.TrimSpace(line)
		switch {
		case fence == "" && strings.HasPrefix(mark, "```"):
			open = strings.TrimLeft(mark, "`")
			fence, inside = mark[:len(mark)-len(open)], nil
		case fence != "" && mark == fence:
			if first, _, _ := strings.Cut(open, " "); first == kind {
				blocks = append(blocks, strings.Join(inside, "\n"))
			}
			fence = ""
		case fence != "":
			inside = append(inside, line)
		}
	}
	return blocks
}

// commandLines are the commands of a block: without empty lines, notes and the
// prompt; a line that ends in \ goes on in the next.
func commandLines(block string) []string {
	var lines []string
	for _, line := range splitLines(strings.ReplaceAll(block, "\\\n", " ")) {
		line = strings.TrimPrefix(strings.TrimSpace(line), "$ ")
		line, _, _ = strings.Cut(line, " #")
		if line = strings.TrimSpace(line); line != "" && !strings.HasPrefix(line, "#") {
			lines = append(lines, line)
		}
	}
	return lines
}

// sessionStep is a command and the lines it prints; a line ... stands for any
// lines, or none.
type sessionStep struct {
	command string
	prints  []string
}

func sessionSteps(block string) []sessionStep {
	var steps []sessionStep
	for _, line := range splitLines(block) {
		if command, ok := strings.CutPrefix(line, "$ "); ok {
			steps = append(steps, sessionStep{command: command})
		} else if len(steps) > 0 {
			last := &steps[len(steps)-1]
			last.prints = append(last.prints, line)
		}
	}
	return steps
}

// splitLines leaves out the empty lines at the end, which a page cannot show.
func splitLines(text string) []string {
	text = strings.TrimRight(strings.ReplaceAll(text, "\r\n", "\n"), "\n")
	if text == "" {
		return nil
	}
	return strings.Split(text, "\n")
}

// matches holds printed lines against a session's, exactly but for "...".
func matches(want, got []string) bool {
	want = trimEmpty(want)
	switch {
	case len(want) == 0:
		return len(got) == 0
	case want[0] == "...":
		return matches(want[1:], got) || len(got) > 0 && matches(want, got[1:])
	}
	return len(got) > 0 && want[0] == got[0] && matches(want[1:], got[1:])
}

func trimEmpty(lines []string) []string {
	for len(lines) > 0 && lines[len(lines)-1] == "" {
		lines = lines[:len(lines)-1]
	}
	return lines
}

func TestReadingBlocks(t *testing.T) {
	text := "# sley\n```sh\n# a note\n$ go run ./cmd/sley reckon \\\n  towels.toml   # the towels\n\n./check\n```\n" +
		"````session and more\n$ sley --version\n```\nsley 1\n````\n```\nplain\n```\n"
	if got := fencedBlocks(text, "sh"); len(got) != 1 ||
		!slices.Equal(commandLines(got[0]), []string{"go run ./cmd/sley reckon    towels.toml", "./check"}) {
		t.Errorf("sh blocks: %q", got)
	}
	got := fencedBlocks(text, "session")
	if len(got) != 1 || got[0] != "$ sley --version\n```\nsley 1" {
		t.Fatalf("session blocks: %q", got)
	}
	step := sessionSteps(got[0])[0]
	if step.command != "sley --version" || !slices.Equal(step.prints, []string{"```", "sley 1"}) {
		t.Errorf("step: %+v", step)
	}
}

func TestMatchingSessions(t *testing.T) {
	for _, c := range []struct {
		want, got string
		same      bool
	}{
		{"warp 4 yd", "warp 4 yd", true},
		{"warp 4 yd\n\n", "warp 4 yd\n", true},
		{"warp 4 yd", "warp  4 yd", false},
		{"warp 4 yd", "warp 4 yd\nends 240", false},
		{"warp 4 yd\nends 240", "warp 4 yd", false},
		{"...\nends 240", "warp 4 yd\nends 240", true},
		{"warp 4 yd\n...", "warp 4 yd", true},
		{"warp 4 yd\n...\npicks 90", "warp 4 yd\nends 240\n\npicks 90", true},
		{"warp 4 yd\n...\npicks 90", "warp 4 yd\nends 240", false},
		{"", "", true},
		{"", "warp 4 yd", false},
	} {
		if got := matches(splitLines(c.want), splitLines(c.got)); got != c.same {
			t.Errorf("session %q, printed %q: %v", c.want, c.got, got)
		}
	}
}

func TestCommandsByTheirBeginning(t *testing.T) {
	for line, starts := range map[string]bool{
		"./check": true, "./check vet": true, "./checkers": false, "go test ./...": true,
		"sley ./check": false, ".ci/run": true,
	} {
		if startsChecks(line) != starts {
			t.Errorf("%q: %v", line, !starts)
		}
	}
}
