package sheet

import (
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"sley/internal/app"
	"sley/internal/engine/draw/letter"
	"sley/internal/engine/reckon"
	"sley/internal/face/present"
)

// number is a number as the sheets set it.
var number = regexp.MustCompile(`[0-9][0-9.]*|[⁰¹²³⁴⁵⁶⁷⁸⁹]+⁄[₀₁₂₃₄₅₆₇₈₉]+`)

// No sheet has a number of its own: each stands in the bench text of a node, in its
// words, or in what the weaver wrote.
func TestNoFigureIsTheSheetsOwn(t *testing.T) {
	sheets := []string{"glance", "yarn", "raddle", "finishing", "label", "record", "kits"}
	for name, text := range plans(t) {
		r := reckoned(t, name, text)
		allowed := known(r, string(text))
		for _, sheet := range sheets {
			doc, err := Make(r, present.UnitsOf(r.Plan), Options{Sheets: []string{sheet}})
			if err != nil {
				continue // the plan has nothing for it
			}
			for i, p := range doc.Pages {
				for _, t2 := range texts(p.Items) {
					if own := ownNumber(t2.Text, allowed); own != "" && !exempt(sheet, t2.Text) {
						t.Errorf("%s, %s, page %d: %s in %q is no node's", name, sheet, i+1, own, t2.Text)
					}
				}
			}
		}
	}
}

// known is every number of the nodes' bench texts and words, of the warnings, and
// of the plan's text.
func known(r *reckon.Result, text string) map[string]bool {
	u := present.UnitsOf(r.Plan)
	parts := []string{text, r.Defaults, r.Plan.Date}
	for _, n := range r.Nodes {
		parts = append(parts, letter.FractionText(u.Bench(n)), present.Label(n), n.About.Mark, n.About.Order)
	}
	parts = append(parts, afterwards(r, u))
	for _, p := range r.Problems.All() {
		p = u.Localise(p)
		parts = append(parts, present.Wrong(p), present.Fix(p))
	}
	out := map[string]bool{}
	for _, part := range parts {
		for _, n := range number.FindAllString(part, -1) {
			out[n] = true
		}
	}
	return out
}

// afterwards is what present says of finishing, label and record, as it says it elsewhere.
func afterwards(r *reckon.Result, u present.Units) string {
	label, _ := app.LabelOf(r)
	text, _ := json.Marshal([]any{
		present.FinishingJSONOf(app.FinishingOf(r), u), present.LabelJSONOf(label, u), present.RecordJSONIn(app.RecordForm(r), u),
	})
	return string(text)
}

func ownNumber(text string, allowed map[string]bool) string {
	for _, n := range number.FindAllString(text, -1) {
		if !allowed[n] {
			return n
		}
	}
	return ""
}

var counted = regexp.MustCompile(`^\d{1,2}$`)

// exempt are the number of the page, and those that count kits, weavers and steps.
func exempt(sheet, text string) bool {
	page, _, _ := strings.Cut(wordPage, "{")
	kit, _, _ := strings.Cut(wordKit, "{")
	return strings.HasPrefix(text, page) || sheet == "kits" && strings.HasPrefix(text, kit) ||
		(sheet == "kits" || sheet == "finishing") && counted.MatchString(text)
}
