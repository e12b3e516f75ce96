package present

import (
	"sley/internal/app"
	"sley/internal/engine/loomside"
	"sley/internal/trade/record"
)

// LoomsideJSON is the documented shape of a warp beside the loom (docs/json.md): all that
// is needed to go on without asking again, worded.
type LoomsideJSON struct {
	Format   int            `json:"format"`
	ID       record.ID      `json:"id"`
	Name     string         `json:"name"`
	Mark     string         `json:"mark"`
	Stage    string         `json:"stage"`
	Started  bool           `json:"started"`
	Way      string         `json:"way"`
	Ways     []SaidJSON     `json:"ways"`
	Steps    []LoomStepJSON `json:"steps"`
	Weaving  *WeavingJSON   `json:"weaving,omitempty"`
	Woven    int            `json:"woven"`
	Forecast []FigureJSON   `json:"forecast"`
	Remedies []string       `json:"remedies"`
	Said     []LoomSaidJSON `json:"said"`
	Problems []ProblemJSON  `json:"problems"`
}

// SaidJSON is a word of the program's with what it says.
type SaidJSON struct {
	ID   string `json:"id"`
	Says string `json:"says"`
}

// LoomStepJSON is a step of dressing.
type LoomStepJSON struct {
	ID    string         `json:"id"`
	Says  string         `json:"says"`
	Lead  string         `json:"lead"`
	First []string       `json:"first,omitempty"` // to be seen to before it is begun
	Care  string         `json:"care,omitempty"`
	Unit  string         `json:"unit"`
	Item  string         `json:"item,omitempty"` // what an item of its parts says
	Total int            `json:"total"`
	Done  int            `json:"done"`
	Each  bool           `json:"each"`            // each item of a part is one of what the step counts
	Per   int            `json:"per"`             // how much one stroke of the work is of what it counts; 0: a part at a time
	Board bool           `json:"board,omitempty"` // there is a picture of its way over the board
	Side  string         `json:"side,omitempty"`
	Sides []SaidJSON     `json:"sides,omitempty"`
	Parts []LoomPartJSON `json:"parts"`
}

// LoomPartJSON is what is done before the next check.
type LoomPartJSON struct {
	From  int            `json:"from"`
	To    int            `json:"to"`
	Title string         `json:"title"`
	Big   string         `json:"big,omitempty"` // to be read from afar, where no item is
	Items []LoomItemJSON `json:"items,omitempty"`
	Check []string       `json:"check,omitempty"`
	Stops []StopJSON     `json:"stops,omitempty"` // where something is done on the way
}

// StopJSON is a place in a part at which something is done.
type StopJSON struct {
	At   int    `json:"at"` // of what the step counts
	Says string `json:"says"`
}

// LoomItemJSON is one thing of a part: as it is shown, and as it is said aloud.
type LoomItemJSON struct {
	Text  string `json:"text"`
	Aloud string `json:"aloud,omitempty"`
	Kind  string `json:"kind,omitempty"` // float: a floating selvedge
}

// LoomSaidJSON is a reading of the tape or a weighing, so that it can be taken back.
type LoomSaidJSON struct {
	ID    string `json:"id"`
	Says  string `json:"says"`
	Pick  int    `json:"pick"`
	Typed string `json:"typed"`
	Of    string `json:"of,omitempty"` // the yarn that was weighed
}

// LoomsideJSONOf gives the shape of a warp beside the loom.
func LoomsideJSONOf(l *app.Loomside) LoomsideJSON {
	u, _ := UnitsFor(l.Result, l.Shown, "") // an empty text is no wrong one
	out := LoomsideJSON{
		Format: 1, ID: l.ID, Name: l.Name, Mark: l.Mark, Stage: StageOf(l.Stage), Started: l.Started, Way: string(l.Way),
		Steps: []LoomStepJSON{}, Woven: l.Woven, Forecast: []FigureJSON{}, Remedies: []string{}, Said: []LoomSaidJSON{},
		Problems: ProblemsJSONOf(l.Problems),
	}
	for _, way := range loomside.Ways() {
		out.Ways = append(out.Ways, SaidJSON{string(way), dressWays[way]})
	}
	at := looming{l, u}
	for i := range l.Steps {
		out.Steps = append(out.Steps, at.step(i))
	}
	if l.Weaving != nil {
		out.Weaving = at.weaving()
		out.Forecast, out.Remedies = at.forecast(), at.remedies()
	}
	for _, e := range l.Said {
		out.Said = append(out.Said, LoomSaidJSON{e.ID, What(e.What), e.Place, e.Typed, e.Path})
	}
	return out
}

// looming words a warp beside the loom.
type looming struct {
	*app.Loomside
	u Units
}

func (l looming) step(i int) LoomStepJSON {
	s := l.Steps[i]
	words := stepNames[s.ID]
	out := LoomStepJSON{
		ID: s.ID, Says: words.name, Lead: words.lead, Care: stepCare[s.ID], Unit: words.unit, Item: words.item, Total: s.Total, Done: s.Done,
		Side: string(s.Side), First: l.first(s), Parts: []LoomPartJSON{},
	}
	if feet := feetWords(s.Feet); feet != "" {
		out.Lead += " " + feet + "."
	}
	for _, side := range loomside.Sides(s.ID) {
		out.Sides = append(out.Sides, SaidJSON{string(side), beginsAt[side]})
	}
	for n := range s.Parts {
		out.Parts = append(out.Parts, l.part(i, n))
	}
	out.Each = len(s.Parts) > 0 && len(out.Parts[0].Items) == s.Parts[0].To-s.Parts[0].From && s.ID != loomside.TyingUp && s.ID != loomside.Sections
	switch {
	case s.ID == loomside.Winding:
		out.Per = max(l.Result.Plan.Winding.Together.Is, 1)
		out.Board = l.Result.Plan.Winding.HasBoard() || l.Result.Plan.Winding.Mill.Given()
	case out.Each:
		out.Per = 1
	}
	return out
}

// part words a part by its step.
func (l looming) part(i, n int) LoomPartJSON {
	s := l.Steps[i]
	p := s.Parts[n]
	out := LoomPartJSON{From: p.From, To: p.To}
	switch s.ID {
	case loomside.Winding:
		l.bout(&out, s, n)
	case loomside.Sections:
		l.section(&out, s, p)
	case loomside.Threading, loomside.Knotting:
		l.ends(&out, s, p)
	case loomside.Sleying:
		l.dents(&out, s, p)
	case loomside.Spreading:
		l.spaces(&out, s, p)
	case loomside.TyingUp:
		l.treadle(&out, p)
	case loomside.FirstInch:
		l.inch(&out, p)
	default:
		said := thingWords[p.Thing]
		out.Big, out.Title, out.Check = said[0], said[1], []string{said[2]}
	}
	return out
}
