package present

import (
	"strconv"
	"strings"

	"sley/internal/engine/structure"
	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/weave"
)

// How much of a drawdown is shown as text.
const (
	mostColumns = textWidest - len(textIndent)
	mostRows    = 60
)

// DraftText lays a draft out as plain text: what it is for, its threading, tie-up and
// treadling in shorthand, and its drawdown.
func DraftText(d *draft.Draft) string {
	var b strings.Builder
	b.WriteString(draftTitle(d) + "\n" + wrap(draftSize(d), textWidest) + "\n")
	section := func(title, text string) {
		b.WriteString("\n" + title + "\n" + textIndent + strings.ReplaceAll(text, "\n", "\n"+textIndent) + "\n")
	}
	section("Threading, from the left", wrap(ThreadingText(d), mostColumns))
	switch {
	case d.Treadled():
		section("Tie-up", strings.Join(tieLines(d), "\n"))
		section("Treadling", wrap(PicksText(d.Treadling), mostColumns))
	default:
		section("Lift plan, the shafts up at each pick", wrap(PicksText(d.Lifts), mostColumns))
	}
	b.WriteString(drawdownText(d.Drawdown()))
	return b.String()
}

func draftTitle(d *draft.Draft) string {
	if d.Name == "" {
		return "A draft"
	}
	return d.Name
}

// draftSize says how large a draft is and for which loom.
func draftSize(d *draft.Draft) string {
	parts := []string{several(d.Shafts, "shafts")}
	if d.Treadled() {
		parts = append(parts, several(d.Treadles, "treadles"))
	}
	parts = append(parts, shedWords[d.Shed], several(d.Ends(), "ends"), several(d.Picks(), "picks"))
	if d.Origin != "" {
		parts = append(parts, "from "+d.Origin)
	}
	return strings.Join(parts, ", ")
}

// shedWords say how a loom opens the shed.
var shedWords = map[loom.Shed]string{
	loom.UnsaidShed: "rising shed", loom.Rising: "rising shed", loom.Sinking: "sinking shed",
	loom.Counterbalance: "counterbalance loom", loom.Countermarch: "countermarch loom", loom.Table: "table loom",
}

// ThreadingText writes a threading in shorthand; 0 stands for an end in no heddle.
func ThreadingText(d *draft.Draft) string {
	words := make([]string, d.Ends())
	for i, shaft := range d.Threading {
		words[i] = strconv.Itoa(shaft)
	}
	return shorthand(words, d.Threading)
}

// PicksText writes picks in shorthand, treadles or shafts at once joined by +.
func PicksText(sets []draft.Set) string {
	words := make([]string, len(sets))
	for i, s := range sets {
		words[i] = s.String()
	}
	classes, _ := draft.Classes(sets)
	return shorthand(words, classes)
}

// shorthand writes what comes again once, with how often, and what is left over
// behind it.
func shorthand(words []string, classes []int) string {
	if len(words) == 0 {
		return "none"
	}
	each := weave.Cycle(classes)
	times, rest := len(words)/each, len(words)%each
	text := strings.Join(words[:each], " ")
	if times > 1 {
		text = "(" + text + ") x " + number(times)
	}
	if rest > 0 {
		text += ", " + strings.Join(words[:rest], " ")
	}
	return text
}

// tieLines say what each treadle is tied to, and what it puts up where that differs.
func tieLines(d *draft.Draft) []string {
	var out []string
	for i, tie := range d.Ties {
		line := "treadle " + number(i+1) + ": " + tieWords(d.Shed) + " " + SetText(tie.Tied)
		if tie.Lowered != 0 {
			line += ", lowers " + SetText(tie.Lowered)
		}
		if up := d.Open(draft.Of(i + 1)).Up; up != tie.Tied {
			line += "; up are " + SetText(up)
		}
		out = append(out, line)
	}
	return out
}

func tieWords(s loom.Shed) string {
	if s == loom.Sinking || s == loom.Counterbalance {
		return "lowers"
	}
	return "raises"
}

// SetText writes shafts or treadles with spaces between, or that there are none.
func SetText(s draft.Set) string {
	if s == 0 {
		return "none"
	}
	return strings.ReplaceAll(s.String(), "+", " ")
}

// drawdownText is the drawdown as text, as much of it as a screen shows.
func drawdownText(w *weave.Weave) string {
	picks, ends := min(w.Picks(), mostRows), min(w.Ends(), mostColumns)
	title := "Drawdown, # where the warp is on top, the first pick first"
	if picks < w.Picks() || ends < w.Ends() {
		title += "; the first " + number(picks) + " picks and " + number(ends) + " ends"
	}
	lines := strings.TrimSpace(w.Crop(0, 0, picks, ends).String())
	return "\n" + title + "\n" + textIndent + strings.ReplaceAll(lines, "\n", "\n"+textIndent) + "\n"
}

// JudgedText says what is known of a draft's cloth and, where e is given, its edges.
func JudgedText(a *structure.Analysis, e *structure.Edges) string {
	text := toldText("The cloth", Structure(a))
	if e != nil {
		text += toldText("The edges", Edges(e))
	}
	return text
}

func toldText(title string, told []Told) string {
	if len(told) == 0 {
		return ""
	}
	out := "\n" + title + "\n"
	for _, t := range told {
		line := strings.TrimSuffix(t.Title+": "+t.Figures, ": ")
		out += textIndent + strings.ReplaceAll(wrap(line, mostColumns), "\n", "\n"+textIndent+textIndent) + "\n"
		if t.Explanation != "" {
			in := textIndent + textIndent
			out += in + strings.ReplaceAll(wrap(t.Explanation, textWidest-len(in)), "\n", "\n"+in) + "\n"
		}
	}
	return out
}
