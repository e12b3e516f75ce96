package present

import (
	"strings"

	"sley/internal/app"
	"sley/internal/engine/review"
	"sley/internal/trade/loom"
)

// FindingJSON is one thing worth telling of a draft (docs/api.md).
type FindingJSON struct {
	Topic    string       `json:"topic"`
	Severity string       `json:"severity"` // wrong, care or note
	Says     string       `json:"says"`
	Means    string       `json:"means,omitempty"`
	Place    *PlaceJSON   `json:"place,omitempty"`
	Remedies []RemedyJSON `json:"remedies"`
}

// PlaceJSON is where a finding is, the second of a stretch left out.
type PlaceJSON struct {
	Part    string  `json:"part,omitempty"`
	Ends    *[2]int `json:"ends,omitempty"`
	Picks   *[2]int `json:"picks,omitempty"`
	Numbers []int   `json:"numbers,omitempty"`
}

// RemedyJSON is what mends a finding: acts to be made, or what else is to be done.
type RemedyJSON struct {
	Says string `json:"says"`
	Acts []any  `json:"acts"`
	Swap bool   `json:"swap,omitempty"` // shuttles start from the other side
}

// Findings words what there is to tell of a draft.
func Findings(l *app.Looked) []FindingJSON {
	out := []FindingJSON{}
	for _, f := range l.Findings {
		out = append(out, finding(f))
	}
	return out
}

func finding(f review.Finding) FindingJSON {
	w, pairs := reviewWords[f.Topic], reviewPairs(f)
	out := FindingJSON{
		Topic: string(f.Topic), Severity: string(f.Severity), Says: fillIn(w.wrong, pairs...),
		Means: fillIn(w.why, pairs...), Place: placeJSON(f.Place), Remedies: []RemedyJSON{},
	}
	for _, m := range f.Remedies {
		out.Remedies = append(out.Remedies, RemedyJSON{remedySays(m), app.RemedyActs(m), len(m.Swap) > 0})
	}
	return out
}

func placeJSON(p review.Place) *PlaceJSON {
	out := PlaceJSON{Part: string(p.Part), Numbers: p.Numbers}
	if p.Ends.To > p.Ends.From {
		out.Ends = &[2]int{p.Ends.From, p.Ends.To}
	}
	if p.Picks.To > p.Picks.From {
		out.Picks = &[2]int{p.Picks.From, p.Picks.To}
	}
	if out.Part == "" && out.Ends == nil && out.Picks == nil && out.Numbers == nil {
		return nil
	}
	return &out
}

// reviewPairs gives what stands for each name in braces.
func reviewPairs(f review.Finding) []string {
	pairs := []string{"{ends-at}", stretchWords(f.Place.Ends, "end"), "{picks-at}", stretchWords(f.Place.Picks, "pick"), "{numbers}", numbersText(f.Place.Numbers)}
	for name, value := range f.Args {
		text := say(value)
		if words, ok := reviewNames[name]; ok {
			if n, is := value.(int); is && n < len(words) {
				text = words[n]
			}
		}
		if shed, ok := loom.ParseShed(text); ok && f.Topic == review.OtherShed {
			text = strings.TrimSuffix(shedWords[shed], " loom") + " loom"
		}
		if numbers, is := value.(string); is && (name == "shafts" || name == "treadles") {
			text, pairs = numbered(name, numbers), append(pairs, "{"+name+"-are}", areWords(name, numbers))
		}
		pairs = append(pairs, "{"+name+"}", text)
	}
	return pairs
}

// numbered names shafts or treadles that are given as 3+4: shafts 3 and 4.
func numbered(name, numbers string) string {
	list := strings.Split(numbers, "+")
	if len(list) == 1 {
		return strings.TrimSuffix(name, "s") + " " + numbers
	}
	last := len(list) - 1
	return name + " " + strings.Join(list[:last], ", ") + " and " + list[last]
}

func areWords(name, numbers string) string {
	if strings.Contains(numbers, "+") {
		return numbered(name, numbers) + " are"
	}
	return numbered(name, numbers) + " is"
}

// reviewNames are the args that are one of a few.
var reviewNames = map[string][]string{
	"way": {"warp", "weft"}, "face": {"front", "back"}, "side": {"left", "right"},
}

// stretchWords says a stretch of threads as they are counted, from 1.
func stretchWords(s review.Span, one string) string {
	switch {
	case s.To <= s.From:
		return ""
	case s.To == s.From+1:
		return one + " " + number(s.To)
	}
	return one + "s " + number(s.From+1) + " to " + number(s.To)
}

func numbersText(list []int) string {
	parts := make([]string, len(list))
	for i, n := range list {
		parts[i] = number(n)
	}
	return strings.Join(parts, ", ")
}

func remedySays(m review.Remedy) string {
	text := remedyWords[m.Topic]
	change := "no end more or less"
	switch {
	case m.Ends > 0:
		change = several(m.Ends, "ends") + " more"
	case m.Ends < 0:
		change = several(-m.Ends, "ends") + " less"
	}
	sides := ""
	switch m.Floating {
	case [2]bool{true, true}:
		sides = " on both sides"
	case [2]bool{true, false}:
		sides = " on the left"
	case [2]bool{false, true}:
		sides = " on the right"
	}
	return fillIn(text, "{ends}", change, "{sides}", sides)
}

// FindingsFile is what a command prints of findings.
type FindingsFile struct {
	Format   int           `json:"format"`
	Version  int           `json:"version"`
	Findings []FindingJSON `json:"findings"`
}

// FindingsText sets findings as plain text.
func FindingsText(l *app.Looked) string {
	if len(l.Findings) == 0 {
		return "Nothing needs care.\n"
	}
	var b strings.Builder
	for _, f := range Findings(l) {
		b.WriteString(f.Severity + ": " + f.Says + "\n")
		if f.Means != "" {
			b.WriteString("  " + f.Means + "\n")
		}
		for _, m := range f.Remedies {
			b.WriteString("  mend it: " + m.Says + "\n")
		}
	}
	return b.String()
}
