// Package book keeps a weaver's book: one SQLite file that holds everything she plans,
// weaves and learns. An answered change is on the disk; versions and events are only
// ever added. Nothing outside SQLite opens the file while it is a book.
package book

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"sync/atomic"
	"time"
)

// Asked is how a book is to be opened.
type Asked struct {
	Path   string
	Now    func() time.Time
	Create bool // make it, when there is none
	// NoCheck leaves the file unread when it is opened, unless the sley before did not
	// close it. Without it, a file of more than mostChecked bytes is left unread as well.
	NoCheck bool

	steps   []migration                        // of tests; none: the schema
	between func(version, statement int) error // of tests: runs before a statement of a migration
	set     func(mode, []pragma) []pragma      // of tests: other settings of connections
}

// mostChecked is how large a file is read whole whenever it is opened, in bytes: reading
// one of that size takes two tenths of a second.
const mostChecked = 12 << 20

// Book is an open book. Its methods may be called from many goroutines.
type Book struct {
	path   string
	now    func() time.Time
	lock   *Lock // nil: somebody else's, which is only read
	writer *sql.DB
	reader *sql.DB
	closed atomic.Bool
	fresh  bool
	from   int  // the version it had when it was opened
	how    mode // of connections that only look
	set    func(mode, []pragma) []pragma
}

// poolSize is how many read at once.
const poolSize = 4

// Open opens the book, or makes it, and holds it until it is closed. Trouble: InUse,
// Newer, NotABook, Damaged, Full, ReadOnly, Missing, NoJournal, Unreadable, FolderFailed.
func Open(ctx context.Context, asked Asked) (*Book, error) {
	steps := asked.steps
	if steps == nil {
		var err error
		if steps, err = migrations(schema); err != nil {
			return nil, err
		}
	}
	b := &Book{path: real(asked.Path), now: asked.Now, how: peeking, set: asked.set}
	if err := b.hold(ctx, asked); err != nil {
		return nil, err
	}
	if err := b.prepare(ctx, asked, steps); err != nil {
		b.closePools()
		b.lock.giveUp()
		return nil, troubleOf(asked.Path, err)
	}
	return b, nil
}

// prepare looks at the file before anything writes to it, then opens it, checks it and
// takes it to the newest version.
func (b *Book) prepare(ctx context.Context, asked Asked, steps []migration) error {
	if err := b.lookForLoss(ctx); err != nil {
		return err
	}
	now, err := peek(ctx, b.path)
	if err != nil {
		return b.found(ctx, journalTrouble(b.path, err))
	}
	if err := now.judge(b.path, len(steps)); err != nil {
		return b.found(ctx, err)
	}
	b.fresh, b.from = now.empty(), now.version
	if err := b.makePrivate(); err != nil {
		return err
	}
	if err := b.openPools(ctx); err != nil {
		return b.found(ctx, err)
	}
	if !b.fresh && b.toCheck(asked) {
		if err := b.found(ctx, b.quickCheck(ctx)); err != nil {
			return err
		}
	}
	if err := b.renew(ctx, asked, steps); err != nil {
		return err
	}
	return b.lock.keepsJournal()
}

// makePrivate makes the file of a new book, which nobody else may read; SQLite would let
// everyone. What it keeps beside the file has the same rights.
func (b *Book) makePrivate() error {
	if !b.fresh {
		return nil
	}
	file, err := os.OpenFile(b.path, os.O_WRONLY|os.O_CREATE, 0o600)
	if err != nil {
		return fileTrouble(b.path, err)
	}
	return file.Close()
}

// openPools opens the file for writing and for reading, and sees that it can be written
// to: SQLite opens a file that cannot, and says so only when it is to write.
func (b *Book) openPools(ctx context.Context) (err error) {
	if b.writer, err = connectWith(b.path, writing, 1, b.set); err != nil {
		return err
	}
	if b.reader, err = connectWith(b.path, reading, poolSize, b.set); err != nil {
		return err
	}
	if err := errors.Join(b.tryWriting(ctx), b.reader.PingContext(ctx)); err != nil {
		return journalTrouble(b.path, err)
	}
	return nil
}

// tryWriting writes something that never leaves this process.
func (b *Book) tryWriting(ctx context.Context) error {
	tx, err := b.writer.BeginTx(ctx, nil)
	if err != nil {
		return err
	}
	defer tx.Rollback()
	_, err = tx.ExecContext(ctx, fmt.Sprintf("PRAGMA user_version = %d", b.from))
	return err
}

// toCheck reports whether the file is to be read when it is opened.
func (b *Book) toCheck(asked Asked) bool {
	if b.lock.unclean {
		return true
	}
	info, err := os.Stat(b.path)
	return !asked.NoCheck && (err != nil || info.Size() <= mostChecked)
}

// renew migrates a book, once it has been copied.
func (b *Book) renew(ctx context.Context, asked Asked, steps []migration) error {
	if b.from >= len(steps) {
		return nil
	}
	if !b.fresh {
		if _, err := b.keepBefore(ctx, len(steps)); err != nil {
			return err
		}
	}
	if err := migrate(ctx, b.writer, b.from, steps, asked.between); err != nil {
		return err
	}
	return syncFolder(filepath.Dir(b.path))
}

// quickCheck asks SQLite whether the file hangs together.
func (b *Book) quickCheck(ctx context.Context) error {
	return troubleOf(b.path, sound(ctx, b.reader, "PRAGMA quick_check"))
}

// Path is the book's file, as the system names it.
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

// Close lets go of the file and of the lock, in that order. A second one does nothing.
func (b *Book) Close() error {
	if b.closed.Swap(true) {
		return nil
	}
	if b.lock != nil {
		b.lock.closing() // from here on a missing journal is no loss
	}
	err := b.closePools()
	if b.lock != nil {
		b.lock.release()
	}
	return err
}

// closePools closes the writer last: it puts the journal into the file.
func (b *Book) closePools() error {
	var failed []error
	for _, db := range []*sql.DB{b.reader, b.writer} {
		if db != nil {
			failed = append(failed, db.Close())
		}
	}
	return errors.Join(failed...)
}
