package book

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"time"
)

// Restore puts a copy in the book's place and moves what stood there aside, journal and
// all; it gives the place of that, or nothing where nothing stood there. The copy stays
// where it is. Killed at any moment, it leaves a file in the book's place: the old one or
// the new. The book must not be open. Trouble: InUse, and what is wrong with the copy.
func Restore(ctx context.Context, book, from string, now time.Time) (aside string, err error) {
	book = real(book)
	if err := makeFolder(filepath.Dir(book)); err != nil {
		return "", err
	}
	lock, err := acquire(book, Owner{PID: os.Getpid(), Since: now})
	if err != nil {
		return "", err
	}
	aside, err = restore(ctx, book, from, now)
	if err != nil {
		lock.giveUp()
		return aside, troubleOf(book, err)
	}
	lock.release()
	return aside, nil
}

func restore(ctx context.Context, book, from string, now time.Time) (aside string, err error) {
	part := book + ".part"
	removePart(part)
	defer removePart(part)
	if err := copyTo(ctx, part, from); err != nil {
		return "", err
	}
	if aside, err = putAside(book, now); err != nil {
		return aside, err
	}
	if err := os.Rename(part, book); err != nil {
		return aside, fileTrouble(book, err)
	}
	return aside, syncFolder(filepath.Dir(book))
}

// copyTo writes a whole copy of what may be a copy itself.
func copyTo(ctx context.Context, part, from string) error {
	if err := Check(ctx, from); err != nil {
		return err
	}
	copied, err := look(ctx, from)
	if err != nil {
		return err
	}
	defer copied.Close()
	return vacuumInto(ctx, copied.reader, part)
}

// putAside gives a book's file a second name, where the system can, so that its own is
// never without a file; then it moves the journal, which must not meet another book.
func putAside(book string, now time.Time) (string, error) {
	if _, err := os.Lstat(book); errors.Is(err, os.ErrNotExist) {
		return "", nil
	}
	aside := unused(book+".aside-on-"+now.Format(stampOfDay), "")
	if os.Link(book, aside) != nil {
		if err := os.Rename(book, aside); err != nil {
			return aside, fileTrouble(book, err)
		}
	}
	for _, end := range []string{"-wal", "-shm", "-journal"} {
		if err := os.Rename(book+end, aside+end); err != nil && !errors.Is(err, os.ErrNotExist) {
			return aside, fileTrouble(book+end, err)
		}
	}
	return aside, nil
}
