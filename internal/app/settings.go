package app

import (
	"context"

	"sley/internal/trade/record"
)

// settingPort is the port that the book's page was last at.
const settingPort = "port"

// Setting gives what was set under a name, or nothing.
func (s *Studio) Setting(ctx context.Context, name string) (string, error) {
	var value string
	err := s.read(ctx, func(r record.Reader) (err error) {
		value, err = r.Setting(name)
		return err
	})
	return value, err
}

// Set sets a value under a name; an empty value unsets it.
func (s *Studio) Set(ctx context.Context, name, value string) error {
	return s.write(ctx, func(w record.Writer) ([]Changed, error) { return nil, w.Set(name, value) })
}

// RememberPort keeps the port that the book's page is at; 0 forgets it.
func (s *Studio) RememberPort(ctx context.Context, port string) error {
	return s.Set(ctx, settingPort, port)
}

// RememberedPort is the port that the book's page was last at; empty where it had none.
func (s *Studio) RememberedPort(ctx context.Context) (string, error) {
	return s.Setting(ctx, settingPort)
}
