package book

import (
	"cmp"
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

// The names of copies: why-on-day.sley.
const (
	dailyName  = "day"
	onDay      = "-on-"
	stampOfDay = "2006-01-02-150405"
)

// kept is a copy in the folder.
type kept struct {
	path, why, day string // day is 2006-01-02, what follows it in the name left out
	made           time.Time
}

// keptOf are the copies of a book, the newest day first; within a day the file that was
// written last.
func keptOf(book string) []kept {
	entries, _ := os.ReadDir(CopyFolder(book)) // no folder: no copies
	var out []kept
	for _, e := range entries {
		why, day, ok := strings.Cut(strings.TrimSuffix(e.Name(), filepath.Ext(fileName)), onDay)
		info, err := e.Info()
		if !ok || err != nil || len(day) < len(time.DateOnly) || filepath.Ext(e.Name()) != filepath.Ext(fileName) {
			continue
		}
		day = day[:len(time.DateOnly)]
		out = append(out, kept{filepath.Join(CopyFolder(book), e.Name()), why, day, info.ModTime()})
	}
	slices.SortStableFunc(out, func(a, b kept) int {
		return cmp.Or(strings.Compare(b.day, a.day), b.made.Compare(a.made))
	})
	return out
}

// Copies lists the copies of a book, the newest first: by the day in their names, or by
// the time of the file where two are of a day. Copies of days after now were made while
// the clock was wrong, and come last.
func Copies(book string, now time.Time) []string {
	today := now.Format(time.DateOnly)
	var out, later []string
	for _, k := range keptOf(book) {
		if k.day > today {
			later = append(later, k.path)
		} else {
			out = append(out, k.path)
		}
	}
	return append(out, later...)
}

// KeepToday copies the book once a day and lets the oldest daily copies go. It gives the
// copy it made, or nothing where today's is there. Copies of later days, made while the
// clock was wrong, are neither let go nor written over, and stand for no other day.
func (b *Book) KeepToday(ctx context.Context) (string, error) {
	today := b.now().Format(time.DateOnly)
	daily := slices.DeleteFunc(keptOf(b.path), func(k kept) bool { return k.why != dailyName || k.day > today })
	if len(daily) > 0 && daily[0].day == today {
		return "", nil
	}
	path := filepath.Join(CopyFolder(b.path), dailyName+onDay+today+filepath.Ext(fileName))
	if err := b.Copy(ctx, path); err != nil {
		return "", err
	}
	for i, old := range daily {
		if i >= mostCopies-1 {
			os.Remove(old.path) // one that cannot be let go today is tried again tomorrow
		}
	}
	return path, nil
}

// keepBefore copies a book before it is migrated to that version.
func (b *Book) keepBefore(ctx context.Context, version int) (string, error) {
	name := fmt.Sprintf("before-version-%d%s%s", version, onDay, b.now().Format(stampOfDay))
	path := unused(filepath.Join(CopyFolder(b.path), name), filepath.Ext(fileName))
	return path, b.copyFrom(ctx, b.writer, path)
}

// unused is base with that end, and a number between them where a file has that name.
func unused(base, end string) string {
	path := base + end
	for i := 2; ; i++ {
		if _, err := os.Lstat(path); err != nil { // not there, or the folder is none
			return path
		}
		path = fmt.Sprintf("%s-%d%s", base, i, end)
	}
}

// Copy writes a whole copy of the book as it stands to a new file. Trouble: Exists,
// Full, ReadOnly, FolderFailed, Damaged.
func (b *Book) Copy(ctx context.Context, path string) error {
	if b.closed.Load() {
		return &record.Trouble{Code: record.Closed, Path: b.path}
	}
	// A connection that may only query cannot write a copy either; one that cannot write
	// to the file it reads can.
	db, err := connect(b.path, b.how, 1)
	if err != nil {
		return err
	}
	defer db.Close()
	return b.copyFrom(ctx, db, path)
}

// copyFrom writes to a file beside it, and gives that its name when it is whole.
func (b *Book) copyFrom(ctx context.Context, db querier, path string) error {
	if _, err := os.Lstat(path); err == nil {
		return &record.Trouble{Code: record.Exists, Path: path}
	}
	if err := makeFolder(filepath.Dir(path)); err != nil {
		return err
	}
	part := path + ".part"
	defer removePart(part)
	removePart(part) // of one that was killed
	if err := vacuumInto(ctx, db, part); err != nil {
		return b.copyTrouble(path, err)
	}
	if err := os.Rename(part, path); err != nil {
		return fileTrouble(path, err)
	}
	return syncFolder(filepath.Dir(path))
}

// copyTrouble is that of a copy: what cannot be opened or written is the new file.
func (b *Book) copyTrouble(path string, err error) error {
	err = troubleOf(path, err)
	var t *record.Trouble
	if errors.As(err, &t) && t.Code == record.Unreadable {
		t.Code = record.ReadOnly
	}
	return err
}

// fileTrouble is what the system's refusal to change a file means.
func fileTrouble(path string, err error) error {
	if isFull(err) {
		return &record.Trouble{Code: record.Full, Path: path, Err: err}
	}
	return &record.Trouble{Code: record.ReadOnly, Path: path, Err: err}
}

func removePart(path string) {
	os.Remove(path)
	os.Remove(path + "-journal")
}

// vacuumInto has SQLite write a copy that holds neither gaps nor a journal, checks it and
// waits until it is on the disk.
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
	if err := Check(ctx, path); err != nil {
		return err
	}
	return makeLast(path)
}

// makeLast waits until a file is on the disk.
func makeLast(path string) error {
	file, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return fileTrouble(path, err)
	}
	if err := errors.Join(file.Sync(), file.Close()); err != nil {
		return fileTrouble(path, err)
	}
	return nil
}

// newestWhole is the newest copy of a book that has nothing wrong.
func newestWhole(ctx context.Context, book string, now time.Time) (string, bool) {
	for _, path := range Copies(book, now) {
		if Check(ctx, path) == nil {
			return path, true
		}
	}
	return "", false
}

// NewestWhole is the newest copy of a book that has nothing wrong. Trouble: Missing where
// there is none.
func NewestWhole(ctx context.Context, book string, now time.Time) (string, error) {
	if path, ok := newestWhole(ctx, book, now); ok {
		return path, nil
	}
	return "", &record.Trouble{Code: record.Missing, Path: CopyFolder(book)}
}
