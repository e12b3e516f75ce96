package web

import (
	"context"
	"errors"
	"log/slog"

	"sley/internal/app"
)

// Running is how a book is served.
type Running struct {
	Program  string
	Log      *slog.Logger
	Token    string               // what requests must carry, where no window carries another
	Announce func(address string) // called once the page can be opened
	// Beside listens for devices beside the loom from the start, as where the book says that
	// it always does; AnnounceBeside is called with the addresses that they open, and whether
	// others than the home's network may reach them.
	Beside         bool
	AnnounceBeside func(addresses []string, public bool)
	Network        func() (Network, error) // nil: LocalNetwork
}

// Run serves a book until the context ends. It takes the port that the book remembers, or
// any where that is busy, and the token of a sley that was killed, since its windows are
// still open. Meanwhile it keeps the copy of the day, and the lists up to date.
func Run(ctx context.Context, book *app.OpenBook, how Running) error {
	if left := book.LeftToken(); left != "" {
		how.Token = left
	}
	remembered, err := book.RememberedPort(ctx)
	if err != nil {
		return err
	}
	on, err := Listen(ctx, remembered)
	if err != nil {
		return err
	}
	port := PortOf(on)
	if remembered == "" {
		err = book.RememberPort(ctx, port)
	}
	address := Address(port, how.Token)
	if err := errors.Join(err, book.Serving(address, how.Token)); err != nil {
		return errors.Join(err, on.Close())
	}
	server := New(Asked{
		Book: book.Studio, Place: book.Path(), Token: how.Token, Program: how.Program, Log: how.Log,
		Check: book.Check, Copy: book.KeepToday, Network: how.Network,
	}, port)
	tending, stop := context.WithCancel(ctx)
	tended := make(chan struct{})
	go func() {
		defer close(tended)
		book.Tend(tending, func(err error) { server.Log.Warn("in the background", "error", err) })
	}()
	how.Announce(address)
	server.besideFromStart(ctx, how)
	err = server.Serve(ctx, on)
	stop()
	<-tended
	return err
}

// besideFromStart listens for devices where that is wanted. Where it cannot, sley goes on
// without: the page says how it stands.
func (s *Server) besideFromStart(ctx context.Context, how Running) {
	always, err := s.Book.BesideAlways(ctx)
	if err == nil && !always && !how.Beside {
		return
	}
	addresses, failed := s.TurnBesideOn(ctx)
	if err := errors.Join(err, failed); err != nil && ctx.Err() == nil {
		s.Log.Error("nobody can be heard beside the loom", "error", err)
	}
	if how.AnnounceBeside != nil && len(addresses) > 0 {
		on := s.besideNow()
		how.AnnounceBeside(addresses, on != nil && on.network.Public)
	}
}
