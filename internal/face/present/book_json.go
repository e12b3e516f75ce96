package present

import (
	"time"

	"sley/internal/app"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// CardJSON is the documented shape of a document in a list (docs/json.md).
type CardJSON struct {
	ID           record.ID   `json:"id"`
	Kind         record.Kind `json:"kind"`
	Name         string      `json:"name"`
	Version      int         `json:"version"`
	Made         time.Time   `json:"made"`
	Changed      time.Time   `json:"changed"`
	Demo         bool        `json:"demo,omitempty"`
	Removed      bool        `json:"removed,omitempty"`
	Stage        string      `json:"stage,omitempty"`
	Weave        string      `json:"weave,omitempty"`
	Shafts       int         `json:"shafts,omitempty"`
	Treadles     int         `json:"treadles,omitempty"`
	Ends         int         `json:"ends,omitempty"`
	Picks        int         `json:"picks,omitempty"`
	LongestFloat int         `json:"longest_float,omitempty"`
	Shed         string      `json:"shed,omitempty"`
	Reeds        int         `json:"reeds,omitempty"`
	Errors       int         `json:"errors"`
	Warnings     int         `json:"warnings"`
	Figures      []NodeJSON  `json:"figures"`
	Cloth        string      `json:"cloth,omitempty"`
	Next         string      `json:"next,omitempty"`
	Woven        int         `json:"woven,omitempty"`
}

// CardJSONOf gives the shape of a document in a list.
func CardJSONOf(c app.Card) CardJSON {
	f := c.Facts
	out := CardJSON{
		ID: c.ID, Kind: c.Kind, Name: c.Name, Version: c.Version, Made: c.Made, Changed: c.Changed,
		Demo: c.Demo, Removed: c.Removed, Stage: f.Stage, Weave: f.Weave, Shafts: f.Shafts,
		Treadles: f.Treadles, Ends: f.Ends, Picks: f.Picks, LongestFloat: f.LongestFloat, Shed: c.Shed, Reeds: c.Reeds,
		Errors: f.Errors, Warnings: f.Warnings, Figures: []NodeJSON{},
	}
	out.Cloth, out.Woven = ClothOf(c), c.Woven
	out.Next, _ = NextOf(c)
	u := unitsOfCard(c.Units)
	for _, n := range c.Figures {
		out.Figures = append(out.Figures, u.nodeJSON(n))
	}
	return out
}

// BookListJSON is the shape of a list.
type BookListJSON struct {
	Format    int        `json:"format"`
	Documents []CardJSON `json:"documents"`
}

// BookListJSONOf gives the shape of a list.
func BookListJSONOf(cards []app.Card) BookListJSON {
	out := BookListJSON{1, []CardJSON{}}
	for _, c := range cards {
		out.Documents = append(out.Documents, CardJSONOf(c))
	}
	return out
}

// ShownJSON is the shape of a document that was opened.
type ShownJSON struct {
	Format int `json:"format"`
	CardJSON
	Text     string        `json:"text"`
	Note     string        `json:"note,omitempty"`
	Started  bool          `json:"started,omitempty"`
	Origins  []app.Origin  `json:"origins"`
	Stock    *StockJSON    `json:"stock,omitempty"`
	Problems []ProblemJSON `json:"problems"`
}

// StockJSON is how much of a yarn is left, and how that came about.
type StockJSON struct {
	Length  string         `json:"length_nm"` // exact
	Mass    string         `json:"mass_ng"`
	Unknown bool           `json:"unknown"` // the count is not known, so that this is not all
	Events  []record.Event `json:"events"`
}

// ShownJSONOf gives the shape of a document that was opened.
func ShownJSONOf(s *app.Shown) ShownJSON {
	return ShownJSON{
		Format: 1, CardJSON: CardJSONOf(s.Card), Text: string(s.Text), Note: s.Note, Started: s.Started,
		Origins: append([]app.Origin{}, s.Origins...), Stock: stockJSONOf(s.Stock), Problems: ProblemsJSONOf(s.Problems),
	}
}

func stockJSONOf(s *app.Stock) *StockJSON {
	if s == nil {
		return nil
	}
	return &StockJSON{s.Length.String(), s.Mass.String(), s.Unknown, append([]record.Event{}, s.Events...)}
}

// ProblemsJSONOf gives the shape of problems; none is never null.
func ProblemsJSONOf(list *problem.List) []ProblemJSON {
	return JSONOf(nil, orNone(list), Imperial).Problems
}

func orNone(list *problem.List) *problem.List {
	if list == nil {
		return &problem.List{}
	}
	return list
}

// SavedJSON is the shape of what became of a document.
type SavedJSON struct {
	Format   int           `json:"format"`
	ID       record.ID     `json:"id,omitempty"`
	Version  int           `json:"version,omitempty"`
	Refused  bool          `json:"refused"`
	Conflict *ConflictJSON `json:"conflict,omitempty"`
	Problems []ProblemJSON `json:"problems"`
}

// ConflictJSON is the shape of what two did at once.
type ConflictJSON struct {
	Base        int         `json:"base"`
	Head        int         `json:"head"`
	Removed     bool        `json:"removed,omitempty"`
	Differences []ApartJSON `json:"differences"`
}

// ApartJSON is a value that two left different.
type ApartJSON struct {
	Path   string `json:"path"`
	Base   string `json:"base"`
	Theirs string `json:"theirs"`
	Mine   string `json:"mine"`
}

// SavedJSONOf gives the shape of what became of a document.
func SavedJSONOf(s app.Saved) SavedJSON {
	out := SavedJSON{Format: 1, ID: s.ID, Version: s.Version, Refused: s.Refused, Problems: ProblemsJSONOf(s.Problems)}
	if c := s.Conflict; c != nil {
		out.Conflict = &ConflictJSON{Base: c.Base, Head: c.Head, Removed: c.Removed, Differences: []ApartJSON{}}
		for _, a := range c.Differences {
			out.Conflict.Differences = append(out.Conflict.Differences, ApartJSON{a.Path, a.Base, a.Theirs, a.Mine})
		}
	}
	return out
}

// VersionJSON is the shape of a version in a history.
type VersionJSON struct {
	Number  int        `json:"number"`
	At      time.Time  `json:"at"`
	Window  string     `json:"window"`
	Act     record.Act `json:"act"`
	State   int        `json:"state"`
	Removed bool       `json:"removed,omitempty"`
}

// HistoryJSON is the shape of a history, the newest version first.
type HistoryJSON struct {
	Format   int           `json:"format"`
	ID       record.ID     `json:"id"`
	Versions []VersionJSON `json:"versions"`
}

// HistoryJSONOf gives the shape of a history.
func HistoryJSONOf(id record.ID, versions []record.Version) HistoryJSON {
	out := HistoryJSON{1, id, []VersionJSON{}}
	for _, v := range versions {
		out.Versions = append(out.Versions, VersionJSON{v.Number, v.At, v.Window, v.Act, v.State, v.Removed})
	}
	return out
}

// EventsJSON is the shape of what happened to a document.
type EventsJSON struct {
	Format int            `json:"format"`
	ID     record.ID      `json:"id"`
	Stock  *StockJSON     `json:"stock,omitempty"` // of a yarn, with its events
	Events []record.Event `json:"events"`
}

// EventsJSONOf gives the shape of what happened to a document.
func EventsJSONOf(id record.ID, events []record.Event, stock *app.Stock) EventsJSON {
	return EventsJSON{1, id, stockJSONOf(stock), append([]record.Event{}, events...)}
}

// WhenceJSON is the shape of where a part of a warp came from.
type WhenceJSON struct {
	Part    string      `json:"part"`
	Kind    record.Kind `json:"kind"`
	Version int         `json:"version"`
	Newer   bool        `json:"newer"`
	Shelf   *CardJSON   `json:"shelf,omitempty"` // absent where the book has it no more
}

// WhenceJSONOf gives the shapes of where the parts of a warp came from.
func WhenceJSONOf(all []app.Whence) []WhenceJSON {
	out := []WhenceJSON{}
	for _, w := range all {
		shape := WhenceJSON{Part: w.Part, Kind: w.Kind, Version: w.Version, Newer: w.Newer}
		if w.Card != nil {
			c := CardJSONOf(*w.Card)
			shape.Shelf = &c
		}
		out = append(out, shape)
	}
	return out
}

// TroubleJSON is the shape of trouble, the last thing on the standard error.
type TroubleJSON struct {
	Exit int    `json:"exit"`
	Slug string `json:"slug"`
}
