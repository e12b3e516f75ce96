package web

import (
	"encoding/json"
	"net/http"
	"strconv"
	"time"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/record"
)

// fileIn is a file that was dropped on the page, with the draft beside it.
type fileIn struct {
	Window string            `json:"window"`
	Name   string            `json:"name"`
	Text   string            `json:"text"`
	Beside map[string]string `json:"beside"`
}

func (f fileIn) source() app.Source {
	return app.Source{Name: f.Name, Text: []byte(f.Text), Beside: func(name string) ([]byte, error) {
		if text, ok := f.Beside[name]; ok {
			return []byte(text), nil
		}
		return nil, app.ErrNoDraft
	}}
}

func (s *Server) warpAdded(w http.ResponseWriter, r *http.Request) {
	var in fileIn
	if asked(w, r, &in) {
		done, err := s.Book.AddWarp(r.Context(), window(in.Window), in.source())
		s.saved(w, r, done, err)
	}
}

func (s *Server) draftAdded(w http.ResponseWriter, r *http.Request) {
	var in fileIn
	if asked(w, r, &in) {
		done, err := s.Book.AddDraft(r.Context(), window(in.Window), in.source())
		s.saved(w, r, done, err)
	}
}

// namedIn is something that is added by its name and what is known of it.
type namedIn struct {
	Window string    `json:"window"`
	Name   string    `json:"name"`
	Set    []app.Set `json:"set"`
}

func (s *Server) yarnAdded(w http.ResponseWriter, r *http.Request) {
	var in namedIn
	if asked(w, r, &in) {
		done, err := s.Book.AddYarn(r.Context(), window(in.Window), in.Name, in.Set)
		s.saved(w, r, done, err)
	}
}

func (s *Server) loomAdded(w http.ResponseWriter, r *http.Request) {
	var in namedIn
	if asked(w, r, &in) {
		done, err := s.Book.AddLoom(r.Context(), window(in.Window), in.Name, in.Set)
		s.saved(w, r, done, err)
	}
}

// documentJSON is a document that was opened.
type documentJSON struct {
	cardJSON
	Kind     record.Kind     `json:"kind"`
	Text     string          `json:"text"`
	Started  bool            `json:"started,omitempty"`
	Problems []problemJSON   `json:"problems"`
	Origins  []app.Origin    `json:"origins,omitempty"`
	Stock    []figureJSON    `json:"stock,omitempty"`
	Plan     json.RawMessage `json:"plan,omitempty"`
}

func (s *Server) shown(w http.ResponseWriter, r *http.Request) {
	id, ok := idOf(w, r)
	if !ok {
		return
	}
	d, err := s.Book.Show(r.Context(), id)
	if err != nil {
		s.fail(w, r, err)
		return
	}
	out := documentJSON{
		cardJSON: cardOf(d.Card), Kind: d.Kind, Text: string(d.Text), Started: d.Started,
		Problems: problemsJSON(d.Problems), Origins: d.Origins, Plan: d.Plan,
	}
	if d.Stock != nil {
		for _, f := range present.StockFigures(d.Stock, d.Units) {
			out.Stock = append(out.Stock, figureJSON{f.ID, f.Label, f.Value})
		}
	}
	reply(w, http.StatusOK, out)
}

// editIn is what every change of a document says.
type editIn struct {
	Base   int       `json:"base"`
	Window string    `json:"window"`
	Set    []app.Set `json:"set"`
	To     int       `json:"to"`    // return: the version
	Part   string    `json:"part"`  // of a warp
	Shelf  record.ID `json:"shelf"` // use: what is copied
	Name   string    `json:"name"`  // put-on-shelf: under a name of its own
}

// edits answers a change by what do makes of it.
func edits(s *Server, w http.ResponseWriter, r *http.Request, do func(editIn, app.Edit) (app.Saved, error)) {
	id, ok := idOf(w, r)
	if !ok {
		return
	}
	var in editIn
	if asked(w, r, &in) {
		done, err := do(in, app.Edit{ID: id, Base: in.Base, Window: window(in.Window), Sets: in.Set})
		s.saved(w, r, done, err)
	}
}

func (s *Server) changed(w http.ResponseWriter, r *http.Request) {
	edits(s, w, r, func(_ editIn, e app.Edit) (app.Saved, error) { return s.Book.Save(r.Context(), e) })
}

func (s *Server) undone(w http.ResponseWriter, r *http.Request) {
	edits(s, w, r, func(_ editIn, e app.Edit) (app.Saved, error) { return s.Book.Undo(r.Context(), e.ID, e.Base, e.Window) })
}

