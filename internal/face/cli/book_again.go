package cli

import (
	"context"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
)

// againTasks begin a document as another stands.
func againTasks(w World) []task {
	var name string
	return []task{{
		use: "again KIND NAME", least: 2, most: 2, short: "Begin a document anew as another stands, as the same towels once more",
		long:     " Of a\nwarp that is on the loom it is the plan as it was when work began. Stock, log and\nmeasurements are not copied.",
		example:  "  sley book again warp \"Galley towels\"\n  sley book again yarn \"cottolin, white\" --name \"cottolin, natural\"",
		complete: w.kindAndName(false),
		flags: func(c *cobra.Command) {
			c.Flags().StringVar(&name, "name", "", "its name, in the place of one that is free")
		},
		run: func(ctx context.Context, d desk, args []string) error {
			return d.again(ctx, args, name)
		},
	}}
}

func (d desk) again(ctx context.Context, args []string, name string) error {
	kind, err := kindOf(args[0])
	if err != nil {
		return err
	}
	return d.onDocument(ctx, args[0], args[1], func(o *app.OpenBook, card app.Card) error {
		done, err := o.CopyOf(ctx, present.CommandLine, card.ID, name)
		if err != nil {
			return err
		}
		return d.saved(ctx, o.Studio, kind, 0, done)
	})
}
