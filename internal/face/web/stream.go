package web

import (
	"encoding/json"
	"fmt"
	"net/http"
	"time"

	"sley/internal/app"
)

// stream tells what changes in the book as server-sent events, until the window goes or
// the server stops. One that does not keep up is let go, and asks again.
func (s *Server) stream(w http.ResponseWriter, r *http.Request) {
	s.follow(w, r, func(c app.Changed) (_ app.Changed, tell, goOn bool) { return c, true, true })
}

// follow tells of changes as told makes them, those that it says are to be told, as long
// as it says to go on. It is asked once before anything is told: what was so when the
// request was let in may be over.
func (s *Server) follow(w http.ResponseWriter, r *http.Request, told func(app.Changed) (as app.Changed, tell, goOn bool)) {
	out := http.NewResponseController(w)
	if err := out.SetWriteDeadline(time.Time{}); err != nil {
		panic(err)
	}
	changes, stop := s.Book.Watch()
	defer stop()
	if _, _, goOn := told(app.Changed{}); !goOn {
		panic(http.ErrAbortHandler)
	}
	w.Header().Set("Content-Type", "text/event-stream; charset=utf-8")
	w.WriteHeader(http.StatusOK)
	say := func(event string, value any) bool {
		data, err := json.Marshal(value)
		if err == nil {
			_, err = fmt.Fprintf(w, "event: %s\ndata: %s\n\n", event, data)
		}
		return err == nil && out.Flush() == nil
	}
	alive := time.NewTicker(s.beat)
	defer alive.Stop()
	ok := say("hello", map[string]string{"program": s.Program})
	for ok {
		select {
		case <-r.Context().Done():
			return
		case <-alive.C:
			_, err := fmt.Fprint(w, ": still here\n\n")
			ok = err == nil && out.Flush() == nil
		case change, open := <-changes:
			as, tell, goOn := change, true, open
			if open {
				as, tell, goOn = told(change)
			}
			ok = goOn && (!tell || say("changed", as))
		}
	}
}
