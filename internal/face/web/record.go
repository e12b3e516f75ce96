package web

import (
	"net/http"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/record"
)

// recorded tells what came of a warp, in the shape of docs/json.md.
func (s *Server) recorded(w http.ResponseWriter, r *http.Request) {
	id, ok := idOf(w, r)
	if !ok {
		return
	}
	found, err := s.Book.Record(r.Context(), id)
	if err != nil {
		s.fail(w, r, err)
		return
	}
	reply(w, http.StatusOK, present.RecordJSONOf(found))
}

// recordRow is a finished warp in the list of records.
type recordRow struct {
	cardJSON
	Sett   string               `json:"sett,omitempty"`
	Yarns  []string             `json:"yarns"`
	Learnt []present.LearntJSON `json:"learnt"`
}

type recordsJSON struct {
	Items []recordRow `json:"items"`
	Total int         `json:"total"`
	Next  string      `json:"next"`
}

// usuallyRecorded is how many records a list has when nothing else is asked: each is
// reckoned anew.
const usuallyRecorded = 20

// mostRecorded is how many it has at most.
const mostRecorded = 50

func (s *Server) records(w http.ResponseWriter, r *http.Request) {
	q, ok := queryOf(r, record.Warp)
	if !ok {
		refuse(w, http.StatusBadRequest, "request.query")
		return
	}
	if r.URL.Query().Get("most") == "" {
		q.Most = usuallyRecorded
	}
	q.Most = min(q.Most, mostRecorded)
	found, total, err := s.Book.Records(r.Context(), q)
	out := recordsJSON{Items: []recordRow{}, Total: total}
	for _, one := range found {
		out.Items = append(out.Items, rowOf(one))
	}
	if n := len(found); n > 0 && n == q.Most && n < total {
		out.Next = nextAfter(found[n-1].Card)
	}
	s.listed(w, r, out, nil, err)
}

func rowOf(one *app.Record) recordRow {
	shape := present.RecordJSONOf(one)
	row := recordRow{cardJSON: cardOf(one.Card), Sett: shape.Sett, Yarns: []string{}, Learnt: shape.Learnt}
	for _, y := range one.Yarns {
		name := y.Shelf
		if name == "" {
			name = y.Name
		}
		row.Yarns = append(row.Yarns, name)
	}
	return row
}
