//go:build unix

package book

import (
	"errors"
	"os"
	"path/filepath"

	"golang.org/x/sys/unix"
)

// errReadOnlyFS is what the system says of a disk that nothing can be written to.
var errReadOnlyFS error = unix.EROFS

// isFull reports whether the disk, or what we may use of it, is full.
func isFull(err error) bool { return errors.Is(err, unix.ENOSPC) || errors.Is(err, unix.EDQUOT) }

// mayUse reports whether we may read and write a file or, where there is none, make it.
func mayUse(path string) bool {
	if _, err := os.Lstat(path); err != nil {
		path = filepath.Dir(path)
	}
	return unix.Access(path, unix.R_OK|unix.W_OK) == nil
}

// lockFile takes the system's lock on the whole file, or fails with errHeld.
func lockFile(file *os.File) error {
	err := unix.Flock(int(file.Fd()), unix.LOCK_EX|unix.LOCK_NB)
	if errors.Is(err, unix.EWOULDBLOCK) {
		return errHeld
	}
	return err
}

// freeLock frees the lock at once. Closing the file alone does not while a process that
// was begun meanwhile still has it, for the moment before it becomes another program.
func freeLock(file *os.File) { unix.Flock(int(file.Fd()), unix.LOCK_UN) }

// syncFolder makes the names in a folder last.
func syncFolder(path string) error {
	dir, err := os.Open(path)
	if err != nil {
		return err
	}
	defer dir.Close()
	return dir.Sync()
}
