package cli

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

// faulty says a fault of a value on the command line and gives exit code 3.
func faulty(w World, what, text string, err error) error {
	var f *qty.Fault
	if !errors.As(err, &f) {
		return stop{code: exitFailed, err: err}
	}
	p := problem.Problem{
		Code: f.Code, Path: what, Read: f.Read, Args: f.Args,
		Place: problem.Place{File: "command line", Line: 1, Col: f.At + 1, Width: len([]rune(f.Read)), Excerpt: text},
	}
	fmt.Fprint(w.Err, present.Problem(p))
	return stop{code: exitProblems, slug: f.Code}
}

func newYarn(w World) *cobra.Command {
	var asJSON bool
	var sets []string
	cmd := &cobra.Command{
		Use:   "yarn [LABEL]",
		Short: "Tell a yarn's count in every system, with the working",
		Long: `Tell a yarn's count in every system, with the working. A label may say fibre and
colour as well; where no count system is written, the fibre's custom says which is
meant, and the answer tells so. Folded yarns of unlike singles are written with a
plus: "60 Ne + 40 Ne". What you measured yourself is laid over the label by the keys
of a yarn in a plan file (docs/planfile.md).
` + exitHelp,
		Example: "  sley yarn \"8/2 Ne\"\n  sley yarn \"60 tex\"\n  sley yarn \"cottolin 22/2, white\"\n  sley yarn --set skein.length=\"10 yd\" --set skein.weight=\"5 g\"",
		Args:    cobra.ArbitraryArgs,
		RunE: func(_ *cobra.Command, args []string) error {
			return runYarn(w, strings.Join(args, " "), sets, asJSON)
		},
	}
	cmd.Flags().StringArrayVar(&sets, "set", nil, "`PATH=VALUE` of the yarn, such as skein.length=\"10 yd\"; may be given again")
	cmd.Flags().BoolVar(&asJSON, "json", false, "print JSON (docs/json.md)")
	cmd.ValidArgsFunction = fixed([]string{"8/2 Ne", "16/2 lea", "Nm 8/2", "60 tex", "3360 yd/lb", "150 den"})
	return cmd
}

func runYarn(w World, text string, said []string, asJSON bool) error {
	sets, err := yarnSets(text, said)
	if err != nil {
		return err
	}
	read, list := app.ReadYarn(text, sets...)
	if len(sets) == 0 && read.Yarn.Count.Is.IsZero() {
		if _, _, err := app.Yarn(text); err != nil {
			return faulty(w, "count", text, err)
		}
	}
	verdict := verdict(w, list, ReckonOptions{JSON: asJSON})
	if asJSON {
		return errors.Join(printJSON(w.Out, present.YarnJSONOf(text, read, list)), verdict)
	}
	if !list.Failed() {
		fmt.Fprint(w.Out, present.YarnPage(text, read).Text())
	}
	printProblems(w.Err, list, present.Imperial)
	return verdict
}

// yarnSets reads the values that are laid over a label.
func yarnSets(text string, said []string) ([]app.Set, error) {
	if text == "" && len(said) == 0 {
		return nil, stop{code: exitUsage, err: errors.New("give a label, or values with --set")}
	}
	var out []app.Set
	for _, one := range said {
		set, ok := app.ReadSet(one)
		if !ok {
			return nil, stop{code: exitUsage, err: fmt.Errorf("--set %q is not PATH=VALUE", one)}
		}
		out = append(out, set)
	}
	return out, nil
}

// SettOptions are the flags of sley sett.
type SettOptions struct {
	Fibre, Weave, K, Volume, Wraps, Units string
	JSON                                  bool
}

func newSett(w World) *cobra.Command {
	var opts SettOptions
	cmd := &cobra.Command{
		Use:     "sett COUNT",
		Short:   "Advise setts for a yarn in a weave, by several rules",
		Long:    "Advise setts for a yarn in a weave: the closest that yarn and weave allow, the\nusual shares of it, and what the yarn's wraps say.\n" + exitHelp,
		Example: "  sley sett \"8/2 Ne\" --fibre cotton --weave \"2/2 twill\"\n  sley sett \"2400 m/kg\" --wraps \"24 wpi touching\"",
		Args:    cobra.MinimumNArgs(1),
		RunE:    func(_ *cobra.Command, args []string) error { return runSett(w, strings.Join(args, " "), opts) },
	}
	flags := cmd.Flags()
	flags.StringVar(&opts.Fibre, "fibre", "", "the yarn's fibre, for its diameter constant")
	flags.StringVar(&opts.Weave, "weave", "plain", "the weave")
	flags.StringVar(&opts.K, "constant", "", "your own diameter constant, such as 0.92")
	flags.StringVar(&opts.Volume, "volume", "", "the yarn's specific volume in cm³/g, instead of a constant, such as 1.1")
	flags.StringVar(&opts.Wraps, "wraps", "", "wraps and their kind, such as \"24 wpi touching\"")
	flags.StringVar(&opts.Units, "units", "", "metric, imperial, or pairs such as density=cm")
	flags.BoolVar(&opts.JSON, "json", false, "print JSON (docs/json.md)")
	must(cmd.RegisterFlagCompletionFunc("weave", fixed(app.WeaveNames())))
	must(cmd.RegisterFlagCompletionFunc("fibre", fixed(app.FibreNames())))
	must(cmd.RegisterFlagCompletionFunc("units", unitValues))
	return cmd
}

