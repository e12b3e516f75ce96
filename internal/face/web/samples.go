package web

import (
	"net/http"

	"sley/internal/face/present"
	"sley/internal/trade/record"
)

// samples gives the samples of a yarn, or what samples and records say of a warp.
func (s *Server) samples(w http.ResponseWriter, r *http.Request) {
	id, ok := idOf(w, r)
	if !ok {
		return
	}
	d, err := s.Book.Show(r.Context(), id)
	switch {
	case err != nil:
		s.fail(w, r, err)
	case d.Kind == record.Warp:
		found, err := s.Book.Advice(r.Context(), id)
		s.listed(w, r, present.AdviceJSONOf(id, found).Advice, nil, err)
	default:
		found, err := s.Book.Samples(r.Context(), id)
		s.listed(w, r, present.SamplesJSONOf(id, found).Samples, nil, err)
	}
}
