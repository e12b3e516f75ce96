package app

import (
	"sync"

	"sley/internal/trade/record"
)

// Changed says that a document has another version, or that something happened to it. Of
// the book's units it is without a document.
type Changed struct {
	Kind    record.Kind `json:"kind"`
	ID      record.ID   `json:"id"`
	Version int         `json:"version"`
	Act     string      `json:"act"` // an act, the topic of an event, or units
	Window  string      `json:"window"`
}

// mostWaiting is how many changes wait for one who watches.
const mostWaiting = 256

// watchers are those who follow the book live.
type watchers struct {
	mu   sync.Mutex
	open map[chan Changed]bool
}

// Watch gives every change of the book from now on, until stop is called. A watcher
// that does not keep up is let go: its channel is closed, and it has to look anew.
func (s *Studio) Watch() (changes <-chan Changed, stop func()) {
	c := make(chan Changed, mostWaiting)
	s.live.mu.Lock()
	defer s.live.mu.Unlock()
	if s.live.open == nil {
		s.live.open = map[chan Changed]bool{}
	}
	s.live.open[c] = true
	return c, func() { s.live.leave(c) }
}

func (w *watchers) leave(c chan Changed) {
	w.mu.Lock()
	defer w.mu.Unlock()
	if w.open[c] {
		delete(w.open, c)
		close(c)
	}
}

func (w *watchers) tell(changed []Changed) {
	w.mu.Lock()
	defer w.mu.Unlock()
	for _, change := range changed {
		for c := range w.open {
			select {
			case c <- change:
			default:
				delete(w.open, c)
				close(c)
			}
		}
	}
}
