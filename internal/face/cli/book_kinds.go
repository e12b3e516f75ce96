package cli

import (
	"context"
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/record"
)

// kindTasks look at the kinds of pieces that a warp can begin with.
func kindTasks() []task {
	var units string
	return []task{{
		use: "kinds", short: "List the kinds of pieces that a warp can begin with, with their usual sizes",
		example: "  sley book kinds\n  sley book kinds --units metric",
		flags:   func(c *cobra.Command) { unitsFlag(c, &units) },
		run: func(_ context.Context, d desk, _ []string) error {
			if err := unitsFit(units); err != nil {
				return err
			}
			all := app.Kinds(units == app.MetricUnits)
			return d.say(present.KindsText(all), struct {
				Format int                `json:"format"`
				Kinds  []present.KindJSON `json:"kinds"`
			}{1, present.KindsJSONOf(all)})
		},
	}}
}

func unitsFlag(c *cobra.Command, units *string) {
	c.Flags().StringVar(units, "units", "", "metric or imperial sizes")
	must(c.RegisterFlagCompletionFunc("units", fixed([]string{app.MetricUnits, app.ImperialUnits})))
}

func unitsFit(units string) error {
	if units == "" || units == app.MetricUnits || units == app.ImperialUnits {
		return nil
	}
	return stop{code: exitUsage, err: fmt.Errorf("--units: %q is not known; write %s or %s", units, app.MetricUnits, app.ImperialUnits)}
}

// begunBy are the flags of a warp that is begun by its kind of piece.
type begunBy struct {
	app.WarpAsked
	yarn, loom, draft string
}

func (b *begunBy) flags(w World) func(*cobra.Command) {
	return func(c *cobra.Command) {
		f := c.Flags()
		f.StringVar(&b.Kind, "kind", "", "begin a warp of a kind of piece instead, as sley book kinds lists them")
		f.StringVar(&b.Name, "name", "", "with --kind: its name")
		f.IntVar(&b.Count, "count", 0, "with --kind: how many pieces")
		unitsFlag(c, &b.Units)
		f.StringVar(&b.yarn, "yarn", "", "with --kind: a yarn of the shelf")
		f.StringVar(&b.loom, "loom", "", "with --kind: a loom")
		f.StringVar(&b.draft, "draft", "", "with --kind: a draft of the shelf")
		must(c.RegisterFlagCompletionFunc("kind", fixed(app.KindIDs())))
		for _, of := range []struct {
			flag string
			kind record.Kind
		}{{"yarn", record.Yarn}, {"loom", record.Loom}, {"draft", record.Draft}} {
			must(c.RegisterFlagCompletionFunc(of.flag, w.name(of.kind)))
		}
	}
}

// add takes a plan file in, or begins a warp of a kind of piece.
func (b *begunBy) add(ctx context.Context, d desk, args []string) error {
	switch {
	case b.Kind == "" && len(args) == 0:
		return stop{code: exitUsage, err: errors.New("name a plan file, or say with --kind what the warp is for")}
	case b.Kind != "" && len(args) > 0:
		return stop{code: exitUsage, err: errors.New("a plan file says itself what the warp is for: leave out the file, or --kind")}
	case b.Kind == "" && *b != begunBy{}:
		return stop{code: exitUsage, err: errors.New("--name, --count, --units, --yarn, --loom and --draft go with --kind; a plan file says all of it")}
	case b.Kind == "":
		return addFile(record.Warp, (*app.Studio).AddWarp)(ctx, d, args)
	}
	if err := unitsFit(b.Units); err != nil {
		return err
	}
	return d.changing(ctx, func(o *app.OpenBook) error { return b.begin(ctx, d, o) })
}

func (b *begunBy) begin(ctx context.Context, d desk, o *app.OpenBook) error {
	for _, of := range []struct {
		name string
		kind record.Kind
		to   *record.ID
	}{{b.yarn, record.Yarn, &b.Yarn}, {b.loom, record.Loom, &b.Loom}, {b.draft, record.Draft, &b.Draft}} {
		if of.name == "" {
			continue
		}
		card, err := d.named(ctx, o.Studio, of.kind, of.name)
		if err != nil {
			return err
		}
		*of.to = card.ID
	}
	b.Window = present.CommandLine
	done, err := o.NewWarp(ctx, b.WarpAsked)
	if err != nil {
		return err
	}
	return d.saved(ctx, o.Studio, record.Warp, 0, done)
}
