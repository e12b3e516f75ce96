package cli

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/face/sheet"
	"sley/internal/trade/loom"
	"sley/internal/trade/problem"
)

func newDraftMake(w World) *cobra.Command {
	var opts DraftOptions
	cmd := &cobra.Command{
		Use:   "make [WEAVE [PARAMETER=VALUE...]]",
		Short: "Make a weave of the catalogue, or list the catalogue",
		Long: `Make a weave of the catalogue (docs/catalogue.md) by its rule, with the parameters it
takes. Without a weave the catalogue is listed. Without -o the draft is printed.
` + exitHelp,
		Example:           "  sley draft make\n  sley draft make twill over=3/1 -o twill.wif\n  sley draft make satin -o satin.svg",
		ValidArgsFunction: weavesAndParams,
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return listWeaves(w)
			}
			return runDraftMake(w, args[0], args[1:], opts)
		},
	}
	opts.outFlags(cmd)
	return cmd
}

// outFlags are those of commands that make a draft.
func (o *DraftOptions) outFlags(cmd *cobra.Command) {
	cmd.Flags().StringVarP(&o.Out, "out", "o", "", "where the draft goes: .wif, .svg, .png or .pdf")
	cmd.Flags().BoolVar(&o.JSON, "json", false, "print JSON (docs/json.md)")
}

// listWeaves lists the catalogue by families, each weave with what it is and takes.
func listWeaves(w World) error {
	family := ""
	for _, e := range app.Weaves() {
		if e.Family != family {
			family = e.Family
			fmt.Fprintf(w.Out, "\n%s\n", present.CatalogueFamily(family).Name)
		}
		var params []string
		for _, p := range e.Params {
			params = append(params, p.Name+"="+p.Default)
		}
		fmt.Fprintf(w.Out, "  %-24s %s\n", e.ID, strings.Join(params, "  "))
	}
	return nil
}

func runDraftMake(w World, id string, pairs []string, opts DraftOptions) error {
	values, err := parameters(pairs)
	if err != nil {
		return err
	}
	d, list := app.MakeWeave(id, values)
	return madeDraft(w, d, list, present.Catalogue(id).Name, opts)
}

// parameters reads PARAMETER=VALUE pairs.
func parameters(pairs []string) (map[string]string, error) {
	values := map[string]string{}
	for _, pair := range pairs {
		name, value, ok := strings.Cut(pair, "=")
		if !ok {
			return nil, stop{code: exitUsage, err: fmt.Errorf("%q is no parameter: write its name, = and its value, as over=3/1", pair)}
		}
		values[name] = value
	}
	return values, nil
}

// madeDraft says what was wrong, or prints or writes what was made.
func madeDraft(w World, d *app.Drafted, list *problem.List, name string, opts DraftOptions) error {
	if opts.JSON {
		return printDraftJSON(w, d, list, app.Shuttles{})
	}
	printProblems(w.Err, list, present.Imperial)
	if d == nil {
		return verdict(w, list, ReckonOptions{})
	}
	d.Draft.Name = name
	if opts.Out != "" {
		return writeDraft(w, d, opts.Out, sheet.MadeLook(d), usualDPI)
	}
	judged := app.JudgeDraft(d)
	fmt.Fprint(w.Out, present.DraftText(d.Draft), present.JudgedText(judged.Cloth, nil))
	return nil
}

// weavesAndParams completes the weave, then its parameters.
func weavesAndParams(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	var out []string
	for _, e := range app.Weaves() {
		if len(args) == 0 {
			out = append(out, e.ID+"\t"+present.Catalogue(e.ID).Name)
			continue
		}
		if e.ID != args[0] {
			continue
		}
		for _, p := range e.Params {
			_, says := present.CatalogueParam(e.ID, p.Name)
			out = append(out, p.Name+"="+p.Default+"\t"+says)
		}
	}
	return out, cobra.ShellCompDirectiveNoFileComp
}

// BlockOptions are the flags of sley draft blocks.
type BlockOptions struct {
	DraftOptions
	app.Blocked
	Shafts, Treadles int
	Shed             string
}

func newDraftBlocks(w World) *cobra.Command {
	var opts BlockOptions
	cmd := &cobra.Command{
		Use:   "blocks [SYSTEM]",
		Short: "Write a profile draft out into threads",
		Long: `Write a profile draft, the short form of a block weave, out into threads by a system
of units. Blocks are letters, A the first; 1+3 in the treadling asks two blocks for
pattern at once. Without a system the systems are listed.
` + exitHelp,
		Example: "  sley draft blocks\n  sley draft blocks overshot --threading \"A B C D C B\" -o coverlet.wif\n" +
			"  sley draft blocks summer-and-winter --threading \"(A B) x 2\" --treadling \"1 2 1+2\" --shafts 4 --treadles 6 --feet two",
		Args:              cobra.MaximumNArgs(1),
		ValidArgsFunction: fixed(app.SystemNames()),
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return listSystems(w)
			}
			opts.System = args[0]
			return runDraftBlocks(w, opts)
		},
	}
	opts.outFlags(cmd)
	f := cmd.Flags()
	f.StringVar(&opts.Threading, "threading", "", "the blocks across the warp, as \"A B C B\"")
	f.StringVar(&opts.Treadling, "treadling", "", "the blocks along the weft; without it as drawn in")
	f.StringSliceVar(&opts.Ties, "ties", nil, "the blocks of each profile treadle, as 1,2,1+2; without it treadle 1 is block A")
	f.StringVar(&opts.Feet, "feet", "one", "one: a treadle for each lift; two: a skeleton tie-up; none: a lift plan")
	f.IntVar(&opts.Shafts, "shafts", 0, "shafts of your loom; without it not checked")
	f.IntVar(&opts.Treadles, "treadles", 0, "treadles of your loom; without it not checked")
	f.StringVar(&opts.Shed, "shed", "", "rising, sinking, counterbalance, countermarch or table")
	must(cmd.RegisterFlagCompletionFunc("feet", fixed(app.FeetNames())))
	must(cmd.RegisterFlagCompletionFunc("shed", fixed(loom.ShedNames())))
	return cmd
}

func listSystems(w World) error {
	for _, id := range app.SystemNames() {
		fmt.Fprintf(w.Out, "  %-24s %s\n", id, present.Catalogue(id).Name)
	}
	return nil
}

func runDraftBlocks(w World, opts BlockOptions) error {
	shed, known := loom.ParseShed(opts.Shed)
	if opts.Shed != "" && !known {
		return stop{code: exitUsage, err: fmt.Errorf("--shed: %q is not known; the sheds are %s", opts.Shed, strings.Join(loom.ShedNames(), ", "))}
	}
	if !slices.Contains(app.FeetNames(), opts.Feet) {
		return stop{code: exitUsage, err: fmt.Errorf("--feet: %q is not known; write %s", opts.Feet, strings.Join(app.FeetNames(), ", "))}
	}
	if opts.Threading == "" {
		return stop{code: exitUsage, err: fmt.Errorf("say the blocks across the warp: --threading \"A B C B\"")}
	}
	opts.Loom = loom.Loom{Shafts: opts.Shafts, Treadles: opts.Treadles, Shed: shed}
	d, list := app.WriteBlocks(opts.Blocked)
	return madeDraft(w, d, list, present.Catalogue(opts.System).Name, opts.DraftOptions)
}
