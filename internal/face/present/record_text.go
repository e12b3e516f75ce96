package present

import (
	"strings"

	"sley/internal/app"
)

// RecordText says what came of a warp: its sizes as planned and as measured, what they
// teach, what yarn it took.
func RecordText(r *app.Record) string {
	shape := RecordJSONOf(r)
	var b strings.Builder
	b.WriteString(legible(shape.Name) + ": " + shape.Stage + "\n")
	for _, s := range shape.Sizes {
		b.WriteString("\n" + legible(strings.ToUpper(s.Says[:1])+s.Says[1:]) + "\n")
		for _, at := range s.States {
			b.WriteString(Line{Label: at.Says, Value: measuredWords(at), Note: plannedWords(at)}.text())
		}
	}
	b.WriteString(learntText(shape.Learnt))
	if len(shape.Yarn) > 0 {
		b.WriteString("\nYarn\n")
	}
	for _, f := range shape.Yarn {
		b.WriteString(Line{Label: legible(f.Says), Value: f.Value, Note: legible(f.Note)}.text())
	}
	if len(r.Log) > 0 {
		b.WriteString("\nLog\n" + EventsText(r.Log))
	}
	return b.String()
}

func measuredWords(at RecordStateJSON) string {
	if at.Measured == "" {
		return "not measured"
	}
	return legible(at.Measured)
}

func plannedWords(at RecordStateJSON) string {
	var notes []string
	if at.Counted {
		notes = append(notes, "by the dents")
	}
	if at.Planned != "" {
		notes = append(notes, "planned "+at.Planned)
	}
	return strings.Join(notes, ", ")
}

// learntText says what sizes teach, with the text that is set as the allowance.
func learntText(all []LearntJSON) string {
	if len(all) == 0 {
		return "\nNothing is learnt of it: an allowance takes a size in two states.\n"
	}
	out := "\nLearnt, for the next plan\n"
	for _, l := range all {
		note := l.Note
		if l.Planned != "" {
			note = strings.TrimSuffix("planned "+l.Planned+"; "+note, "; ")
		}
		out += Line{Label: l.Says, Value: l.Value, Note: note}.text()
		out += textIndent + textIndent + l.Key + " = \"" + legible(l.Typed) + "\"\n"
	}
	return out
}

// RecordsText says the records of finished warps.
func RecordsText(all []*app.Record) string {
	if len(all) == 0 {
		return "No records: no warp is finished.\n"
	}
	var out []string
	for _, r := range all {
		shape := RecordJSONOf(r)
		text := CardText(r.Card)
		for _, l := range shape.Learnt {
			text += textIndent + textIndent + l.Says + ": " + l.Value + ", " + l.Key + " = \"" + legible(l.Typed) + "\"\n"
		}
		out = append(out, text)
	}
	return strings.Join(out, "")
}
