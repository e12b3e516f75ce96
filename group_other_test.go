//go:build !unix

package sley_test

import (
	"os/exec"
	"testing"
)

func ownGroup(*exec.Cmd) {}

// interrupt ends the command: elsewhere there is no signal that a test could send.
func interrupt(t *testing.T, cmd *exec.Cmd) {
	t.Helper()
	if err := cmd.Process.Kill(); err != nil {
		t.Fatal(err)
	}
	t.Skip("Ctrl+C cannot be sent here")
}

// endGroup ends what a test that failed left running.
func endGroup(cmd *exec.Cmd) {
	_ = cmd.Process.Kill()
	_ = cmd.Wait()
}
