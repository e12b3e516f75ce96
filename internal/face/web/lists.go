package web

import (
	"encoding/base64"
	"encoding/binary"
	"net/http"
	"time"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/record"
)

// bookJSON is how much a book holds.
type bookJSON struct {
	Place   string `json:"place"`
	Program string `json:"program"`
	Demo    bool   `json:"demo"`
	Warps   int    `json:"warps"`
	Yarns   int    `json:"yarns"`
	Looms   int    `json:"looms"`
	Drafts  int    `json:"drafts"`
}

func (s *Server) bookIs(w http.ResponseWriter, r *http.Request) {
	c, err := s.Book.Counts(r.Context())
	s.listed(w, r, bookJSON{
		s.Place, s.Program, c.Demo > 0,
		c.Of[record.Warp], c.Of[record.Yarn], c.Of[record.Loom], c.Of[record.Draft],
	}, nil, err)
}

func (s *Server) checked(w http.ResponseWriter, r *http.Request) {
	var none struct{}
	if asked(w, r, &none) {
		s.listed(w, r, map[string]bool{"whole": true}, nil, s.Check(r.Context()))
	}
}

func (s *Server) copied(w http.ResponseWriter, r *http.Request) {
	var none struct{}
	if asked(w, r, &none) {
		place, err := s.Copy(r.Context())
		s.listed(w, r, map[string]string{"place": place}, nil, err)
	}
}

func (s *Server) demoCleared(w http.ResponseWriter, r *http.Request) {
	var in struct{ Window string }
	if asked(w, r, &in) {
		n, err := s.Book.ClearDemo(r.Context(), window(in.Window))
		s.listed(w, r, map[string]int{"removed": n}, nil, err)
	}
}

func (s *Server) setting(w http.ResponseWriter, r *http.Request) {
	value, err := s.Book.Setting(r.Context(), pageSetting+r.PathValue("name"))
	s.listed(w, r, map[string]string{"value": value}, nil, err)
}

// pageSetting is before the names of the page's own settings.
const pageSetting = "page."

func (s *Server) set(w http.ResponseWriter, r *http.Request) {
	var in struct{ Value string }
	if name := r.PathValue("name"); len(name) > 50 {
		refuse(w, http.StatusNotFound, "request.route")
	} else if asked(w, r, &in) {
		s.listed(w, r, map[string]string{"value": in.Value}, nil, s.Book.Set(r.Context(), pageSetting+name, in.Value))
	}
}

// window is the name of a window as it is kept.
func window(name string) string {
	if len(name) > 64 {
		return name[:64]
	}
	return name
}

// cardJSON is a row of a list.
type cardJSON struct {
	ID       record.ID     `json:"id"`
	Name     string        `json:"name"`
	Version  int           `json:"version"`
	Stage    string        `json:"stage,omitempty"`
	Weave    string        `json:"weave,omitempty"`
	Demo     bool          `json:"demo"`
	Removed  bool          `json:"removed,omitempty"`
	Changed  time.Time     `json:"changed"`
	Shafts   int           `json:"shafts,omitempty"`
	Treadles int           `json:"treadles,omitempty"`
	Float    int           `json:"float,omitempty"`
	Figures  []figureJSON  `json:"figures"`
	Problems int           `json:"problems"`
	Cloth    string        `json:"cloth,omitempty"`
	Next     *nextJSON     `json:"next,omitempty"`
	Progress *progressJSON `json:"progress,omitempty"`
}

// nextJSON is what there is to do next with a warp, and at which of its stages.
type nextJSON struct {
	Says  string `json:"says"`
	Stage string `json:"stage"`
}

// progressJSON is how many picks of a warp are woven, of how many; 0 where that is not known.
type progressJSON struct {
	Done int `json:"done"`
	Of   int `json:"of"`
}

type figureJSON struct {
	ID    string `json:"id"`
	Says  string `json:"says"`
	Value string `json:"value"`
}

func cardOf(c app.Card) cardJSON {
	out := cardJSON{
		ID: c.ID, Name: c.Name, Version: c.Version, Stage: present.StageOf(c.Facts.Stage), Weave: c.Facts.Weave, Demo: c.Demo,
		Removed: c.Removed, Changed: c.Changed, Shafts: c.Facts.Shafts, Treadles: c.Facts.Treadles,
		Float: c.Facts.LongestFloat, Figures: []figureJSON{}, Problems: c.Facts.Errors,
	}
	out.Cloth = present.ClothOf(c)
	if says, stage := present.NextOf(c); stage != "" {
		out.Next = &nextJSON{says, stage}
	}
	if c.Woven > 0 {
		out.Progress = &progressJSON{c.Woven, c.Facts.Picks}
	}
	for _, f := range present.CardFigures(c) {
		out.Figures = append(out.Figures, figureJSON{f.ID, f.Label, f.Value})
	}
	return out
}

type listJSON struct {
	Items []cardJSON `json:"items"`
	Total int        `json:"total"`
	Next  string     `json:"next"`
}

// usuallyListed is how many rows a list has when nothing else is asked.
const usuallyListed = 50

// listing answers a list of documents of a kind.
func listing(kind record.Kind) func(*Server, http.ResponseWriter, *http.Request) {
	return func(s *Server, w http.ResponseWriter, r *http.Request) {
		q, ok := queryOf(r, kind)
		if !ok {
			refuse(w, http.StatusBadRequest, "request.query")
			return
		}
		cards, total, err := s.Book.List(r.Context(), q)
		out := listJSON{Items: []cardJSON{}, Total: total}
		for _, c := range cards {
			out.Items = append(out.Items, cardOf(c))
		}
		if n := len(cards); n > 0 && n == q.Most && n < total {
			out.Next = nextAfter(cards[n-1])
		}
		s.listed(w, r, out, nil, err)
	}
}

func queryOf(r *http.Request, kind record.Kind) (record.Query, bool) {
	get := r.URL.Query()
	q := record.Query{Kind: kind, Words: get.Get("words"), Weave: get.Get("weave"), Removed: get.Get("removed") == "true"}
	ok := true
	if q.Stage = get.Get("stage"); q.Stage != "" {
		ok = kind == record.Warp && (q.Stage == record.InHand || q.Stage == record.Done)
	}
	for name, to := range map[string]*int{
		"shafts": &q.MostShafts, "treadles": &q.MostTreadles, "float": &q.MostFloat, "most": &q.Most,
	} {
		n, fine := number(r, name, 0)
		*to, ok = n, ok && fine
	}
	if q.Most == 0 {
		q.Most = usuallyListed
	}
	if after := get.Get("after"); after != "" {
		data, err := base64.RawURLEncoding.DecodeString(after)
		if err != nil || len(data) < idSize {
			return q, false
		}
		q.AfterID = record.ID(binary.BigEndian.Uint64(data))
		q.After = data[idSize:]
	}
	return q, ok
}

const idSize = 8

// nextAfter is where the next part of a list begins.
func nextAfter(last app.Card) string {
	data := binary.BigEndian.AppendUint64(nil, uint64(last.ID))
	return base64.RawURLEncoding.EncodeToString(append(data, last.Sort...))
}
