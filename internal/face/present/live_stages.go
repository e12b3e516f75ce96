package present

import (
	"strings"
	"unicode"

	"sley/internal/app"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
	"sley/internal/trade/warp"
)

// LiveStage is where one of the six stages of a warp stands.
type LiveStage struct {
	ID   string `json:"id"`
	Says string `json:"says"`
}

func (u Units) liveStages(p *app.Preview) []LiveStage {
	return []LiveStage{
		{"piece", piecesWords(p.Plan)},
		{"cloth", u.clothWords(p)},
		{"numbers", CareWords(counts(p.Problems))},
		{"dress", dressWords(p.Work)},
		{"weave", WovenWords(p.Work.Woven, p.Work.Of)},
		{"finish", finishWords(p.Work)},
	}
}

// mostKinds is how many kinds of pieces are named before they are only counted.
const mostKinds = 2

// piecesWords says the pieces of a plan: 6 towels, sample.
func piecesWords(plan *warp.Plan) string {
	var parts []string
	all := 0
	for i := range plan.Pieces {
		n := max(plan.Pieces[i].Count, 1)
		parts = append(parts, Counted(n, plan.Pieces[i].Name))
		all += n
	}
	if len(parts) > mostKinds {
		return fillIn(kindsOfPieces, "{kinds}", number(len(parts)), "{pieces}", number(all))
	}
	return strings.Join(parts, ", ")
}

// Counted says how many there are of something the weaver named: towel, 6 towels, 3
// scarves; names that are more than two plain words keep their form: 2 × runner for Ada.
func Counted(n int, name string) string {
	if name == "" {
		name = named("", "piece")
	}
	if n == 1 {
		return name
	}
	if many, ok := severalOf(name); ok {
		return number(n) + " " + many
	}
	return number(n) + " × " + name
}

// severalOf gives the plural of a plain English noun; false where the name is none.
func severalOf(name string) (string, bool) {
	if strings.Count(name, " ") > 1 || strings.ContainsFunc(name, func(r rune) bool { return !unicode.IsLetter(r) && r != ' ' || r > unicode.MaxASCII }) {
		return "", false
	}
	for end, many := range oddPlurals {
		if rest, ok := strings.CutSuffix(name, end); ok {
			return rest + many, true
		}
	}
	last := name[len(name)-1]
	switch {
	case last == 's' || last == ' ':
		return name, last == 's'
	case strings.HasSuffix(name, "ch") || strings.HasSuffix(name, "sh") || last == 'x':
		return name + "es", true
	case last == 'y' && len(name) > 1 && !strings.ContainsRune("aeiou", rune(name[len(name)-2])):
		return name[:len(name)-1] + "ies", true
	}
	return name + "s", true
}

// clothWords says the weave and the sett.
func (u Units) clothWords(p *app.Preview) string {
	var parts []string
	if p.Plan.Weave != "" {
		parts = append(parts, p.Plan.Weave)
	}
	if p.Result != nil {
		for _, id := range []string{"sett.exact", "sett.in-reed", "sett.wanted"} {
			if n, ok := p.Result.Node(id); ok {
				return strings.Join(append(parts, u.Bench(n)), ", ")
			}
		}
	}
	return strings.Join(parts, ", ")
}

// counts counts what is wrong and what needs care.
func counts(list *problem.List) (wrong, care int) {
	for _, p := range list.All() {
		switch p.Severity {
		case problem.Error:
			wrong++
		case problem.Warning:
			care++
		}
	}
	return wrong, care
}

// CareWords says how many things are wrong, or need care, or that all fits.
func CareWords(wrong, care int) string {
	switch {
	case wrong == 1:
		return mendOne
	case wrong > 1:
		return strings.ReplaceAll(mendSeveral, "{n}", number(wrong))
	case care == 1:
		return careOne
	case care > 1:
		return strings.ReplaceAll(careSeveral, "{n}", number(care))
	}
	return allFits
}

func dressWords(w app.WorkFacts) string {
	switch {
	case w.Stage == record.Planned:
		return notBegun
	case w.Stage != record.Begun:
		return dressed
	case w.Wound:
		return warpWound
	}
	return begun
}

// WovenWords says how far a warp is woven; nothing where no pick is.
func WovenWords(woven, of int) string {
	if woven == 0 {
		return ""
	}
	words := wovenPicks
	if of > 0 {
		words = wovenOfPicks
	}
	return fillIn(words, "{woven}", number(woven), "{of}", number(of))
}

func finishWords(w app.WorkFacts) string {
	switch {
	case w.Washed:
		return washedMeasured
	case w.Measured:
		return measuredOnly
	case w.Stage == record.Done:
		return StageOf(record.Done)
	}
	return ""
}
