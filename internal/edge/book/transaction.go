package book

import (
	"context"
	"database/sql"
	"errors"
	"fmt"

	"sley/internal/trade/record"
)

// Reader is the book as it stands at one moment.
type Reader struct {
	ctx  context.Context
	tx   *sql.Tx
	path string
}

// Writer is a change of the book, which is made whole or not at all.
type Writer struct {
	Reader
	failed error // why the change cannot be made, whatever do makes of it
}

// Read lets do see the book as it stands now, whatever others write meanwhile.
func (b *Book) Read(ctx context.Context, do func(record.Reader) error) error {
	return b.read(ctx, func(r *Reader) error { return do(r) })
}

func (b *Book) read(ctx context.Context, do func(*Reader) error) error {
	tx, err := b.reader.BeginTx(ctx, nil)
	if err != nil {
		return b.trouble(err)
	}
	defer tx.Rollback()
	r := &Reader{ctx, tx, b.path}
	// The first reading fixes the moment: let it be now, not when do comes to its own.
	if err := r.row("SELECT count(*) FROM sqlite_schema").Scan(new(int)); err != nil {
		return err
	}
	return do(r)
}

// Write lets do change the book. When it returns nil, what do did is on the disk; when
// it fails, nothing is changed. A change that failed in part is not made, even where do
// makes nothing of it. One writes at a time; do must not call Write.
func (b *Book) Write(ctx context.Context, do func(record.Writer) error) error {
	if b.writer == nil {
		return &record.Trouble{Code: record.ReadOnly, Path: b.path}
	}
	tx, err := b.writer.BeginTx(ctx, nil)
	if err != nil {
		return b.trouble(err)
	}
	defer tx.Rollback()
	w := &Writer{Reader: Reader{ctx, tx, b.path}}
	if err := do(w); err != nil {
		return err
	}
	if w.failed != nil {
		return w.failed
	}
	return w.trouble(tx.Commit())
}

// trouble is what a failure of the book means; one of a closed pool is Closed.
func (b *Book) trouble(err error) error {
	if err != nil && b.closed.Load() {
		return &record.Trouble{Code: record.Closed, Path: b.path, Err: err}
	}
	return troubleOf(b.path, err)
}

// row is a row of an answer, or why there is none.
type row struct {
	*sql.Row
	of *Reader
}

func (r row) Scan(to ...any) error { return r.of.trouble(r.Row.Scan(to...)) }

func (r *Reader) row(query string, args ...any) row {
	return row{r.tx.QueryRowContext(r.ctx, query, args...), r}
}

// trouble is what a failure means; a transaction that is over because nobody wants it any
// more was given up.
func (r *Reader) trouble(err error) error {
	if errors.Is(err, sql.ErrTxDone) && r.ctx.Err() != nil {
		return r.ctx.Err()
	}
	return troubleOf(r.path, err)
}

// each runs a query and lets read see every row.
func (r *Reader) each(read func(scan func(...any) error) error, query string, args ...any) error {
	rows, err := r.tx.QueryContext(r.ctx, query, args...)
	if err != nil {
		return r.trouble(err)
	}
	defer rows.Close()
	for rows.Next() {
		if err := read(rows.Scan); err != nil {
			return r.trouble(err)
		}
	}
	return r.trouble(rows.Err())
}

func (w *Writer) exec(query string, args ...any) error {
	_, err := w.run(query, args...)
	return err
}

// run changes something. After one failure it does nothing more: SQLite may have taken
// the change back as a whole, and what came now would stand alone.
func (w *Writer) run(query string, args ...any) (sql.Result, error) {
	if w.failed != nil {
		return nil, w.failed
	}
	result, err := w.tx.ExecContext(w.ctx, query, args...)
	return result, w.fail(w.trouble(err))
}

// fail keeps a change from being made.
func (w *Writer) fail(err error) error {
	if err != nil && w.failed == nil {
		w.failed = err
	}
	return err
}

// notFound is the trouble of what is not there.
func notFound(what string) error { return &record.Trouble{Code: record.NotFound, Found: what} }

// none reports whether an answer had no row.
func none(err error) bool { return errors.Is(err, sql.ErrNoRows) }

func noDocument(id record.ID) error { return notFound(fmt.Sprintf("document %d", id)) }

func noVersion(id record.ID, number int) error {
	return notFound(fmt.Sprintf("version %d of document %d", number, id))
}
