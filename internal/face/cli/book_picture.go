package cli

import (
	"context"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/sheet"
)

// ofCloth is the picture of a cloth, which is dots.
const ofCloth = "cloth"

// pictureTasks draw what the page shows.
func pictureTasks(w World) []task {
	var of, out string
	var changes []string
	names := append([]string{ofCloth}, sheet.PictureNames()...)
	return []task{{
		use: "picture KIND NAME -o FILE", least: 2, most: 2, short: "Draw a document as the page shows it: its cloth as PNG, or its draft, board, stripes or tape as SVG",
		long:    " A draft\nis drawn after the changes of --change, which are those of sley draft convert.",
		example: "  sley book picture warp \"Galley towels\" -o towels.png\n  sley book picture draft Rosepath --of draft --change turned -o rosepath.svg",
		flags: func(c *cobra.Command) {
			c.Flags().StringVar(&of, "of", ofCloth, "what is drawn: "+strings.Join(names, ", "))
			c.Flags().StringVarP(&out, "out", "o", "", "the file to write: .png of a cloth, .svg of all else")
			c.Flags().StringArrayVar(&changes, "change", nil, "a change of the draft first; may be given again")
			must(c.RegisterFlagCompletionFunc("of", fixed(names)))
		}, complete: w.kindAndName(false),
		run: func(ctx context.Context, d desk, args []string) error {
			ending := ".svg"
			if of == ofCloth {
				ending = ".png"
			}
			if !slices.Contains(names, of) || !strings.EqualFold(filepath.Ext(out), ending) {
				return stop{code: exitUsage, err: fmt.Errorf("say what is drawn and where it goes: --of %s; -o FILE.png of a cloth, FILE.svg of all else", strings.Join(names, ", "))}
			}
			return d.picture(ctx, args, of, out, changes)
		},
	}}
}

func (d desk) picture(ctx context.Context, args []string, of, out string, changes []string) error {
	kind, err := kindOf(args[0])
	if err != nil {
		return err
	}
	return d.reading(ctx, func(o *app.OpenBook) error {
		card, err := d.named(ctx, o.Studio, kind, args[1])
		if err != nil {
			return err
		}
		p, err := o.Pictured(ctx, card.ID, changes)
		if err != nil {
			return err
		}
		data, ok := pictureOf(p, of)
		if !ok {
			return stop{exitFailed, "no-picture", fmt.Errorf("there is nothing to draw as %s", of)}
		}
		if err := d.WriteFiles([]File{{out, data}}); err != nil {
			return stop{exitFailed, "unwritable", err}
		}
		count := 1
		return d.say(out+"\n", doneJSON{Format: 1, Path: out, Count: &count})
	})
}

func pictureOf(p *app.Pictured, of string) ([]byte, bool) {
	if of == ofCloth {
		return p.Cloth()
	}
	doc, ok := sheet.PictureOf(p, of)
	if !ok {
		return nil, false
	}
	files, err := app.SheetFiles(doc, app.SVG, 0)
	if err != nil || len(files) == 0 {
		return nil, false
	}
	return files[0], true
}
