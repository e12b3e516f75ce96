package main

import (
	"fmt"
	"strings"
)

// counts of tests and subtests.
type counts struct{ passed, failed, skipped int }

func (c counts) String() string {
	text := fmt.Sprintf("%d passed", c.passed)
	if c.failed > 0 {
		text += fmt.Sprintf(", %d failed", c.failed)
	}
	if c.skipped > 0 {
		text += fmt.Sprintf(", %d skipped", c.skipped)
	}
	return text
}

// count counts the tests of a package that ended with action. A test that
// never ended (a panic, a time limit) has failed; so has one more when the
// package failed and no test did (it does not compile, it exits by itself).
func (p *packageRun) count(action string) counts {
	var c counts
	for _, end := range p.ended {
		switch end {
		case "pass":
			c.passed++
		case "skip":
			c.skipped++
		default:
			c.failed++
		}
	}
	if action == "fail" && c.failed == 0 {
		c.failed = 1
	}
	return c
}

// shown is the output worth reading: of tests that failed or were skipped and,
// when the package failed, what was printed outside any test.
func (p *packageRun) shown(action string, verbose bool) string {
	var text strings.Builder
	for _, line := range p.lines {
		if verbose || p.worthReading(line, action) {
			text.WriteString(line.text)
		}
	}
	return text.String()
}

func (p *packageRun) worthReading(line outputLine, action string) bool {
	if line.test == "" {
		return action == "fail" && !isClosing(line.text)
	}
	return p.ended[line.test] != "pass" && !strings.HasPrefix(line.text, "=== ")
}

// isClosing says whether go prints the line to end a package: our own line
// stands for it.
func isClosing(line string) bool {
	return strings.HasPrefix(line, "FAIL") || strings.HasPrefix(line, "ok  \t") || strings.HasPrefix(line, "exit status")
}
