package book

import (
	"context"
	"errors"
	"os"
	"time"

	"sley/internal/trade/record"
)

// leastFile is the size of the smallest database, in bytes.
const leastFile = 512

// peek reads the header of a file without changing a byte of it. A file that a first
// sley was killed over is the exception: what it began is taken back.
func peek(ctx context.Context, path string) (state, error) {
	if info, err := os.Stat(path); errors.Is(err, os.ErrNotExist) || err == nil && info.Size() == 0 {
		return state{}, nil
	}
	s, err := stateIn(ctx, path, peeking)
	if halfWritten(err) {
		return stateIn(ctx, path, mending)
	}
	return s, err
}

func stateIn(ctx context.Context, path string, m mode) (state, error) {
	db, err := connect(path, m, 1)
	if err != nil {
		return state{}, err
	}
	defer db.Close()
	s, err := stateOf(ctx, db)
	return s, troubleOf(path, err)
}

// lookForLoss says when something is gone that must be there: the book itself where it
// has copies, all that was in it, or the journal of a sley that was killed.
func (b *Book) lookForLoss(ctx context.Context) error {
	info, err := os.Stat(b.path)
	journal, noJournal := os.Stat(walPath(b.path))
	switch {
	case errors.Is(err, os.ErrNotExist):
		if whole, ok := newestWhole(ctx, b.path, b.now()); ok {
			return &record.Trouble{Code: record.Missing, Path: b.path, Copy: whole}
		}
		return nil
	case err != nil:
		return &record.Trouble{Code: record.Unreadable, Path: b.path, Err: err}
	case 0 < info.Size() && info.Size() < leastFile: // SQLite takes it for an empty one
		return b.found(ctx, &record.Trouble{Code: record.NotABook, Path: b.path})
	case info.Size() == 0:
		whole, ok := newestWhole(ctx, b.path, b.now())
		if ok || noJournal == nil && journal.Size() > 0 {
			return &record.Trouble{Code: record.Damaged, Path: b.path, Found: "the file is empty", Copy: whole}
		}
	case b.lock.left.Journal && errors.Is(noJournal, os.ErrNotExist):
		return b.lostJournal(ctx)
	}
	return nil
}

// lostJournal is the trouble of a book whose newest changes are gone with its journal.
// The copy to go on from is the newest whole one or, where it holds more, what is left.
func (b *Book) lostJournal(ctx context.Context) error {
	t := &record.Trouble{Code: record.Damaged, Path: b.path, Found: "the journal " + walPath(b.path) + " is missing"}
	most := int64(-1)
	whole, _ := newestWhole(ctx, b.path, b.now())
	for _, path := range []string{whole, b.path} {
		if n, err := holds(ctx, path); err == nil && n > most {
			t.Copy, most = path, n
		}
	}
	if info, err := os.Stat(walPath(b.path)); err == nil && info.Size() == 0 {
		os.Remove(walPath(b.path)) // made by looking: left there, the next to open would miss nothing
	}
	return t
}

// holds is how many versions and events a whole book has; both are only ever added.
func holds(ctx context.Context, path string) (n int64, err error) {
	if err := Check(ctx, path); err != nil {
		return 0, err
	}
	b, err := look(ctx, path)
	if err != nil {
		return 0, err
	}
	defer b.Close()
	err = b.reader.QueryRowContext(ctx, "SELECT (SELECT count(*) FROM versions) + (SELECT count(*) FROM events)").Scan(&n)
	return n, err
}

func walPath(book string) string { return book + "-wal" }

// found adds to damage where the newest whole copy is. What is no book, where there are
// copies of one, is a damaged one.
func (b *Book) found(ctx context.Context, err error) error {
	err = troubleOf(b.path, err)
	var t *record.Trouble
	if !errors.As(err, &t) || (t.Code != record.Damaged && t.Code != record.NotABook) {
		return err
	}
	t.Path = b.path
	if whole, ok := newestWhole(ctx, b.path, b.now()); ok {
		t.Code, t.Copy = record.Damaged, whole
	}
	return t
}

// Peek opens a book that may be another process's, only to read it: to copy and to
// export. Trouble: Newer, Older, NotABook, Damaged, Missing, Unreadable.
func Peek(ctx context.Context, path string) (*Book, error) {
	steps, err := migrations(schema)
	if err != nil {
		return nil, err
	}
	b, err := look(ctx, path)
	if err != nil {
		return nil, err
	}
	if b.from < len(steps) {
		b.Close()
		return nil, &record.Trouble{Code: record.Older, Path: path}
	}
	return b, nil
}

// look opens a book of this version or an older one, only to read it.
func look(ctx context.Context, path string) (*Book, error) {
	path = real(path)
	if err := stat(path); err != nil {
		return nil, err
	}
	steps, err := migrations(schema)
	if err != nil {
		return nil, err
	}
	how := peeking
	now, err := stateIn(ctx, path, how)
	_, journal := os.Stat(walPath(path))
	if errors.Is(journal, os.ErrNotExist) && (record.Is(err, record.Unreadable) || record.Is(err, record.ReadOnly)) {
		how = resting
		now, err = stateIn(ctx, path, how)
	}
	if err != nil {
		return nil, err
	}
	if err := now.judge(path, len(steps)); err != nil {
		return nil, err
	}
	if now.empty() {
		return nil, &record.Trouble{Code: record.NotABook, Path: path}
	}
	b := &Book{path: path, from: now.version, now: time.Now, how: how}
	b.reader, err = connect(path, how, poolSize)
	return b, err
}
