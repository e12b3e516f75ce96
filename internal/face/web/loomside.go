package web

import (
	"net/http"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/problem"
)

// loomside tells what is to be done at the loom and how far it is, in the shape of
// docs/json.md.
func (s *Server) loomside(w http.ResponseWriter, r *http.Request) {
	id, ok := idOf(w, r)
	if !ok {
		return
	}
	found, err := s.Book.Loomside(r.Context(), id)
	if err != nil {
		s.fail(w, r, err)
		return
	}
	reply(w, http.StatusOK, present.LoomsideJSONOf(found))
}

// loomIn is what is said at the loom.
type loomIn struct {
	ID     string `json:"id"` // random, of the device: sent twice it counts once
	Window string `json:"window"`
	Step   string `json:"step"`
	Place  int    `json:"place"`
	From   int    `json:"from"`
	Set    bool   `json:"set"`
	What   string `json:"what"`
	Value  string `json:"value"`
	Typed  string `json:"typed"`
	Yarn   string `json:"yarn"`
	Pick   int    `json:"pick"`
}

// atLoom answers what is said at the loom by what do makes of it.
func (s *Server) atLoom(w http.ResponseWriter, r *http.Request, do func(loomIn, app.Happened) (any, *problem.List, error)) {
	id, ok := idOf(w, r)
	if !ok {
		return
	}
	var in loomIn
	if asked(w, r, &in) {
		out, list, err := do(in, app.Happened{Document: id, Window: window(in.Window), ID: in.ID, Typed: in.Typed})
		s.listed(w, r, out, list, err)
	}
}

// placeJSON is where a step stands.
type placeJSON struct {
	Place int `json:"place"`
}

func (s *Server) reached(w http.ResponseWriter, r *http.Request) {
	s.atLoom(w, r, func(in loomIn, h app.Happened) (any, *problem.List, error) {
		place, list, err := s.Book.Reached(r.Context(), h, app.Reach{Step: in.Step, Place: in.Place, From: in.From, Set: in.Set})
		return placeJSON{place}, list, err
	})
}

// saidJSON answers what was said and is kept.
type saidJSON struct {
	ID string `json:"id"`
}

func (s *Server) chosen(w http.ResponseWriter, r *http.Request) {
	s.atLoom(w, r, func(in loomIn, h app.Happened) (any, *problem.List, error) {
		list, err := s.Book.Choose(r.Context(), h, in.What, in.Value)
		return saidJSON{in.ID}, list, err
	})
}

func (s *Server) taped(w http.ResponseWriter, r *http.Request) {
	s.atLoom(w, r, func(in loomIn, h app.Happened) (any, *problem.List, error) {
		list, err := s.Book.Taped(r.Context(), h, in.Pick)
		return saidJSON{in.ID}, list, err
	})
}

func (s *Server) weighed(w http.ResponseWriter, r *http.Request) {
	s.atLoom(w, r, func(in loomIn, h app.Happened) (any, *problem.List, error) {
		list, err := s.Book.Weighed(r.Context(), h, in.Yarn, in.Pick)
		return saidJSON{in.ID}, list, err
	})
}
