package cli

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/face/sheet"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// DraftOptions are the flags of sley draft.
type DraftOptions struct {
	Out      string
	JSON     bool
	Shuttles app.Shuttles
}

func newDraft(w World) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "draft",
		Short: "Show, check, convert and make drafts",
		Long: `Show, check, convert and make drafts. A FILE is an interchange text of the trade
(docs/wif.md) or a plan file with a threading and a [draft]; - is the standard
input, book:NAME a draft of the book, or a warp of it.
` + exitHelp,
		Example: "  sley draft show examples/galley-towels.toml\n  sley draft turn towels.wif -o turned.wif",
		Args:    cobra.NoArgs,
	}
	cmd.AddCommand(newDraftShow(w), newDraftCheck(w), newDraftConvert(w), newDraftTurn(w), newDraftDraw(w), newDraftMake(w), newDraftBlocks(w))
	return cmd
}

func newDraftShow(w World) *cobra.Command {
	var opts DraftOptions
	cmd := &cobra.Command{
		Use:               "show FILE",
		Short:             "Print a draft: threading, tie-up, treadling, drawdown",
		Long:              "Print a draft as text: its threading, tie-up and treadling in shorthand, its\ndrawdown, and what handbooks call its weave.\n" + exitHelp,
		Example:           "  sley draft show examples/galley-towels.toml\n  sley draft show towels.wif --json",
		Args:              oneDraftOf("draft show FILE"),
		ValidArgsFunction: draftFiles,
		RunE:              func(_ *cobra.Command, args []string) error { return runDraftShow(w, args[0], opts) },
	}
	cmd.Flags().BoolVar(&opts.JSON, "json", false, "print JSON (docs/json.md)")
	return cmd
}

func newDraftCheck(w World) *cobra.Command {
	var opts DraftOptions
	cmd := &cobra.Command{
		Use:               "check FILE",
		Short:             "Tell what a draft weaves, and what is wrong with it",
		Long:              "Tell what a draft weaves: its name, whether it hangs together, its floats, its\nedges; and what is wrong with it or with its loom.\n" + exitHelp,
		Example:           "  sley draft check examples/galley-towels.toml",
		Args:              oneDraftOf("draft check FILE"),
		ValidArgsFunction: draftFiles,
		RunE:              func(_ *cobra.Command, args []string) error { return runDraftCheck(w, args[0], opts) },
	}
	cmd.Flags().BoolVar(&opts.JSON, "json", false, "print JSON (docs/json.md)")
	cmd.Flags().StringVar(&opts.Shuttles.Order, "shuttles", "", "which shuttle throws each pick, as \"1 1 2 2\"; without it one throws all")
	cmd.Flags().StringSliceVar(&opts.Shuttles.Starts, "start", nil, "the side from which each shuttle starts, as left,right; without it left")
	return cmd
}

func newDraftConvert(w World) *cobra.Command {
	var opts DraftOptions
	cmd := &cobra.Command{
		Use:   "convert FILE [CHANGE...] -o FILE.wif",
		Short: "Write a draft as an interchange text, changed or as it is",
		Long: `Write a draft as an interchange text (docs/wif.md) or as a picture, with the changes
named made one after another (docs/drafts.md lists them). What the text held besides
is kept. Without -o the text goes to the standard output.
` + exitHelp,
		Example:           "  sley draft convert examples/galley-towels.toml -o towels.wif\n  sley draft convert towels.wif fewest lift-plan -o table.wif",
		Args:              cobra.MinimumNArgs(1),
		ValidArgsFunction: draftAndChanges,
		RunE: func(_ *cobra.Command, args []string) error {
			return runDraftConvert(w, args[0], args[1:], opts)
		},
	}
	opts.outFlags(cmd)
	return cmd
}

func newDraftTurn(w World) *cobra.Command {
	var opts DraftOptions
	cmd := &cobra.Command{
		Use:               "turn FILE -o FILE.wif",
		Short:             "Exchange warp and weft of a draft",
		Long:              "Turn a draft: what were picks become ends, and ends picks, with their colours; the\nthread that was on top stays on top.\n" + exitHelp,
		Example:           "  sley draft turn towels.wif -o turned.wif",
		Args:              oneDraftOf("draft turn FILE -o FILE.wif"),
		ValidArgsFunction: draftFiles,
		RunE: func(_ *cobra.Command, args []string) error {
			return runDraftConvert(w, args[0], []string{"turned"}, opts)
		},
	}
	opts.outFlags(cmd)
	return cmd
}

