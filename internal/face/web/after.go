package web

import (
	"net/http"

	"sley/internal/face/present"
	"sley/internal/trade/warp"
)

// labelJSON is a label in the shape of docs/json.md, with problems as all routes have them.
type labelJSON struct {
	present.LabelJSON
	Problems []problemJSON `json:"problems"`
}

// labelled tells what the label of a warp's cloth says, or what is missing for it.
func (s *Server) labelled(w http.ResponseWriter, r *http.Request) {
	id, ok := idOf(w, r)
	if !ok {
		return
	}
	label, list, err := s.Book.Label(r.Context(), id)
	if err != nil {
		s.fail(w, r, err)
		return
	}
	units := present.Units{}
	if label != nil {
		units = present.UnitsIn(label.Result.Plan, label.Units)
	}
	reply(w, http.StatusOK, labelJSON{present.LabelJSONOf(label, units), problemsJSON(list)})
}

// finishingJSON is the steps in the shape of docs/json.md, with problems as all routes have
// them.
type finishingJSON struct {
	present.FinishingJSON
	Problems []problemJSON `json:"problems"`
}

// finishing tells the steps after the last pick.
func (s *Server) finishing(w http.ResponseWriter, r *http.Request) {
	id, ok := idOf(w, r)
	if !ok {
		return
	}
	steps, list, err := s.Book.FinishSteps(r.Context(), id)
	if err != nil {
		s.fail(w, r, err)
		return
	}
	plan, book := &warp.Plan{}, warp.Units{}
	if steps != nil {
		plan, book = steps.Result.Plan, steps.Units
	}
	reply(w, http.StatusOK, finishingJSON{present.FinishingJSONOf(steps, present.UnitsIn(plan, book)), problemsJSON(list)})
}
