package book

import (
	"encoding/json"
	"strings"

	"sley/internal/edge/book/words"
	"sley/internal/trade/record"
)

// List gives the documents that are asked for, in the order of names, without bodies,
// and how many there are in all.
func (r *Reader) List(q record.Query) ([]record.Document, int, error) {
	found, err := r.foundFor(q)
	if err != nil || found.none {
		return nil, 0, err
	}
	where, args := conditions(q, found)
	var total int
	if err := r.row("SELECT count(*) FROM documents d WHERE "+where, args...).Scan(&total); err != nil {
		return nil, 0, err
	}
	where, args = after(where, args, q)
	out, err := r.cardsOf(found.from()+"WHERE "+where+" ORDER BY d.sort_key, d.id LIMIT ?", append(args, max(q.Most, 1))...)
	return out, total, err
}

// fewFound is up to how many documents that have the words are looked up one by one; of
// more, the list is walked by name until a page is full.
const fewFound = 2000

// found is what is known of the words of a query before the list is read.
type found struct {
	match string // empty: no words are asked for
	ids   string // JSON, where few have the words
	none  bool   // none has them
}

func (r *Reader) foundFor(q record.Query) (found, error) {
	f := found{match: matching(q.Words)}
	if f.match == "" {
		return f, nil
	}
	ids := []record.ID{}
	err := r.each(func(scan func(...any) error) error {
		var id record.ID
		err := scan(&id)
		ids = append(ids, id)
		return err
	}, "SELECT rowid FROM search WHERE search MATCH ? LIMIT ?", f.match, fewFound+1)
	f.none = len(ids) == 0
	if len(ids) <= fewFound {
		data, _ := json.Marshal(ids) // numbers
		f.ids = string(data)
	}
	return f, err
}

// from is what a list is read from: of few documents each by its number, else the
// index of names.
func (f found) from() string {
	if f.ids != "" {
		return cards
	}
	return named
}

// after adds to conditions that of a page which is not the first.
func after(where string, args []any, q record.Query) (string, []any) {
	if q.After == nil && q.AfterID == 0 {
		return where, args
	}
	// The first of these is what the index can go straight to.
	return where + " AND d.sort_key >= ? AND (d.sort_key, d.id) > (?, ?)", append(args, some(q.After), some(q.After), q.AfterID)
}

// conditions are those of a query, with what they are asked of.
func conditions(q record.Query, f found) (string, []any) {
	where := "d.kind = ? AND d.removed = ?"
	if f.ids != "" {
		where = "+d.kind = ? AND +d.removed = ?" // no index but that of numbers
	}
	args := []any{q.Kind, q.Removed}
	for _, c := range []struct {
		is   string
		most int
	}{
		{" AND d.shafts BETWEEN 1 AND ?", q.MostShafts},
		{" AND d.treadles <= ?", q.MostTreadles},
		{" AND d.longest_float BETWEEN 1 AND ?", q.MostFloat},
	} {
		if c.most > 0 {
			where += c.is
			args = append(args, c.most)
		}
	}
	if q.Weave != "" {
		where += " AND d.weave = ?"
		args = append(args, q.Weave)
	}
	switch q.Stage {
	case "":
	case record.InHand:
		where += " AND d.stage <> ?"
		args = append(args, record.Done)
	default:
		where += " AND d.stage = ?"
		args = append(args, q.Stage)
	}
	switch {
	case f.ids != "":
		where += " AND d.id IN (SELECT value FROM json_each(?))"
		args = append(args, f.ids)
	case f.match != "":
		where += " AND d.id IN (SELECT rowid FROM search WHERE search MATCH ?)"
		args = append(args, f.match)
	}
	return where, args
}

// matching is a search as FTS5 wants it: each word in quotes, so that nothing typed is
// taken for its grammar, and a star, so that a beginning will do.
func matching(text string) string {
	var out []string
	for _, word := range words.Of(text) {
		out = append(out, `"`+word+`"*`)
	}
	return strings.Join(out, " ")
}

// Counts counts the documents that were not removed.
func (r *Reader) Counts() (record.Counts, error) {
	c := record.Counts{Of: map[record.Kind]int{}}
	err := r.each(func(scan func(...any) error) error {
		var kind record.Kind
		var n, demo int
		err := scan(&kind, &n, &demo)
		c.Of[kind] = n
		c.Demo += demo
		return err
	}, "SELECT kind, count(*), sum(demo) FROM documents WHERE removed = 0 GROUP BY kind")
	return c, err
}

// Stale gives documents of a kind whose facts are not of their newest version or not of
// that engine, at most that many, in no order.
func (r *Reader) Stale(kind record.Kind, engine, most int) ([]record.ID, error) {
	var out []record.ID
	err := r.each(func(scan func(...any) error) error {
		var id record.ID
		err := scan(&id)
		out = append(out, id)
		return err
	}, `SELECT id FROM documents WHERE kind = ?1 AND facts_of < version
		UNION ALL SELECT id FROM documents WHERE kind = ?1 AND facts_engine < ?2 AND facts_of = version
		UNION ALL SELECT id FROM documents WHERE kind = ?1 AND facts_engine > ?2 AND facts_of = version
		LIMIT ?3`, kind, engine, max(most, 0))
	return out, err
}

// All gives every document, removed ones too, in the order they were added, without bodies.
func (r *Reader) All() ([]record.Document, error) { return r.cardsOf(cards + "ORDER BY d.id") }
