// Command sley takes a handweaver from the piece she wants to every number at
// the loom, and keeps her book. It only wires the floors together.
package main

import (
	"context"
	"crypto/rand"
	"log/slog"
	"os"
	"runtime"
	"time"

	"sley/examples"
	"sley/internal/app"
	"sley/internal/face/cli"
	"sley/internal/face/web"
)

func main() {
	os.Exit(cli.Run(os.Args[1:], cli.World{
		In: os.Stdin, Out: os.Stdout, Err: os.Stderr, ReadFile: os.ReadFile, WriteFiles: cli.WriteWhole,
		UsualBook: func() (string, error) { return app.UsualPlace(runtime.GOOS, os.Getenv) },
		OpenBook:  open, ServePage: serve, Browse: cli.Browse,
	}))
}

func open(ctx context.Context, path string, create bool) (*app.OpenBook, error) {
	return app.Open(ctx, app.BookAsked{
		Path: path, Now: time.Now, NewID: rand.Text, Program: version(), Demo: examples.Demo(), Create: create,
	})
}

func serve(ctx context.Context, book *app.OpenBook, announce func(string)) error {
	log := slog.New(slog.NewTextHandler(os.Stderr, &slog.HandlerOptions{Level: slog.LevelError}))
	return web.Run(ctx, book, web.Running{Program: version(), Log: log, Token: rand.Text(), Announce: announce})
}
