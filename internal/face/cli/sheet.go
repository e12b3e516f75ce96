package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/face/sheet"
	"sley/internal/trade/record"
)

// SheetOptions are the flags of sley sheet.
type SheetOptions struct {
	Out, Paper, Units string
	Pages             []string
	DPI               *int // nil when not said
}

// sheetUse is how the command is written.
const sheetUse = "sheet PLAN -o FILE.pdf"

func newSheet(w World) *cobra.Command {
	var opts SheetOptions
	var dpi int
	cmd := &cobra.Command{
		Use:   sheetUse,
		Short: "Print the sheets of a plan for use at the loom",
		Long: `Print the sheets of a plan file (docs/sheets.md) for A4 or Letter; a PLAN of - is
read from the standard input, book:NAME from the book: of a warp on the loom as its
plan was when work began, with what was amended since, and with what was measured.
Without --pages every sheet that the plan has something for is made.

The ending of FILE says what is written: .pdf is one file of all pages; .svg and
.png are a file for each page, FILE-1.png and on, or FILE.png where there is only
one. A FILE of - is a PDF on the standard output. Files that are there are
replaced only when all the new ones are whole.
` + exitHelp,
		Example: "  sley sheet examples/galley-towels.toml -o towels.pdf\n" +
			"  sley sheet examples/galley-towels.toml -o towels.png --pages glance --dpi 300\n" +
			"  sley sheet examples/berth-blanket.toml -o blanket.pdf --pages glance,yarn --paper letter",
		Args:              onePlanOf(sheetUse),
		ValidArgsFunction: planFiles,
		RunE: func(cmd *cobra.Command, args []string) error {
			if cmd.Flags().Changed("dpi") {
				opts.DPI = &dpi
			}
			return runSheet(w, args[0], opts)
		},
	}
	flags := cmd.Flags()
	flags.StringVarP(&opts.Out, "out", "o", "", "the file to write; its ending is "+strings.Join(endings, ", "))
	flags.IntVar(&dpi, "dpi", usualDPI, fmt.Sprintf("dots per inch of a PNG, %d to %d", leastDPI, mostDPI))
	flags.StringSliceVar(&opts.Pages, "pages", nil, "the sheets wanted, such as glance,yarn; without it all that apply")
	flags.StringVar(&opts.Paper, "paper", "a4", "the paper: "+strings.Join(sheet.PaperNames(), " or "))
	flags.StringVar(&opts.Units, "units", "", "metric, imperial, or pairs such as length=cm,yarn=m,weight=g,density=cm")
	must(cmd.RegisterFlagCompletionFunc("out", fileEndings))
	must(cmd.RegisterFlagCompletionFunc("pages", sheetNames))
	must(cmd.RegisterFlagCompletionFunc("paper", fixed(sheet.PaperNames())))
	must(cmd.RegisterFlagCompletionFunc("units", unitValues))
	return cmd
}

// runSheet writes the sheets when everything is right with the plan and flags.
func runSheet(w World, name string, opts SheetOptions) error {
	wanted, form, err := opts.wanted()
	if err != nil {
		return stop{code: exitUsage, err: err}
	}
	from, err := w.read(name, record.Warp)
	if err != nil {
		return err
	}
	result, list := app.ReckonPlan(from.Source, "", true)
	list = from.told(list)
	units, err := present.UnitsFor(result, from.Units, opts.Units)
	if err != nil {
		return stop{code: exitUsage, err: err}
	}
	printProblems(w.Err, list, units)
	if result == nil || list.Failed() {
		return verdict(w, list, ReckonOptions{})
	}
	wanted.Mark, wanted.Record = app.Mark(from.Text), from.came
	pages, err := sheet.Make(result, units, wanted)
	if err != nil {
		return stop{code: exitUsage, err: err}
	}
	return opts.write(w, form, len(pages.Pages), func() ([][]byte, error) { return app.SheetFiles(pages, form, opts.dpi()) })
}

// write draws the sheets and puts them where they go.
func (o SheetOptions) write(w World, form app.Form, pages int, draw func() ([][]byte, error)) error {
	files, err := draw()
	if err == nil {
		err = o.put(w, form, files, pages)
	}
	if err != nil {
		return stop{exitFailed, "unwritable", fmt.Errorf("write sheets: %w", err)}
	}
	return nil
}

// wanted gives the sheets, the paper and the kind of file that the flags ask for;
// the error is all that is wrong with them.
func (o SheetOptions) wanted() (sheet.Options, app.Form, error) {
	wanted := sheet.Options{Paper: o.Paper}
	for _, name := range o.Pages {
		wanted.Sheets = append(wanted.Sheets, strings.TrimSpace(name))
	}
	form, err := o.form()
	if err == nil {
		err = o.checkDPI(form)
	}
	return wanted, form, errors.Join(wanted.Check(), err)
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

func fileEndings(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return endings, cobra.ShellCompDirectiveFilterFileExt
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

// sourceOf is a plan that was read, with the files beside it.
func sourceOf(w World, name string, text []byte) app.Source {
	folder := ""
	if name != said("-") {
		folder = filepath.Dir(name)
	}
	return app.Source{Name: name, Text: text, Beside: func(file string) ([]byte, error) {
		if filepath.IsAbs(file) {
			return w.ReadFile(file)
		}
		return w.ReadFile(filepath.Join(folder, filepath.FromSlash(file)))
	}}
}
