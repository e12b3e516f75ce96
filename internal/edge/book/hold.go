package book

import (
	"context"
	"errors"
	"os"
	"path/filepath"

	"sley/internal/trade/record"
)

// real is where a path leads: two names of one book must have one lock.
func real(path string) string {
	if at, err := filepath.EvalSymlinks(path); err == nil {
		return at
	}
	return path
}

// hold sees to the folder and takes the lock.
func (b *Book) hold(ctx context.Context, asked Asked) error {
	err := stat(b.path)
	missing := record.Is(err, record.Missing)
	if err != nil && !missing {
		return err
	}
	if missing && !asked.Create {
		copied, _ := newestWhole(ctx, b.path, b.now())
		return &record.Trouble{Code: record.Missing, Path: b.path, Copy: copied}
	}
	folder := filepath.Dir(b.path)
	if err := makeFolder(folder); err != nil {
		return err
	}
	b.lock, err = acquire(b.path, Owner{PID: os.Getpid(), Since: asked.Now()})
	return err
}

// stat says why there is no file of that name. Trouble: Missing, NotABook, Unreadable.
func stat(path string) error {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, os.ErrNotExist):
		return &record.Trouble{Code: record.Missing, Path: path}
	case err != nil:
		return &record.Trouble{Code: record.Unreadable, Path: path, Err: err}
	case !info.Mode().IsRegular(): // a folder, or a pipe, which would be waited for
		return &record.Trouble{Code: record.NotABook, Path: path}
	}
	return nil
}

// makeFolder makes a folder for books or copies, unless it is there.
func makeFolder(path string) error {
	err := os.MkdirAll(path, 0o700)
	if err == nil {
		return nil
	}
	if isReadOnly(err) {
		return &record.Trouble{Code: record.ReadOnly, Path: path, Err: err}
	}
	return &record.Trouble{Code: record.FolderFailed, Path: path, Err: err}
}
