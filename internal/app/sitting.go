package app

import (
	"context"
	"time"

	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// mostMinutes is how long one sitting may be: a day.
const mostMinutes = 24 * 60

// SitDown says that a time at the loom begins, by the clock of this machine. It lasts,
// whatever ends meanwhile, until StandUp; sitting down again before that is the same sitting,
// whose event it gives.
func (s *Studio) SitDown(ctx context.Context, h Happened) (record.Event, *problem.List, error) {
	list := &problem.List{}
	h.What = record.SatDown
	e := s.logEvent(h, list)
	if list.Failed() {
		return e, list, nil
	}
	err := s.write(ctx, func(w record.Writer) ([]Changed, error) {
		was, said, err := alreadySaid(w, e.ID)
		if err != nil || said {
			e = was
			return nil, err
		}
		log, err := logOf(w, h.Document)
		if err != nil {
			return nil, err
		}
		if open, on := openSitting(log); on {
			e = open
			return nil, nil
		}
		return s.entered(w, &e, h.Window)
	})
	return e, list, err
}

// StandUp ends the sitting that is on, with its minutes: those that are said, or, where
// they are 0, those since it began, rounded and one at least. One that began more than a
// day ago, or later than now, was forgotten, or the clock was set: then they must be said.
func (s *Studio) StandUp(ctx context.Context, h Happened, minutes int) (record.Event, *problem.List, error) {
	list := &problem.List{}
	h.What = record.Sat
	e := s.logEvent(h, list)
	if minutes < 0 || minutes > mostMinutes {
		list.Fail("sitting.minutes", "minutes", h.Typed, problem.Args{"most": mostMinutes})
	}
	if list.Failed() {
		return e, list, nil
	}
	e.Minutes = minutes
	err := s.write(ctx, func(w record.Writer) ([]Changed, error) {
		was, said, err := alreadySaid(w, e.ID)
		if err != nil || said {
			e = was
			return nil, err
		}
		log, err := logOf(w, h.Document)
		if err != nil {
			return nil, err
		}
		if stoodUp(log, &e, list); list.Failed() {
			return nil, nil
		}
		return s.entered(w, &e, h.Window)
	})
	return e, list, err
}

// stoodUp makes an event the end of the sitting that is on.
func stoodUp(log []record.Event, e *record.Event, list *problem.List) {
	open, on := openSitting(log)
	if !on {
		list.Fail("sitting.none", "", "", nil)
		return
	}
	e.Path, e.From = open.ID, open.Place
	if e.Minutes > 0 {
		return
	}
	long, forgotten := lasting(open, e.At)
	if forgotten {
		list.Fail("sitting.long", "minutes", "", problem.Args{"since": open.At.Format("2006-01-02 15:04 MST")})
	}
	e.Minutes = long
}

// openSitting gives where the sitting that is on began. It is the last that began, as long
// as none that ended says in its Path that it is that one.
func openSitting(standing []record.Event) (open record.Event, on bool) {
	for _, e := range standing {
		switch {
		case e.What == record.SatDown:
			open, on = e, true
		case e.What == record.Sat && on && e.Path == open.ID:
			on = false
		}
	}
	return open, on
}

// lasting is how many minutes a sitting that is on has lasted, one at least, and whether
// it was forgotten.
func lasting(open record.Event, now time.Time) (minutes int, forgotten bool) {
	long := now.Sub(open.At)
	if long < 0 || long > mostMinutes*time.Minute {
		return 0, true
	}
	return max(1, int(long.Round(time.Minute)/time.Minute)), false
}
