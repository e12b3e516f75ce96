package present

import (
	"strings"
	"time"

	"sley/internal/app"
	"sley/internal/engine/reckon"
	"sley/internal/trade/qty"
	"sley/internal/trade/record"
	"sley/internal/trade/warp"
)

// RecordJSON is the documented shape of what came of a warp (docs/json.md); its figures
// are worded.
type RecordJSON struct {
	Format int              `json:"format"`
	ID     record.ID        `json:"id"`
	Name   string           `json:"name"`
	Stage  string           `json:"stage"`
	Sett   string           `json:"sett,omitempty"`
	Sizes  []RecordSizeJSON `json:"sizes"`
	Learnt []LearntJSON     `json:"learnt"`
	Yarn   []FigureJSON     `json:"yarn"`
	Log    []LoggedJSON     `json:"log"`
}

// RecordSizeJSON is a size of a kind of piece in its states, from the warp to the cloth.
type RecordSizeJSON struct {
	Path   string            `json:"path"`
	Says   string            `json:"says"`
	States []RecordStateJSON `json:"states"`
}

// RecordStateJSON is a size in one state.
type RecordStateJSON struct {
	State    string `json:"state"` // as a measurement names it
	Says     string `json:"says"`
	Planned  string `json:"planned,omitempty"`
	Measured string `json:"measured,omitempty"` // as typed
	Counted  bool   `json:"counted,omitempty"`  // not measured: the dents that were sleyed
	Event    string `json:"event,omitempty"`
}

// LearntJSON is an allowance that measured sizes say.
type LearntJSON struct {
	Key     string `json:"key"`
	Path    string `json:"path,omitempty"` // of a warp: whose sizes say it
	Says    string `json:"says"`
	From    string `json:"from"`
	To      string `json:"to"`
	Value   string `json:"value"`
	Typed   string `json:"typed"` // to be set as the allowance
	Planned string `json:"planned,omitempty"`
	Note    string `json:"note,omitempty"`
}

// FigureJSON is a figure in words.
type FigureJSON struct {
	ID    string `json:"id"`
	Says  string `json:"says"`
	Value string `json:"value"`
	Note  string `json:"note,omitempty"`
}

// LoggedJSON is an entry of a warp's log.
type LoggedJSON struct {
	ID      string    `json:"id"`
	At      time.Time `json:"at"`
	What    string    `json:"what"`
	Says    string    `json:"says"`
	Note    string    `json:"note,omitempty"`
	Minutes int       `json:"minutes,omitempty"`
	Place   int       `json:"place,omitempty"`   // the pick it happened at
	Picture bool      `json:"picture,omitempty"` // there is a photograph of it
}

// RecordJSONOf gives the shape of what came of a warp.
func RecordJSONOf(r *app.Record) RecordJSON { return RecordJSONIn(r, unitsOfCard(r.Units)) }

// RecordJSONIn gives the shape with its figures in units.
func RecordJSONIn(r *app.Record, u Units) RecordJSON {
	out := RecordJSON{
		Format: 1, ID: r.ID, Name: r.Name, Stage: StageOf(r.Facts.Stage),
		Sizes: []RecordSizeJSON{}, Learnt: LearntJSONOf(r), Yarn: []FigureJSON{}, Log: []LoggedJSON{},
	}
	if r.Sett != nil {
		out.Sett = u.Bench(*r.Sett)
	}
	for _, s := range r.Sizes {
		out.Sizes = append(out.Sizes, u.recordSize(s))
	}
	for _, y := range r.Yarns {
		out.Yarn = append(out.Yarn, u.recordYarn(y)...)
	}
	for _, e := range r.Log {
		out.Log = append(out.Log, loggedOf(e))
	}
	return out
}

// loggedOf gives the shape of an entry; the place of a start is a version, and no pick.
func loggedOf(e record.Event) LoggedJSON {
	out := LoggedJSON{e.ID, e.At, e.What, What(e.What), e.Note, e.Minutes, e.Place, e.What == record.Pictured}
	if e.What == record.Started {
		out.Place = 0
	}
	return out
}

