package web

import (
	"errors"
	"io"
	"mime"
	"net/http"
	"os"
	"strconv"
	"strings"
	"time"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/problem"
)

// uploadTime is how long a photograph may take to arrive, unless Asked says otherwise: a
// large one over the slow edge of a house's network.
const uploadTime = 2 * time.Minute

// photographed takes a photograph into a log. The body is the picture's file; of which type
// it is say its bytes, whatever the request calls it.
func (s *Server) photographed(w http.ResponseWriter, r *http.Request) {
	id, ok := idOf(w, r)
	if !ok {
		return
	}
	place, ok := number(r, "place", 0)
	if !ok {
		refuse(w, http.StatusBadRequest, "request.query")
		return
	}
	file, ok := s.pictureIn(w, r)
	if !ok {
		return
	}
	get := r.URL.Query()
	e, list, err := s.Book.Photographed(r.Context(), app.Happened{
		Document: id, Window: window(get.Get("window")), ID: get.Get("id"), Note: get.Get("note"), Place: place,
	}, file)
	s.listed(w, r, map[string]string{"id": e.ID}, list, err)
}

// pictureIn reads the body of a request that is a picture; it answers itself when that is
// none, too large, or too slow.
func (s *Server) pictureIn(w http.ResponseWriter, r *http.Request) ([]byte, bool) {
	kind, _, err := mime.ParseMediaType(r.Header.Get("Content-Type"))
	if err != nil || !strings.HasPrefix(kind, "image/") || r.Header.Get("Content-Encoding") != "" {
		refuse(w, http.StatusUnsupportedMediaType, "request.picture-type")
		return nil, false
	}
	if r.ContentLength > app.MostPhotographBytes {
		w.Header().Set("Connection", "close") // what is still to come is not read
		refuse(w, http.StatusRequestEntityTooLarge, "request.picture-large")
		return nil, false
	}
	s.wait(w)
	file, err := io.ReadAll(http.MaxBytesReader(w, r.Body, app.MostPhotographBytes))
	var large *http.MaxBytesError
	switch {
	case err == nil:
		return file, true
	case errors.As(err, &large):
		refuse(w, http.StatusRequestEntityTooLarge, "request.picture-large")
	case errors.Is(err, os.ErrDeadlineExceeded):
		w.Header().Set("Connection", "close")
		refuse(w, http.StatusRequestTimeout, "request.slow")
	default:
		panic(http.ErrAbortHandler) // whoever sent it is gone
	}
	return nil, false
}

// wait lets a photograph take longer to arrive than other requests, and answer as long
// after that as those may. A connection that knows no such limit has none.
func (s *Server) wait(w http.ResponseWriter) {
	long := s.Upload
	if long == 0 {
		long = uploadTime
	}
	until, on := time.Now().Add(long), http.NewResponseController(w)
	_ = on.SetReadDeadline(until)
	_ = on.SetWriteDeadline(until.Add(writeTime))
}

// photograph answers with the picture of an entry. It never changes.
func (s *Server) photograph(w http.ResponseWriter, r *http.Request) {
	p, err := s.Book.Photograph(r.Context(), r.PathValue("event"))
	if err != nil {
		s.fail(w, r, err)
		return
	}
	w.Header().Set("Content-Type", p.Kind)
	w.Header().Set("Content-Length", strconv.Itoa(len(p.Body)))
	w.Header().Set("Cache-Control", "private, max-age=31536000, immutable")
	_, _ = w.Write(p.Body) // who asked may have gone
}

func (s *Server) satDown(w http.ResponseWriter, r *http.Request) {
	happens(s, w, r, func(_ happenedIn, h app.Happened) (string, *problem.List, error) {
		e, list, err := s.Book.SitDown(r.Context(), h)
		return e.ID, list, err
	})
}

func (s *Server) stoodUp(w http.ResponseWriter, r *http.Request) {
	happens(s, w, r, func(in happenedIn, h app.Happened) (string, *problem.List, error) {
		h.Typed = strconv.Itoa(in.Minutes)
		e, list, err := s.Book.StandUp(r.Context(), h, in.Minutes)
		return e.ID, list, err
	})
}

// hours tells the time at the loom, in the shape of docs/json.md.
func (s *Server) hours(w http.ResponseWriter, r *http.Request) {
	id, ok := idOf(w, r)
	if !ok {
		return
	}
	h, err := s.Book.Hours(r.Context(), id)
	if err != nil {
		s.fail(w, r, err)
		return
	}
	reply(w, http.StatusOK, present.HoursJSONOf(h))
}
