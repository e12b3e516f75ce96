package cli

import (
	"fmt"
	"path/filepath"
	"strings"

	"sley/internal/app"
	"sley/internal/face/sheet"
)

// The dots per inch of a PNG: enough to read on a screen, unless said; fewer than
// the least cannot be read at all, and more than the most no printer sets.
const (
	usualDPI = sheet.UsualDPI
	leastDPI = 36
	mostDPI  = 600
)

// toOut is the name that stands for the standard output.
const toOut = "-"

// endings are what files of sheets end in, the usual one first.
var endings = []string{string(app.PDF), string(app.SVG), string(app.PNG)}

// form is the kind of file asked for: the ending of its name says it, and the
// standard output takes a PDF.
func (o SheetOptions) form() (app.Form, error) {
	if o.Out == "" {
		return "", fmt.Errorf("say where the sheets go: -o FILE.pdf, or FILE.svg or FILE.png for a file of each page")
	}
	if o.Out == toOut {
		return app.PDF, nil
	}
	for _, ending := range endings {
		if strings.EqualFold(filepath.Ext(o.Out), "."+ending) {
			return app.Form(ending), nil
		}
	}
	return "", fmt.Errorf("-o %s: sheets are written as .pdf (all pages), .svg or .png (a file for each page); end the name in one of the three", o.Out)
}

// checkDPI says what is wrong with the dots per inch.
func (o SheetOptions) checkDPI(form app.Form) error {
	switch {
	case o.DPI == nil:
		return nil
	case form != app.PNG:
		return fmt.Errorf("--dpi: only a PNG has dots; leave it out, or end the name after -o in .png")
	case *o.DPI < leastDPI || *o.DPI > mostDPI:
		return fmt.Errorf("--dpi: %d is not between %d and %d dots per inch", *o.DPI, leastDPI, mostDPI)
	}
	return nil
}

func (o SheetOptions) dpi() int {
	if o.DPI == nil {
		return usualDPI
	}
	return *o.DPI
}

// put writes the files of sheets and prints their names. The standard output takes
// the one file itself, and then nothing else is printed on it.
func (o SheetOptions) put(w World, form app.Form, files [][]byte, pages int) error {
	if o.Out == toOut {
		_, err := w.Out.Write(files[0])
		return err
	}
	named := make([]File, len(files))
	for i, data := range files {
		named[i] = File{numbered(o.Out, i+1, len(files)), data}
	}
	if err := w.WriteFiles(named); err != nil {
		return err
	}
	if form == app.PDF {
		fmt.Fprintf(w.Out, "%s: pages: %d\n", o.Out, pages)
		return nil
	}
	for _, f := range named {
		fmt.Fprintln(w.Out, f.Name)
	}
	return nil
}

// numbered is the name of the nth file of several: its number stands before the
// ending, with as many digits as the last one has, so that they sort. A file alone
// has no number.
func numbered(name string, n, of int) string {
	if of == 1 {
		return name
	}
	ending := filepath.Ext(name)
	digits := len(fmt.Sprint(of))
	return fmt.Sprintf("%s-%0*d%s", strings.TrimSuffix(name, ending), digits, n, ending)
}
