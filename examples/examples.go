// Package examples holds the demo: the plan files of Saltmarsh, a studio that is
// invented, with its shelves and what was done with two finished warps.
package examples

import (
	"embed"

	"sley/internal/app"
)

// GalleyTowels is the plan file that the README begins with.
//
//go:embed galley-towels.toml
var GalleyTowels []byte

//go:embed *.toml
var plans embed.FS

// warps are the plans of the demo, in the order they are written into a book.
var warps = []string{
	"galley-towels.toml", "berth-blanket.toml", "lace-curtain.toml", "bookmark-class.toml",
	"hatch-runner-finished.toml", "tea-mats-finished.toml",
}

// Demo is the book of the studio.
func Demo() app.Demo {
	demo := app.Demo{Shelf: shelf, Weaves: weaves, Work: work}
	for _, name := range warps {
		text, err := plans.ReadFile(name)
		if err != nil {
			panic("internal error: the demo lacks " + name)
		}
		demo.Warps = append(demo.Warps, app.Source{Name: name, Text: text})
	}
	return demo
}
