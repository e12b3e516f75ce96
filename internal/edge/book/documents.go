package book

import (
	"database/sql"
	"fmt"
	"strings"
	"time"

	"sley/internal/edge/book/words"
	"sley/internal/trade/record"
)

// cardColumns are what scanCard reads, of documents d with their figures f.
const cardColumns = `d.id, d.kind, d.mark, d.version, d.demo, d.removed, d.made_ms, d.changed_ms,
	d.name, d.sort_key, d.facts_of, d.facts_engine, d.stage, d.weave, d.shafts, d.treadles, d.ends,
	d.picks, d.longest_float, d.errors, d.warnings, f.figures`

// cards begins a query of cards; named is one that goes through them in the order of
// names, whatever else it asks: all it filters by stands in that index, so that rows are
// read of those alone that are shown.
const (
	cards = "SELECT " + cardColumns + " FROM documents d LEFT JOIN figures f ON f.document = d.id "
	named = "SELECT " + cardColumns + " FROM documents d INDEXED BY documents_by_name LEFT JOIN figures f ON f.document = d.id "
)

func scanCard(scan func(...any) error) (record.Document, error) {
	var d record.Document
	var made, changed int64
	var figures sql.NullString
	f := &d.Facts
	err := scan(
		&d.ID, &d.Kind, &d.Mark, &d.Version, &d.Demo, &d.Removed, &made, &changed,
		&d.Name, &d.Sort, &f.Of, &f.Engine, &f.Stage, &f.Weave, &f.Shafts, &f.Treadles, &f.Ends,
		&f.Picks, &f.LongestFloat, &f.Errors, &f.Warnings, &figures,
	)
	if figures.String != "" {
		f.Figures = []byte(figures.String)
	}
	d.Made, d.Changed = time.UnixMilli(made).UTC(), time.UnixMilli(changed).UTC()
	return d, err
}

// cardsOf gives the cards that a query finds.
func (r *Reader) cardsOf(query string, args ...any) ([]record.Document, error) {
	var out []record.Document
	err := r.each(func(scan func(...any) error) error {
		d, err := scanCard(scan)
		out = append(out, d)
		return err
	}, query, args...)
	return out, err
}

// Document gives a document whole. Trouble: NotFound, Damaged.
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
	d, err := scanCard(r.row(cards+"WHERE d.id = ?", id).Scan)
	if none(err) {
		return record.Document{}, noDocument(id)
	}
	return d, err
}

// Marked gives the document of that mark, without its body. Trouble: NotFound.
func (r *Reader) Marked(mark string) (record.Document, error) {
	d, err := scanCard(r.row(cards+"WHERE d.mark = ?", mark).Scan)
	if none(err) {
		return record.Document{}, notFound("document " + mark)
	}
	return d, err
}

// Add writes the first version of a new document and gives its id; Version, Removed and
// the dates of d are those that it has then.
func (w *Writer) Add(d record.Document, first record.Version) (record.ID, error) {
	at := first.At.UnixMilli()
	result, err := w.run(`INSERT INTO documents
		(kind, mark, name, sort_key, version, demo, removed, made_ms, changed_ms) VALUES (?, ?, ?, ?, 1, ?, ?, ?, ?)`,
		d.Kind, d.Mark, d.Name, some(d.Sort), d.Demo, first.Removed, at, at)
	if err != nil {
		return 0, err
	}
	id, err := result.LastInsertId()
	if err != nil {
		return 0, w.fail(err)
	}
	first.Document, first.Number, first.State = record.ID(id), 1, 1
	if err := w.putNew(first, against{}); err != nil {
		return 0, err
	}
	err = w.exec("INSERT INTO search (rowid, words) VALUES (?, ?)", id, searched(d.Card))
	if err != nil || d.Facts.Of == 0 {
		return record.ID(id), err
	}
	return record.ID(id), w.PutFacts(record.ID(id), d.Facts)
}

// some is bytes that are there, if there are none of them.
func some(b []byte) []byte {
	if b == nil {
		return []byte{}
	}
	return b
}

// searched is what a search looks in.
func searched(c record.Card) string { return strings.Join(words.Of(c.Name+" "+c.Words), " ") }

// Append adds a version to a document. Its Number must be the next; one with a State
// before that has its body already. Trouble: Changed where the number is not the next,
// NotFound where the document or the version of State is not there; then nothing was
// changed, and the change may go on.
func (w *Writer) Append(v record.Version, card record.Card) error {
	if w.failed != nil {
		return w.failed
	}
	head, err := w.Card(v.Document)
	if err != nil {
		return err
	}
	if v.Number != head.Version+1 {
		return &record.Trouble{Code: record.Changed, Found: fmt.Sprint(head.Version)}
	}
	if err := w.putVersion(v, head.Version); err != nil {
		return err
	}
	err = w.exec("UPDATE documents SET version = ?, removed = ?, changed_ms = ? WHERE id = ?",
		v.Number, v.Removed, v.At.UnixMilli(), v.Document)
	if err != nil {
		return err
	}
	return w.putCard(head, card)
}

// PutCard writes what a document is listed and found by, as long as it has the version
// that the card's facts are of: a card of an older one is let go.
func (w *Writer) PutCard(id record.ID, c record.Card) error {
	head, err := w.Card(id)
	if err != nil || head.Version != c.Facts.Of {
		return err
	}
	return w.putCard(head, c)
}

// putCard writes what a document is listed and found by. What is the same is left
// alone: most edits change neither the name nor the words.
func (w *Writer) putCard(head record.Document, c record.Card) error {
	if c.Name != head.Name || string(c.Sort) != string(head.Sort) {
		err := w.exec("UPDATE documents SET name = ?, sort_key = ? WHERE id = ?", c.Name, some(c.Sort), head.ID)
		if err != nil {
			return err
		}
	}
	var before string
	if err := w.row("SELECT words FROM search WHERE rowid = ?", head.ID).Scan(&before); err != nil {
		return w.fail(err)
	}
	if now := searched(c); now != before {
		if err := w.exec("UPDATE search SET words = ? WHERE rowid = ?", now, head.ID); err != nil {
			return err
		}
	}
	if c.Facts.Of == 0 {
		return nil
	}
	return w.PutFacts(head.ID, c.Facts)
}

// PutFacts writes what the engine found of a document, as long as that has the version
// they are of: facts of an older one are let go.
func (w *Writer) PutFacts(id record.ID, f record.Facts) error {
	result, err := w.run(`UPDATE documents SET facts_of = ?, facts_engine = ?, stage = ?,
		weave = ?, shafts = ?, treadles = ?, ends = ?, picks = ?, longest_float = ?, errors = ?, warnings = ?
		WHERE id = ? AND version = ?`, f.Of, f.Engine, f.Stage, f.Weave, f.Shafts, f.Treadles, f.Ends,
		f.Picks, f.LongestFloat, f.Errors, f.Warnings, id, f.Of)
	if err != nil {
		return err
	}
	if n, err := result.RowsAffected(); err != nil || n == 0 {
		return w.fail(err)
	}
	return w.exec("INSERT OR REPLACE INTO figures (document, figures) VALUES (?, ?)", id, string(f.Figures))
}