func runSett(w World, text string, opts SettOptions) error {
	asked, err := settAsked(w, text, opts)
	if err != nil {
		return err
	}
	units, err := present.ParseUnits(opts.Units, present.Imperial)
	if err != nil {
		return stop{code: exitUsage, err: err}
	}
	result, list, err := app.Sett(asked)
	if err != nil {
		return faulty(w, "--fibre", opts.Fibre, err)
	}
	verdict := verdict(w, list, ReckonOptions{JSON: opts.JSON})
	if opts.JSON {
		return errors.Join(printJSON(w.Out, present.JSONOf(result, list, units)), verdict)
	}
	if result != nil {
		fmt.Fprint(w.Out, present.SettPage(result, units, text, asked.Weave).Text())
	}
	printProblems(w.Err, list, units)
	return verdict
}

// settAsked reads the values of the flags; the first that cannot be read stops.
func settAsked(w World, text string, opts SettOptions) (app.SettAsked, error) {
	asked := app.SettAsked{Fibre: opts.Fibre, Weave: opts.Weave}
	count, _, err := app.Yarn(text)
	if err != nil {
		return asked, faulty(w, "count", text, err)
	}
	asked.Count = count
	if _, ok := warp.WeaveNamed(opts.Weave); !ok {
		return asked, stop{code: exitUsage, err: fmt.Errorf("--weave: %q is not known; known are %s", opts.Weave, strings.Join(app.WeaveNames(), ", "))}
	}
	if asked.K, err = constant(w, opts); err != nil {
		return asked, err
	}
	if opts.Wraps != "" {
		wraps, err := yarn.ParseWraps(opts.Wraps)
		if err != nil {
			return asked, faulty(w, "--wraps", opts.Wraps, err)
		}
		asked.Wraps = qty.Typed[yarn.Wraps]{Is: wraps, Typed: opts.Wraps}
	}
	return asked, nil
}

// constant gives the diameter constant asked for: as it was said, or that of a
// specific volume; 0 where the yarn's usual one will do.
func constant(w World, opts SettOptions) (qty.Rat, error) {
	switch {
	case opts.K != "" && opts.Volume != "":
		return qty.Rat{}, stop{code: exitUsage, err: errors.New("--constant and --volume say the same thing: give one of them")}
	case opts.K != "":
		k, err := qty.ParseNumber(opts.K)
		if err != nil {
			return k, faulty(w, "--constant", opts.K, err)
		}
		return k, nil
	case opts.Volume != "":
		v, err := qty.ParseNumber(opts.Volume)
		if err != nil {
			return v, faulty(w, "--volume", opts.Volume, err)
		}
		return yarn.KOfVolume(v), nil
	}
	return qty.Rat{}, nil
}

// ReedOptions are the flags of sley reed.
type ReedOptions struct {
	Reeds []string
	Unit  int
	Units string
	JSON  bool
}

func newReed(w World) *cobra.Command {
	var opts ReedOptions
	cmd := &cobra.Command{
		Use:     "reed SETT",
		Short:   "Rank the sleying orders of your reeds for a sett",
		Long:    "Rank the orders of ends in the dents of your reeds for a sett: the nearest\nfirst, then the same number in every dent, one or two rather than more, the\nshorter, the more even.\n" + exitHelp,
		Example: "  sley reed \"24 epi\" --reeds \"8 dpi,10 dpi,12 dpi\"\n  sley reed \"9/cm\" --reeds \"40/10 cm,50/10 cm\"",
		Args:    cobra.MinimumNArgs(1),
		RunE:    func(_ *cobra.Command, args []string) error { return runReed(w, strings.Join(args, " "), opts) },
	}
	flags := cmd.Flags()
	flags.StringSliceVar(&opts.Reeds, "reeds", []string{"8 dpi", "10 dpi", "12 dpi", "15 dpi"}, "the reeds, each with its numbering")
	flags.IntVar(&opts.Unit, "unit", 0, "ends of the weave's unit that a dent should not split")
	flags.StringVar(&opts.Units, "units", "", "metric, imperial, or pairs such as density=cm")
	flags.BoolVar(&opts.JSON, "json", false, "print JSON (docs/json.md)")
	must(cmd.RegisterFlagCompletionFunc("reeds", fixed([]string{"8 dpi", "10 dpi", "12 dpi", "15 dpi", "40/10 cm", "50/10 cm"})))
	must(cmd.RegisterFlagCompletionFunc("units", unitValues))
	return cmd
}

func runReed(w World, text string, opts ReedOptions) error {
	wanted, err := qty.ParseDensity(text)
	if err != nil {
		return faulty(w, "sett", text, err)
	}
	units, err := present.ParseUnits(opts.Units, present.Imperial)
	if err != nil {
		return stop{code: exitUsage, err: err}
	}
	result, err := app.Reeds(warp.Sett{Is: wanted, State: warp.InReed, Typed: text}, opts.Reeds, opts.Unit)
	if err != nil {
		return faulty(w, "--reeds", strings.Join(opts.Reeds, ","), err)
	}
	if opts.JSON {
		return printJSON(w.Out, present.JSONOf(result, &problem.List{}, units))
	}
	fmt.Fprint(w.Out, present.ReedsPage(result, units).Text())
	return nil
}