func (s *Server) redone(w http.ResponseWriter, r *http.Request) {
	edits(s, w, r, func(_ editIn, e app.Edit) (app.Saved, error) { return s.Book.Redo(r.Context(), e.ID, e.Base, e.Window) })
}

func (s *Server) returned(w http.ResponseWriter, r *http.Request) {
	edits(s, w, r, func(in editIn, e app.Edit) (app.Saved, error) {
		return s.Book.Return(r.Context(), e.ID, e.Base, e.Window, in.To)
	})
}

func (s *Server) removed(w http.ResponseWriter, r *http.Request) {
	edits(s, w, r, func(_ editIn, e app.Edit) (app.Saved, error) {
		return s.Book.Remove(r.Context(), e.ID, e.Base, e.Window)
	})
}

func (s *Server) broughtBack(w http.ResponseWriter, r *http.Request) {
	edits(s, w, r, func(_ editIn, e app.Edit) (app.Saved, error) {
		return s.Book.BringBack(r.Context(), e.ID, e.Base, e.Window)
	})
}

func (s *Server) used(w http.ResponseWriter, r *http.Request) {
	edits(s, w, r, func(in editIn, e app.Edit) (app.Saved, error) { return s.Book.Use(r.Context(), e, in.Part, in.Shelf) })
}

func (s *Server) newerTaken(w http.ResponseWriter, r *http.Request) {
	edits(s, w, r, func(in editIn, e app.Edit) (app.Saved, error) { return s.Book.TakeNewer(r.Context(), e, in.Part) })
}

func (s *Server) shelved(w http.ResponseWriter, r *http.Request) {
	edits(s, w, r, func(in editIn, e app.Edit) (app.Saved, error) {
		return s.Book.PutOnShelf(r.Context(), e, in.Part, in.Name)
	})
}

func (s *Server) begun(w http.ResponseWriter, r *http.Request) {
	edits(s, w, r, func(_ editIn, e app.Edit) (app.Saved, error) {
		return s.Book.Start(r.Context(), e.ID, e.Base, e.Window)
	})
}

func (s *Server) amended(w http.ResponseWriter, r *http.Request) {
	edits(s, w, r, func(_ editIn, e app.Edit) (app.Saved, error) { return s.Book.Amend(r.Context(), e) })
}

// versionJSON is a version in a history.
type versionJSON struct {
	Number  int        `json:"number"`
	At      time.Time  `json:"at"`
	Window  string     `json:"window"`
	Act     record.Act `json:"act"`
	Says    string     `json:"says"`
	State   int        `json:"state"`
	Removed bool       `json:"removed,omitempty"`
}

func (s *Server) versions(w http.ResponseWriter, r *http.Request) {
	id, ok := idOf(w, r)
	if !ok {
		return
	}
	before, fine := number(r, "before", 0)
	most, also := number(r, "most", usuallyListed)
	if !fine || !also {
		refuse(w, http.StatusBadRequest, "request.query")
		return
	}
	found, err := s.Book.History(r.Context(), id, before, most)
	out := []versionJSON{}
	for _, v := range found {
		out = append(out, versionJSON{v.Number, v.At, v.Window, v.Act, present.Act(v.Act), v.State, v.Removed})
	}
	s.listed(w, r, out, nil, err)
}

func (s *Server) version(w http.ResponseWriter, r *http.Request) {
	id, ok := idOf(w, r)
	if !ok {
		return
	}
	n, err := strconv.Atoi(r.PathValue("number"))
	if err != nil || n < 1 {
		refuse(w, http.StatusNotFound, "request.document")
		return
	}
	text, err := s.Book.VersionText(r.Context(), id, n)
	s.listed(w, r, map[string]string{"text": string(text)}, nil, err)
}

// whenceJSON is where a part of a warp came from.
type whenceJSON struct {
	app.Origin
	ID      record.ID `json:"id,omitempty"`
	Name    string    `json:"name,omitempty"`
	Newest  int       `json:"newest,omitempty"`
	Newer   bool      `json:"newer"`
	Removed bool      `json:"removed,omitempty"`
}

func (s *Server) origins(w http.ResponseWriter, r *http.Request) {
	id, ok := idOf(w, r)
	if !ok {
		return
	}
	found, err := s.Book.WhereFrom(r.Context(), id)
	out := []whenceJSON{}
	for _, f := range found {
		j := whenceJSON{Origin: f.Origin, Newer: f.Newer}
		if f.Card != nil {
			j.ID, j.Name, j.Newest, j.Removed = f.Card.ID, f.Card.Name, f.Card.Version, f.Card.Removed
		}
		out = append(out, j)
	}
	s.listed(w, r, out, nil, err)
}
