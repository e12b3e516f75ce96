package book

import (
	"database/sql"
	"errors"
	"fmt"
	"time"

	"sley/internal/trade/record"
)

// cardColumns are what scanCard reads.
const cardColumns = `d.id, d.kind, d.mark, d.version, d.demo, d.removed, d.made_ms, d.changed_ms,
	d.name, d.sort_key, d.facts_of, d.facts_engine, d.stage, d.weave, d.shafts, d.treadles, d.ends,
	d.picks, d.longest_float, d.errors, d.warnings`

func scanCard(scan func(...any) error, more ...any) (record.Document, error) {
	var d record.Document
	var made, changed int64
	f := &d.Facts
	to := []any{
		&d.ID, &d.Kind, &d.Mark, &d.Version, &d.Demo, &d.Removed, &made, &changed,
		&d.Name, &d.Sort, &f.Of, &f.Engine, &f.Stage, &f.Weave, &f.Shafts, &f.Treadles, &f.Ends,
		&f.Picks, &f.LongestFloat, &f.Errors, &f.Warnings,
	}
	err := scan(append(to, more...)...)
	d.Made, d.Changed = time.UnixMilli(made).UTC(), time.UnixMilli(changed).UTC()
	return d, err
}

// Document gives a document whole. Trouble: NotFound.
func (r *Reader) Document(id record.ID) (record.Document, error) {
	d, err := r.Card(id)
	if err != nil {
		return d, err
	}
	d.Body, err = r.Body(id, d.Version)
	return d, err
}

// Card gives a document without its body. Trouble: NotFound.
func (r *Reader) Card(id record.ID) (record.Document, error) {
	var figures sql.NullString
	row := r.row("SELECT "+cardColumns+`, f.figures FROM documents d
		LEFT JOIN figures f ON f.document = d.id WHERE d.id = ?`, id)
	d, err := scanCard(row.Scan, &figures)
	if errors.Is(err, sql.ErrNoRows) {
		return d, notFound(fmt.Sprintf("document %d", id))
	}
	d.Facts.Figures = []byte(figures.String)
	return d, err
}

// Marked gives the document of that mark, without its body. Trouble: NotFound.
func (r *Reader) Marked(mark string) (record.Document, error) {
	var id record.ID
	err := r.row("SELECT id FROM documents WHERE mark = ?", mark).Scan(&id)
	if errors.Is(err, sql.ErrNoRows) {
		return record.Document{}, notFound("document " + mark)
	} else if err != nil {
		return record.Document{}, err
	}
	return r.Card(id)
}

// version is a row of versions as it is stored.
type version struct {
	bodyOf int
	base   sql.NullInt64
	data   []byte
}

func (r *Reader) stored(id record.ID, number int) (version, error) {
	var v version
	err := r.row("SELECT body_of, base, body FROM versions WHERE document = ? AND number = ?", id, number).
		Scan(&v.bodyOf, &v.base, &v.data)
	if errors.Is(err, sql.ErrNoRows) {
		return v, notFound(fmt.Sprintf("version %d of document %d", number, id))
	}
	return v, err
}

// Body gives the body of a version. Trouble: NotFound, Damaged.
func (r *Reader) Body(id record.ID, number int) ([]byte, error) {
	body, _, _, err := r.unpack(id, number)
	return body, err
}

// unpack gives the body of a version, the whole version it was pressed against (itself
// where it is whole), and how many bytes it takes pressed.
func (r *Reader) unpack(id record.ID, number int) (body []byte, whole, size int, err error) {
	v, err := r.stored(id, number)
	if err != nil {
		return nil, 0, 0, err
	}
	if v.bodyOf != number {
		return r.unpack(id, v.bodyOf)
	}
	var base []byte
	whole = number
	if v.base.Valid {
		whole = int(v.base.Int64)
		if base, err = r.Body(id, whole); err != nil {
			return nil, 0, 0, err
		}
	}
	if body, err = opened(v.data, base); err != nil {
		found := fmt.Sprintf("version %d of document %d does not open", number, id)
		return nil, 0, 0, &record.Trouble{Code: record.Damaged, Path: r.path, Found: found, Err: err}
	}
	return body, whole, len(v.data), nil
}

// Versions gives a document's versions without their bodies, the newest first, from
// before that number on (0: from the newest), at most that many.
func (r *Reader) Versions(id record.ID, before, most int) ([]record.Version, error) {
	if before == 0 {
		before = int(^uint(0) >> 1)
	}
	var out []record.Version
	err := r.each(func(scan func(...any) error) error {
		v, at := record.Version{Document: id}, int64(0)
		if err := scan(&v.Number, &at, &v.Window, &v.Act, &v.State, &v.Removed); err != nil {
			return err
		}
		v.At = time.UnixMilli(at).UTC()
		out = append(out, v)
		return nil
	}, `SELECT number, at_ms, window, act, state, removed FROM versions
		WHERE document = ? AND number < ? ORDER BY number DESC LIMIT ?`, id, before, most)
	return out, err
}

