package cli

import (
	"context"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/record"
)

// promisedTasks look at the yarns with what of them is promised.
func promisedTasks(w World) []task {
	var q record.Query
	return []task{{
		use: "shelf [YARN]", most: 1, short: "List the yarns: what is there, what warps in hand still take of it, what is left then",
		long:    " What was\nentered as used for a warp is no longer promised to it.",
		example: "  sley book shelf\n  sley book shelf \"cottolin, white\"\n  sley book shelf --words wool --json",
		flags: func(c *cobra.Command) {
			c.Flags().StringVar(&q.Words, "words", "", "words, or their beginnings, that all must be found")
		},
		complete: places(w.name(record.Yarn)),
		run:      func(ctx context.Context, d desk, args []string) error { return d.shelf(ctx, args, q) },
	}}
}

func (d desk) shelf(ctx context.Context, args []string, q record.Query) error {
	if len(args) == 0 {
		return d.reading(ctx, func(o *app.OpenBook) error {
			all, err := shelfOf(ctx, o.Studio, q)
			if err != nil {
				return err
			}
			return d.saysShelf(all)
		})
	}
	return d.lookAt(ctx, record.Yarn, args[0], func(o *app.OpenBook, card app.Card) error {
		one, err := o.Promised(ctx, card.ID)
		if err != nil {
			return err
		}
		return d.saysShelf([]app.Shelved{one})
	})
}

func (d desk) saysShelf(all []app.Shelved) error {
	return d.say(present.ShelfText(all), struct {
		Format int                   `json:"format"`
		Yarns  []present.ShelvedJSON `json:"yarns"`
	}{1, present.ShelfJSONOf(all)})
}

// shelfOf gives all yarns that are asked for, however many.
func shelfOf(ctx context.Context, s *app.Studio, q record.Query) ([]app.Shelved, error) {
	var out []app.Shelved
	q.Most = 200
	for {
		found, total, err := s.Shelf(ctx, q)
		out = append(out, found...)
		if err != nil || len(found) == 0 || len(out) >= total {
			return out, err
		}
		last := found[len(found)-1]
		q.After, q.AfterID = last.Sort, last.ID
	}
}
