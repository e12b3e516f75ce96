package present

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"sley/internal/app"
	"sley/internal/trade/record"
)

// CommandLine is the name of the window that all commands are.
const CommandLine = "command-line"

// CardText says a document in a list: a line with its number, its name and where it
// stands, and below it what it is known by.
func CardText(c app.Card) string {
	line := fmt.Sprintf("%s%4d  %s", textIndent, c.ID, legible(c.Name))
	if about := strings.Join(standing(c), ", "); about != "" {
		line += "  (" + about + ")"
	}
	if known := strings.Join(knownBy(c), ", "); known != "" {
		line += "\n        " + strings.ReplaceAll(wrap(known, textWidest-8), "\n", "\n        ")
	}
	return line + "\n"
}

// standing says where a document stands.
func standing(c app.Card) []string {
	var out []string
	for _, said := range []struct {
		is   bool
		text string
	}{
		{c.Facts.Stage != "", StageOf(c.Facts.Stage)},
		{c.Demo, "demo"},
		{c.Removed, "removed"},
		{c.Facts.Of != c.Version, "not looked at yet"},
		{c.Facts.Errors > 0, counted(c.Facts.Errors, "error")},
		{c.Facts.Warnings > 0, counted(c.Facts.Warnings, "warning")},
	} {
		if said.is {
			out = append(out, said.text)
		}
	}
	return out
}

// counted says how many.
func counted(n int, one string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + one + "s"
}

// knownBy gives the figures of a document, and of drafts what they need.
func knownBy(c app.Card) []string {
	var out []string
	if c.Facts.Weave != "" && c.Kind == record.Draft {
		out = append(out, Weave(c.Facts.Weave))
	}
	if c.Kind != record.Warp {
		for _, f := range []struct {
			n   int
			one string
		}{{c.Facts.Shafts, "shaft"}, {c.Facts.Treadles, "treadle"}, {c.Facts.Ends, "end"}, {c.Facts.Picks, "pick"}, {c.Reeds, "reed"}} {
			if f.n > 0 {
				out = append(out, counted(f.n, f.one))
			}
		}
	}
	if c.Kind == record.Draft && c.Facts.LongestFloat > 0 {
		out = append(out, "longest float "+strconv.Itoa(c.Facts.LongestFloat))
	}
	if c.Shed != "" {
		out = append(out, "shed "+c.Shed)
	}
	for _, l := range nodeFigures(c) {
		out = append(out, l.Label+" "+l.Value)
	}
	return out
}

// ListText says a list of one kind of document, with how many there are.
func ListText(kind record.Kind, cards []app.Card) string {
	if len(cards) == 0 {
		return "No " + KindNames(kind) + ".\n"
	}
	out := fmt.Sprintf("%s%s: %d\n", strings.ToUpper(KindNames(kind)[:1]), KindNames(kind)[1:], len(cards))
	for _, c := range cards {
		out += CardText(c)
	}
	return out
}

// ShownText says a document that was opened: what it is, what of it came from the shelf,
// what is left of it, and its text.
func ShownText(s *app.Shown) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n%s %d, version %d of %s\n", legible(s.Name), KindName(s.Kind), s.ID, s.Version, moment(s.Changed))
	b.WriteString(strings.Join(append(standing(s.Card), knownBy(s.Card)...), "\n") + "\n")
	if s.Note != "" {
		b.WriteString(wrap(legible(s.Note), textWidest) + "\n")
	}
	for _, o := range s.Origins {
		fmt.Fprintf(&b, "%s: from the shelf, version %d there\n", o.Part, o.Version)
	}
	for _, l := range StockFigures(s.Stock, s.Units) {
		b.WriteString(l.text())
	}
	for _, sample := range SamplesJSONOf(s.ID, s.Samples).Samples {
		b.WriteString("sample " + legible(sample.Name) + "\n")
		for _, l := range sample.Learnt {
			b.WriteString(learntLine(l))
		}
	}
	if len(s.Text) > 0 {
		b.WriteString("\n" + string(s.Text))
	}
	return b.String()
}

