package book

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"sley/internal/trade/record"
)

// mostCopies is how many daily copies are kept.
const mostCopies = 10

// CopyFolder is where the copies of a book are kept.
func CopyFolder(book string) string {
	return strings.TrimSuffix(book, filepath.Ext(book)) + "-copies"
}

// Copies lists the copies of a book, the newest first: by what their names say, the day,
// or by the time of the file where two are of a day.
func Copies(book string) []string {
	found, _ := filepath.Glob(filepath.Join(CopyFolder(book), "*"+filepath.Ext(fileName)))
	slices.SortFunc(found, func(a, b string) int { return strings.Compare(dayOf(b), dayOf(a)) })
	return found
}

// dayOf is the day in the name of a copy, with what stands behind it.
func dayOf(path string) string {
	name := filepath.Base(path)
	if before, day, ok := strings.Cut(name, "-on-"); ok {
		return day + before
	}
	return name
}

// daily are the copies that were made because a day began.
func daily(book string) []string {
	return slices.DeleteFunc(Copies(book), func(path string) bool {
		return !strings.HasPrefix(filepath.Base(path), "day-on-")
	})
}

// KeepToday copies the book once a day and lets the oldest daily copies go. It gives the
// copy it made, or nothing where today's is there. A clock that was set back makes no
// copy older: a copy of a later day stays, and counts as today's.
func (b *Book) KeepToday(ctx context.Context) (string, error) {
	today := filepath.Join(CopyFolder(b.path), "day-on-"+b.now().Format(time.DateOnly)+filepath.Ext(fileName))
	kept := daily(b.path)
	if len(kept) > 0 && dayOf(kept[0]) >= dayOf(today) {
		return "", nil
	}
	if err := b.Copy(ctx, today); err != nil {
		return "", err
	}
	for i, old := range kept {
		if i >= mostCopies-1 {
			os.Remove(old)
		}
	}
	return today, nil
}

// keepBefore copies a book before it is migrated from that version.
func (b *Book) keepBefore(ctx context.Context, version int) (string, error) {
	stamp := b.now().Format("2006-01-02-150405")
	name := fmt.Sprintf("before-version-%d-on-%s%s", version+1, stamp, filepath.Ext(fileName))
	path := filepath.Join(CopyFolder(b.path), name)
	return path, b.copyFrom(ctx, b.writer, path)
}

// Copy writes a whole copy of the book as it stands to a new file. Trouble: Exists,
// Full, ReadOnly, FolderFailed.
func (b *Book) Copy(ctx context.Context, path string) error {
	// A connection that may only query cannot write a copy either; one that cannot write
	// to the file it reads can.
	db, err := connect(b.path, peeking, 1)
	if err != nil {
		return err
	}
	defer db.Close()
	return b.copyFrom(ctx, db, path)
}

func (b *Book) copyFrom(ctx context.Context, db querier, path string) error {
	if _, err := os.Stat(path); err == nil {
		return &record.Trouble{Code: record.Exists, Path: path}
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return &record.Trouble{Code: record.FolderFailed, Path: filepath.Dir(path), Err: err}
	}
	part := path + ".part"
	defer os.Remove(part)
	os.Remove(part)
	if err := vacuumInto(ctx, db, part); err != nil {
		return troubleOf(path, err)
	}
	return errors.Join(makeLast(part), os.Rename(part, path), syncFolder(filepath.Dir(path)))
}

// vacuumInto has SQLite write a copy that holds neither gaps nor a journal, and checks it.
func vacuumInto(ctx context.Context, db querier, path string) error {
	rows, err := db.QueryContext(ctx, "VACUUM INTO ?", path)
	if err != nil {
		return err
	}
	for rows.Next() {
	}
	if err := errors.Join(rows.Err(), rows.Close()); err != nil {
		return err
	}
	return Check(ctx, path)
}

// makeLast waits until a file is on the disk.
func makeLast(path string) error {
	file, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return err
	}
	return errors.Join(file.Sync(), file.Close())
}

// Check reads all of a book that nobody writes to, as a copy, and says what is wrong.
// Trouble: Damaged, NotABook, Newer, Missing.
func Check(ctx context.Context, path string) error {
	b, err := look(ctx, path)
	if err != nil {
		return err
	}
	defer b.Close()
	return b.Check(ctx)
}

// Check reads all of the book and says what is wrong with it: whether the pages and
// indexes of the file hang together, whether every row refers to one that is there, and
// whether every version opens.
func (b *Book) Check(ctx context.Context) error {
	for _, check := range []string{"PRAGMA integrity_check", "PRAGMA foreign_key_check"} {
		if err := sound(ctx, b.reader, check); err != nil {
			return b.damage(err)
		}
	}
	return b.damage(b.checkVersions(ctx))
}

func (b *Book) damage(err error) error {
	err = troubleOf(b.path, err)
	var t *record.Trouble
	if errors.As(err, &t) {
		t.Path = b.path
	}
	return err
}

// newestWhole is the newest copy of a book that has nothing wrong.
func newestWhole(ctx context.Context, book string) (string, bool) {
	for _, path := range Copies(book) {
		if Check(ctx, path) == nil {
			return path, true
		}
	}
	return "", false
}

// NewestWhole is the newest copy of a book that has nothing wrong. Trouble: Missing where
// there is none.
func NewestWhole(ctx context.Context, book string) (string, error) {
	if path, ok := newestWhole(ctx, book); ok {
		return path, nil
	}
	return "", &record.Trouble{Code: record.Missing, Path: CopyFolder(book)}
}

// Restore puts a copy in the book's place and moves what stood there aside, journal and
// all; it gives the place of that. The book must not be open. Trouble: InUse, and what
// is wrong with the copy.
func Restore(ctx context.Context, book, from string, now time.Time) (aside string, err error) {
	if err := Check(ctx, from); err != nil {
		return "", err
	}
	lock, err := acquire(book, Owner{PID: os.Getpid(), Since: now})
	if err != nil {
		return "", err
	}
	defer lock.release()
	part := book + ".part"
	os.Remove(part)
	defer os.Remove(part)
	copied, err := look(ctx, from)
	if err != nil {
		return "", err
	}
	defer copied.Close()
	if err := errors.Join(vacuumInto(ctx, copied.reader, part), makeLast(part)); err != nil {
		return "", troubleOf(book, err)
	}
	if aside, err = putAside(book, now); err != nil {
		return aside, err
	}
	return aside, errors.Join(os.Rename(part, book), syncFolder(filepath.Dir(book)))
}

// putAside renames a book's file and what SQLite keeps beside it.
func putAside(book string, now time.Time) (string, error) {
	base := fmt.Sprintf("%s.aside-on-%s", book, now.Format("2006-01-02-150405"))
	aside := base
	for i := 2; ; i++ {
		if _, err := os.Stat(aside); errors.Is(err, os.ErrNotExist) {
			break
		}
		aside = fmt.Sprintf("%s-%d", base, i)
	}
	for _, end := range []string{"-wal", "-shm", ""} {
		if err := os.Rename(book+end, aside+end); err != nil && !errors.Is(err, os.ErrNotExist) {
			return aside, &record.Trouble{Code: record.ReadOnly, Path: book + end, Err: err}
		}
	}
	return aside, nil
}
