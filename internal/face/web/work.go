package web

import (
	"net/http"
	"time"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// happenedIn is something that happened, as it was typed.
type happenedIn struct {
	ID      string    `json:"id"` // random, of the window's: sent twice it counts once
	Window  string    `json:"window"`
	What    string    `json:"what"`
	Typed   string    `json:"typed"`
	Note    string    `json:"note"`
	Warp    record.ID `json:"warp"`
	Minutes int       `json:"minutes"`
	Pick    int       `json:"pick"`
	Place   int       `json:"place"`
	Path    string    `json:"path"`
	State   string    `json:"state"`
}

// happens answers something that happened by what do makes of it.
func happens(s *Server, w http.ResponseWriter, r *http.Request, do func(happenedIn, app.Happened) (string, *problem.List, error)) {
	id, ok := idOf(w, r)
	if !ok {
		return
	}
	var in happenedIn
	if asked(w, r, &in) {
		event, list, err := do(in, app.Happened{
			Document: id, Window: window(in.Window), ID: in.ID, What: in.What, Typed: in.Typed, Note: in.Note, Warp: in.Warp, Place: in.Place,
		})
		s.listed(w, r, map[string]string{"id": event}, list, err)
	}
}

func (s *Server) stocked(w http.ResponseWriter, r *http.Request) {
	happens(s, w, r, func(_ happenedIn, h app.Happened) (string, *problem.List, error) {
		e, list, err := s.Book.Stocked(r.Context(), h)
		return e.ID, list, err
	})
}

func (s *Server) logged(w http.ResponseWriter, r *http.Request) {
	happens(s, w, r, func(in happenedIn, h app.Happened) (string, *problem.List, error) {
		e, list, err := s.Book.Logged(r.Context(), h, in.Minutes)
		return e.ID, list, err
	})
}

func (s *Server) wove(w http.ResponseWriter, r *http.Request) {
	happens(s, w, r, func(in happenedIn, h app.Happened) (string, *problem.List, error) {
		list, err := s.Book.Wove(r.Context(), h, in.Pick)
		return in.ID, list, err
	})
}

func (s *Server) measured(w http.ResponseWriter, r *http.Request) {
	happens(s, w, r, func(in happenedIn, h app.Happened) (string, *problem.List, error) {
		e, list, err := s.Book.Measured(r.Context(), h, in.Path, in.State)
		return e.ID, list, err
	})
}

func (s *Server) cancelled(w http.ResponseWriter, r *http.Request) {
	var in struct{ Window, Note string }
	if asked(w, r, &in) {
		list, err := s.Book.Cancel(r.Context(), window(in.Window), r.PathValue("event"), in.Note)
		s.listed(w, r, map[string]bool{"cancelled": true}, list, err)
	}
}

// eventJSON is something that happened.
type eventJSON struct {
	record.Event
	Says string `json:"says"`
}

func (s *Server) happenings(w http.ResponseWriter, r *http.Request) {
	id, ok := idOf(w, r)
	if !ok {
		return
	}
	topic := record.Topic(r.URL.Query().Get("topic"))
	if topic.Whats() == nil {
		refuse(w, http.StatusBadRequest, "request.query")
		return
	}
	found, err := s.Book.Events(r.Context(), id, topic)
	out := []eventJSON{}
	for _, e := range found {
		out = append(out, eventJSON{e, present.What(e.What)})
	}
	s.listed(w, r, out, nil, err)
}

// reckoned gives every number of a warp, in the shape of docs/json.md.
func (s *Server) reckoned(w http.ResponseWriter, r *http.Request) {
	id, ok := idOf(w, r)
	if !ok {
		return
	}
	from, warned, err := s.Book.WarpSource(r.Context(), id)
	if err != nil {
		s.fail(w, r, err)
		return
	}
	result, list := app.ReckonPlan(from, r.URL.Query().Get("find"), true)
	list.Append(warned)
	units, err := present.UnitsFor(result, from.Units, r.URL.Query().Get("units"))
	if err != nil {
		refuse(w, http.StatusBadRequest, "request.query")
		return
	}
	out := present.JSONOf(result, list, units)
	out.Mark = app.Mark(from.Text)
	reply(w, http.StatusOK, out)
}

// frozenJSON is a plan as it was when work began.
type frozenJSON struct {
	Version  int       `json:"version"`
	At       time.Time `json:"at"`
	Program  string    `json:"program"`
	Defaults string    `json:"defaults"`
}

func (s *Server) frozen(w http.ResponseWriter, r *http.Request) {
	id, ok := idOf(w, r)
	if !ok {
		return
	}
	f, err := s.Book.Frozen(r.Context(), id)
	switch {
	case err != nil:
		s.fail(w, r, err)
	case f == nil:
		refuse(w, http.StatusNotFound, "request.document")
	default:
		reply(w, http.StatusOK, frozenJSON{f.Version, f.At, f.Program, f.Defaults})
	}
}
