package cli

import (
	"context"
	"fmt"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/problem"
)

// drawTask draws on drafts, as the page does.
func drawTask(w World) task {
	var whole, try bool
	return task{
		use: "draw KIND NAME [ACT...]", least: 2, most: -1, short: "Draw on a draft of the shelf or of a warp, act after act, as one new version",
		long:    " Without\nacts it prints the draft as it is drawn on, its ends and picks counted from 0. An act is\nKEY=VALUE with spaces between (docs/api.md has them all); text=... goes to its end. A\nwarp's draft is drawn on as it is written down, or with --whole with every end of the\nwarp and every pick of its first piece.",
		example: "  sley book draw draft Rosepath\n  sley book draw draft Rosepath \"do=mirror part=threading from=0 to=4\"\n  sley book draw warp \"Galley towels\" --try \"do=type part=threading from=0 to=6 text=1-4 3 2\"",
		flags: func(c *cobra.Command) {
			c.Flags().BoolVar(&whole, "whole", false, "of a warp: every end, and every pick of its first piece")
			c.Flags().BoolVar(&try, "try", false, "say what would come of it, and write nothing")
		},
		complete: w.kindAndName(false),
		run:      func(ctx context.Context, d desk, args []string) error { return d.draw(ctx, args, whole, try) },
	}
}

func (d desk) draw(ctx context.Context, args []string, whole, try bool) error {
	acts, list := app.ReadActs(app.SaidActs(args[2:]))
	if list.Failed() {
		printProblems(d.Err, list, present.Units{})
		return d.verdictOf(list)
	}
	return d.onDocument(ctx, args[0], args[1], func(o *app.OpenBook, card app.Card) error {
		if len(acts) == 0 {
			return d.table(ctx, o, card, whole)
		}
		drawing := app.Drawing{Edit: editOf(card, nil), Whole: whole, Acts: acts}
		if try {
			return d.tryDrawing(ctx, o, drawing)
		}
		done, err := o.DrawOn(ctx, drawing)
		if err != nil {
			return err
		}
		d.tell(done.Told)
		return d.saved(ctx, o.Studio, card.Kind, card.Version, done.Saved)
	})
}

// table prints a draft as it is drawn on.
func (d desk) table(ctx context.Context, o *app.OpenBook, card app.Card, whole bool) error {
	t, list, err := o.Table(ctx, card.ID, whole)
	if err != nil {
		return err
	}
	printProblems(d.Err, list, present.Units{})
	if t == nil {
		return d.verdictOf(list)
	}
	return d.printTable(t)
}

func (d desk) printTable(t *app.Table) error {
	if d.asJSON {
		return d.say("", present.TableFile{Format: 1, TableJSON: present.TableOf(t)})
	}
	fmt.Fprint(d.Out, present.TableText(t))
	return nil
}

// tryDrawing prints what would come of acts.
func (d desk) tryDrawing(ctx context.Context, o *app.OpenBook, drawing app.Drawing) error {
	done, err := o.TryDrawing(ctx, drawing)
	if err != nil {
		return err
	}
	d.tell(done.Told)
	printProblems(d.Err, done.Problems, present.Units{})
	if done.Table == nil {
		return d.verdictOf(done.Problems)
	}
	return d.printTable(done.Table)
}

// tell prints what there is to say of acts that were made.
func (d desk) tell(told *problem.List) {
	if told != nil {
		printProblems(d.Err, told, present.Units{})
	}
}
