package book

import (
	"strings"

	"sley/internal/edge/book/words"
	"sley/internal/trade/record"
)

// List gives the documents that are asked for, in the order of names, without bodies,
// and how many there are in all.
func (r *Reader) List(q record.Query) ([]record.Document, int, error) {
	where, args := conditions(q)
	var total int
	if err := r.row("SELECT count(*) FROM documents d WHERE "+where, args...).Scan(&total); err != nil {
		return nil, 0, err
	}
	where, args = after(where, args, q)
	out, err := r.cardsOf(named+"WHERE "+where+" ORDER BY d.sort_key, d.id LIMIT ?", append(args, max(q.Most, 1))...)
	return out, total, err
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
func conditions(q record.Query) (string, []any) {
	where := "d.kind = ? AND d.removed = ?"
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
	if match := matching(q.Words); match != "" {
		where += " AND d.id IN (SELECT rowid FROM search WHERE search MATCH ?)"
		args = append(args, match)
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
