package book

import (
	"database/sql"
	"fmt"
	"math"
	"time"

	"sley/internal/trade/record"
)

// stored is a row of versions as it is kept.
type stored struct {
	bodyOf int
	base   sql.NullInt64
	data   []byte
}

func (r *Reader) stored(id record.ID, number int) (stored, error) {
	var v stored
	err := r.row("SELECT body_of, base, body FROM versions WHERE document = ? AND number = ?", id, number).
		Scan(&v.bodyOf, &v.base, &v.data)
	if none(err) {
		return v, noVersion(id, number)
	}
	return v, err
}

// Body gives the body of a version. Trouble: NotFound, Damaged.
func (r *Reader) Body(id record.ID, number int) ([]byte, error) {
	at, err := r.unpack(id, number)
	return at.body, err
}

// unpacked is a version with its body and what that is pressed against: a whole one, or
// itself.
type unpacked struct {
	bodyOf     int
	body, base []byte
	whole      int // the number of the whole one
	size       int // what that takes, in bytes
}

func (r *Reader) unpack(id record.ID, number int) (unpacked, error) {
	v, err := r.stored(id, number)
	if err != nil {
		return unpacked{}, err
	}
	if v.bodyOf < number {
		return r.unpack(id, v.bodyOf)
	}
	if !v.base.Valid {
		body, err := r.open(id, number, v.data, nil)
		return unpacked{number, body, body, number, len(v.data)}, err
	}
	whole := int(v.base.Int64)
	of, err := r.stored(id, whole)
	if err != nil {
		return unpacked{}, damaged(err, notOpen(id, number))
	}
	base, err := r.open(id, whole, of.data, nil)
	if err != nil {
		return unpacked{}, err
	}
	body, err := r.open(id, number, v.data, base)
	return unpacked{number, body, base, whole, len(of.data)}, err
}

// open opens a body; one that does not open is damage.
func (r *Reader) open(id record.ID, number int, data, base []byte) ([]byte, error) {
	body, err := opened(data, base)
	if err != nil {
		return nil, &record.Trouble{Code: record.Damaged, Path: r.path, Found: notOpen(id, number), Err: err}
	}
	return body, nil
}

func notOpen(id record.ID, number int) string {
	return fmt.Sprintf("version %d of document %d does not open", number, id)
}

// Versions gives a document's versions without their bodies, the newest first, from
// before that number on (0: from the newest), at most that many.
func (r *Reader) Versions(id record.ID, before, most int) ([]record.Version, error) {
	if before == 0 {
		before = math.MaxInt
	}
	var out []record.Version
	err := r.each(func(scan func(...any) error) error {
		v, at := record.Version{Document: id}, int64(0)
		err := scan(&v.Number, &at, &v.Window, &v.Act, &v.State, &v.Removed)
		v.At = time.UnixMilli(at).UTC()
		out = append(out, v)
		return err
	}, `SELECT number, at_ms, window, act, state, removed FROM versions
		WHERE document = ? AND number < ? ORDER BY number DESC LIMIT ?`, id, before, max(most, 0))
	return out, err
}

// putVersion stores a version: with no body where an earlier one has it, else pressed
// against the newest whole one while that pays.
func (w *Writer) putVersion(v record.Version, head int) error {
	if v.State < v.Number {
		of, err := w.stored(v.Document, v.State)
		if err != nil {
			return err
		}
		return w.insert(v, of.bodyOf, 0, nil)
	}
	before, err := w.unpack(v.Document, head)
	if err != nil {
		return w.fail(err)
	}
	if string(before.body) == string(v.Body) {
		return w.insert(v, before.bodyOf, 0, nil)
	}
	spent, err := w.spent(v.Document, before.whole)
	if err != nil {
		return w.fail(err)
	}
	return w.putNew(v, against{before.base, before.whole, before.size - spent})
}

// spent is what the differences to a whole version take together, in bytes.
func (w *Writer) spent(id record.ID, whole int) (n int, err error) {
	err = w.row("SELECT coalesce(sum(length(body)), 0) FROM versions WHERE document = ? AND base = ?", id, whole).Scan(&n)
	return n, err
}

// against is a whole version to press a body against, and how large the difference may
// be. Differences grow as edits add up. While all of them together are smaller than the
// whole one, they are kept; then a whole one comes again. That is where whole ones and
// differences take about the same, and the least together; and every version is opened
// from two rows.
type against struct {
	base  []byte
	whole int
	room  int
}

// smallBody is a size, in bytes, below which a difference is always worth keeping.
const smallBody = 64

// putNew stores a version with a body of its own.
func (w *Writer) putNew(v record.Version, a against) error {
	if a.room+smallBody > 0 && len(a.base) > 0 {
		data, err := pressed(v.Body, a.base)
		if err != nil {
			return w.fail(err)
		}
		if len(data) <= a.room+smallBody {
			return w.insert(v, v.Number, a.whole, data)
		}
	}
	data, err := pressed(v.Body, nil)
	if err != nil {
		return w.fail(err)
	}
	return w.insert(v, v.Number, 0, data)
}

// insert writes a row of versions.
func (w *Writer) insert(v record.Version, bodyOf, base int, data []byte) error {
	return w.exec(`INSERT INTO versions (document, number, at_ms, window, act, state, removed, body_of, base, body)
		VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`, v.Document, v.Number, v.At.UnixMilli(), v.Window, v.Act,
		v.State, v.Removed, bodyOf, sql.NullInt64{Int64: int64(base), Valid: base > 0}, data)
}
