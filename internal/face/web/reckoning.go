package web

import (
	"net/http"

	"sley/internal/app"
	"sley/internal/face/present"
)

// previewIn is what a warp is to be reckoned with.
type previewIn struct {
	Set  []app.Set `json:"set"`
	Find struct {
		What   string   `json:"what"`
		Within []string `json:"within"`
	} `json:"find"`
	Open []string `json:"open"`
	Only []string `json:"only"`
}

// previewed answers what a warp would come to. Nothing is written.
func (s *Server) previewed(w http.ResponseWriter, r *http.Request) {
	id, ok := idOf(w, r)
	if !ok {
		return
	}
	var in previewIn
	if !asked(w, r, &in) {
		return
	}
	p, err := s.Book.Preview(r.Context(), app.PreviewAsked{
		ID: id, Sets: in.Set, Find: in.Find.What, Within: in.Find.Within, Workings: len(in.Open) > 0, Only: in.Only,
	})
	if err != nil {
		s.fail(w, r, err)
		return
	}
	reply(w, http.StatusOK, present.LiveOf(p, in.Open))
}
