package web

import (
	"net/http"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/record"
)

// kindJSON is a kind of piece that a warp can begin with.
type kindJSON struct {
	ID     string      `json:"id"`
	Name   string      `json:"name"`
	Says   string      `json:"says"`
	Pieces []pieceJSON `json:"pieces"`
	Usual  []notedJSON `json:"usual"`
}

// pieceJSON is a piece as the plan of such a warp begins with it.
type pieceJSON struct {
	Name   string `json:"name"`
	Count  int    `json:"count"`
	Length string `json:"length"`
	Width  string `json:"width"`
	Both   string `json:"both,omitempty"`
}

func (s *Server) kinds(w http.ResponseWriter, r *http.Request) {
	units := r.URL.Query().Get("units")
	if units != "" && units != app.MetricUnits && units != app.ImperialUnits {
		refuse(w, http.StatusBadRequest, "request.query")
		return
	}
	out := []kindJSON{}
	for _, k := range app.Kinds(units == app.MetricUnits) {
		name, says := present.PieceKind(k)
		out = append(out, kindJSON{
			ID: k.ID, Name: name, Says: says, Usual: notedOf(present.KindFigures(k)),
			Pieces: []pieceJSON{{name, k.Count, k.Size.Length.Usual.Typed, k.Size.Width.Usual.Typed, k.Both}},
		})
	}
	reply(w, http.StatusOK, out)
}

func (s *Server) warpBegun(w http.ResponseWriter, r *http.Request) {
	var in struct {
		Window string    `json:"window"`
		Kind   string    `json:"kind"`
		Name   string    `json:"name"`
		Count  int       `json:"count"`
		Units  string    `json:"units"`
		Yarn   record.ID `json:"yarn"`
		Loom   record.ID `json:"loom"`
		Draft  record.ID `json:"draft"`
	}
	if asked(w, r, &in) {
		done, err := s.Book.NewWarp(r.Context(), app.WarpAsked{
			Window: window(in.Window), Kind: in.Kind, Name: in.Name, Count: in.Count, Units: in.Units,
			Yarn: in.Yarn, Loom: in.Loom, Draft: in.Draft,
		})
		s.saved(w, r, done, err)
	}
}
