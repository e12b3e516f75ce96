package app

import (
	"context"
	"strings"

	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// CopyOf adds a document that begins as another stands. Of a warp whose work began it is
// the plan as it was then, without what was amended since; a copy of a warp is planned
// anew, and its parts still say where they came from. What happened to a document is not
// copied: no stock, no log. Without a name the copy has the other's, with a number behind
// it.
func (s *Studio) CopyOf(ctx context.Context, window string, id record.ID, name string) (Saved, error) {
	var d record.Document
	var b *body
	err := s.read(ctx, func(r record.Reader) (err error) {
		d, b, err = toCopy(r, id)
		return err
	})
	if err != nil {
		return Saved{}, err
	}
	list := &problem.List{}
	called := strings.TrimSpace(name)
	if called == "" {
		called = d.Name
	}
	if checkName(called, "name", list); list.Failed() {
		return refused(list), nil
	}
	b.renameTo(d.Kind, called)
	return s.keepNamed(ctx, fresh{kind: d.Kind, body: b, window: window}, strings.TrimSpace(name) == "")
}

// toCopy reads what a copy of a document begins with.
func toCopy(r record.Reader, id record.ID) (record.Document, *body, error) {
	d, b, err := openDocument(r, id)
	if err != nil || d.Kind != record.Warp {
		return d, b, err
	}
	f, err := frozen(r, id)
	if err == nil && f != nil {
		b, err = openBody(f.Body)
	}
	if err != nil {
		return d, nil, err
	}
	tree, err := b.plan()
	if err != nil {
		return d, nil, &record.Trouble{Code: record.Damaged, Found: "a plan that cannot be read", Err: err}
	}
	tree.Remove("built")
	b.Plan, b.Source = tree.JSON(), nil // the file it was is the other's
	return d, b, nil
}
