package web

import (
	"net/http"
)

// copyMade adds a copy of a document.
func (s *Server) copyMade(w http.ResponseWriter, r *http.Request) {
	id, ok := idOf(w, r)
	if !ok {
		return
	}
	var in struct {
		Window string `json:"window"`
		Name   string `json:"name"`
	}
	if asked(w, r, &in) {
		done, err := s.Book.CopyOf(r.Context(), window(in.Window), id, in.Name)
		s.saved(w, r, done, err)
	}
}