// readDraft reads a draft and says what is wrong with it; the draft is nil when it
// cannot be used. What is left to do at the end gives the exit code.
func readDraft(w World, name string, whole bool) (d *app.Drafted, end func() error, err error) {
	from, err := w.read(name, record.Draft)
	if err != nil {
		return nil, nil, err
	}
	read := app.ReadDraft
	if whole {
		read = app.WholeDraft
	}
	d, list := from.drafted(read)
	printProblems(w.Err, list, present.Imperial)
	return d, func() error { return verdict(w, list, ReckonOptions{}) }, nil
}

func runDraftShow(w World, name string, opts DraftOptions) error {
	if opts.JSON {
		return draftJSON(w, name, opts.Shuttles)
	}
	d, end, err := readDraft(w, name, false)
	if err != nil || d == nil {
		return orElse(err, end)
	}
	fmt.Fprint(w.Out, present.DraftText(d.Draft))
	return end()
}

func runDraftCheck(w World, name string, opts DraftOptions) error {
	if opts.JSON {
		return draftJSON(w, name, opts.Shuttles)
	}
	d, end, err := readDraft(w, name, false)
	if err != nil || d == nil {
		return orElse(err, end)
	}
	judged, err := app.JudgeWoven(d, opts.Shuttles)
	if err != nil {
		return stop{code: exitUsage, err: err}
	}
	fmt.Fprint(w.Out, present.JudgedText(judged.Cloth, judged.Edges))
	return end()
}

// orElse is the error, or how the reading ended.
func orElse(err error, end func() error) error {
	if err != nil {
		return err
	}
	return end()
}

// draftJSON prints a draft with all that is known of it.
func draftJSON(w World, name string, shuttles app.Shuttles) error {
	from, err := w.read(name, record.Draft)
	if err != nil {
		return err
	}
	d, list := from.drafted(app.ReadDraft)
	return printDraftJSON(w, d, list, shuttles)
}

func printDraftJSON(w World, d *app.Drafted, list *problem.List, shuttles app.Shuttles) error {
	shape := present.DraftJSONOf(nil, nil, nil, list)
	if d != nil {
		judged, err := app.JudgeWoven(d, shuttles)
		if err != nil {
			return stop{code: exitUsage, err: err}
		}
		shape = present.DraftJSONOf(d.Draft, judged.Cloth, judged.Edges, list)
	}
	return errors.Join(printJSON(w.Out, shape), verdict(w, list, ReckonOptions{JSON: true}))
}

func runDraftConvert(w World, name string, changes []string, opts DraftOptions) error {
	d, end, err := readDraft(w, name, false)
	if err != nil || d == nil {
		return orElse(err, end)
	}
	changed, err := app.ChangeDraft(d, changes)
	if err != nil {
		return stop{code: exitUsage, err: err}
	}
	if opts.JSON {
		return printDraftJSON(w, changed, &problem.List{}, app.Shuttles{})
	}
	if err := writeDraft(w, changed, opts.Out, sheet.DraftLook{}, usualDPI); err != nil {
		return err
	}
	return end()
}

func oneDraftOf(use string) cobra.PositionalArgs {
	return func(_ *cobra.Command, args []string) error {
		if len(args) != 1 {
			return fmt.Errorf("name one draft: sley %s (%d named); - reads the standard input", use, len(args))
		}
		return nil
	}
}

// draftFiles completes the name of a draft's file.
func draftFiles(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	return []string{"wif", "toml"}, cobra.ShellCompDirectiveFilterFileExt
}

// draftAndChanges completes the file, then the changes.
func draftAndChanges(cmd *cobra.Command, args []string, typed string) ([]string, cobra.ShellCompDirective) {
	if len(args) == 0 {
		return draftFiles(cmd, args, typed)
	}
	return changeWords(), cobra.ShellCompDirectiveNoFileComp
}

// changeWords lists the changes of a draft as they are written, with what they make.
func changeWords() []string {
	var out []string
	for _, c := range app.Changes() {
		written := c.Name
		if c.Takes != "" {
			written += "=" + c.Takes
		}
		out = append(out, written+"\t"+present.ChangeSays(c.Name))
	}
	return out
}
