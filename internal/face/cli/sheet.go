package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/face/sheet"
)

// SheetOptions are the flags of sley sheet.
type SheetOptions struct {
	Out, Paper, Units string
	Pages             []string
}

func newSheet(w World) *cobra.Command {
	var opts SheetOptions
	cmd := &cobra.Command{
		Use:   "sheet PLAN -o FILE.pdf",
		Short: "Print the sheets of a plan for use at the loom",
		Long: `Print the sheets of a plan file (docs/sheets.md) as a PDF, for A4 or Letter; a
PLAN of - is read from the standard input. Without --pages every sheet that the
plan has something for is made. A file that is there is replaced only when the
new one is whole.
` + exitHelp,
		Example: "  sley sheet examples/galley-towels.toml -o towels.pdf\n" +
			"  sley sheet examples/berth-blanket.toml -o blanket.pdf --pages glance,yarn --paper letter",
		Args:              onePlanOf("sheet PLAN -o FILE.pdf"),
		ValidArgsFunction: planFiles,
		RunE:              func(_ *cobra.Command, args []string) error { return runSheet(w, args[0], opts) },
	}
	flags := cmd.Flags()
	flags.StringVarP(&opts.Out, "out", "o", "", "the PDF to write")
	flags.StringSliceVar(&opts.Pages, "pages", nil, "the sheets wanted, such as glance,yarn; without it all that apply")
	flags.StringVar(&opts.Paper, "paper", "a4", "the paper: "+strings.Join(sheet.PaperNames(), " or "))
	flags.StringVar(&opts.Units, "units", "", "metric, imperial, or pairs such as length=cm,yarn=m,weight=g,density=cm")
	must(cmd.RegisterFlagCompletionFunc("out", pdfFiles))
	must(cmd.RegisterFlagCompletionFunc("pages", sheetNames))
	must(cmd.RegisterFlagCompletionFunc("paper", fixed(sheet.PaperNames())))
	must(cmd.RegisterFlagCompletionFunc("units", unitValues))
	return cmd
}

// runSheet writes the sheets when everything is right with the plan and flags.
func runSheet(w World, name string, opts SheetOptions) error {
	wanted, err := opts.wanted()
	if err != nil {
		return stop{code: exitUsage, err: err}
	}
	text, err := planText(w, name)
	if err != nil {
		return err
	}
	result, list := app.ReckonPlan(said(name), text, "", true)
	units, err := present.UnitsFor(result, opts.Units)
	if err != nil {
		return stop{code: exitUsage, err: err}
	}
	printProblems(w.Err, list, units)
	if result == nil || list.Failed() {
		return verdict(w, list, ReckonOptions{})
	}
	wanted.Mark = app.Mark(text)
	pages, err := sheet.Make(result, units, wanted)
	if err != nil {
		return stop{code: exitUsage, err: err}
	}
	file, err := app.Sheets(pages)
	if err == nil {
		err = w.WriteFile(opts.Out, file)
	}
	if err != nil {
		return stop{exitFailed, "unwritable", fmt.Errorf("write sheets: %w", err)}
	}
	fmt.Fprintf(w.Out, "%s: pages: %d\n", opts.Out, len(pages.Pages))
	return nil
}

// wanted gives the sheets and the paper that the flags ask for.
func (o SheetOptions) wanted() (sheet.Options, error) {
	wanted := sheet.Options{Paper: o.Paper}
	for _, name := range o.Pages {
		wanted.Sheets = append(wanted.Sheets, strings.TrimSpace(name))
	}
	if err := wanted.Check(); err != nil {
		return wanted, err
	}
	if o.Out == "" {
		return wanted, errors.New("say where the sheets go: -o FILE.pdf")
	}
	return wanted, nil
}

// planText reads a plan; the errors are those of a command.
func planText(w World, name string) ([]byte, error) {
	text, err := readPlan(w, name)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, stop{exitNotFound, "not-found", fmt.Errorf("there is no file %s", name)}
	}
	if err != nil {
		return nil, stop{exitFailed, "unreadable", fmt.Errorf("read plan: %w", err)}
	}
	return text, nil
}

// said is how a plan is named in messages.
func said(name string) string {
	if name == "-" {
		return "standard input"
	}
	return name
}

func pdfFiles(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return []string{"pdf"}, cobra.ShellCompDirectiveFilterFileExt
}

// sheetNames completes the last of the names between commas.
func sheetNames(_ *cobra.Command, _ []string, typed string) ([]string, cobra.ShellCompDirective) {
	before := typed[:strings.LastIndexByte(typed, ',')+1]
	var out []string
	for _, name := range sheet.Names() {
		if !strings.Contains(","+before, ","+name+",") {
			out = append(out, before+name+"\t"+sheet.About(name))
		}
	}
	return out, cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveNoSpace
}
