// Package book keeps a weaver's book: one SQLite file that holds everything she plans,
// weaves and learns. An answered change is on the disk; versions and events are only
// ever added. Nothing outside SQLite opens the file while it is a book.
package book

import (
	"context"
	"database/sql"
	"errors"
	"os"
	"path/filepath"
	"sync"
	"time"

	"sley/internal/trade/record"
)

// Asked is how a book is to be opened.
type Asked struct {
	Path   string
	Now    func() time.Time
	Create bool // make it, when there is none
	// NoCheck leaves the file unread when it is opened; it is checked all the same where
	// the sley before was killed.
	NoCheck bool
	steps   []migration // of tests; none: the schema
}

// Book is an open book. Its methods may be called from many goroutines.
type Book struct {
	path   string
	now    func() time.Time
	lock   *Lock // nil: somebody else's, which is only read
	writer *sql.DB
	reader *sql.DB
	turn   sync.Mutex // one writer at a time
	fresh  bool
	from   int // the version it had when it was opened
}

// poolSize is how many read at once.
const poolSize = 4

// Open opens the book, or makes it, and holds it until it is closed. Trouble: InUse,
// Newer, NotABook, Damaged, Full, ReadOnly, Missing, NoJournal, Unreadable.
func Open(ctx context.Context, asked Asked) (*Book, error) {
	steps := asked.steps
	if steps == nil {
		var err error
		if steps, err = migrations(schema); err != nil {
			return nil, err
		}
	}
	b := &Book{path: asked.Path, now: asked.Now}
	if err := b.hold(asked); err != nil {
		return nil, err
	}
	if err := b.prepare(ctx, asked, steps); err != nil {
		b.Close()
		return nil, troubleOf(asked.Path, err)
	}
	return b, nil
}

// hold sees to the folder and takes the lock.
func (b *Book) hold(asked Asked) error {
	_, err := os.Stat(asked.Path)
	if missing := errors.Is(err, os.ErrNotExist); missing && !asked.Create {
		return &record.Trouble{Code: record.Missing, Path: asked.Path}
	} else if err != nil && !missing {
		return &record.Trouble{Code: record.Unreadable, Path: asked.Path, Err: err}
	}
	folder := filepath.Dir(asked.Path)
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return &record.Trouble{Code: record.FolderFailed, Path: folder, Err: err}
	}
	b.lock, err = acquire(asked.Path, Owner{PID: os.Getpid(), Since: asked.Now()})
	return err
}

// prepare looks at the file before anything writes to it, then opens it, checks it and
// takes it to the newest version.
func (b *Book) prepare(ctx context.Context, asked Asked, steps []migration) error {
	now, err := peek(ctx, asked.Path)
	if err != nil {
		return b.found(ctx, err)
	}
	if err := now.judge(asked.Path, len(steps)); err != nil {
		return err
	}
	b.fresh, b.from = now.empty(), now.version
	if b.writer, err = connect(asked.Path, writing, 1); err != nil {
		return err
	}
	if b.reader, err = connect(asked.Path, reading, poolSize); err != nil {
		return err
	}
	if !b.fresh && (!asked.NoCheck || b.lock.left.PID != 0) {
		if err := b.found(ctx, b.quickCheck(ctx)); err != nil {
			return err
		}
	}
	return b.renew(ctx, steps)
}

// renew migrates a book, once it has been copied.
func (b *Book) renew(ctx context.Context, steps []migration) error {
	if b.from >= len(steps) {
		return nil
	}
	if !b.fresh {
		if _, err := b.keepBefore(ctx, b.from); err != nil {
			return err
		}
	}
	if err := migrate(ctx, b.writer, b.from, steps); err != nil {
		return err
	}
	return syncFolder(filepath.Dir(b.path))
}

// peek reads the header of a file without changing a byte of it.
func peek(ctx context.Context, path string) (state, error) {
	if info, err := os.Stat(path); errors.Is(err, os.ErrNotExist) || err == nil && info.Size() == 0 {
		return state{}, nil
	}
	db, err := connect(path, peeking, 1)
	if err != nil {
		return state{}, err
	}
	defer db.Close()
	s, err := stateOf(ctx, db)
	return s, troubleOf(path, err)
}

// quickCheck asks SQLite whether the file hangs together.
func (b *Book) quickCheck(ctx context.Context) error {
	return troubleOf(b.path, sound(ctx, b.reader, "PRAGMA quick_check"))
}

// found adds to damage where the newest whole copy is.
func (b *Book) found(ctx context.Context, err error) error {
	var t *record.Trouble
	if !errors.As(err, &t) || (t.Code != record.Damaged && t.Code != record.NotABook) {
		return err
	}
	t.Path = b.path
	if whole, ok := newestWhole(ctx, b.path); ok {
		t.Code, t.Copy = record.Damaged, whole
	}
	return t
}

// Peek opens a book that may be another process's, only to read it: to copy and to
// export. Trouble: Newer, Older, NotABook, Damaged, Missing, Unreadable.
func Peek(ctx context.Context, path string) (*Book, error) {
	b, err := look(ctx, path)
	if err != nil {
		return nil, err
	}
	if steps, err := migrations(schema); err != nil || b.from < len(steps) {
		b.Close()
		return nil, errors.Join(err, &record.Trouble{Code: record.Older, Path: path})
	}
	return b, nil
}

// look opens a book of this version or an older one, only to read it.
func look(ctx context.Context, path string) (*Book, error) {
	if _, err := os.Stat(path); err != nil {
		return nil, &record.Trouble{Code: record.Missing, Path: path, Err: err}
	}
	steps, err := migrations(schema)
	if err != nil {
		return nil, err
	}
	now, err := peek(ctx, path)
	if err != nil {
		return nil, err
	}
	if err := now.judge(path, len(steps)); err != nil {
		return nil, err
	}
	if now.empty() {
		return nil, &record.Trouble{Code: record.NotABook, Path: path}
	}
	b := &Book{path: path, from: now.version}
	b.reader, err = connect(path, peeking, poolSize)
	return b, err
}

// Path is the book's file.
func (b *Book) Path() string { return b.path }

// Fresh reports whether the book was made just now, and holds nothing.
func (b *Book) Fresh() bool { return b.fresh }

// Version is the version of the schema that the book had when it was opened.
func (b *Book) Version() int { return b.from }

// Lock is the book's lock; nil where the book is another's.
func (b *Book) Lock() *Lock { return b.lock }

// Serving writes into the lock where the book's page is and what a request must carry.
func (b *Book) Serving(address, token string) error {
	return b.lock.Say(Owner{PID: os.Getpid(), Address: address, Token: token, Since: b.now()})
}

// LeftBehind is what a sley that was killed while it had the book left in its lock.
func (l *Lock) LeftBehind() Owner { return l.left }

// Close lets go of the file and of the lock, in that order.
func (b *Book) Close() error {
	var failed []error
	for _, db := range []*sql.DB{b.reader, b.writer} { // the writer last: it puts the journal into the file
		if db != nil {
			failed = append(failed, db.Close())
		}
	}
	if b.lock != nil {
		b.lock.release()
	}
	return errors.Join(failed...)
}
