package main

import (
	"context"
	"errors"
	"os/exec"
	"slices"
	"strings"
	"time"
)

// vulnsPatience is how long the network may take before the step gives up.
const vulnsPatience = 5 * time.Minute

// exitCalled is how govulncheck ends when our code reaches a fault it found
// (its documentation, "Exit codes").
const exitCalled = 3

// checkVulns looks up published faults. The data is on the network: where that
// is out of reach nothing is known, which is said and is no failure.
func checkVulns(j *job) error {
	ctx, stop := context.WithTimeout(j.ctx, vulnsPatience)
	defer stop()
	patient := &job{house: j.house, ctx: ctx}
	got, err := patient.run(nil, "go", "tool", "-modfile=tools/vuln.mod", "govulncheck", "./...")
	j.detail.Write(patient.detail.Bytes())
	if outOfReach(got.all, exitCode(err)) || ctx.Err() != nil {
		j.say("could not reach the vulnerability data; not checked")
		return nil
	}
	return err
}

// outOfReach tells a network that is not there from everything else, by what the
// system's network calls say when they fail. A fault found is never taken for it.
func outOfReach(printed string, code int) bool {
	if code == 0 || code == exitCalled {
		return false
	}
	return containsAny(printed, networkSigns)
}

func containsAny(text string, signs []string) bool {
	return slices.ContainsFunc(signs, func(sign string) bool { return strings.Contains(text, sign) })
}

var networkSigns = []string{
	"dial tcp", "no such host", "connection refused", "connection reset",
	"i/o timeout", "network is unreachable", "TLS handshake timeout",
	"proxyconnect", "deadline exceeded", "unexpected status",
}

// exitCode of a command's error: 0 without one, -1 when the command did not get
// as far as ending by itself.
func exitCode(err error) int {
	var exit *exec.ExitError
	switch {
	case err == nil:
		return 0
	case errors.As(err, &exit):
		return exit.ExitCode()
	}
	return -1
}
