package cli

import (
	"context"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/record"
)

// workTasks are about the work on a warp.
func workTasks(w World) []task {
	var state string
	warp := places(w.name(record.Warp))
	return []task{
		{
			use: "start WARP", least: 1, most: 1, short: "Say that work on a warp begins: its plan is kept as it is now",
			long:    " What stands on\nthe loom otherwise is amended later; the plan itself changes no more.",
			example: "  sley book start \"Galley towels\"", complete: warp, run: runStart,
		},
		{
			use: "amend WARP KEY=VALUE...", least: 2, most: -1, short: "Say what stands on the loom where it is not as planned, by the keys of [built]",
			example: "  sley book amend \"Galley towels\" ends=480", complete: warp, run: runAmend,
		},
		{
			use: "woven WARP PICK", least: 2, most: 2, short: "Say how far a warp is woven, by the number of the last pick from its start",
			example: "  sley book woven \"Galley towels\" 340", complete: warp, run: runWoven,
		},
		{
			use: "measure WARP PATH SIZE", least: 3, most: -1, short: "Enter a size that was measured of a warp",
			long:    " PATH is what of the plan it is, as\npieces[0].length.",
			example: "  sley book measure \"Galley towels\" pieces[0].length 28 1/4 in\n  sley book measure \"Galley towels\" pieces[0].width 46 cm --state \"at the fell\"",
			flags: func(c *cobra.Command) {
				c.Flags().StringVar(&state, "state", "finished", "the state it was measured in")
				must(c.RegisterFlagCompletionFunc("state", words(func(args []string) []string {
					if len(args) < 2 {
						return nil
					}
					return app.MeasuredStates(args[1])
				})))
			},
			complete: places(w.name(record.Warp), w.measurable()),
			run: func(ctx context.Context, d desk, args []string) error {
				return d.measure(ctx, args, state)
			},
		},
	}
}

// measurable completes what of the warp that is named first can be measured.
func (w World) measurable() cobra.CompletionFunc {
	return words(func(args []string) []string {
		return completing(w, func(ctx context.Context, s *app.Studio) []string {
			card, _, err := s.Named(ctx, record.Warp, args[0])
			if err != nil || card == nil {
				return nil
			}
			out, _ := s.Measurable(ctx, card.ID)
			return out
		})
	})
}

func runStart(ctx context.Context, d desk, args []string) error {
	return d.onDocument(ctx, "warp", args[0], func(o *app.OpenBook, card app.Card) error {
		done, err := o.Start(ctx, card.ID, card.Version, present.CommandLine)
		if err != nil {
			return err
		}
		return d.savedAs(present.StartedText(card.Name, done), done)
	})
}

func runAmend(ctx context.Context, d desk, args []string) error {
	sets, err := setsOf(args[1:])
	if err != nil {
		return err
	}
	return d.onDocument(ctx, "warp", args[0], func(o *app.OpenBook, card app.Card) error {
		done, err := o.Amend(ctx, editOf(card, sets))
		if err != nil {
			return err
		}
		return d.saved(ctx, o.Studio, record.Warp, card.Version, done)
	})
}

func runWoven(ctx context.Context, d desk, args []string) error {
	return d.onDocument(ctx, "warp", args[0], func(o *app.OpenBook, card app.Card) error {
		pick, _ := strconv.Atoi(args[1]) // 0 is refused, with what was typed
		list, err := o.Wove(ctx, app.Happened{Document: card.ID, Window: present.CommandLine, Typed: args[1]}, pick)
		if err != nil {
			return err
		}
		if list.Failed() {
			return d.problems(list)
		}
		return d.say(present.WovenText(card.Name, pick), struct {
			Format int       `json:"format"`
			ID     record.ID `json:"id"`
			Pick   int       `json:"pick"`
		}{1, card.ID, pick})
	})
}

func (d desk) measure(ctx context.Context, args []string, state string) error {
	return d.onDocument(ctx, "warp", args[0], func(o *app.OpenBook, card app.Card) error {
		h := app.Happened{Document: card.ID, Window: present.CommandLine, Typed: strings.Join(args[2:], " ")}
		e, list, err := o.Measured(ctx, h, args[1], state)
		return d.entered(e, list, err)
	})
}
