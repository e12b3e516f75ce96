//go:build unix

package sley_test

import (
	"os/exec"
	"syscall"
	"testing"
)

// ownGroup gives a command a group of processes, as a terminal does.
func ownGroup(cmd *exec.Cmd) { cmd.SysProcAttr = &syscall.SysProcAttr{Setpgid: true} }

// interrupt is Ctrl+C: it reaches every process of the group.
func interrupt(t *testing.T, cmd *exec.Cmd) {
	t.Helper()
	if err := syscall.Kill(-cmd.Process.Pid, syscall.SIGINT); err != nil {
		t.Fatal(err)
	}
}

// endGroup ends what a test that failed left running.
func endGroup(cmd *exec.Cmd) {
	_ = syscall.Kill(-cmd.Process.Pid, syscall.SIGKILL)
	_ = cmd.Wait()
}
