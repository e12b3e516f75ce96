//go:build unix

package book

import (
	"context"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"sley/internal/trade/record"
)

func init() { children["stranger"] = stranger }

// stranger tries to open a book, and says what came of it.
func stranger(args []string) error {
	b, err := Open(context.Background(), Asked{Path: args[0], Now: at(noon), Create: true})
	var trouble *record.Trouble
	switch {
	case err == nil:
		say("opened")
		return b.Close()
	case errors.As(err, &trouble):
		say("%s", trouble.Code)
	default:
		say("%v", err)
	}
	b, err = Peek(context.Background(), args[0])
	if err != nil {
		return nil
	}
	defer b.Close()
	return b.Read(context.Background(), func(r record.Reader) error {
		_, err := r.All()
		say("read")
		return err
	})
}

// nobody is a user who owns nothing.
const nobody = 65534

// asStranger runs the child as somebody who may not do everything: root may.
func asStranger(t *testing.T, path string) string {
	t.Helper()
	cmd := child(t, "stranger", path)
	if os.Geteuid() == 0 {
		cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: nobody, Gid: nobody}}
		cmd.Path = publicly(t, cmd.Path)
		cmd.Dir = "/"
	}
	out, err := cmd.Output()
	if err != nil {
		t.Error(err)
	}
	return strings.Join(strings.Fields(string(out)), " ")
}

// publicFolder is one that everybody may look into.
func publicFolder(t *testing.T) string {
	t.Helper()
	dir, err := os.MkdirTemp("", "sley-public-")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.RemoveAll(dir) })
	if err := os.Chmod(dir, 0o777); err != nil {
		t.Fatal(err)
	}
	return dir
}

// publicly copies a program to where everybody may run it.
func publicly(t *testing.T, program string) string {
	t.Helper()
	from, err := os.Open(program)
	if err != nil {
		t.Fatal(err)
	}
	defer from.Close()
	path := filepath.Join(publicFolder(t), "program")
	to, err := os.OpenFile(path, os.O_CREATE|os.O_WRONLY, 0o755)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := io.Copy(to, from); err != nil {
		t.Fatal(err)
	}
	if err := to.Close(); err != nil {
		t.Fatal(err)
	}
	return path
}

// What the system lets nobody write is said to be so, and can be read all the same.
func TestWhatCannotBeWrittenIsSaid(t *testing.T) {
	oneAtATime(t)
	for name, test := range map[string]struct {
		folder, file, lock os.FileMode
		want               string
	}{
		"all may":             {0o777, 0o666, 0o666, "opened"},
		"a read-only file":    {0o777, 0o444, 0o666, "book.read-only read"},
		"a read-only lock":    {0o777, 0o666, 0o444, "book.read-only read"},
		"a read-only folder":  {0o555, 0o444, 0o444, "book.read-only read"},
		"a file not for us":   {0o777, 0, 0o666, "book.unreadable"},
		"a folder not for us": {0, 0o666, 0o666, "book.unreadable"},
	} {
		t.Run(name, func(t *testing.T) {
			dir := publicFolder(t)
			path := filepath.Join(dir, "book.sley")
			filled(t, path).Close()
			for what, how := range map[string]os.FileMode{path: test.file, lockPath(path): test.lock} {
				if err := os.Chmod(what, how); err != nil {
					t.Fatal(err)
				}
			}
			if err := os.Chmod(dir, test.folder); err != nil {
				t.Fatal(err)
			}
			before := ""
			if os.Geteuid() == 0 {
				before = hash(t, path)
			}
			if got := asStranger(t, path); got != test.want {
				t.Errorf("%q, not %q", got, test.want)
			}
			os.Chmod(dir, 0o777)
			if before != "" && test.want != "opened" && hash(t, path) != before {
				t.Error("the file was changed")
			}
		})
	}
	t.Run("no book in a read-only folder", func(t *testing.T) {
		dir := publicFolder(t)
		os.Chmod(dir, 0o555)
		for _, path := range []string{filepath.Join(dir, "book.sley"), filepath.Join(dir, "new", "book.sley")} {
			if got := asStranger(t, path); got != record.ReadOnly {
				t.Errorf("%s: %q", path, got)
			}
		}
	})
}

// A disk that is really full, where one may be made; the pages of the file are counted in
// TestAFullBookGoesOn everywhere.
func TestAFullDiskLosesNothing(t *testing.T) {
	oneAtATime(t)
	dir := t.TempDir()
	if os.Geteuid() == 0 && exec.Command("mount", "-t", "tmpfs", "-o", "size=8m", "tmpfs", dir).Run() == nil {
		t.Cleanup(func() {
			if err := exec.Command("umount", dir).Run(); err != nil {
				t.Error("umount:", err)
			}
		})
	} else {
		t.Log("no disk could be made: only so much may be written")
		limited(t, 3<<20)
	}
	b, err := Open(t.Context(), Asked{Path: filepath.Join(dir, "book.sley"), Now: at(noon), Create: true})
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	filler := filepath.Join(dir, "filler")
	os.WriteFile(filler, make([]byte, 5<<20), 0o600) // as much of it as there is room for
	fillUp(t, b, func() {
		if _, err := b.KeepToday(t.Context()); !record.Is(err, record.Full) {
			t.Errorf("a copy without room: %v", err)
		}
		if left, _ := filepath.Glob(filepath.Join(CopyFolder(b.path), "*")); len(left) > 0 {
			t.Errorf("a copy without room leaves %q", left)
		}
		os.Remove(filler)
		unlimited(t)
	})
}

// limited lets this process write no file larger than that, until unlimited.
func limited(t *testing.T, bytes uint64) {
	t.Helper()
	if err := syscall.Getrlimit(syscall.RLIMIT_FSIZE, &before); err != nil {
		t.Fatal(err)
	}
	if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &syscall.Rlimit{Cur: bytes, Max: before.Max}); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { unlimited(t) })
}

var before syscall.Rlimit

func unlimited(t *testing.T) {
	t.Helper()
	if before.Max == 0 {
		return
	}
	if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &before); err != nil {
		t.Error(err)
	}
}

// The lock is free when the book is closed, also while another process still has the file
// that was locked, as one does for the moment between its beginning and its own program.
func TestAClosedBookIsFreeAtOnce(t *testing.T) {
	b := scratch(t)
	other, err := syscall.Dup(int(b.lock.file.Fd()))
	if err != nil {
		t.Fatal(err)
	}
	defer syscall.Close(other)
	b.Close()
	open(t, b.Path())
}
