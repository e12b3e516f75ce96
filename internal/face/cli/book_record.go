package cli

import (
	"context"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/record"
)

// recordTasks tell what came of warps.
func recordTasks(w World) []task {
	var words string
	return []task{
		{
			use: "record WARP", least: 1, most: 1, short: "Tell what came of a warp: sizes planned and measured, and what they teach",
			long:    " What is learnt is\nwritten as an allowance of the next plan takes it.",
			example: "  sley book record \"Hatch runner, finished\"", complete: places(w.name(record.Warp)), run: runRecord,
		},
		{
			use: "records", most: 0, short: "List the warps that are finished, with what was learnt of each",
			example: "  sley book records\n  sley book records --words linen",
			flags: func(c *cobra.Command) {
				c.Flags().StringVar(&words, "words", "", "words, or their beginnings, that all must be found")
			},
			run: func(ctx context.Context, d desk, _ []string) error { return d.records(ctx, words) },
		},
		{
			use: "samples YARN", least: 1, most: 1, short: "Tell the samples that were woven of a yarn, and what they say",
			long:    " A sample is\nentered by the keys of docs/planfile.md: sley book set yarn NAME\nsamples.\"2/2 twill\".on-loom=\"10 in\".",
			example: "  sley book samples \"handspun, grey ewe\"", complete: places(w.name(record.Yarn)), run: runSamples,
		},
		{
			use: "advice WARP", least: 1, most: 1, short: "Tell the allowances that samples and records say for a warp",
			long:    " Samples are those\nof its yarns, records those of finished warps in the same fibre, the newest first.",
			example: "  sley book advice \"Galley towels\"", complete: places(w.name(record.Warp)), run: runAdvice,
		},
	}
}

func runRecord(ctx context.Context, d desk, args []string) error {
	return d.lookAt(ctx, record.Warp, args[0], func(o *app.OpenBook, card app.Card) error {
		found, err := o.Record(ctx, card.ID)
		if err != nil {
			return err
		}
		return d.say(present.RecordText(found), present.RecordJSONOf(found))
	})
}

func (d desk) records(ctx context.Context, words string) error {
	var all []*app.Record
	err := d.reading(ctx, func(o *app.OpenBook) error {
		q := record.Query{Words: words, Most: 50}
		for {
			found, total, err := o.Records(ctx, q)
			all = append(all, found...)
			if err != nil || len(found) == 0 || len(all) >= total {
				return err
			}
			last := found[len(found)-1]
			q.After, q.AfterID = last.Sort, last.ID
		}
	})
	if err != nil {
		return err
	}
	return d.say(present.RecordsText(all), present.RecordsJSONOf(all))
}

func runSamples(ctx context.Context, d desk, args []string) error {
	return d.lookAt(ctx, record.Yarn, args[0], func(o *app.OpenBook, card app.Card) error {
		found, err := o.Samples(ctx, card.ID)
		if err != nil {
			return err
		}
		return d.say(present.SamplesText(card, found), present.SamplesJSONOf(card.ID, found))
	})
}

func runAdvice(ctx context.Context, d desk, args []string) error {
	return d.lookAt(ctx, record.Warp, args[0], func(o *app.OpenBook, card app.Card) error {
		found, err := o.Advice(ctx, card.ID)
		if err != nil {
			return err
		}
		return d.say(present.AdviceText(card, found), present.AdviceJSONOf(card.ID, found))
	})
}