func (u Units) recordSize(s app.RecordSize) RecordSizeJSON {
	out := RecordSizeJSON{Path: s.Path, Says: sizeWords(s.Piece, s.Index, s.Width), States: []RecordStateJSON{}}
	for _, at := range s.States {
		shape := RecordStateJSON{
			State: at.State.String(), Says: at.State.String(), Measured: at.Measured.Typed, Counted: at.Counted, Event: at.Event,
		}
		if at.Planned != nil {
			shape.Planned = u.Bench(*at.Planned)
		}
		out.States = append(out.States, shape)
	}
	return out
}

// sizeWords say what a size is of: the piece by its name or its number.
func sizeWords(piece string, index int, width bool) string {
	of := "length"
	if width {
		of = "width"
	}
	return of + " of " + pieceWords(piece, index)
}

// LearntJSONOf gives what the measured sizes of a warp say.
func LearntJSONOf(r *app.Record) []LearntJSON {
	out := []LearntJSON{}
	for _, l := range r.Learnt {
		shape := learntOf(l.Learnt)
		shape.Path, shape.Note = l.Path, learntNote(l)
		if l.Planned != nil {
			shape.Planned = lostWords(*l.Planned)
		}
		out = append(out, shape)
	}
	return out
}

// learntOf says an allowance that two sizes say.
func learntOf(l app.Learnt) LearntJSON {
	return LearntJSON{
		Key: l.Key, Says: allowanceWords(l.Key), From: l.From.State.String(), To: l.To.State.String(),
		Value: lostWords(l.Lost()), Typed: l.Typed(),
	}
}

// allowanceWords say an allowance by its key.
func allowanceWords(key string) string { return Label(reckon.Node{ID: "allowances." + key}) }

// lostWords say a share that is lost, or gained where it is negative.
func lostWords(share qty.Rat) string {
	said := Imperial.digits(reckon.Figure{Is: share.Abs(), Kind: reckon.Share}, 1)
	switch share.Sign() {
	case 0:
		return "nothing lost"
	case -1:
		return said + " gained"
	}
	return said + " lost"
}

// learntNote says what of an allowance was not measured as it stands.
func learntNote(l app.RecordLearnt) string {
	var notes []string
	if l.Hems > 0 && l.To.State == warp.Finished {
		notes = append(notes, "with the cloth that lies in the hems")
	}
	if l.Counted {
		notes = append(notes, "the width in the reed is that of the dents sleyed")
	}
	return strings.Join(notes, "; ")
}

// recordYarn says what a warp needs of a yarn, and what was entered as used.
func (u Units) recordYarn(y app.RecordYarn) []FigureJSON {
	id := "yarns[" + y.Name + "]."
	var out []FigureJSON
	for _, n := range []struct {
		what string
		is   *reckon.Node
	}{{"need", y.Need}, {"weight", y.Weight}} {
		if n.is != nil {
			out = append(out, FigureJSON{ID: id + n.what, Says: Label(*n.is), Value: u.Bench(*n.is), Note: y.Shelf})
		}
	}
	if y.Used == nil {
		return out
	}
	for _, f := range []struct {
		what string
		is   qty.Rat
		kind reckon.Kind
	}{{"used", y.Used.Length, reckon.YarnLength}, {"used-weight", y.Used.Mass, reckon.Weight}} {
		if !f.is.IsZero() {
			n := reckon.Node{ID: id + f.what, Figure: reckon.Figure{Is: f.is, Kind: f.kind}}
			out = append(out, FigureJSON{ID: n.ID, Says: y.Name + " used, as entered", Value: u.Bench(n), Note: y.Shelf})
		}
	}
	return out
}

// RecordsJSON is the shape of the records of finished warps.
type RecordsJSON struct {
	Format  int          `json:"format"`
	Records []RecordJSON `json:"records"`
}

// RecordsJSONOf gives the shape of records.
func RecordsJSONOf(all []*app.Record) RecordsJSON {
	out := RecordsJSON{1, []RecordJSON{}}
	for _, r := range all {
		out.Records = append(out.Records, RecordJSONOf(r))
	}
	return out
}
