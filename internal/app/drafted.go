package app

import (
	"context"
	"path"
	"strings"

	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// DraftSource gives a draft of the shelf, or a warp, as the file that a draft is read of:
// the ending of its name says what it is, whatever the weaver calls it. The list is what
// the book warns of it. Trouble: NotFound where it is neither.
func (s *Studio) DraftSource(ctx context.Context, id record.ID) (Source, *problem.List, error) {
	d, err := s.document(ctx, id)
	if err != nil {
		return Source{}, nil, err
	}
	switch d.Kind {
	case record.Draft:
		b, err := openBody(d.Body)
		if err != nil {
			return Source{}, nil, err
		}
		text, err := b.readable(d.Kind)
		return Source{Name: d.Name + ".wif", Text: text}, &problem.List{}, err
	case record.Warp:
		from, warned, err := s.WarpSource(ctx, id)
		from.Name = d.Name + ".toml"
		return from, warned, err
	}
	return Source{}, nil, &record.Trouble{Code: record.NotFound, Found: string(record.Draft)}
}

// Drafted reads a draft of the shelf, or that of a warp, as it is written down or whole, as
// WholeDraft does. One that does not say its name has the name that it has in the book. It is
// nil when the list has errors.
func (s *Studio) Drafted(ctx context.Context, id record.ID, whole bool) (*Drafted, *problem.List, error) {
	from, warned, err := s.DraftSource(ctx, id)
	if err != nil {
		return nil, nil, err
	}
	read := ReadDraft
	if whole {
		read = WholeDraft
	}
	d, found := read(from)
	list := unplaced(found)
	list.Append(warned)
	if d != nil {
		d.Called = strings.TrimSuffix(from.Name, path.Ext(from.Name))
		if d.Draft.Name == "" {
			d.Draft.Name = d.Called
		}
	}
	return d, list, nil
}
