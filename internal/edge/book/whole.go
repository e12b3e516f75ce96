package book

import (
	"context"
	"errors"
	"fmt"

	"sley/internal/trade/record"
)

// Check reads all of a book and says what is wrong with it: whether the pages and
// indexes of the file hang together, whether every row refers to one that is there, and
// whether every version opens. The book may be another's. Trouble: Damaged, NotABook,
// Newer, Missing, Unreadable.
func Check(ctx context.Context, path string) error {
	b, err := look(ctx, path)
	if err != nil {
		return err
	}
	defer b.Close()
	how := checking
	if b.how == resting {
		how = resting
	}
	pool, err := connect(b.path, how, 1)
	if err != nil {
		return err
	}
	defer pool.Close()
	for _, check := range []string{"PRAGMA integrity_check", "PRAGMA foreign_key_check"} {
		if err := sound(ctx, pool, check); err != nil {
			return b.damage(err)
		}
	}
	return b.damage(b.read(ctx, func(r *Reader) error {
		return errors.Join(r.checkNumbers(), r.checkBodies(), r.checkFrozen())
	}))
}

// Check is Check of this book's file. It asks connections of its own: one that searched
// before holds the index against what it remembers of it, and finds damage where there
// is none.
func (b *Book) Check(ctx context.Context) error {
	if b.closed.Load() {
		return &record.Trouble{Code: record.Closed, Path: b.path}
	}
	return Check(ctx, b.path)
}

// damage says of which book an error is.
func (b *Book) damage(err error) error {
	err = b.trouble(err)
	var t *record.Trouble
	if errors.As(err, &t) {
		t.Path = b.path
	}
	return err
}

// numbered are the questions to which a whole book answers with no document.
var numbered = []struct{ found, query string }{
	{"its versions are not numbered from 1 to the one it shows", `
		SELECT d.id FROM documents d LEFT JOIN versions v ON v.document = d.id
		GROUP BY d.id HAVING count(v.number) <> d.version OR max(v.number) <> d.version`},
	{"a version has the body of one that has none", `
		SELECT v.document FROM versions v LEFT JOIN versions b ON b.document = v.document AND b.number = v.body_of
		WHERE v.body_of < v.number AND b.body IS NULL`},
	{"a version is pressed against one that is not whole", `
		SELECT v.document FROM versions v LEFT JOIN versions b ON b.document = v.document AND b.number = v.base
		WHERE v.base IS NOT NULL AND (b.body IS NULL OR b.base IS NOT NULL)`},
	{"it is removed and its newest version is not, or the other way round", `
		SELECT d.id FROM documents d JOIN versions v ON v.document = d.id AND v.number = d.version
		WHERE v.removed <> d.removed`},
}

// checkNumbers asks whether each document has all its versions and shows the newest.
func (r *Reader) checkNumbers() error {
	var failed []error
	for _, ask := range numbered {
		var ids []record.ID
		err := r.each(func(scan func(...any) error) error {
			var id record.ID
			err := scan(&id)
			ids = append(ids, id)
			return err
		}, ask.query+" LIMIT 1")
		if err == nil && len(ids) > 0 {
			err = damaged(nil, fmt.Sprintf("document %d: %s", ids[0], ask.found))
		}
		failed = append(failed, err)
	}
	return errors.Join(failed...)
}

// checkBodies opens every version of every document, in order: most are pressed against
// the whole one that came last.
func (r *Reader) checkBodies() error {
	c := checker{r: r}
	defer func() { c.opener.done() }()
	return r.each(func(scan func(...any) error) error {
		var v stored
		var id record.ID
		var number int
		if err := scan(&id, &number, &v.base, &v.data); err != nil {
			return err
		}
		return c.see(id, number, v)
	}, "SELECT document, number, base, body FROM versions WHERE body IS NOT NULL ORDER BY document, number")
}

// checker keeps a whole version open while what is pressed against it is seen.
type checker struct {
	r      *Reader
	id     record.ID
	whole  int
	opener opener
}

func (c *checker) see(id record.ID, number int, v stored) error {
	if !v.base.Valid {
		_, err := c.r.open(id, number, v.data, nil)
		return err
	}
	if whole := int(v.base.Int64); c.id != id || c.whole != whole {
		base, err := c.r.Body(id, whole)
		if err != nil {
			return damaged(err, notOpen(id, whole))
		}
		c.opener.done()
		if c.opener, err = openerFor(base); err != nil {
			return err
		}
		c.id, c.whole = id, whole
	}
	if _, err := c.opener.open(v.data); err != nil {
		return damaged(err, notOpen(id, number))
	}
	return nil
}

// checkFrozen opens every plan that was frozen.
func (r *Reader) checkFrozen() error {
	_, err := r.AllFrozen()
	return err
}

func damaged(err error, what string) error {
	if record.Is(err, record.Damaged) {
		return err
	}
	return &record.Trouble{Code: record.Damaged, Found: what, Err: err}
}
