package book

import (
	"errors"
	"os"

	"golang.org/x/sys/windows"
)

// errReadOnlyFS is what the system says of a disk that nothing can be written to.
var errReadOnlyFS error = windows.ERROR_WRITE_PROTECT

// isFull reports whether the disk is full.
func isFull(err error) bool { return errors.Is(err, windows.ERROR_DISK_FULL) }

// mayUse reports whether a file may be written; where there is none, it may be made.
func mayUse(path string) bool {
	info, err := os.Stat(path)
	return err != nil || info.Mode().Perm()&0o200 != 0
}

// lockedAt is the byte that is locked: Windows lets nobody read what is locked, and
// what the file says must be read.
const lockedAt = 1 << 30

// lockFile takes the system's lock on the file, or fails with errHeld.
func lockFile(file *os.File) error {
	at := windows.Overlapped{Offset: lockedAt}
	const how = windows.LOCKFILE_EXCLUSIVE_LOCK | windows.LOCKFILE_FAIL_IMMEDIATELY
	err := windows.LockFileEx(windows.Handle(file.Fd()), how, 0, 1, 0, &at)
	if errors.Is(err, windows.ERROR_LOCK_VIOLATION) || errors.Is(err, windows.ERROR_IO_PENDING) {
		return errHeld
	}
	return err
}

// freeLock frees the lock at once: closing the file alone does so some time later.
func freeLock(file *os.File) {
	at := windows.Overlapped{Offset: lockedAt}
	windows.UnlockFileEx(windows.Handle(file.Fd()), 0, 1, 0, &at)
}

// syncFolder does nothing: Windows writes names with the file.
func syncFolder(string) error { return nil }
