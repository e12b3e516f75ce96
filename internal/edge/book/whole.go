package book

import (
	"context"
	"fmt"

	"sley/internal/trade/record"
)

// checkVersions opens every version of every document, and asks whether each document
// has all its versions and shows the newest.
func (b *Book) checkVersions(ctx context.Context) error {
	return b.read(ctx, func(r *Reader) error {
		if err := r.checkHeads(); err != nil {
			return err
		}
		type key struct {
			id     record.ID
			number int
		}
		var keys []key
		err := r.each(func(scan func(...any) error) error {
			var k key
			err := scan(&k.id, &k.number)
			keys = append(keys, k)
			return err
		}, "SELECT document, number FROM versions WHERE body IS NOT NULL")
		if err != nil {
			return err
		}
		for _, k := range keys {
			if _, err := r.Body(k.id, k.number); err != nil {
				return damaged(err, fmt.Sprintf("version %d of document %d", k.number, k.id))
			}
		}
		_, err = r.AllFrozen()
		return err
	})
}

// checkHeads asks whether the versions of each document are numbered without a gap up
// to the one it shows, and refer to versions that hold a body.
func (r *Reader) checkHeads() error {
	for _, query := range []string{
		`SELECT d.id FROM documents d LEFT JOIN versions v ON v.document = d.id
		 GROUP BY d.id HAVING count(v.number) <> d.version OR max(v.number) <> d.version`,
		`SELECT v.document FROM versions v LEFT JOIN versions b ON b.document = v.document AND b.number = v.body_of
		 WHERE b.body IS NULL`,
		`SELECT v.document FROM versions v LEFT JOIN versions b ON b.document = v.document AND b.number = v.base
		 WHERE v.base IS NOT NULL AND (b.body IS NULL OR b.base IS NOT NULL)`,
		`SELECT d.id FROM documents d JOIN versions v ON v.document = d.id AND v.number = d.version
		 WHERE v.removed <> d.removed`,
	} {
		var ids []record.ID
		err := r.each(func(scan func(...any) error) error {
			var id record.ID
			err := scan(&id)
			ids = append(ids, id)
			return err
		}, query)
		if err != nil {
			return err
		}
		if len(ids) > 0 {
			return damaged(nil, fmt.Sprintf("the versions of document %d", ids[0]))
		}
	}
	return nil
}

func damaged(err error, what string) error {
	if record.Is(err, record.Damaged) {
		return err
	}
	return &record.Trouble{Code: record.Damaged, Found: what, Err: err}
}
