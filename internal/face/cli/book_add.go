package cli

import (
	"context"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/record"
)

func newBookAdd(w World) *cobra.Command {
	cmd := &cobra.Command{
		Use:     "add",
		Short:   "Add a warp, a draft, a yarn or a loom to the book",
		Long:    "Add a warp, a draft, a yarn or a loom to the book.\n" + exitHelp,
		Example: "  sley book add warp examples/galley-towels.toml",
		Args:    cobra.NoArgs,
	}
	for _, t := range addTasks(w) {
		cmd.AddCommand(t.command(w))
	}
	return cmd
}

// addTasks add documents.
func addTasks(w World) []task {
	var begin begunBy
	return []task{
		{
			use: "warp [PLAN]", most: 1, short: "Take a plan file into the book, with the draft it points to",
			long:     " It is refused\nwhen the plan has errors. With --kind a warp begins at the usual size of such\npieces instead, with what it takes from the shelf.",
			example:  "  sley book add warp examples/galley-towels.toml\n  sley book add warp --kind tea-towel --yarn \"cottolin, white\"",
			complete: planFiles, flags: begin.flags(w), run: begin.add,
		},
		{
			use: "draft FILE", least: 1, most: 1, short: "Put a draft on the shelf: an interchange text, or the draft of a plan",
			example: "  sley book add draft towels.wif", complete: draftFiles, run: addFile(record.Draft, (*app.Studio).AddDraft),
		},
		{
			use: "yarn NAME [KEY=VALUE...]", least: 1, most: -1, short: "Put a yarn on the shelf, by the keys of [yarns.NAME] in a plan file",
			example: "  sley book add yarn \"cotton, grey\" count=\"8/2 Ne\" fibre=cotton", run: addNamed(record.Yarn, (*app.Studio).AddYarn),
		},
		{
			use: "loom NAME [KEY=VALUE...]", least: 1, most: -1, short: "Put a loom into the book, by the keys of [loom] in a plan file",
			long:    "\nwinding.board, winding.pegs, winding.mill, winding.peg, winding.raddle and\nwinding.section are of what its warps are wound on.",
			example: "  sley book add loom \"jack loom\" shafts=4 treadles=6 width=\"90 cm\" shed=rising", run: addNamed(record.Loom, (*app.Studio).AddLoom),
		},
	}
}

// addFile adds what a file holds.
func addFile(kind record.Kind, add func(*app.Studio, context.Context, string, app.Source) (app.Saved, error)) func(context.Context, desk, []string) error {
	return func(ctx context.Context, d desk, args []string) error {
		from, err := d.source(ctx, args[0], kind)
		if err != nil {
			return err
		}
		return d.changing(ctx, func(o *app.OpenBook) error {
			done, err := add(o.Studio, ctx, present.CommandLine, from.Source)
			if err != nil {
				return err
			}
			return d.saved(ctx, o.Studio, kind, 0, done)
		})
	}
}

// addNamed adds what is said by name and values.
func addNamed(kind record.Kind, add func(*app.Studio, context.Context, string, string, []app.Set) (app.Saved, error)) func(context.Context, desk, []string) error {
	return func(ctx context.Context, d desk, args []string) error {
		sets, err := setsOf(args[1:])
		if err != nil {
			return err
		}
		return d.changing(ctx, func(o *app.OpenBook) error {
			done, err := add(o.Studio, ctx, present.CommandLine, args[0], sets)
			if err != nil {
				return err
			}
			return d.saved(ctx, o.Studio, kind, 0, done)
		})
	}
}
