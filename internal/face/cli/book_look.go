package cli

import (
	"context"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/record"
)

// lookTask looks drafts over.
func lookTask(w World) task {
	var asked app.Looking
	var loom string
	return task{
		use: "look KIND NAME", least: 2, most: 2, short: "Tell what is worth knowing of a draft before it is woven, each with what mends it",
		long:    " A warp is\njudged on its loom, at its sett and over all its ends, a draft of the shelf on a loom with\n--loom. Nothing is told of a draft that is\nsound.",
		example: "  sley book look draft Rosepath --use towel\n  sley book look warp \"Galley towels\" --start left\n  sley book look draft Rosepath --loom \"table loom, 60 cm\"",
		flags: func(c *cobra.Command) {
			c.Flags().StringVar(&asked.Use, "use", "", "what the cloth is for, which says how long floats may be")
			c.Flags().StringSliceVar(&asked.Shuttles.Starts, "start", nil, "from which side each shuttle starts, left or right")
			c.Flags().StringVar(&asked.Shuttles.Order, "shuttles", "", "which shuttle throws each pick, as \"1 1 2 2\"")
			c.Flags().StringVar(&loom, "loom", "", "a loom of the shelf, for a draft of the shelf; a warp has its own")
			c.Flags().BoolVar(&asked.Whole, "whole", false, "of a warp: every end, and every pick of its first piece")
			must(c.RegisterFlagCompletionFunc("loom", w.name(record.Loom)))
			must(c.RegisterFlagCompletionFunc("use", fixed(app.Uses())))
			must(c.RegisterFlagCompletionFunc("start", fixed([]string{"left", "right"})))
		},
		complete: w.kindAndName(false),
		run:      func(ctx context.Context, d desk, args []string) error { return d.lookOver(ctx, args, loom, asked) },
	}
}

func (d desk) lookOver(ctx context.Context, args []string, loom string, asked app.Looking) error {
	return d.onDocument(ctx, args[0], args[1], func(o *app.OpenBook, card app.Card) error {
		asked.ID = card.ID
		if loom != "" {
			on, err := d.named(ctx, o.Studio, record.Loom, loom)
			if err != nil {
				return err
			}
			asked.Loom = on.ID
		}
		looked, list, err := o.LookOver(ctx, asked)
		if err != nil {
			return err
		}
		printProblems(d.Err, list, present.Units{})
		if looked == nil {
			return d.verdictOf(list)
		}
		return d.say(present.FindingsText(looked), present.FindingsFile{Format: 1, Version: looked.Version, Findings: present.Findings(looked)})
	})
}
