package web

import (
	"errors"
	"net/http"
	"net/url"
	"strconv"
	"strings"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/face/sheet"
)

// judgedJSON is what is known of a draft.
type judgedJSON struct {
	Figures  []present.FigureJSON `json:"figures"`
	Told     []present.ToldJSON   `json:"told"`
	Problems []problemJSON        `json:"problems"`
}

func (s *Server) judged(w http.ResponseWriter, r *http.Request) {
	id, ok := idOf(w, r)
	if !ok {
		return
	}
	d, list, err := s.Book.Drafted(r.Context(), id, false)
	if err != nil {
		s.fail(w, r, err)
		return
	}
	out := judgedJSON{Figures: []present.FigureJSON{}, Told: []present.ToldJSON{}, Problems: problemsJSON(list)}
	if d != nil {
		of := app.JudgeDraft(d)
		out.Figures, out.Told = present.JudgedFigures(d, of.Cloth), present.JudgedTold(of.Cloth, of.Edges)
	}
	reply(w, http.StatusOK, out)
}

// draftForms are the files that a draft is given as, by their endings.
var draftForms = map[string]string{
	"wif": "text/plain; charset=utf-8", "svg": "image/svg+xml", "png": "image/png", "pdf": "application/pdf",
}

// draftFile gives a draft as a file: the same bytes as sley draft convert and draw.
func draftFile(ending string) func(*Server, http.ResponseWriter, *http.Request) {
	return func(s *Server, w http.ResponseWriter, r *http.Request) {
		id, whole, ok := draftAsked(w, r)
		if !ok {
			return
		}
		look, floats, fine := lookAsked(r.URL.Query())
		if !fine || look.Paper != "" && ending != "pdf" {
			refuse(w, http.StatusBadRequest, "request.query")
			return
		}
		d, list, err := s.Book.Drafted(r.Context(), id, whole)
		switch {
		case err != nil:
			s.fail(w, r, err)
		case d == nil:
			reply(w, http.StatusUnprocessableEntity, refusedJSON{problemsJSON(list)})
		default:
			if floats > 0 {
				look.Floats = app.LongFloats(d.Draft, floats)
			}
			giveDraft(w, d, ending, look)
		}
	}
}

// lookAsked reads how a draft is to be drawn, by the names of the flags of sley draft draw,
// and from how many threads on floats are struck through, 0 for none.
func lookAsked(q url.Values) (look sheet.DraftLook, floats int, ok bool) {
	look = sheet.DraftLook{Paper: q.Get("paper"), Cells: q.Get("cells")}
	for name, is := range look.Switches() {
		*is = q.Has(name)
	}
	if text := q.Get("floats"); text != "" {
		n, err := strconv.Atoi(text)
		if err != nil || n < 2 {
			return look, 0, false
		}
		floats = n
	}
	return look, floats, look.Check() == nil
}

func giveDraft(w http.ResponseWriter, d *app.Drafted, ending string, look sheet.DraftLook) {
	data, err := [][]byte{app.WriteDraft(d)}, error(nil)
	if ending != "wif" {
		data, err = sheet.DraftFiles(d, look, app.Form(ending), sheet.UsualDPI)
	}
	if err != nil {
		if !errors.Is(err, sheet.ErrTooLarge) && ending != "png" { // a PNG may have too many dots
			panic(err)
		}
		refuse(w, http.StatusUnprocessableEntity, "request.picture")
		return
	}
	attached(w, d.Called, ending)
	sent(w, draftForms[ending], data[0])
}

// sent answers with a file.
func sent(w http.ResponseWriter, kind string, data []byte) {
	w.Header().Set("Content-Type", kind)
	w.Header().Set("Content-Length", strconv.Itoa(len(data)))
	_, _ = w.Write(data) // who asked may have gone
}

// attached has a browser keep the answer as a file of that name: in plain letters for
// every browser, and in its own for those that read it (RFC 6266).
func attached(w http.ResponseWriter, name, ending string) {
	name = strings.TrimSpace(strings.Map(fileLetter, name))
	if name == "" {
		name = "draft"
	}
	plain := strings.TrimSpace(strings.Map(plainLetter, name))
	w.Header().Set("Content-Disposition",
		`attachment; filename="`+plain+"."+ending+`"; filename*=UTF-8''`+url.PathEscape(name+"."+ending))
}

// fileLetter leaves out what no file's name can have on one system or another.
func fileLetter(c rune) rune {
	if c < ' ' || c == 0x7f || strings.ContainsRune("/\\:*?\"<>|", c) {
		return '-'
	}
	return c
}

func plainLetter(c rune) rune {
	if c > '~' || c == '%' {
		return '-'
	}
	return c
}
