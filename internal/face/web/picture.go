package web

import (
	"errors"
	"fmt"
	"net/http"
	"strconv"
	"strings"

	"sley/internal/app"
	"sley/internal/face/sheet"
	"sley/internal/trade/record"
)

// ofCloth is the picture of a cloth, which is dots; all others are drawn as lines.
const ofCloth = "cloth"

// unknownCloth stands for the cloth of a warp whose yarns or weave are not known yet:
// unbleached threads, and nothing on them.
const unknownCloth = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 480 480" width="480" height="480">` +
	`<defs><pattern id="p" width="8" height="8" patternUnits="userSpaceOnUse"><path fill="#ece4d3" d="M0 0h8v8H0z"/><path stroke="#e0d6c1" d="M.5 0v8M4.5 0v8"/></pattern></defs>` +
	`<path fill="url(#p)" d="M0 0h480v480H0z"/></svg>`

// pictured answers with a picture of a document. One that is asked for by its version
// never changes.
func (s *Server) pictured(w http.ResponseWriter, r *http.Request) {
	id, ok := idOf(w, r)
	if !ok {
		return
	}
	get := r.URL.Query()
	var changes []string
	if said := get.Get("change"); said != "" {
		changes = strings.Split(said, ",")
	}
	p, err := s.Book.Pictured(r.Context(), id, changes)
	var cannot *app.ChangeError
	switch {
	case errors.As(err, &cannot):
		refuse(w, http.StatusBadRequest, "request.change")
		return
	case err != nil:
		s.fail(w, r, err)
		return
	}
	if s.unchanged(w, r, p.Version) {
		return
	}
	data, kind, ok := drawn(p, get.Get("of"))
	if !ok {
		w.Header().Set("Cache-Control", "no-store")
		w.Header().Del("ETag")
		refuse(w, http.StatusNotFound, "request.picture")
		return
	}
	w.Header().Set("Content-Type", kind)
	w.Header().Set("Content-Length", strconv.Itoa(len(data)))
	_, _ = w.Write(data) // who asked may have gone
}

// unchanged says how long what is drawn of a version can be kept, and answers itself where
// the browser has it already.
func (s *Server) unchanged(w http.ResponseWriter, r *http.Request, version int) bool {
	tag := fmt.Sprintf("%q", s.Program+" "+strconv.Itoa(version))
	w.Header().Set("ETag", tag)
	w.Header().Set("Cache-Control", "private, no-cache")
	if r.URL.Query().Get("v") == strconv.Itoa(version) {
		w.Header().Set("Cache-Control", "private, max-age=86400, immutable")
	}
	if r.Header.Get("If-None-Match") != tag {
		return false
	}
	w.WriteHeader(http.StatusNotModified)
	return true
}

// drawn draws what is asked for, and says of which type it is.
func drawn(p *app.Pictured, of string) (data []byte, kind string, ok bool) {
	if of == ofCloth {
		data, ok = p.Cloth()
		if !ok && p.Kind == record.Warp {
			return []byte(unknownCloth), "image/svg+xml", true
		}
		return data, "image/png", ok
	}
	doc, ok := sheet.PictureOf(p, of)
	if !ok {
		return nil, "", false
	}
	files, err := app.SheetFiles(doc, app.SVG, 0)
	if err != nil || len(files) == 0 {
		return nil, "", false
	}
	return files[0], "image/svg+xml", true
}
