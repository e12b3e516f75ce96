//go:build unix

package book

import (
	"errors"
	"os"

	"golang.org/x/sys/unix"
)

// errReadOnlyFS is what the system says of a disk that nothing can be written to.
var errReadOnlyFS error = unix.EROFS

// isFull reports whether the disk, or what we may use of it, is full.
func isFull(err error) bool { return errors.Is(err, unix.ENOSPC) || errors.Is(err, unix.EDQUOT) }

// lockFile takes the system's lock on the whole file, or fails with errHeld.
func lockFile(file *os.File) error {
	err := unix.Flock(int(file.Fd()), unix.LOCK_EX|unix.LOCK_NB)
	if errors.Is(err, unix.EWOULDBLOCK) {
		return errHeld
	}
	return err
}

// syncFolder makes the names in a folder last.
func syncFolder(path string) error {
	dir, err := os.Open(path)
	if err != nil {
		return err
	}
	defer dir.Close()
	return dir.Sync()
}
