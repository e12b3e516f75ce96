package present

import (
	"strings"

	"sley/internal/app"
	"sley/internal/engine/finishing"
	"sley/internal/trade/problem"
)

// FinishingJSON is the documented shape of the steps after the last pick (docs/json.md).
type FinishingJSON struct {
	Format int        `json:"format"`
	Name   string     `json:"name"`
	Steps  []StepJSON `json:"steps"`
	Cites  string     `json:"cites"`
}

// StepJSON is one step, in order.
type StepJSON struct {
	Step     string         `json:"step"` // its name, which does not change
	Says     string         `json:"says"`
	How      string         `json:"how"`
	Notes    []string       `json:"notes"`
	Cautions []string       `json:"cautions"`
	Figures  []FigureJSON   `json:"figures"`
	Measures []MeasuresJSON `json:"measures"`
}

// MeasuresJSON is a size to write down then.
type MeasuresJSON struct {
	Path    string `json:"path"`
	State   string `json:"state"`
	Says    string `json:"says"`
	Planned string `json:"planned,omitempty"`
}

// FinishingFile is what a command prints of the steps.
type FinishingFile struct {
	FinishingJSON
	Problems []ProblemJSON `json:"problems"`
}

// FinishingFileOf gives the shape with the problems; f is nil where there is no reckoning.
func FinishingFileOf(f *app.Finishing, list *problem.List, u Units) FinishingFile {
	return FinishingFile{FinishingJSONOf(f, u), JSONOf(nil, list, u).Problems}
}

// FinishingJSONOf words the steps; f is nil where there is no reckoning.
func FinishingJSONOf(f *app.Finishing, u Units) FinishingJSON {
	out := FinishingJSON{Format: 1, Steps: []StepJSON{}, Cites: afterCites}
	if f == nil {
		return out
	}
	out.Name = Title(f.Result.Plan)
	for _, s := range f.Steps {
		out.Steps = append(out.Steps, u.stepJSON(f, s))
	}
	return out
}

func (u Units) stepJSON(f *app.Finishing, s finishing.Step) StepJSON {
	w := afterWords[s.ID]
	out := StepJSON{
		Step: string(s.ID), Says: w.says, How: w.how, Notes: []string{}, Cautions: []string{},
		Figures: []FigureJSON{}, Measures: []MeasuresJSON{},
	}
	for _, note := range s.Notes {
		out.Notes = append(out.Notes, finishNotes[note])
	}
	out.Notes = append(out.Notes, boundWords(s)...)
	for _, c := range s.Cautions {
		out.Cautions = append(out.Cautions, finishCares[c])
	}
	for _, l := range Lines(f.Result, u, "", stepNodes(s)...) {
		out.Figures = append(out.Figures, FigureJSON{l.ID, l.Label, l.Value, l.Note})
	}
	for _, m := range s.Measure {
		if is, ok := u.measureJSON(f, m); ok {
			out.Measures = append(out.Measures, is)
		}
	}
	return out
}

// boundWords say how warm, how long and how many.
func boundWords(s finishing.Step) []string {
	var out []string
	if s.Most > 0 {
		out = append(out, fillIn(afterMost, "{most}", Celsius(s.Most)))
	}
	if s.Hours > 0 {
		out = append(out, fillIn(afterHours, "{hours}", number(s.Hours)))
	}
	if s.Pieces > 0 {
		out = append(out, fillIn(afterPieces, "{pieces}", number(s.Pieces)))
	}
	return out
}

// stepNodes names the figures that a step is done by: of the ends it is done at, or of all
// the cloth.
func stepNodes(s finishing.Step) []string {
	parts := map[finishing.ID]string{
		finishing.FinishFringe: "fringe-cut twist knot fringe", finishing.HemBefore: "hem turn-in fold", finishing.HemAfter: "hem turn-in fold",
	}[s.ID]
	var out []string
	for _, e := range s.Ends {
		at := "pieces[" + number(e.Piece) + "].first."
		if e.Last {
			at = "pieces[" + number(e.Piece) + "].last."
		}
		for _, part := range strings.Fields(parts) {
			out = append(out, at+part)
		}
	}
	switch s.ID {
	case finishing.Hemstitch:
		out = append(out, "weft.hemstitching")
	case finishing.FinishFringe:
		out = append(out, "ends.bundles")
	case finishing.CutApart:
		out = append(out, "gap")
	}
	return out
}

// measureJSON words a size to write down, unless the plan does not reach its state.
func (u Units) measureJSON(f *app.Finishing, m finishing.Measure) (MeasuresJSON, bool) {
	for _, size := range f.Sizes {
		if size.Path != m.Path {
			continue
		}
		out := MeasuresJSON{Path: m.Path, State: m.State.String(), Says: sizeWords(size.Piece, size.Index, size.Width) + ", " + m.State.String()}
		for _, at := range size.States {
			if at.State == m.State && at.Planned != nil {
				out.Planned = u.Bench(*at.Planned)
			}
		}
		return out, true
	}
	return MeasuresJSON{}, false
}

// FinishingText sets the steps as plain text.
func FinishingText(f *app.Finishing, u Units) string {
	shape := FinishingJSONOf(f, u)
	var b strings.Builder
	b.WriteString(fillIn(afterTitle, "{name}", legible(shape.Name)) + "\n")
	for i, s := range shape.Steps {
		b.WriteString("\n" + number(i+1) + ". " + s.Says + "\n" + indented(s.How))
		for _, note := range s.Notes {
			b.WriteString(indented(note))
		}
		for _, f := range s.Figures {
			b.WriteString(Line{Label: legible(f.Says), Value: f.Value, Note: legible(f.Note)}.text())
		}
		for _, m := range s.Measures {
			b.WriteString(Line{Label: afterWrite + ": " + legible(m.Says), Value: plannedSize(m)}.text())
		}
		for _, c := range s.Cautions {
			b.WriteString(indented(afterCare + ": " + c))
		}
	}
	return b.String() + "\n" + wrap(shape.Cites, textWidest) + "\n"
}

func plannedSize(m MeasuresJSON) string {
	if m.Planned == "" {
		return ""
	}
	return fillIn(afterPlanned, "{size}", m.Planned)
}
