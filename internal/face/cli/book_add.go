package cli

import (
	"context"
	"fmt"

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
	var weave string
	return []task{
		{
			use: "warp [PLAN]", most: 1, short: "Take a plan file into the book, with the draft it points to",
			long:     " It is refused\nwhen the plan has errors. With --kind a warp begins at the usual size of such\npieces instead, with what it takes from the shelf.",
			example:  "  sley book add warp examples/galley-towels.toml\n  sley book add warp --kind tea-towel --yarn \"cottolin, white\"",
			complete: planFiles, flags: begin.flags(w), run: begin.add,
		},
		{
			use: "draft FILE|NAME --weave WEAVE [PARAMETER=VALUE...]", least: 1, most: -1, short: "Put a draft on the shelf: an interchange text, the draft of a plan, or a weave of the catalogue",
			long:    " A weave\nof the catalogue (docs/catalogue.md) goes under NAME, with the parameters it takes.",
			example: "  sley book add draft towels.wif\n  sley book add draft \"Twill, three and one\" --weave twill over=3/1",
			flags: func(c *cobra.Command) {
				c.Flags().StringVar(&weave, "weave", "", "the weave of the catalogue it is")
				must(c.RegisterFlagCompletionFunc("weave", words(func([]string) []string { return weaveIDs() })))
			}, complete: draftFiles,
			run: func(ctx context.Context, d desk, args []string) error { return d.addDraft(ctx, args, weave) },
		},
		{
			use: "yarn NAME [KEY=VALUE...]", least: 1, most: -1, short: "Put a yarn on the shelf, by the keys of [yarns.NAME] in a plan file",
			example: "  sley book add yarn \"cotton, grey\" count=\"8/2 Ne\" fibre=cotton", run: addNamed(record.Yarn, (*app.Studio).AddYarn),
		},
		{
			use: "loom NAME [KEY=VALUE...]", least: 1, most: -1, short: "Put a loom into the book, by the keys of [loom] in a plan file",
			long:    "\nwinding.board, winding.pegs, winding.mill, winding.peg, winding.raddle,\nwinding.section and winding.beam-girth are of what its warps are wound on.",
			example: "  sley book add loom \"jack loom\" shafts=4 treadles=6 width=\"90 cm\" shed=rising", run: addNamed(record.Loom, (*app.Studio).AddLoom),
		},
	}
}

// addDraft adds the draft of a file, or a weave of the catalogue.
func (d desk) addDraft(ctx context.Context, args []string, weave string) error {
	if weave == "" {
		if len(args) > 1 {
			return stop{code: exitUsage, err: fmt.Errorf("name one file, or say which weave of the catalogue it is: --weave twill")}
		}
		return addFile(record.Draft, (*app.Studio).AddDraft)(ctx, d, args)
	}
	values, err := parameters(args[1:])
	if err != nil {
		return err
	}
	return d.changing(ctx, func(o *app.OpenBook) error {
		done, err := o.AddWeave(ctx, present.CommandLine, args[0], weave, values)
		if err != nil {
			return err
		}
		return d.saved(ctx, o.Studio, record.Draft, 0, done)
	})
}

func weaveIDs() []string {
	var out []string
	for _, w := range app.Weaves() {
		out = append(out, w.ID)
	}
	return out
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