// Add writes the first version of a new document and gives its id; Version, Removed and
// the dates of d are those that it has then.
func (w *Writer) Add(d record.Document, first record.Version) (record.ID, error) {
	at := first.At.UnixMilli()
	result, err := w.tx.ExecContext(w.ctx, `INSERT INTO documents
		(kind, mark, name, sort_key, version, demo, removed, made_ms, changed_ms) VALUES (?, ?, ?, ?, 1, ?, ?, ?, ?)`,
		d.Kind, d.Mark, d.Name, d.Sort, d.Demo, first.Removed, at, at)
	if err != nil {
		return 0, err
	}
	id, err := result.LastInsertId()
	if err != nil {
		return 0, err
	}
	first.Document, first.Number, first.State = record.ID(id), 1, 1
	if err := w.putVersion(first, 1, nil, 0); err != nil {
		return 0, err
	}
	return record.ID(id), w.putCard(record.ID(id), d.Card)
}

// Append adds a version to a document. Its Number must be the next; one with a State
// before that has its body already. Trouble: Changed where the number is not the next.
func (w *Writer) Append(v record.Version, card record.Card) error {
	head, err := w.Card(v.Document)
	if err != nil {
		return err
	}
	if v.Number != head.Version+1 {
		return &record.Trouble{Code: record.Changed, Found: fmt.Sprint(head.Version)}
	}
	if err := w.appendBody(v, head.Version); err != nil {
		return err
	}
	err = w.exec("UPDATE documents SET version = ?, removed = ?, changed_ms = ? WHERE id = ?",
		v.Number, v.Removed, v.At.UnixMilli(), v.Document)
	if err != nil {
		return err
	}
	return w.putCard(v.Document, card)
}

// appendBody stores the version: with no body where an earlier one has it, else pressed
// against the newest whole one while that pays.
func (w *Writer) appendBody(v record.Version, head int) error {
	if v.State < v.Number {
		of, err := w.stored(v.Document, v.State)
		if err != nil {
			return err
		}
		return w.putVersion(v, of.bodyOf, nil, 0)
	}
	before, whole, _, err := w.unpack(v.Document, head)
	if err != nil {
		return err
	}
	if string(before) == string(v.Body) {
		of, err := w.stored(v.Document, head)
		if err != nil {
			return err
		}
		return w.putVersion(v, of.bodyOf, nil, 0)
	}
	if base, of, ok := w.worth(v, whole); ok {
		return w.putVersion(v, v.Number, base, of)
	}
	return w.putVersion(v, v.Number, nil, 0)
}

// leastSaved is how much smaller than the whole a difference must be to be kept, as a
// divisor: then a version is opened from two rows, and a long day of edits of the
// largest draft takes some megabytes.
const leastSaved = 4

// worth gives the whole body to press against, if the result is small beside the whole.
func (w *Writer) worth(v record.Version, whole int) (base []byte, of int, ok bool) {
	base, err := w.Body(v.Document, whole)
	if err != nil {
		return nil, 0, false
	}
	against, err := pressed(v.Body, base)
	if err != nil || len(against)*leastSaved > w.sizeOf(v.Document, whole)+smallBody {
		return nil, 0, false
	}
	return base, whole, true
}

// smallBody is a size, in bytes, below which a difference is always worth keeping.
const smallBody = 64

func (w *Writer) sizeOf(id record.ID, number int) int {
	v, err := w.stored(id, number)
	if err != nil {
		return 0
	}
	return len(v.data)
}

// putVersion writes a row of versions.
func (w *Writer) putVersion(v record.Version, bodyOf int, base []byte, of int) error {
	var data []byte
	var err error
	if bodyOf == v.Number {
		if data, err = pressed(v.Body, base); err != nil {
			return err
		}
	}
	return w.exec(`INSERT INTO versions (document, number, at_ms, window, act, state, removed, body_of, base, body)
		VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`, v.Document, v.Number, v.At.UnixMilli(), v.Window, v.Act,
		v.State, v.Removed, bodyOf, sql.NullInt64{Int64: int64(of), Valid: of > 0}, data)
}

// PutCard writes what a document is listed and found by, as long as it has the version
// that the card's facts are of.
func (w *Writer) PutCard(id record.ID, c record.Card) error {
	d, err := w.Card(id)
	if err != nil || d.Version != c.Facts.Of {
		return err
	}
	return w.putCard(id, c)
}

// putCard writes what a document is listed and found by.
func (w *Writer) putCard(id record.ID, c record.Card) error {
	if err := w.exec("UPDATE documents SET name = ?, sort_key = ? WHERE id = ?", c.Name, c.Sort, id); err != nil {
		return err
	}
	if err := w.exec("INSERT OR REPLACE INTO search (rowid, name, words) VALUES (?, ?, ?)", id, c.Name, c.Words); err != nil {
		return err
	}
	if c.Facts.Of == 0 {
		return nil
	}
	return w.PutFacts(id, c.Facts)
}

// PutFacts writes what the engine found of a document, as long as that has the version
// they are of: facts of an older one are let go.
func (w *Writer) PutFacts(id record.ID, f record.Facts) error {
	result, err := w.tx.ExecContext(w.ctx, `UPDATE documents SET facts_of = ?, facts_engine = ?, stage = ?,
		weave = ?, shafts = ?, treadles = ?, ends = ?, picks = ?, longest_float = ?, errors = ?, warnings = ?
		WHERE id = ? AND version = ?`, f.Of, f.Engine, f.Stage, f.Weave, f.Shafts, f.Treadles, f.Ends,
		f.Picks, f.LongestFloat, f.Errors, f.Warnings, id, f.Of)
	if err != nil {
		return err
	}
	if n, err := result.RowsAffected(); err != nil || n == 0 {
		return err
	}
	return w.exec("INSERT OR REPLACE INTO figures (document, figures) VALUES (?, ?)", id, string(f.Figures))
}
