package cli

import (
	"context"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/record"
)

// shelfTasks carry yarns, looms and drafts between the shelf and warps.
func shelfTasks(w World) []task {
	var as string
	return []task{
		{
			use: "use WARP PART NAME", least: 3, most: 3, short: "Copy a yarn, a loom or a draft from the shelf into a warp",
			long:    " PART is loom, draft or\nyarns.NAME, the name that the plan has for the yarn. The copy is the warp's own.",
			example: "  sley book use \"Galley towels\" yarns.white \"cottolin, white\"", complete: places(w.name(record.Warp), w.parts(), w.shelf()),
			run: runUse,
		},
		{
			use: "where-from WARP", least: 1, most: 1, short: "Tell what of a warp came from the shelf, and whether that is newer now",
			example: "  sley book where-from \"Galley towels\"", complete: places(w.name(record.Warp)),
			run: runWhereFrom,
		},
		{
			use: "take-newer WARP PART", least: 2, most: 2, short: "Copy what a part of a warp came from once more, as it is now",
			example: "  sley book take-newer \"Galley towels\" yarns.white", complete: places(w.name(record.Warp), w.parts()),
			run: runTakeNewer,
		},
		{
			use: "put-on-shelf WARP PART", least: 2, most: 2, short: "Put a part of a warp on the shelf",
			long:    " It becomes a newer version of what it\ncame from, or with --as something new of that name.",
			example: "  sley book put-on-shelf \"Galley towels\" loom\n  sley book put-on-shelf \"Galley towels\" draft --as \"Towel twill\"",
			flags:   func(c *cobra.Command) { c.Flags().StringVar(&as, "as", "", "put it there as something new, called so") }, complete: places(w.name(record.Warp), w.parts()),
			run: func(ctx context.Context, d desk, args []string) error { return d.putOnShelf(ctx, args, as) },
		},
	}
}

// parts completes the parts of the warp that is named first.
func (w World) parts() cobra.CompletionFunc {
	return words(func(args []string) []string {
		return completing(w, func(ctx context.Context, s *app.Studio) []string { return partsOf(ctx, s, args[0]) })
	})
}

func partsOf(ctx context.Context, s *app.Studio, name string) []string {
	card, _, err := s.Named(ctx, record.Warp, name)
	if err != nil || card == nil {
		return nil
	}
	parts, _ := s.Parts(ctx, card.ID)
	return parts
}

// shelf completes what a part may be copied from.
func (w World) shelf() cobra.CompletionFunc {
	return words(func(args []string) []string { return completing(w, namesOf(kindOfPart(args[1]), false)) })
}

// kindOfPart is the kind of what a part of a warp is on the shelf.
func kindOfPart(part string) record.Kind {
	if kind := record.Kind(part); slices.Contains([]record.Kind{record.Loom, record.Draft}, kind) {
		return kind
	}
	return record.Yarn
}

func runUse(ctx context.Context, d desk, args []string) error {
	return d.onDocument(ctx, "warp", args[0], func(o *app.OpenBook, card app.Card) error {
		part := strings.TrimSpace(args[1])
		from, err := d.named(ctx, o.Studio, kindOfPart(part), args[2])
		if err != nil {
			return err
		}
		done, err := o.Use(ctx, editOf(card, nil), part, from.ID)
		if err != nil {
			return err
		}
		return d.saved(ctx, o.Studio, record.Warp, card.Version, done)
	})
}

func runWhereFrom(ctx context.Context, d desk, args []string) error {
	return d.lookAt(ctx, record.Warp, args[0], func(o *app.OpenBook, card app.Card) error {
		all, err := o.WhereFrom(ctx, card.ID)
		if err != nil {
			return err
		}
		return d.say(present.WhenceText(all), struct {
			Format int                  `json:"format"`
			ID     record.ID            `json:"id"`
			Parts  []present.WhenceJSON `json:"parts"`
		}{1, card.ID, present.WhenceJSONOf(all)})
	})
}

func runTakeNewer(ctx context.Context, d desk, args []string) error {
	return d.onDocument(ctx, "warp", args[0], func(o *app.OpenBook, card app.Card) error {
		done, err := o.TakeNewer(ctx, editOf(card, nil), args[1])
		if err != nil {
			return err
		}
		return d.saved(ctx, o.Studio, record.Warp, card.Version, done)
	})
}

// putOnShelf tells which document on the shelf it is now.
func (d desk) putOnShelf(ctx context.Context, args []string, as string) error {
	return d.onDocument(ctx, "warp", args[0], func(o *app.OpenBook, card app.Card) error {
		done, err := o.PutOnShelf(ctx, editOf(card, nil), args[1], as)
		if err != nil {
			return err
		}
		name := ""
		if !done.Refused && done.Conflict == nil {
			shown, err := o.Show(ctx, done.ID)
			if err != nil {
				return err
			}
			name = shown.Name
		}
		return d.savedAs(present.ShelvedText(kindOfPart(args[1]), name, done), done)
	})
}
