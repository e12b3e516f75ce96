package cli

import (
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/sheet"
)

// draftEndings are the kinds of files that a draft is written as.
var draftEndings = []string{"wif", "svg", "png", "pdf"}

// endingOf is the kind of file that a name ends in; nothing for the standard output,
// which takes an interchange text.
func endingOf(name string) (string, error) {
	if name == "" || name == "-" {
		return "wif", nil
	}
	ending := strings.ToLower(strings.TrimPrefix(filepath.Ext(name), "."))
	if !slices.Contains(draftEndings, ending) {
		return "", stop{code: exitUsage, err: fmt.Errorf("-o: %s has none of the endings .%s", name, strings.Join(draftEndings, ", ."))}
	}
	return ending, nil
}

// writeDraft writes a draft where it goes, as its ending says.
func writeDraft(w World, d *app.Drafted, out string, look sheet.DraftLook, dpi int) error {
	ending, err := endingOf(out)
	if err != nil {
		return err
	}
	var files []File
	if ending == "wif" {
		files = []File{{out, app.WriteDraft(d)}}
	} else if files, err = draftPictures(d, out, app.Form(ending), look, dpi); err != nil {
		return err
	}
	if out == "" || out == "-" {
		_, err = w.Out.Write(files[0].Data)
	} else {
		err = w.WriteFiles(files)
	}
	if err != nil {
		return stop{exitFailed, "unwritable", fmt.Errorf("write draft: %w", err)}
	}
	return nil
}

// draftPictures draws a draft as files of those names: of several each has its number.
func draftPictures(d *app.Drafted, out string, form app.Form, look sheet.DraftLook, dpi int) ([]File, error) {
	files, err := sheet.DraftFiles(d, look, form, dpi)
	if errors.Is(err, sheet.ErrTooLarge) {
		return nil, stop{exitFailed, "too-large", err}
	}
	if err != nil {
		return nil, stop{exitFailed, "unwritable", fmt.Errorf("draw draft: %w", err)}
	}
	var named []File
	for i, data := range files {
		named = append(named, File{numbered(out, i+1, len(files)), data})
	}
	return named, nil
}

func newDraftDraw(w World) *cobra.Command {
	var opts DrawOptions
	cmd := &cobra.Command{
		Use:   "draw FILE -o FILE.svg",
		Short: "Draw a draft as handbooks print it: SVG, PNG or PDF",
		Long: `Draw a draft as handbooks print it, or its drawdown alone. A filled cell is the warp
on top. The ending of -o says the form; a PDF is on paper, cut into pages where the
draft is large.
` + exitHelp,
		Example:           "  sley draft draw examples/galley-towels.toml -o towels.pdf\n  sley draft draw towels.wif -o towels.svg --cells colours --floats 5",
		Args:              oneDraftOf("draft draw FILE -o FILE.svg"),
		ValidArgsFunction: draftFiles,
		RunE:              func(_ *cobra.Command, args []string) error { return runDraftDraw(w, args[0], opts) },
	}
	opts.flags(cmd)
	must(cmd.RegisterFlagCompletionFunc("cells", fixed(sheet.CellNames())))
	must(cmd.RegisterFlagCompletionFunc("paper", fixed(sheet.PaperNames())))
	return cmd
}

// DrawOptions are the flags of sley draft draw.
type DrawOptions struct {
	Look   sheet.DraftLook
	Out    string
	Floats int
	DPI    int
	Whole  bool
}

func (o *DrawOptions) flags(cmd *cobra.Command) {
	f := cmd.Flags()
	f.StringVarP(&o.Out, "out", "o", "", "the picture to write: .svg, .png or .pdf")
	f.StringVar(&o.Look.Paper, "paper", "", "a4 or letter; without it a picture of its own size, a PDF on a4")
	f.StringVar(&o.Look.Cells, "cells", "", "how crossings are drawn: filled, colours or both")
	f.IntVar(&o.Floats, "floats", 0, "strike through floats of so many threads or more")
	f.IntVar(&o.DPI, "dpi", usualDPI, "dots to the inch of a PNG")
	f.BoolVar(&o.Whole, "whole", false, "of a warp: every end, and every pick of its first piece")
	for name, is := range o.Look.Switches() {
		f.BoolVar(is, name, false, switchUses[name])
	}
}

// switchUses say what the switches of a look are for.
var switchUses = map[string]string{
	"drawdown":    "the drawdown alone",
	"back":        "its back, the cloth turned over from side to side; with --drawdown",
	"below":       "the threading below the drawdown",
	"tie-up-left": "tie-up and treadling on the left",
	"from-right":  "number the ends from the right",
	"upwards":     "the first pick at the bottom",
	"numbers":     "numbers in place of filled cells in threading and treadling",
	"lift-plan":   "lifts in place of treadles",
	"grey":        "colours as greys as light as they are",
	"to-scale":    "threads as thick and as far apart as they are to one another",
}

// check says what is wrong with the flags.
func (o *DrawOptions) check() error {
	ending, err := endingOf(o.Out)
	switch {
	case o.Out == "" || o.Out == "-":
		return stop{code: exitUsage, err: fmt.Errorf("say where the picture goes: -o FILE.svg, .png or .pdf")}
	case err != nil:
		return err
	case ending == "wif":
		return stop{code: exitUsage, err: fmt.Errorf("-o: %s is no picture: sley draft convert writes interchange texts", o.Out)}
	case o.Floats < 0 || o.Floats == 1:
		return stop{code: exitUsage, err: fmt.Errorf("--floats: %d is no length of a float worth marking; write 2 or more", o.Floats)}
	case o.DPI < leastDPI || o.DPI > mostDPI:
		return stop{code: exitUsage, err: fmt.Errorf("--dpi: %d is not from %d to %d", o.DPI, leastDPI, mostDPI)}
	}
	if err := o.Look.Check(); err != nil {
		return stop{code: exitUsage, err: err}
	}
	return nil
}

func runDraftDraw(w World, name string, opts DrawOptions) error {
	if err := opts.check(); err != nil {
		return err
	}
	d, end, err := readDraft(w, name, opts.Whole)
	if err != nil || d == nil {
		return orElse(err, end)
	}
	if opts.Floats > 0 {
		opts.Look.Floats = app.LongFloats(d.Draft, opts.Floats)
	}
	if err := writeDraft(w, d, opts.Out, opts.Look, opts.DPI); err != nil {
		return err
	}
	return end()
}
