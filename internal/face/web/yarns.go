package web

import (
	"net/http"

	"sley/internal/app"
	"sley/internal/face/present"
)

// notedJSON is a figure with what there is to say of it.
type notedJSON struct {
	figureJSON
	Note string `json:"note,omitempty"`
}

func notedOf(lines []present.Line) []notedJSON {
	out := []notedJSON{}
	for _, l := range lines {
		out = append(out, notedJSON{figureJSON{l.ID, l.Label, l.Value}, l.Note})
	}
	return out
}

// yarnReadJSON is a yarn as its label was read.
type yarnReadJSON struct {
	Name     string        `json:"name"`
	Set      []app.Set     `json:"set"`
	Figures  []notedJSON   `json:"figures"`
	Problems []problemJSON `json:"problems"`
}

// yarnRead reads a yarn from its label; nothing is written.
func (s *Server) yarnRead(w http.ResponseWriter, r *http.Request) {
	var in struct {
		Text string    `json:"text"`
		Set  []app.Set `json:"set"`
	}
	if !asked(w, r, &in) {
		return
	}
	read, list := app.ReadYarn(in.Text, in.Set...)
	reply(w, http.StatusOK, yarnReadJSON{
		Name: read.Label.Name, Set: append([]app.Set{}, read.Sets...),
		Figures: notedOf(present.YarnFigures(read)), Problems: problemsJSON(list),
	})
}
