package cli

import (
	"context"
	"encoding/json"
	"errors"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/record"
)

// editTasks make new versions of documents.
func editTasks(w World) []task {
	var wif string
	return []task{
		{
			use: "set KIND NAME KEY=VALUE...", least: 2, most: -1, short: "Change values of a document, all at once",
			long:    " Keys are paths as a plan\nfile has them, warp.sett or pieces[0].length; an empty value takes the key away.\nA value that cannot be read yet is kept as it stands, and told. --wif puts another\ninterchange text in the place of a draft, or of the draft that a warp points to.",
			example: "  sley book set warp \"Galley towels\" warp.sett=\"22 epi\"\n  sley book set yarn \"cottolin, white\" note=\n  sley book set draft Rosepath --wif rosepath.wif", complete: w.kindAndName(false),
			flags: func(c *cobra.Command) {
				c.Flags().StringVar(&wif, "wif", "", "a file that holds the draft from now on")
				must(c.RegisterFlagCompletionFunc("wif", interchangeFiles))
			},
			run: func(ctx context.Context, d desk, args []string) error { return d.set(ctx, args, wif) },
		},
		{
			use: "change DRAFT CHANGE...", least: 2, most: -1, short: "Make changes of a draft on the shelf, one after another, as one new version",
			long:    " The changes are\nthose of sley draft convert (docs/drafts.md).",
			example: "  sley book change Rosepath turned ends-times=2", complete: w.draftThenChanges(), run: runChange,
		},
		drawTask(w),
		lookTask(w),
		{
			use: "remove KIND NAME", least: 2, most: 2, short: "Remove a document; all of it stays in the book, and it can be brought back",
			example: "  sley book remove draft Rosepath", complete: w.kindAndName(false), run: onVersion((*app.Studio).Remove),
		},
		{
			use: "bring-back KIND NAME", least: 2, most: 2, short: "Bring back a document that was removed",
			example: "  sley book bring-back draft Rosepath", complete: w.kindAndName(true), run: onVersion((*app.Studio).BringBack),
		},
		{
			use: "undo KIND NAME", least: 2, most: 2, short: "Take back the last thing that a command did to a document",
			long:    " What the page did is\nundone there; to go back further, see sley book return.",
			example: "  sley book undo warp \"Galley towels\"", complete: w.kindAndName(false), run: onVersion((*app.Studio).Undo),
		},
		{
			use: "redo KIND NAME", least: 2, most: 2, short: "Bring back what the last undo took",
			example: "  sley book redo warp \"Galley towels\"", complete: w.kindAndName(false), run: onVersion((*app.Studio).Redo),
		},
		{
			use: "return KIND NAME VERSION", least: 3, most: 3, short: "Make a document again what it was in an earlier version, as a new one",
			example: "  sley book return warp \"Galley towels\" 1", complete: w.kindAndName(false), run: runReturn,
		},
	}
}

// draftThenChanges completes a draft of the shelf, then changes.
func (w World) draftThenChanges() cobra.CompletionFunc {
	return words(func(args []string) []string {
		if len(args) == 0 {
			return completing(w, namesOf(record.Draft, false))
		}
		return changeWords()
	})
}

func runChange(ctx context.Context, d desk, args []string) error {
	return d.onDocument(ctx, "draft", args[0], func(o *app.OpenBook, card app.Card) error {
		done, err := o.Rework(ctx, editOf(card, nil), args[1:])
		if err != nil {
			return err
		}
		return d.saved(ctx, o.Studio, record.Draft, card.Version, done)
	})
}

func interchangeFiles(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return []string{"wif"}, cobra.ShellCompDirectiveFilterFileExt
}

func (d desk) set(ctx context.Context, args []string, wif string) error {
	sets, err := setsOf(args[2:])
	if err == nil && len(sets) == 0 && wif == "" {
		err = stop{code: exitUsage, err: errors.New("say what to set: KEY=VALUE, as warp.sett=\"22 epi\", or --wif FILE")}
	}
	if err == nil && wif != "" {
		sets, err = d.withDraft(args[0], sets, wif)
	}
	if err != nil {
		return err
	}
	return d.onDocument(ctx, args[0], args[1], func(o *app.OpenBook, card app.Card) error {
		done, err := o.Save(ctx, editOf(card, sets))
		if err != nil {
			return err
		}
		return d.saved(ctx, o.Studio, card.Kind, card.Version, done)
	})
}

// withDraft sets the draft that a file holds as well; only drafts and warps have one.
func (d desk) withDraft(kind string, sets []app.Set, file string) ([]app.Set, error) {
	if k, err := kindOf(kind); err != nil || k != record.Draft && k != record.Warp {
		return nil, stop{code: exitUsage, err: errors.New("--wif: only drafts and warps hold a draft")}
	}
	text, err := planText(d.World, file)
	if err != nil {
		return nil, err
	}
	said, err := json.Marshal(string(text))
	return append(sets, app.Set{Path: "wif", Value: said}), err
}

// versioned is what a studio does to a document of a version, for a window.
type versioned func(s *app.Studio, ctx context.Context, id record.ID, base int, window string) (app.Saved, error)

// onVersion does to a document what needs nothing but its version.
func onVersion(do versioned) func(context.Context, desk, []string) error {
	return func(ctx context.Context, d desk, args []string) error {
		return d.onDocument(ctx, args[0], args[1], func(o *app.OpenBook, card app.Card) error {
			done, err := do(o.Studio, ctx, card.ID, card.Version, present.CommandLine)
			if err != nil {
				return err
			}
			return d.saved(ctx, o.Studio, card.Kind, card.Version, done)
		})
	}
}

func runReturn(ctx context.Context, d desk, args []string) error {
	to, err := numberOf(args[2])
	if err != nil {
		return err
	}
	return d.onDocument(ctx, args[0], args[1], func(o *app.OpenBook, card app.Card) error {
		done, err := o.Return(ctx, card.ID, card.Version, present.CommandLine, to)
		if err != nil {
			return err
		}
		return d.saved(ctx, o.Studio, card.Kind, card.Version, done)
	})
}
