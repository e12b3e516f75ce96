package app

import (
	"context"
	"slices"
	"strings"

	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// originOf says where a part of a warp came from; nil where it came from no shelf.
func (b *body) originOf(part string) *Origin {
	for _, o := range b.Origins {
		if o.Part == part {
			return &o
		}
	}
	return nil
}

// Whence is where a part of a warp came from, and what that is now.
type Whence struct {
	Origin
	Card  *Card // on the shelf; nil when the book has it no more
	Newer bool  // the shelf has a newer version
}

// WhereFrom lists where the parts of a warp came from.
func (s *Studio) WhereFrom(ctx context.Context, id record.ID) ([]Whence, error) {
	var out []Whence
	err := s.read(ctx, func(r record.Reader) error {
		_, b, err := openDocument(r, id)
		if err != nil {
			return err
		}
		for _, o := range b.Origins {
			w := Whence{Origin: o}
			on, err := r.Marked(o.Mark)
			switch {
			case err == nil:
				c := cardOf(on)
				w.Card, w.Newer = &c, on.Version > o.Version
			case !record.Is(err, record.NotFound):
				return err
			}
			out = append(out, w)
		}
		return nil
	})
	return out, err
}

// cameFrom says that a part of a warp is on a shelf.
func (b *body) cameFrom(part string, on record.Document) {
	b.Origins = slices.DeleteFunc(b.Origins, func(o Origin) bool { return o.Part == part })
	b.Origins = append(b.Origins, Origin{part, on.Kind, on.Mark, on.Version})
	slices.SortFunc(b.Origins, func(x, y Origin) int { return strings.Compare(x.Part, y.Part) })
}

// YarnPart is the path of a yarn of a plan, as parts of warps are named.
func YarnPart(name string) string {
	return problem.Path{{Key: "yarns"}, {Key: name}}.String()
}

// Parts lists the parts of a warp that can come from a shelf, and be put on one.
func (s *Studio) Parts(ctx context.Context, id record.ID) ([]string, error) {
	d, err := s.document(ctx, id)
	if err != nil {
		return nil, err
	}
	b, err := openBody(d.Body)
	if err != nil {
		return nil, err
	}
	tree, err := b.plan()
	if err != nil {
		return nil, err
	}
	out := []string{loomPart, draftPart}
	plan, _ := tree.Plan("") // what is wrong with it is told elsewhere
	for _, y := range plan.Yarns {
		out = append(out, YarnPart(y.Name))
	}
	return out, nil
}
