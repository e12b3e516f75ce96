package cli

import (
	"context"
	"errors"
	"strings"

	"sley/internal/app"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// inBook stands before the name of what is in the book, where a file could be named.
const inBook = "book:"

// source is a plan or a draft that was named, with what the book warns of it.
type source struct {
	app.Source
	warned *problem.List
	called string      // what the book calls it; empty: it is from a file
	came   *app.Record // of a warp of the book
}

// source reads what a command names: a file, the standard input, or what the book has
// of a kind. Of a draft that the book has not, the warp of that name is read.
func (w World) source(ctx context.Context, name string, kind record.Kind) (source, error) {
	if called, ok := strings.CutPrefix(name, inBook); ok {
		return w.sourceInBook(ctx, called, kind)
	}
	text, err := planText(w, name)
	if err != nil {
		return source{}, err
	}
	return source{Source: sourceOf(w, said(name), text), warned: &problem.List{}}, nil
}

func (w World) sourceInBook(ctx context.Context, name string, kind record.Kind) (source, error) {
	d := desk{World: w}
	var out source
	err := d.reading(ctx, func(o *app.OpenBook) error {
		card, list, err := o.Named(ctx, kind, name)
		if err == nil && card == nil && kind == record.Draft && notThere(list) {
			if warp, _, failed := o.Named(ctx, record.Warp, name); failed == nil && warp != nil {
				card, err = warp, nil
			}
		}
		switch {
		case err != nil:
			return err
		case card == nil:
			return d.problems(list)
		}
		out, err = sourceIn(ctx, o.Studio, *card)
		return err
	})
	return out, d.troubled(err)
}

// sourceIn gives a warp or a draft of the book as a file would have it.
func sourceIn(ctx context.Context, s *app.Studio, card app.Card) (source, error) {
	from, warned, err := s.DraftSource(ctx, card.ID)
	out := source{Source: from, warned: warned, called: card.Name}
	if err == nil && card.Kind == record.Warp {
		out.came, err = s.Record(ctx, card.ID)
	}
	return out, err
}

// told adds to the problems of a source what the book warns of it. What stands in no
// file has no place in one.
func (s source) told(list *problem.List) *problem.List {
	out := &problem.List{}
	for _, p := range list.All() {
		if s.called != "" {
			p.Place = problem.Place{}
		}
		out.Add(p)
	}
	out.Append(s.warned)
	return out
}

// drafted reads the draft of a source, by app.ReadDraft or app.WholeDraft. One that does not say its name has the name that
// it has in the book.
func (s source) drafted(read func(app.Source) (*app.Drafted, *problem.List)) (*app.Drafted, *problem.List) {
	d, list := read(s.Source)
	if d != nil && d.Draft.Name == "" {
		d.Draft.Name = s.called
	}
	return d, s.told(list)
}

// read reads a source for a command that is not one of the book.
func (w World) read(name string, kind record.Kind) (source, error) {
	if !strings.HasPrefix(name, inBook) {
		return w.source(context.Background(), name, kind)
	}
	ctx, free := w.Books.Interrupt()
	defer free()
	from, err := w.source(ctx, name, kind)
	if err != nil && ctx.Err() != nil {
		var s stop
		if !errors.As(err, &s) {
			err = desk{World: w}.troubled(ctx.Err())
		}
	}
	return from, err
}
