package cli

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// AfterOptions are the flags of the commands for a cloth that is woven.
type AfterOptions struct {
	Units string
	JSON  bool
}

func newLabel(w World) *cobra.Command {
	return afterCommand(&cobra.Command{
		Use:   "label PLAN",
		Short: "Write the label of a cloth: its fibres by weight, and its care",
		Long: `Write the label of a cloth: the fibres of what is in it, by weight, as European and
United States rules have it, how they were counted, and how the cloth is cared for.
A PLAN of - is read from the standard input, book:NAME from the book: of a warp on
the loom as its plan was when work began, with what was amended since. What is
missing for a label is asked for, and ends the command with exit code 3. Check your
local rule.
` + exitHelp,
		Example: "  sley label examples/berth-blanket.toml\n  sley label examples/hatch-runner-finished.toml --json",
	}, func(name string, opts AfterOptions) error { return runLabel(w, name, opts) })
}

func newFinish(w World) *cobra.Command {
	return afterCommand(&cobra.Command{
		Use:   "finish PLAN",
		Short: "Tell what is done with a cloth after its last pick, step by step",
		Long: `Tell what is done with a cloth after its last pick, step by step: in the order that
suits its fibres, its hems and fringes and its wash, with the figures of each step,
what to measure and write down, and what can hurt. A PLAN of - is read from the
standard input, book:NAME from the book.
` + exitHelp,
		Example: "  sley finish examples/galley-towels.toml\n  sley finish examples/berth-blanket.toml --units imperial",
	}, func(name string, opts AfterOptions) error { return runFinish(w, name, opts) })
}

// afterCommand gives a command what both have.
func afterCommand(cmd *cobra.Command, run func(string, AfterOptions) error) *cobra.Command {
	var opts AfterOptions
	cmd.Args, cmd.ValidArgsFunction = onePlanOf(cmd.Use), planFiles
	cmd.RunE = func(_ *cobra.Command, args []string) error { return run(args[0], opts) }
	cmd.Flags().StringVar(&opts.Units, "units", "", "metric, imperial, or pairs such as length=cm,yarn=m,weight=g,density=cm")
	cmd.Flags().BoolVar(&opts.JSON, "json", false, "print JSON (docs/json.md)")
	must(cmd.RegisterFlagCompletionFunc("units", unitValues))
	return cmd
}

func runLabel(w World, name string, opts AfterOptions) error {
	from, err := w.read(name, record.Warp)
	if err != nil {
		return err
	}
	label, list := app.LabelPlan(from.Source)
	list = from.told(list)
	units := present.Imperial
	if label != nil {
		if units, err = present.UnitsFor(label.Result, label.Units, opts.Units); err != nil {
			return stop{code: exitUsage, err: err}
		}
	}
	text := ""
	if label != nil {
		text = present.LabelText(label, units)
	}
	return afterSaid(w, list, units, opts, text, present.LabelFileOf(label, list, units))
}

func runFinish(w World, name string, opts AfterOptions) error {
	from, err := w.read(name, record.Warp)
	if err != nil {
		return err
	}
	steps, list := app.FinishPlan(from.Source)
	list = from.told(list)
	units, text := present.Imperial, ""
	if steps != nil {
		if units, err = present.UnitsFor(steps.Result, steps.Units, opts.Units); err != nil {
			return stop{code: exitUsage, err: err}
		}
		text = present.FinishingText(steps, units)
	}
	return afterSaid(w, list, units, opts, text, present.FinishingFileOf(steps, list, units))
}

// afterSaid prints an answer as text or as JSON, and the problems.
func afterSaid(w World, list *problem.List, u present.Units, opts AfterOptions, text string, shape any) error {
	verdict := verdict(w, list, ReckonOptions{JSON: opts.JSON})
	if opts.JSON {
		return errors.Join(printJSON(w.Out, shape), verdict)
	}
	fmt.Fprint(w.Out, text)
	printProblems(w.Err, list, u)
	return verdict
}
