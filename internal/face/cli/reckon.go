package cli

import (
	"encoding/json"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// ReckonOptions are the flags of sley reckon.
type ReckonOptions struct {
	Explain, JSON, Strict bool
	Units, Find           string
}

func newReckon(w World) *cobra.Command {
	var opts ReckonOptions
	cmd := &cobra.Command{
		Use:   "reckon PLAN",
		Short: "Reckon every number of a plan file",
		Long: `Reckon every number of a plan file (docs/planfile.md); a PLAN of - is read from
the standard input, book:NAME from the book. Figures are those read at the bench: lengths to 1/8 in or
5 mm, whole ends and picks.
` + exitHelp,
		Example:           "  sley reckon examples/galley-towels.toml\n  sley reckon examples/berth-blanket.toml --explain --units metric",
		Args:              onePlanOf("reckon PLAN"),
		ValidArgsFunction: planFiles,
		RunE:              func(_ *cobra.Command, args []string) error { return runReckon(w, args[0], opts) },
	}
	flags := cmd.Flags()
	flags.BoolVar(&opts.Explain, "explain", false, "add the working of every number")
	flags.BoolVar(&opts.JSON, "json", false, "print JSON (docs/json.md)")
	flags.BoolVar(&opts.Strict, "strict", false, "treat warnings as problems (exit 3)")
	flags.StringVar(&opts.Units, "units", "", "metric, imperial, or pairs such as length=cm,yarn=m,weight=g,density=cm")
	flags.StringVar(&opts.Find, "find", "", "reckon backwards: the path of the unknown, such as pieces[0].length")
	must(cmd.RegisterFlagCompletionFunc("units", unitValues))
	must(cmd.RegisterFlagCompletionFunc("find", findValues(w)))
	return cmd
}

// onePlanOf asks for the plan file by name.
func onePlanOf(use string) cobra.PositionalArgs {
	return func(_ *cobra.Command, args []string) error {
		if len(args) != 1 {
			return fmt.Errorf("name one plan file: sley %s (%d named); - reads the standard input", use, len(args))
		}
		return nil
	}
}

func runReckon(w World, name string, opts ReckonOptions) error {
	from, err := w.read(name, record.Warp)
	if err != nil {
		return err
	}
	return reckonSource(w, from, opts)
}

func readPlan(w World, name string) ([]byte, error) {
	if name == "-" {
		return io.ReadAll(w.In)
	}
	return w.ReadFile(name)
}

// reckonSource reckons a plan and prints it; problems go to the standard error.
func reckonSource(w World, from source, opts ReckonOptions) error {
	result, list := app.ReckonPlan(from.Source, opts.Find, opts.Explain || opts.JSON)
	list = from.told(list)
	units, err := present.UnitsFor(result, from.Units, opts.Units)
	if err != nil {
		return stop{code: exitUsage, err: err}
	}
	if opts.JSON {
		shape := present.JSONOf(result, list, units)
		shape.Mark = app.Mark(from.Text)
		if err := printJSON(w.Out, shape); err != nil {
			return stop{code: exitFailed, err: err}
		}
		return verdict(w, list, opts)
	}
	if result != nil && !list.Failed() {
		fmt.Fprint(w.Out, present.PageOf(result, units, opts.Explain).Text())
		fmt.Fprintf(w.Out, "\n%s\n", present.Colophon(app.Mark(from.Text), result.Defaults))
		if list.Len() > 0 {
			fmt.Fprintln(w.Err)
		}
	}
	printProblems(w.Err, list, units)
	return verdict(w, list, opts)
}

func printJSON(out io.Writer, value any) error {
	enc := json.NewEncoder(out)
	enc.SetIndent("", "  ")
	enc.SetEscapeHTML(false)
	return enc.Encode(value)
}

// mostProblems is how many problems are printed before they are only counted.
const mostProblems = 50

func printProblems(out io.Writer, list *problem.List, u present.Units) {
	for i, p := range list.All() {
		if i == mostProblems {
			fmt.Fprintf(out, "\nand %d more\n", list.Len()-mostProblems)
			return
		}
		if i > 0 {
			fmt.Fprintln(out)
		}
		fmt.Fprint(out, present.Problem(u.Localise(p)))
	}
}

// verdict turns problems into an exit code; with --json the last thing on the
// standard error is an object that carries it.
func verdict(w World, list *problem.List, opts ReckonOptions) error {
	if !list.Failed() && !(opts.Strict && list.Has(problem.Warning)) {
		return nil
	}
	if opts.JSON {
		_ = json.NewEncoder(w.Err).Encode(map[string]any{"exit": exitProblems, "slug": "input-has-problems"})
	}
	return stop{code: exitProblems, slug: "input-has-problems"}
}