// moment says when something was, by the clock of this machine.
func moment(t time.Time) string { return t.Local().Format("2006-01-02 15:04") }

// HistoryText says the versions of a document, a line each.
func HistoryText(versions []record.Version) string {
	var b strings.Builder
	for _, v := range versions {
		fmt.Fprintf(&b, "%s%4d  %s  %s%s (%s)\n", textIndent, v.Number, moment(v.At), Act(v.Act), stateOf(v), windowName(v.Window))
	}
	return b.String()
}

func stateOf(v record.Version) string {
	if v.State == v.Number {
		return ""
	}
	return fmt.Sprintf(", as in version %d", v.State)
}

// windowName says who made a version.
func windowName(window string) string {
	switch window {
	case CommandLine:
		return "command line"
	case "demo":
		return "demo"
	}
	return "page"
}

// EventsText says what happened, a line each, with the mark that an entry is cancelled by.
func EventsText(events []record.Event) string {
	gone := map[string]bool{}
	for _, e := range events {
		gone[e.Cancels] = true
	}
	var b strings.Builder
	for _, e := range events {
		text := strings.Join(eventWords(e), ", ")
		switch {
		case e.Cancels != "":
			text = "cancels " + e.Cancels + ": " + text
		case gone[e.ID]:
			text += " (cancelled)"
		}
		fmt.Fprintf(&b, "%s%s  %s  %s\n", textIndent, e.ID, moment(e.At), text)
	}
	return b.String()
}

// eventWords says an entry in pieces.
func eventWords(e record.Event) []string {
	out := []string{What(e.What)}
	switch {
	case e.What == record.Woven:
		out = append(out, counted(e.Place, "pick"))
	case e.What == record.Started:
		out = append(out, fmt.Sprintf("version %d", e.Place))
	case e.What == record.Size:
		out = append(out, e.Path+" "+e.Typed+" "+e.State)
	case e.What == record.Sat && e.Minutes > 0:
		out = append(out, counted(e.Minutes, "minute"))
	case e.Typed != "":
		out = append(out, e.Typed)
	}
	if e.Topic == record.Log && e.What != record.Started && e.Place > 0 {
		out = append(out, fmt.Sprintf("at pick %d", e.Place))
	}
	if e.Warp != 0 {
		out = append(out, fmt.Sprintf("warp %d", e.Warp))
	}
	if e.Note != "" {
		out = append(out, legible(e.Note))
	}
	return out
}

// WhenceText says where the parts of a warp came from.
func WhenceText(all []app.Whence) string {
	if len(all) == 0 {
		return "Nothing of it came from the shelf.\n"
	}
	var b strings.Builder
	for _, w := range all {
		b.WriteString(textIndent + w.Part + ": ")
		if w.Card == nil {
			fmt.Fprintf(&b, "from a %s that the book has no more\n", KindName(w.Kind))
			continue
		}
		fmt.Fprintf(&b, "from %s %d, %s, version %d", KindName(w.Kind), w.Card.ID, legible(w.Card.Name), w.Version)
		if w.Newer {
			fmt.Fprintf(&b, "; the shelf has version %d", w.Card.Version)
		}
		if w.Card.Removed {
			b.WriteString("; removed since")
		}
		b.WriteString("\n")
	}
	return b.String()
}

// StockText says how much of a yarn is left, and what happened to it.
func StockText(c app.Card, s *app.Stock) string {
	out := legible(c.Name) + "\n"
	for _, l := range StockFigures(s, c.Units) {
		out += l.text()
	}
	return out + EventsText(s.Events)
}

// LogText says where the work on a warp stands, and all that was entered of it.
func LogText(c app.Card, events []record.Event) string {
	return fmt.Sprintf("%s: %s\n", legible(c.Name), StageOf(c.Facts.Stage)) + EventsText(events)
}
