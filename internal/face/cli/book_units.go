package cli

import (
	"context"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/warp"
)

// unitsTasks say what figures of the book are shown in.
func unitsTasks() []task {
	return []task{{
		use: "units [metric|imperial|as-typed|KIND=UNIT...]", most: -1, short: "Show what figures of the book are shown in, or say it",
		long:    " A plan's own\nunits stand above, and so does --units; a kind without a unit is shown as each\nplan was typed.",
		example: "  sley book units\n  sley book units metric\n  sley book units length=in weight=g count=",
		complete: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			out, directive := unitValues(nil, nil, "")
			return append(out, asTyped), directive
		},
		run: runUnits,
	}}
}

// asTyped takes all units away.
const asTyped = "as-typed"

// unitsJSON is the shape of the units of a book.
type unitsJSON struct {
	Format  int    `json:"format"`
	Length  string `json:"length"`
	Yarn    string `json:"yarn"`
	Weight  string `json:"weight"`
	Density string `json:"density"`
	Count   string `json:"count"`
}

func runUnits(ctx context.Context, d desk, args []string) error {
	said, err := unitsSaid(args)
	if err != nil {
		return err
	}
	var u warp.Units
	if len(said) == 0 {
		err = d.reading(ctx, func(o *app.OpenBook) (err error) {
			u, err = o.Units(ctx)
			return err
		})
	} else {
		err = d.changing(ctx, func(o *app.OpenBook) error {
			now, list, err := o.SetUnits(ctx, said)
			if err == nil && list.Failed() {
				return d.problems(list)
			}
			u = now
			return err
		})
	}
	if err != nil {
		return err
	}
	return d.say(present.UnitsText(u), unitsJSON{1, u.Length, u.Yarn, u.Weight, u.Density, u.Count})
}

// unitsSaid reads pairs, or the word for a whole set of them.
func unitsSaid(args []string) (map[string]string, error) {
	said := map[string]string{}
	for _, arg := range args {
		kind, unit, pair := strings.Cut(arg, "=")
		set, whole := unitSets[arg]
		switch {
		case whole:
			for i, kind := range app.UnitKinds() {
				said[kind] = set[i]
			}
		case pair:
			said[kind] = unit
		default:
			return nil, stop{code: exitUsage, err: fmt.Errorf("%q is not known; write metric, imperial, %s, or pairs such as length=cm", arg, asTyped)}
		}
	}
	return said, nil
}

// unitSets are whole sets of units, in the order of app.UnitKinds.
var unitSets = map[string][]string{
	"metric":   {present.Metric.Length, present.Metric.Yarn, present.Metric.Weight, present.Metric.Density, present.Metric.Count},
	"imperial": {present.Imperial.Length, present.Imperial.Yarn, present.Imperial.Weight, present.Imperial.Density, present.Imperial.Count},
	asTyped:    {"", "", "", "", ""},
}
