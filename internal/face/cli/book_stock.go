package cli

import (
	"context"
	"strings"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// stockTasks are about how much of a yarn there is, and about entries.
func stockTasks(w World) []task {
	var note, warp string
	var cancelNote string
	return []task{
		{
			use: "stock YARN [bought|used|measured|lost AMOUNT]", least: 1, most: -1, short: "Tell how much of a yarn is left, or enter what happened to it",
			long:    " An amount is\na length or a weight; measured says what is there, whatever was reckoned before.",
			example: "  sley book stock \"cottolin, white\"\n  sley book stock \"cottolin, white\" used 5 oz --warp \"Galley towels\"",
			flags: func(c *cobra.Command) {
				c.Flags().StringVar(&note, "note", "", "what is to be remembered of it")
				c.Flags().StringVar(&warp, "warp", "", "the warp that used it")
				must(c.RegisterFlagCompletionFunc("warp", w.name(record.Warp)))
			},
			complete: places(w.name(record.Yarn), fixed(record.Stock.Whats())),
			run: func(ctx context.Context, d desk, args []string) error {
				if len(args) == 1 {
					return runStock(ctx, d, args[0])
				}
				return d.stocked(ctx, args, note, warp)
			},
		},
		{
			use: "cancel ENTRY", least: 1, most: 1, short: "Cancel an entry of a stock or a log; both stay in the book",
			long: " ENTRY is the mark\nthat the lists show before it.", example: "  sley book cancel 4f2k9a7wq3m8xd5e",
			flags: func(c *cobra.Command) { c.Flags().StringVar(&cancelNote, "note", "", "why") },
			run:   func(ctx context.Context, d desk, args []string) error { return d.cancel(ctx, args[0], cancelNote) },
		},
	}
}

func runStock(ctx context.Context, d desk, name string) error {
	return d.lookAt(ctx, record.Yarn, name, func(o *app.OpenBook, card app.Card) error {
		stock, err := o.Stock(ctx, card.ID)
		if err != nil {
			return err
		}
		return d.say(present.StockText(card, stock), present.EventsJSONOf(card.ID, stock.Events, stock))
	})
}

func (d desk) stocked(ctx context.Context, args []string, note, warp string) error {
	return d.onDocument(ctx, "yarn", args[0], func(o *app.OpenBook, card app.Card) error {
		h := app.Happened{
			Document: card.ID, Window: present.CommandLine, What: args[1], Typed: strings.Join(args[2:], " "), Note: note,
		}
		if warp != "" {
			of, err := d.named(ctx, o.Studio, record.Warp, warp)
			if err != nil {
				return err
			}
			h.Warp = of.ID
		}
		e, list, err := o.Stocked(ctx, h)
		return d.entered(e, list, err)
	})
}

// entered says that something was entered, or what was wrong with it.
func (d desk) entered(e record.Event, list *problem.List, err error) error {
	if err != nil {
		return err
	}
	if list.Failed() {
		return d.problems(list)
	}
	return d.say(present.EventText(e), present.EventsJSONOf(e.Document, []record.Event{e}, nil))
}

func (d desk) cancel(ctx context.Context, event, note string) error {
	return d.changing(ctx, func(o *app.OpenBook) error {
		list, err := o.Cancel(ctx, present.CommandLine, event, note)
		if err != nil {
			return err
		}
		if list.Failed() {
			return d.problems(list)
		}
		return d.say(present.CancelledText(event), struct {
			Format    int    `json:"format"`
			Cancelled string `json:"cancelled"`
		}{1, event})
	})
}
