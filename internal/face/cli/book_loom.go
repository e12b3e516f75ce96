package cli

import (
	"context"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// loomTasks are what is done and said beside the loom.
func loomTasks(w World) []task {
	var from, pick int
	warp := places(w.name(record.Warp))
	atPick := func(c *cobra.Command) {
		c.Flags().IntVar(&pick, "pick", 0, "after so many picks of the warp, where it is not what is woven now")
	}
	return []task{
		{
			use: "loomside WARP [STEP]", least: 1, most: 2, short: "Show what is to be done at the loom, and how far it is",
			long:    " With a step, as\nthreading or weaving, its parts with their checks.",
			example: "  sley book loomside \"Galley towels\"\n  sley book loomside \"Galley towels\" threading", complete: warp, run: runLoomside,
		},
		{
			use: "reached WARP STEP PLACE", least: 3, most: 3, short: "Say how far a step at the loom is, by what it counts",
			long:    " STEP is one of those that\nloomside shows, or weaving, which counts picks. --from says where it was: then it\nnever takes back what was said elsewhere meanwhile.",
			example: "  sley book reached \"Galley towels\" threading 48\n  sley book reached \"Galley towels\" weaving 341 --from 340", complete: warp,
			flags: func(c *cobra.Command) { c.Flags().IntVar(&from, "from", -1, "the place it was at") },
			run: func(ctx context.Context, d desk, args []string) error {
				return d.reached(ctx, args, from)
			},
		},
		{
			use: "choose WARP WHAT VALUE", least: 3, most: -1, short: "Say how something is done at the loom",
			long:    " WHAT is way (back to front, front to back,\ntying on), side.STEP (left, right, centre), or ends.NUMBER with here: that piece of the\nwarp ended at the pick that is woven.",
			example: "  sley book choose \"Galley towels\" way front to back\n  sley book choose \"Galley towels\" side.threading right", complete: warp,
			run: runChoose,
		},
		{
			use: "tape WARP LENGTH", least: 2, most: -1, short: "Say what the tape reads, from the first pick of the piece on the loom",
			example: "  sley book tape \"Galley towels\" 17 1/4 in --pick 379", complete: warp, flags: atPick,
			run: func(ctx context.Context, d desk, args []string) error {
				return d.atLoom(ctx, args[0], strings.Join(args[1:], " "), func(o *app.OpenBook, h app.Happened) (*problem.List, error) {
					return o.Taped(ctx, h, pick)
				})
			},
		},
		{
			use: "weigh WARP YARN AMOUNT", least: 3, most: -1, short: "Say what is left of a weft yarn, by the scale",
			example: "  sley book weigh \"Galley towels\" white 180 g", complete: warp, flags: atPick,
			run: func(ctx context.Context, d desk, args []string) error {
				return d.atLoom(ctx, args[0], strings.Join(args[2:], " "), func(o *app.OpenBook, h app.Happened) (*problem.List, error) {
					return o.Weighed(ctx, h, args[1], pick)
				})
			},
		},
	}
}

func runLoomside(ctx context.Context, d desk, args []string) error {
	return d.lookAt(ctx, record.Warp, args[0], func(o *app.OpenBook, card app.Card) error {
		found, err := o.Loomside(ctx, card.ID)
		if err != nil {
			return err
		}
		if found.Result == nil {
			return d.problems(found.Problems)
		}
		shape := present.LoomsideJSONOf(found)
		step := ""
		if len(args) > 1 {
			step = args[1]
		}
		text, ok := present.LoomsideText(shape, step)
		if !ok {
			list := &problem.List{}
			list.Fail("loomside.step", "step", step, problem.Args{"valid": present.StepNames(shape)})
			return d.problems(list)
		}
		return d.say(text, shape)
	})
}

func (d desk) reached(ctx context.Context, args []string, from int) error {
	return d.onDocument(ctx, "warp", args[0], func(o *app.OpenBook, card app.Card) error {
		place, err := strconv.Atoi(args[2])
		if err != nil {
			place = -1 // is refused, with what can be
		}
		to := app.Reach{Step: args[1], Place: place, From: max(from, 0), Set: from < 0}
		at, list, err := o.Reached(ctx, app.Happened{Document: card.ID, Window: present.CommandLine, Typed: args[2]}, to)
		switch {
		case err != nil:
			return err
		case list.Failed():
			return d.problems(list)
		}
		return d.say(present.ReachedText(card.Name, args[1], at), struct {
			Format int       `json:"format"`
			ID     record.ID `json:"id"`
			Step   string    `json:"step"`
			Place  int       `json:"place"`
		}{1, card.ID, args[1], at})
	})
}

func runChoose(ctx context.Context, d desk, args []string) error {
	return d.atLoom(ctx, args[0], "", func(o *app.OpenBook, h app.Happened) (*problem.List, error) {
		return o.Choose(ctx, h, args[1], strings.Join(args[2:], " "))
	})
}

// atLoom says something of a warp, then shows where it stands.
func (d desk) atLoom(ctx context.Context, name, typed string, do func(*app.OpenBook, app.Happened) (*problem.List, error)) error {
	return d.onDocument(ctx, "warp", name, func(o *app.OpenBook, card app.Card) error {
		list, err := do(o, app.Happened{Document: card.ID, Window: present.CommandLine, Typed: typed})
		switch {
		case err != nil:
			return err
		case list.Failed():
			return d.problems(list)
		}
		found, err := o.Loomside(ctx, card.ID)
		if err != nil {
			return err
		}
		shape := present.LoomsideJSONOf(found)
		text, _ := present.LoomsideText(shape, "")
		return d.say(text, shape)
	})
}
