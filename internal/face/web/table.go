package web

import (
	"encoding/json"
	"net/http"
	"strconv"
	"strings"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/record"
)

// tableSame is the answer to one who has the table of that version already.
type tableSame struct {
	Version int         `json:"version"`
	Fixed   app.FixedBy `json:"fixed,omitempty"`
}

// tableShown answers a draft that is drawn on: as it is written down, or whole.
func (s *Server) tableShown(w http.ResponseWriter, r *http.Request) {
	id, whole, ok := draftAsked(w, r)
	since, fine := tableSince(r)
	if !ok {
		return
	}
	if !fine {
		refuse(w, http.StatusBadRequest, "request.query")
		return
	}
	t, list, err := s.Book.Table(r.Context(), id, whole)
	switch {
	case err != nil:
		s.fail(w, r, err)
	case t == nil:
		reply(w, http.StatusUnprocessableEntity, refusedJSON{problemsJSON(list)})
	case since == t.Version:
		reply(w, http.StatusOK, tableSame{t.Version, t.Fixed})
	default:
		reply(w, http.StatusOK, present.TableOf(t))
	}
}

// tableSince reads ?since=, the version that is known; 0 is none.
func tableSince(r *http.Request) (version int, fine bool) {
	said := r.URL.Query().Get("since")
	if said == "" {
		return 0, true
	}
	version, err := strconv.Atoi(said)
	return version, err == nil && version > 0
}

// draftAsked reads which draft is asked for: of a document, and ?as=: written, or whole.
func draftAsked(w http.ResponseWriter, r *http.Request) (id record.ID, whole, ok bool) {
	if id, ok = idOf(w, r); !ok {
		return id, false, false
	}
	switch r.URL.Query().Get("as") {
	case "", "written":
		return id, false, true
	case "whole":
		return id, true, true
	}
	refuse(w, http.StatusBadRequest, "request.query")
	return id, false, false
}

// drawIn is one gesture on a table.
type drawIn struct {
	Base   int             `json:"base"`
	Window string          `json:"window"`
	Acts   json.RawMessage `json:"acts"`
	Try    bool            `json:"try"`
}

// drewJSON is what came of it.
type drewJSON struct {
	Version  int                       `json:"version"`
	Shafts   int                       `json:"shafts"`
	Treadles int                       `json:"treadles"`
	Shed     string                    `json:"shed"`
	Fill     *present.FillJSON         `json:"fill,omitempty"`
	Splices  map[string]app.PartSplice `json:"splices"`
	Told     []problemJSON             `json:"told"` // of the acts
	Problems []problemJSON             `json:"problems"`
}

// tableDrawn makes a gesture on a table, or says what would come of it.
func (s *Server) tableDrawn(w http.ResponseWriter, r *http.Request) {
	id, whole, ok := draftAsked(w, r)
	var in drawIn
	if !ok || !asked(w, r, &in) {
		return
	}
	acts, list := app.ReadActs(in.Acts)
	if list.Failed() {
		reply(w, http.StatusUnprocessableEntity, refusedJSON{problemsJSON(list)})
		return
	}
	do := s.Book.DrawOn
	if in.Try {
		do = s.Book.TryDrawing
	}
	done, err := do(r.Context(), app.Drawing{Edit: app.Edit{ID: id, Base: in.Base, Window: window(in.Window)}, Whole: whole, Acts: acts})
	if err != nil || done.Refused || done.Conflict != nil || done.Table == nil {
		s.saved(w, r, done.Saved, err)
		return
	}
	t := present.TableOf(done.Table)
	reply(w, http.StatusOK, drewJSON{done.Version, t.Shafts, t.Treadles, t.Shed, t.Fill, done.Parts(), problemsJSON(done.Told), problemsJSON(done.Problems)})
}

// lookedJSON is what there is to tell of a draft.
type lookedJSON struct {
	Version  int                   `json:"version"`
	Uses     []string              `json:"uses"` // what a cloth can be for
	Findings []present.FindingJSON `json:"findings"`
}

// tableLookedOver answers what there is to tell of a draft before it is woven.
func (s *Server) tableLookedOver(w http.ResponseWriter, r *http.Request) {
	id, whole, ok := draftAsked(w, r)
	if !ok {
		return
	}
	q := r.URL.Query()
	asked := app.Looking{ID: id, Whole: whole, Use: q.Get("use"), Shuttles: app.Shuttles{Order: q.Get("shuttles")}}
	if start := q.Get("start"); start != "" {
		asked.Shuttles.Starts = strings.Split(start, ",")
	}
	if on := q.Get("loom"); on != "" {
		n, err := strconv.ParseInt(on, 10, 64)
		if err != nil || n < 1 {
			refuse(w, http.StatusBadRequest, "request.query")
			return
		}
		asked.Loom = record.ID(n)
	}
	looked, list, err := s.Book.LookOver(r.Context(), asked)
	if err != nil || looked == nil {
		s.listed(w, r, nil, list, err)
		return
	}
	reply(w, http.StatusOK, lookedJSON{looked.Version, app.Uses(), present.Findings(looked)})
}
