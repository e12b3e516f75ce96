package app

import (
	"context"

	"sley/internal/trade/record"
)

// The settings of what listens for devices beside the loom. They are of a machine and
// what its weaver decided there, so neither leaves the book with an export.
const (
	settingBeside     = "beside"      // "always" where it is turned on with each start
	settingBesidePort = "beside-port" // the port it was last at
)

// besideAlways is the value of settingBeside that turns it on.
const besideAlways = "always"

// BesideAlways says whether sley listens for devices beside the loom with each start. It
// does not until the weaver says so.
func (s *Studio) BesideAlways(ctx context.Context) (bool, error) {
	said, err := s.Setting(ctx, settingBeside)
	return said == besideAlways, err
}

// SetBesideAlways says it.
func (s *Studio) SetBesideAlways(ctx context.Context, always bool) error {
	return s.Set(ctx, settingBeside, map[bool]string{true: besideAlways}[always])
}

// RememberBesidePort keeps the port that devices find sley at, so that what they have
// open finds it again.
func (s *Studio) RememberBesidePort(ctx context.Context, port string) error {
	return s.Set(ctx, settingBesidePort, port)
}

// RememberedBesidePort is that port; empty where there was none.
func (s *Studio) RememberedBesidePort(ctx context.Context) (string, error) {
	return s.Setting(ctx, settingBesidePort)
}

// InHand says whether a document is a warp in hand: planned or on the loom, neither
// finished nor removed. What is not there is not in hand.
func (s *Studio) InHand(ctx context.Context, id record.ID) (bool, error) {
	is := false
	err := s.read(ctx, func(r record.Reader) (err error) {
		is, err = inHand(r, id)
		return err
	})
	return is, err
}

func inHand(r record.Reader, id record.ID) (bool, error) {
	d, err := r.Card(id)
	switch {
	case record.Is(err, record.NotFound):
		return false, nil
	case err != nil:
		return false, err
	case d.Kind != record.Warp || d.Removed:
		return false, nil
	}
	stage, err := stageOf(r, d)
	return err == nil && stage != record.Done, err
}

// HappenedInHand says whether an event, as that of a photograph, is of a warp in hand.
func (s *Studio) HappenedInHand(ctx context.Context, event string) (bool, error) {
	is := false
	err := s.read(ctx, func(r record.Reader) error {
		e, err := r.Event(event)
		if record.Is(err, record.NotFound) {
			return nil
		}
		if err == nil {
			is, err = inHand(r, e.Document)
		}
		return err
	})
	return is, err
}
