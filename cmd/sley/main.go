// Command sley takes a handweaver from the piece she wants to every number at
// the loom. It only wires the floors together.
package main

import (
	"context"
	"crypto/rand"
	"os"
	"os/signal"
	"runtime"
	"runtime/debug"
	"strings"
	"time"

	"sley/examples"
	"sley/internal/app"
	"sley/internal/face/cli"
)

func main() {
	os.Exit(cli.Run(os.Args[1:], cli.World{
		In: os.Stdin, Out: os.Stdout, Err: os.Stderr, ReadFile: os.ReadFile, WriteFiles: cli.WriteWhole,
		WriteFolder: cli.WriteFolder, ReadFolder: cli.ReadFolder,
		Demo: examples.GalleyTowels, DemoName: "examples/galley-towels.toml", Books: books(),
	}))
}

func books() cli.Books {
	return cli.Books{
		Place: func() (string, error) { return app.UsualPlace(runtime.GOOS, os.Getenv) },
		Now:   time.Now, NewID: newID, Program: program(), Demo: examples.Demo(),
		Interrupt: func() (context.Context, context.CancelFunc) {
			return signal.NotifyContext(context.Background(), os.Interrupt)
		},
	}
}

// newID gives 16 letters and digits, 80 bits by chance: enough that no two documents or
// entries ever share one, and few enough to be typed.
func newID() string { return strings.ToLower(rand.Text())[:16] }

// program is the version of the program, as its build says it.
func program() string {
	info, ok := debug.ReadBuildInfo()
	if !ok || info.Main.Version == "" {
		return "(devel)"
	}
	return info.Main.Version
}
