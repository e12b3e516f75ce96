package web

import (
	"mime"
	"net/http"
	"strings"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/face/sheet"
)

// pressed is a warp that was reckoned for its sheets, and what was asked of them.
type pressed struct {
	*app.Reckoned
	units present.Units
	asked sheet.Options
}

// pressing reckons a warp for its sheets; it answers itself where that cannot be.
func (s *Server) pressing(w http.ResponseWriter, r *http.Request) (pressed, bool) {
	id, ok := idOf(w, r)
	if !ok {
		return pressed{}, false
	}
	done, err := s.Book.ReckonWarp(r.Context(), id)
	if err != nil {
		s.fail(w, r, err)
		return pressed{}, false
	}
	if done.Result == nil || done.Problems.Failed() {
		reply(w, http.StatusUnprocessableEntity, refusedJSON{problemsJSON(done.Problems)})
		return pressed{}, false
	}
	came, err := s.Book.Record(r.Context(), id)
	if err != nil {
		s.fail(w, r, err)
		return pressed{}, false
	}
	asked := sheet.Options{Paper: r.URL.Query().Get("paper"), Mark: done.Mark, Record: came}
	p := pressed{done, present.UnitsIn(done.Result.Plan, done.Units), asked}
	for _, name := range strings.Split(r.URL.Query().Get("pages"), ",") {
		if name = strings.TrimSpace(name); name != "" {
			p.asked.Sheets = append(p.asked.Sheets, name)
		}
	}
	if err := p.asked.Check(); err != nil {
		refuse(w, http.StatusBadRequest, "request.query")
		return pressed{}, false
	}
	return p, true
}

// listedSheets is what sheets there are.
type listedSheets struct {
	Papers []string       `json:"papers"`
	Sheets []sheet.Listed `json:"sheets"`
}

func (s *Server) sheetsListed(w http.ResponseWriter, r *http.Request) {
	p, ok := s.pressing(w, r)
	if !ok {
		return
	}
	list, err := sheet.List(p.Result, p.units, p.asked)
	if err != nil {
		refuse(w, http.StatusBadRequest, "request.query")
		return
	}
	reply(w, http.StatusOK, listedSheets{sheet.PaperNames(), list})
}

// sheetsPrinted answers with the bytes that sley sheet writes.
func (s *Server) sheetsPrinted(w http.ResponseWriter, r *http.Request) {
	p, ok := s.pressing(w, r)
	if !ok {
		return
	}
	pages, err := sheet.Make(p.Result, p.units, p.asked)
	if err != nil {
		refuse(w, http.StatusNotFound, "request.sheet")
		return
	}
	inline(w, p.Result.Plan.Name+".pdf")
	files, err := app.SheetFiles(pages, app.PDF, 0)
	sheetFile(w, app.PDF, files, err)
}

// sheetShown answers with a page of the sheets as a picture.
func (s *Server) sheetShown(w http.ResponseWriter, r *http.Request) {
	page, fine := number(r, "page", 1)
	dpi, also := number(r, "dpi", usualDPI)
	if !fine || !also || dpi < leastDPI || dpi > mostDPI {
		refuse(w, http.StatusBadRequest, "request.query")
		return
	}
	p, ok := s.pressing(w, r)
	if !ok {
		return
	}
	pages, err := sheet.Make(p.Result, p.units, p.asked)
	if err != nil || page < 1 || page > len(pages.Pages) {
		refuse(w, http.StatusNotFound, "request.sheet")
		return
	}
	pages.Pages = pages.Pages[page-1 : page]
	files, err := app.SheetFiles(pages, app.PNG, dpi)
	sheetFile(w, app.PNG, files, err)
}

// The dots to the inch of a page that is looked at.
const (
	usualDPI = 70
	leastDPI = 36
	mostDPI  = 300
)

var sheetTypes = map[app.Form]string{app.PDF: "application/pdf", app.PNG: "image/png"}

// sheetFile answers with a file of sheets.
func sheetFile(w http.ResponseWriter, form app.Form, files [][]byte, err error) {
	if err != nil {
		panic(err)
	}
	sent(w, sheetTypes[form], files[0])
}

// inline names a file that is looked at in the browser, for when it is saved.
func inline(w http.ResponseWriter, name string) {
	w.Header().Set("Content-Disposition", mime.FormatMediaType("inline", map[string]string{"filename": name}))
}
