// Command sley takes a handweaver from the piece she wants to every number at
// the loom. It only wires the floors together.
package main

import (
	"context"
	"crypto/rand"
	"log/slog"
	"os"
	"os/signal"
	"runtime"
	"strings"
	"syscall"
	"time"

	"sley/examples"
	"sley/internal/app"
	"sley/internal/face/cli"
	"sley/internal/face/web"
)

func main() {
	os.Exit(cli.Run(os.Args[1:], cli.World{
		In: os.Stdin, Out: os.Stdout, Err: os.Stderr, ReadFile: os.ReadFile, WriteFiles: cli.WriteWhole,
		WriteFolder: cli.WriteFolder, ReadFolder: cli.ReadFolder,
		Books: books(), ServePage: serve, Browse: cli.Browse,
	}))
}

func books() cli.Books {
	return cli.Books{
		Place: func() (string, error) { return app.UsualPlace(runtime.GOOS, os.Getenv) },
		Now:   time.Now, NewID: newID, Program: version(), Demo: examples.Demo(),
		Interrupt: func() (context.Context, context.CancelFunc) {
			return signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
		},
	}
}

// newID gives 16 letters and digits, 80 bits by chance: enough that no two documents or
// entries ever share one, and few enough to be typed.
func newID() string { return strings.ToLower(rand.Text())[:16] }

func serve(ctx context.Context, book *app.OpenBook, how cli.Serving) error {
	log := slog.New(slog.NewTextHandler(os.Stderr, &slog.HandlerOptions{Level: slog.LevelError}))
	return web.Run(ctx, book, web.Running{
		Program: version(), Log: log, Token: rand.Text(), Announce: how.Announce,
		Beside: how.Beside, AnnounceBeside: how.AnnounceBeside,
	})
}
