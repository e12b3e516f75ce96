package web

import (
	"net/http"
	"slices"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/face/sheet"
	"sley/internal/trade/problem"
)

func (s *Server) weaves(w http.ResponseWriter, _ *http.Request) {
	reply(w, http.StatusOK, present.WeavesJSONOf(app.Weaves()))
}

// lookedAt makes the weave that a request is about; it answers itself where the catalogue
// has none of that id.
func lookedAt(w http.ResponseWriter, r *http.Request) (*app.Drafted, app.WeaveFacts, *problem.List, bool) {
	id := r.PathValue("weave")
	if !slices.ContainsFunc(app.Weaves(), func(of app.Weave) bool { return of.ID == id }) {
		refuse(w, http.StatusNotFound, "request.weave")
		return nil, app.WeaveFacts{}, nil, false
	}
	values := map[string]string{}
	for name, said := range r.URL.Query() {
		values[name] = said[len(said)-1]
	}
	d, facts, list := app.LookAtWeave(id, values)
	return d, facts, list, true
}

// weaveJSON is what a weave is with the values that were asked for.
type weaveJSON struct {
	Facts    []present.FigureJSON `json:"facts"`
	Problems []problemJSON        `json:"problems"`
}

func (s *Server) weave(w http.ResponseWriter, r *http.Request) {
	d, facts, list, ok := lookedAt(w, r)
	if !ok {
		return
	}
	out := weaveJSON{Facts: []present.FigureJSON{}, Problems: problemsJSON(list)}
	if d != nil {
		out.Facts = present.WeaveFigures(facts)
	}
	reply(w, http.StatusOK, out)
}

func (s *Server) weavePicture(w http.ResponseWriter, r *http.Request) {
	d, _, list, ok := lookedAt(w, r)
	if !ok {
		return
	}
	if d == nil {
		reply(w, http.StatusUnprocessableEntity, refusedJSON{problemsJSON(list)})
		return
	}
	d.Draft.Name = present.Catalogue(r.PathValue("weave")).Name
	picture, err := sheet.WeaveSample(d)
	if err != nil {
		refuse(w, http.StatusNotFound, "request.picture")
		return
	}
	sent(w, "image/svg+xml", picture)
}

// weaveCloth answers with the cloth that a weave makes, as dots.
func (s *Server) weaveCloth(w http.ResponseWriter, r *http.Request) {
	d, _, list, ok := lookedAt(w, r)
	if !ok {
		return
	}
	if d == nil {
		reply(w, http.StatusUnprocessableEntity, refusedJSON{problemsJSON(list)})
		return
	}
	picture, ok := (&app.Pictured{Draft: d}).Cloth()
	if !ok {
		refuse(w, http.StatusNotFound, "request.picture")
		return
	}
	sent(w, "image/png", picture)
}

// weaveIn is a weave of the catalogue that goes onto the shelf.
type weaveIn struct {
	Window string            `json:"window"`
	Name   string            `json:"name"`
	Weave  string            `json:"weave"`
	Values map[string]string `json:"values"`
}

func (s *Server) weaveAdded(w http.ResponseWriter, r *http.Request) {
	var in weaveIn
	if asked(w, r, &in) {
		done, err := s.Book.AddWeave(r.Context(), window(in.Window), in.Name, in.Weave, in.Values)
		s.saved(w, r, done, err)
	}
}

// changeJSON is a change that can be made of a draft.
type changeJSON struct {
	Name  string `json:"name"`
	Says  string `json:"says"`
	Takes string `json:"takes,omitempty"` // what stands after =, for example
}

func (s *Server) draftChanges(w http.ResponseWriter, _ *http.Request) {
	out := []changeJSON{}
	for _, c := range app.Changes() {
		out = append(out, changeJSON{c.Name, present.ChangeSays(c.Name), c.Takes})
	}
	reply(w, http.StatusOK, out)
}

// systemJSON is a way to weave blocks.
type systemJSON struct {
	ID   string `json:"id"`
	Name string `json:"name"`
}

func (s *Server) blockSystems(w http.ResponseWriter, _ *http.Request) {
	out := []systemJSON{}
	for _, id := range app.SystemNames() {
		out = append(out, systemJSON{id, present.Catalogue(id).Name})
	}
	reply(w, http.StatusOK, out)
}

// reworkIn is a draft of the shelf that is to be changed.
type reworkIn struct {
	Base    int      `json:"base"`
	Window  string   `json:"window"`
	Changes []string `json:"changes"`
}

func (s *Server) reworked(w http.ResponseWriter, r *http.Request) {
	id, ok := idOf(w, r)
	if !ok {
		return
	}
	var in reworkIn
	if asked(w, r, &in) {
		done, err := s.Book.Rework(r.Context(), app.Edit{ID: id, Base: in.Base, Window: window(in.Window)}, in.Changes)
		s.saved(w, r, done, err)
	}
}
