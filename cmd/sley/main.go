// Command sley takes a handweaver from the piece she wants to every number at
// the loom. It only wires the floors together.
package main

import (
	"os"

	"sley/examples"
	"sley/internal/face/cli"
)

func main() {
	os.Exit(cli.Run(os.Args[1:], cli.World{
		In: os.Stdin, Out: os.Stdout, Err: os.Stderr, ReadFile: os.ReadFile, WriteFiles: cli.WriteWhole,
		Demo: examples.GalleyTowels, DemoName: "examples/galley-towels.toml",
	}))
}
