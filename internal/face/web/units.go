package web

import (
	"net/http"

	"sley/internal/app"
	"sley/internal/trade/warp"
)

// unitsJSON is what figures are shown in, and what they could be.
type unitsJSON struct {
	Length  string              `json:"length"`
	Yarn    string              `json:"yarn"`
	Weight  string              `json:"weight"`
	Density string              `json:"density"`
	Count   string              `json:"count"`
	Choices map[string][]string `json:"choices"`
}

func unitsOf(u warp.Units) unitsJSON {
	return unitsJSON{u.Length, u.Yarn, u.Weight, u.Density, u.Count, app.UnitChoices()}
}

func (s *Server) unitsAre(w http.ResponseWriter, r *http.Request) {
	u, err := s.Book.Units(r.Context())
	s.listed(w, r, unitsOf(u), nil, err)
}

func (s *Server) unitsSet(w http.ResponseWriter, r *http.Request) {
	in := map[string]string{}
	if asked(w, r, &in) {
		u, list, err := s.Book.SetUnits(r.Context(), in)
		s.listed(w, r, unitsOf(u), list, err)
	}
}
