package present

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"sley/internal/app"
	"sley/internal/trade/qty"
	"sley/internal/trade/record"
)

// HoursJSON is the documented shape of the time at the loom (docs/json.md); its figures are
// worded.
type HoursJSON struct {
	Format   int             `json:"format"`
	ID       record.ID       `json:"id"`
	Minutes  int             `json:"minutes"`
	Sitting  *SittingJSON    `json:"sitting,omitempty"` // the one that is on
	Woven    int             `json:"woven"`
	Of       int             `json:"of,omitempty"`
	Pace     string          `json:"pace,omitempty"` // picks an hour
	Own      bool            `json:"own,omitempty"`
	ToGo     int             `json:"to_go,omitempty"` // minutes
	Broken   int             `json:"broken"`
	Advanced int             `json:"advanced"`
	Figures  []FigureJSON    `json:"figures"`
	Days     []DayAtLoomJSON `json:"days"`
}

// SittingJSON is a sitting that is on.
type SittingJSON struct {
	Event     string    `json:"event"`
	Since     time.Time `json:"since"`
	Minutes   int       `json:"minutes"`
	Forgotten bool      `json:"forgotten,omitempty"`
}

// DayAtLoomJSON is what was sat on a day.
type DayAtLoomJSON struct {
	Day      string `json:"day"` // as 2026-03-02
	Sittings int    `json:"sittings"`
	Minutes  int    `json:"minutes"`
	Says     string `json:"says"`
}

// HoursJSONOf gives the shape of the time at the loom.
func HoursJSONOf(h *app.Hours) HoursJSON {
	out := HoursJSON{
		Format: 1, ID: h.ID, Minutes: h.Minutes, Woven: h.Woven, Of: h.Of, Own: h.Own, ToGo: h.ToGo,
		Broken: h.Broken, Advanced: h.Advanced, Figures: hoursFigures(h), Days: []DayAtLoomJSON{},
	}
	if h.Pace.Sign() > 0 {
		out.Pace = h.Pace.Short(1)
	}
	if s := h.Sitting; s != nil {
		out.Sitting = &SittingJSON{s.ID, s.At, h.Since, h.Forgotten}
	}
	for _, d := range h.Days {
		out.Days = append(out.Days, DayAtLoomJSON{d.Day.Format(time.DateOnly), d.Sittings, d.Minutes, minutesWords(d.Minutes)})
	}
	return out
}

// hoursFigures word what there is to tell, in the order in which it is asked.
func hoursFigures(h *app.Hours) []FigureJSON {
	out := []FigureJSON{{ID: "hours", Says: "At the loom so far", Value: minutesWords(h.Minutes)}}
	if h.Pace.Sign() > 0 {
		note := "as the plan has it"
		if h.Own {
			note = "your own, from " + counted(h.Picks, "pick")
		}
		out = append(out, FigureJSON{"hours.pace", "Picks an hour", h.Pace.Short(0), note})
	}
	if h.ToGo > 0 {
		out = append(out, FigureJSON{"hours.to-go", "To go", "about " + minutesWords(h.ToGo), counted(h.Of-h.Woven, "pick")})
	}
	if h.Broken > 0 {
		out = append(out, FigureJSON{ID: "hours.broken", Says: "Ends that broke", Value: strconv.Itoa(h.Broken)})
	}
	return out
}

// minutesWords say minutes as hours are read.
func minutesWords(minutes int) string { return hours(qty.Int(int64(minutes) * 60)) }

// HoursText says the time at the loom.
func HoursText(h *app.Hours) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %s\n", legible(h.Name), StageOf(h.Facts.Stage))
	for _, f := range hoursFigures(h) {
		b.WriteString(Line{Label: f.Says, Value: f.Value, Note: f.Note}.text())
	}
	switch {
	case h.Forgotten:
		fmt.Fprintf(&b, "You sat down on %s, and never stood up: sley book log WARP stand-up MINUTES says how long it was.\n", moment(h.Sitting.At))
	case h.Sitting != nil:
		fmt.Fprintf(&b, "You sat down at %s, %s ago.\n", h.Sitting.At.Local().Format("15:04"), minutesWords(h.Since))
	}
	for _, d := range h.Days {
		b.WriteString(Line{Label: d.Day.Format(time.DateOnly), Value: minutesWords(d.Minutes), Note: counted(d.Sittings, "sitting")}.text())
	}
	return b.String()
}

// PhotographsJSON is the shape of the photographs of a warp.
type PhotographsJSON struct {
	Format      int              `json:"format"`
	ID          record.ID        `json:"id"`
	Photographs []PhotographJSON `json:"photographs"`
}

// PhotographJSON is a photograph; its file is there where it was written.
type PhotographJSON struct {
	Event string    `json:"event"`
	At    time.Time `json:"at"`
	Place int       `json:"place,omitempty"`
	Note  string    `json:"note,omitempty"`
	Kind  string    `json:"kind"`
	Wide  int       `json:"wide"`
	High  int       `json:"high"`
	Bytes int       `json:"bytes"`
	File  string    `json:"file,omitempty"`
}

// PhotographsJSONOf gives the shape of photographs, with the files they were written to.
func PhotographsJSONOf(id record.ID, all []app.PhotographOf, files []string) PhotographsJSON {
	out := PhotographsJSON{1, id, []PhotographJSON{}}
	for i, p := range all {
		one := PhotographJSON{Event: p.ID, At: p.At, Place: p.Place, Note: p.Note, Kind: p.Kind, Wide: p.Wide, High: p.High, Bytes: p.Bytes}
		if i < len(files) {
			one.File = files[i]
		}
		out.Photographs = append(out.Photographs, one)
	}
	return out
}

// PhotographsText says the photographs of a warp, a line each, with the mark that one is
// taken back by, or the files they were written to.
func PhotographsText(all []app.PhotographOf, files []string) string {
	if len(all) == 0 {
		return "No photographs.\n"
	}
	var b strings.Builder
	for i, p := range all {
		at := p.ID
		if i < len(files) {
			at = files[i]
		}
		words := append(eventWords(p.Event), fmt.Sprintf("%d by %d dots", p.Wide, p.High))
		fmt.Fprintf(&b, "%s%s  %s  %s\n", textIndent, legible(at), moment(p.At), strings.Join(words[1:], ", "))
	}
	return b.String()
}
