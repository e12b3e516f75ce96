package app_test

import (
	"context"
	"errors"
	"path/filepath"
	"testing"

	"sley/internal/app"
)

// Who tends a book makes the copy of the day and finds what was left for later, until it
// is told to stop.
func TestTend(t *testing.T) {
	asked := app.BookAsked{Path: filepath.Join(t.TempDir(), "book.sley"), Now: clock(), NewID: numbered(), Create: true}
	o, err := app.Open(t.Context(), asked)
	if err != nil {
		t.Fatal(err)
	}
	defer o.Close()
	id := addLargeDraft(t, o.Studio)
	watched, stopWatching := o.Watch()
	defer stopWatching()
	ctx, stop := context.WithCancel(t.Context())
	ended := make(chan struct{})
	go func() {
		defer close(ended)
		o.Tend(ctx, func(err error) { t.Error(err) })
	}()
	for change := range watched {
		if change.Act == "facts" && change.ID == id {
			break
		}
	}
	stop()
	<-ended
	if c := card(t, o.Studio, id); c.Facts.Of != c.Version {
		t.Errorf("the facts are of version %d, and it has %d", c.Facts.Of, c.Version)
	}
	if copies := app.Copies(asked.Path, noon); len(copies) != 1 {
		t.Errorf("the copies are %q", copies)
	}
}

// What fails is told, and tending goes on.
func TestTendTellsWhatFails(t *testing.T) {
	asked := app.BookAsked{Path: filepath.Join(t.TempDir(), "book.sley"), Now: clock(), NewID: numbered(), Create: true}
	o, err := app.Open(t.Context(), asked)
	if err != nil {
		t.Fatal(err)
	}
	if err := o.Close(); err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(t.Context())
	failed := []error{}
	o.Tend(ctx, func(err error) {
		failed = append(failed, err)
		if len(failed) == 2 { // the copy of the day, and the facts
			stop()
		}
	})
	if len(failed) != 2 || errors.Join(failed...) == nil {
		t.Errorf("told were %v", failed)
	}
}
