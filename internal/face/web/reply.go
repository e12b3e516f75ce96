package web

import (
	"encoding/json"
	"errors"
	"io"
	"mime"
	"net/http"
	"strconv"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// reply answers with JSON.
func reply(w http.ResponseWriter, status int, value any) {
	data, err := json.Marshal(value)
	if err != nil {
		panic("internal error: an answer is no JSON: " + err.Error())
	}
	w.Header().Set("Content-Type", "application/json; charset=utf-8")
	w.Header().Set("Content-Length", strconv.Itoa(len(data)))
	w.WriteHeader(status)
	_, _ = w.Write(data) // who asked may have gone
}

type errorJSON struct {
	Error errorWords `json:"error"`
}

type errorWords struct {
	Code    string `json:"code"`
	Says    string `json:"says"`
	Fix     string `json:"fix,omitempty"`
	Address string `json:"address,omitempty"`
}

// refuse answers a request that is not let through.
func refuse(w http.ResponseWriter, status int, code string) {
	says, fix := present.Refusal(code)
	reply(w, status, errorJSON{errorWords{Code: code, Says: says, Fix: fix}})
}

// statuses are those of troubles; what is not here is the book's fault: 500.
var statuses = map[string]int{
	record.NotFound: http.StatusNotFound, record.Full: http.StatusInsufficientStorage,
	record.ReadOnly: http.StatusForbidden, record.Changed: http.StatusConflict, record.InUse: http.StatusLocked,
	record.Closed: http.StatusServiceUnavailable, record.Exists: http.StatusConflict,
}

// fail answers what could not be done.
func (s *Server) fail(w http.ResponseWriter, r *http.Request, err error) {
	if r.Context().Err() != nil {
		return // nobody is there any more
	}
	var t *record.Trouble
	if !errors.As(err, &t) {
		panic(err)
	}
	says, fix := present.Trouble(t)
	status := statuses[t.Code]
	if status == 0 {
		status = http.StatusInternalServerError
	}
	s.Log.Warn("could not be done", "code", t.Code, "error", err)
	reply(w, status, errorJSON{errorWords{Code: t.Code, Says: says, Fix: fix, Address: t.Address}})
}

// problemJSON is a problem as the page shows it beside its field.
type problemJSON struct {
	Code     string `json:"code"`
	Severity string `json:"severity"`
	Path     string `json:"path"`
	Line     int    `json:"line,omitempty"` // of a file that was sent
	Excerpt  string `json:"excerpt,omitempty"`
	Read     string `json:"read,omitempty"`
	Says     string `json:"says"`
	Fix      string `json:"fix,omitempty"`
}

func problemsJSON(list *problem.List) []problemJSON {
	out := []problemJSON{}
	if list == nil {
		return out
	}
	for _, p := range list.All() {
		p = present.Imperial.Localise(p)
		out = append(out, problemJSON{p.Code, p.Severity.String(), p.Path, p.Place.Line, p.Place.Excerpt, p.Read, present.Wrong(p), present.Fix(p)})
	}
	return out
}

// refusedJSON says why nothing was written.
type refusedJSON struct {
	Problems []problemJSON `json:"problems"`
}

// savedJSON is a document that has a new version.
type savedJSON struct {
	ID       record.ID     `json:"id"`
	Version  int           `json:"version"`
	Problems []problemJSON `json:"problems"`
}

type conflictJSON struct {
	Conflict conflictWords `json:"conflict"`
}

type conflictWords struct {
	ID          record.ID   `json:"id"`
	Base        int         `json:"base"`
	Head        int         `json:"head"`
	Removed     bool        `json:"removed,omitempty"`
	Differences []apartJSON `json:"differences"`
}

type apartJSON struct {
	Path   string `json:"path"`
	Base   string `json:"base"`
	Theirs string `json:"theirs"`
	Yours  string `json:"yours"`
}

// saved answers an action that writes.
func (s *Server) saved(w http.ResponseWriter, r *http.Request, done app.Saved, err error) {
	switch {
	case err != nil:
		s.fail(w, r, err)
	case done.Conflict != nil:
		reply(w, http.StatusConflict, conflictOf(done.Conflict))
	case done.Refused:
		reply(w, http.StatusUnprocessableEntity, refusedJSON{problemsJSON(done.Problems)})
	default:
		reply(w, http.StatusOK, savedJSON{done.ID, done.Version, problemsJSON(done.Problems)})
	}
}

func conflictOf(c *app.Conflict) conflictJSON {
	out := conflictWords{ID: c.ID, Base: c.Base, Head: c.Head, Removed: c.Removed, Differences: []apartJSON{}}
	for _, d := range c.Differences {
		out.Differences = append(out.Differences, apartJSON{d.Path, d.Base, d.Theirs, d.Mine})
	}
	return conflictJSON{out}
}

// listed answers an action whose only answer is what is wrong, if anything is.
func (s *Server) listed(w http.ResponseWriter, r *http.Request, value any, list *problem.List, err error) {
	switch {
	case err != nil:
		s.fail(w, r, err)
	case list != nil && list.Failed():
		reply(w, http.StatusUnprocessableEntity, refusedJSON{problemsJSON(list)})
	default:
		reply(w, http.StatusOK, value)
	}
}

// asked reads the JSON body of a request, all of it and nothing it does not know; it
// answers itself when there is something wrong.
func asked(w http.ResponseWriter, r *http.Request, to any) bool {
	kind, _, err := mime.ParseMediaType(r.Header.Get("Content-Type"))
	if err != nil || kind != "application/json" || r.Header.Get("Content-Encoding") != "" {
		refuse(w, http.StatusUnsupportedMediaType, "request.type")
		return false
	}
	d := json.NewDecoder(http.MaxBytesReader(w, r.Body, mostBody))
	d.DisallowUnknownFields()
	err = d.Decode(to)
	if err == nil {
		_, err = d.Token()
		if err == io.EOF {
			return true
		}
		err = errors.New("more than one value")
	}
	var large *http.MaxBytesError
	if errors.As(err, &large) {
		refuse(w, http.StatusRequestEntityTooLarge, "request.large")
		return false
	}
	refuse(w, http.StatusBadRequest, "request.json")
	return false
}

// idOf is the document of a request; it answers itself when that is none.
func idOf(w http.ResponseWriter, r *http.Request) (record.ID, bool) {
	n, err := strconv.ParseInt(r.PathValue("id"), 10, 64)
	if err != nil || n < 1 {
		refuse(w, http.StatusNotFound, "request.document")
		return 0, false
	}
	return record.ID(n), true
}

// number is a whole number of a query from 0 on, or otherwise where none is said.
func number(r *http.Request, name string, otherwise int) (int, bool) {
	text := r.URL.Query().Get(name)
	if text == "" {
		return otherwise, true
	}
	n, err := strconv.Atoi(text)
	return n, err == nil && n >= 0
}
