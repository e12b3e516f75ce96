package main

import (
	"slices"
	"testing"
)

func TestKillsAreCounted(t *testing.T) {
	const text = "=== RUN   TestKills\n    kills_test.go:165: kills: 3, changes answered: 9, lost: 0\n--- PASS: TestKills (1.00s)\n"
	if got := killLines(text); !slices.Equal(got, []string{"kills: 3, changes answered: 9, lost: 0"}) {
		t.Errorf("%q", got)
	}
	if got := killLines("ok  sley/internal/edge/book 0.1s [no tests to run]\n"); len(got) > 0 {
		t.Errorf("%q", got)
	}
}
