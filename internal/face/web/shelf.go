package web

import (
	"net/http"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/record"
)

// shelvedJSON is a yarn of the shelf with what of it is promised.
type shelvedJSON struct {
	cardJSON
	Colour     string         `json:"colour,omitempty"`
	ColourName string         `json:"colour_name,omitempty"`
	Grist      string         `json:"grist,omitempty"`
	Stock      *stockJSON     `json:"stock"`
	Promised   []promisedJSON `json:"promised"`
	Left       *leftJSON      `json:"left"`
	Known      []notedJSON    `json:"known,omitempty"` // of one yarn
}

type stockJSON struct {
	Length string `json:"length,omitempty"`
	Weight string `json:"weight,omitempty"`
	Says   string `json:"says"`
}

type promisedJSON struct {
	ID   record.ID `json:"id"`
	Name string    `json:"name"`
	Says string    `json:"says"`
}

type leftJSON struct {
	Says  string `json:"says"`
	Short bool   `json:"short"`
}

func shelvedOf(y app.Shelved) shelvedJSON {
	out := shelvedJSON{cardJSON: cardOf(y.Card), Colour: y.Colour.Hex, ColourName: y.Colour.Name, Promised: []promisedJSON{}}
	for _, f := range out.Figures {
		if f.ID == "yarns[].grist" {
			out.Grist = f.Value
		}
	}
	if length, weight, says := present.ShelfStock(y); says != "" {
		out.Stock = &stockJSON{length, weight, says}
	}
	for _, p := range y.Promised {
		out.Promised = append(out.Promised, promisedJSON{p.Warp, p.Name, present.PromiseSays(y, p)})
	}
	if says, short := present.LeftSays(y); says != "" {
		out.Left = &leftJSON{says, short}
	}
	return out
}

// shelf lists the yarns with what of them is promised.
func (s *Server) shelf(w http.ResponseWriter, r *http.Request) {
	q, ok := queryOf(r, record.Yarn)
	if !ok {
		refuse(w, http.StatusBadRequest, "request.query")
		return
	}
	yarns, total, err := s.Book.Shelf(r.Context(), q)
	out := struct {
		Items []shelvedJSON `json:"items"`
		Total int           `json:"total"`
		Next  string        `json:"next"`
	}{Items: []shelvedJSON{}, Total: total}
	for _, y := range yarns {
		out.Items = append(out.Items, shelvedOf(y))
	}
	if n := len(yarns); n > 0 && n == q.Most && n < total {
		out.Next = nextAfter(yarns[n-1].Card)
	}
	s.listed(w, r, out, nil, err)
}

func (s *Server) promised(w http.ResponseWriter, r *http.Request) {
	id, ok := idOf(w, r)
	if !ok {
		return
	}
	y, err := s.Book.Promised(r.Context(), id)
	if err != nil {
		s.fail(w, r, err)
		return
	}
	out := shelvedOf(y)
	out.Known = notedOf(present.ShelfFigures(y.Yarn))
	reply(w, http.StatusOK, out)
}
