package app

import (
	"context"
	"time"
)

// Of tending a book: how long it rests after a change, so that a gesture comes first, and
// how often it looks whether a new day began.
const (
	tendRest = 300 * time.Millisecond
	tendDay  = time.Hour
)

// Tend keeps a book in order in the background until the context ends: the copy of the
// day, and the facts that lists show. What fails is told and tried again later.
func (o *OpenBook) Tend(ctx context.Context, fails func(error)) {
	changes, stop := o.Watch()
	defer func() { stop() }()
	day := time.NewTicker(tendDay)
	defer day.Stop()
	o.tendDay(ctx, fails)
	for {
		o.tendFacts(ctx, fails)
		select {
		case <-ctx.Done():
			return
		case <-day.C:
			o.tendDay(ctx, fails)
		case _, open := <-changes:
			if !open {
				changes, stop = o.Watch()
			}
			rest(ctx, changes)
		}
	}
}

// rest waits until nothing was changed for a while.
func rest(ctx context.Context, changes <-chan Changed) {
	for {
		select {
		case <-ctx.Done():
			return
		case _, open := <-changes:
			if !open {
				return
			}
		case <-time.After(tendRest):
			return
		}
	}
}

func (o *OpenBook) tendDay(ctx context.Context, fails func(error)) {
	if _, err := o.KeepToday(ctx); err != nil && ctx.Err() == nil {
		fails(err)
	}
}

// tendFacts finds facts anew, some at a time, until none is old.
func (o *OpenBook) tendFacts(ctx context.Context, fails func(error)) {
	for ctx.Err() == nil {
		n, err := o.Refresh(ctx)
		if err != nil && ctx.Err() == nil {
			fails(err)
		}
		if n == 0 || err != nil {
			return
		}
	}
}
