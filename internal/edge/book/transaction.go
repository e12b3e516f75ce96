package book

import (
	"context"
	"database/sql"

	"sley/internal/trade/record"
)

// Reader is the book as it stands at one moment.
type Reader struct {
	ctx  context.Context
	tx   *sql.Tx
	path string
}

// Writer is a change of the book, which is made whole or not at all.
type Writer struct{ Reader }

// Read lets do see the book as it stands now, whatever others write meanwhile.
func (b *Book) Read(ctx context.Context, do func(record.Reader) error) error {
	return b.read(ctx, func(r *Reader) error { return do(r) })
}

func (b *Book) read(ctx context.Context, do func(*Reader) error) error {
	if b.reader == nil {
		return &record.Trouble{Code: record.Closed, Path: b.path}
	}
	tx, err := b.reader.BeginTx(ctx, nil)
	if err != nil {
		return troubleOf(b.path, err)
	}
	defer tx.Rollback()
	return troubleOf(b.path, do(&Reader{ctx, tx, b.path}))
}

// Write lets do change the book. When it returns nil, what do did is on the disk; when
// it fails, nothing is changed.
func (b *Book) Write(ctx context.Context, do func(record.Writer) error) error {
	if b.writer == nil {
		return &record.Trouble{Code: record.ReadOnly, Path: b.path}
	}
	b.turn.Lock()
	defer b.turn.Unlock()
	tx, err := b.writer.BeginTx(ctx, nil)
	if err != nil {
		return troubleOf(b.path, err)
	}
	defer tx.Rollback()
	if err := do(&Writer{Reader{ctx, tx, b.path}}); err != nil {
		return troubleOf(b.path, err)
	}
	return troubleOf(b.path, tx.Commit())
}

func (r *Reader) row(query string, args ...any) *sql.Row {
	return r.tx.QueryRowContext(r.ctx, query, args...)
}

// each runs a query and lets read see every row.
func (r *Reader) each(read func(scan func(...any) error) error, query string, args ...any) error {
	rows, err := r.tx.QueryContext(r.ctx, query, args...)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		if err := read(rows.Scan); err != nil {
			return err
		}
	}
	return rows.Err()
}

func (w *Writer) exec(query string, args ...any) error {
	_, err := w.tx.ExecContext(w.ctx, query, args...)
	return err
}

// notFound is the trouble of what is not there.
func notFound(what string) error { return &record.Trouble{Code: record.NotFound, Found: what} }
