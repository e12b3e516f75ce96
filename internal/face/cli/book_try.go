package cli

import (
	"context"
	"fmt"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/record"
)

// tryTasks look at what would be.
func tryTasks(w World) []task {
	var asked app.PreviewAsked
	var open []string
	return []task{
		{
			use: "try WARP [KEY=VALUE...]", least: 1, most: -1, short: "Reckon a warp as it would be with other values; nothing is kept",
			long:    " Keys are paths as a plan\nfile has them. After work began only those of [built] can be tried. --find reckons\nbackwards, --open shows the working of a figure.",
			example: "  sley book try \"Galley towels\" \"pieces[0].length=31 in\"\n  sley book try \"Galley towels\" \"warp.wound=9 yd\" --find \"pieces[0].length\" --within warp.wound",
			flags: func(c *cobra.Command) {
				f := c.Flags()
				f.StringVar(&asked.Find, "find", "", "reckon backwards: the path of the unknown, such as pieces[0].length")
				f.StringArrayVar(&asked.Within, "within", nil, "what limits it, such as warp.wound; may be given again")
				f.StringArrayVar(&open, "open", nil, "the id of a figure whose working is shown; may be given again")
			},
			complete: places(w.name(record.Warp)),
			run: func(ctx context.Context, d desk, args []string) error {
				return d.try(ctx, args, asked, open)
			},
		},
	}
}

func (d desk) try(ctx context.Context, args []string, asked app.PreviewAsked, open []string) error {
	sets, err := setsOf(args[1:])
	if err != nil {
		return err
	}
	asked.Sets, asked.Workings = sets, len(open) > 0
	return d.reading(ctx, func(o *app.OpenBook) error {
		card, err := d.named(ctx, o.Studio, record.Warp, args[0])
		if err != nil {
			return err
		}
		asked.ID = card.ID
		p, err := o.Preview(ctx, asked)
		if err != nil {
			return err
		}
		return d.tried(p, open)
	})
}

// tried prints a preview; its problems go to the standard error.
func (d desk) tried(p *app.Preview, open []string) error {
	live := present.LiveOf(p, open)
	if d.asJSON {
		if err := d.say("", present.TriedJSON{Format: 1, Live: live}); err != nil {
			return err
		}
		return d.verdictOf(p.Problems)
	}
	if p.Result != nil {
		fmt.Fprint(d.Out, live.Text())
	}
	printProblems(d.Err, p.Problems, present.UnitsIn(p.Plan, p.Units))
	return d.verdictOf(p.Problems)
}
