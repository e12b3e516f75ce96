package sheet

import (
	"strings"
	"testing"
	"time"

	"sley/internal/app"
	"sley/internal/engine/draw/scene"
	"sley/internal/trade/qty"
	"sley/internal/trade/record"
	"sley/internal/trade/warp"
)

func saysAll(doc scene.Document) string {
	var out []string
	for _, p := range doc.Pages {
		out = append(out, says(p))
	}
	return strings.ReplaceAll(strings.Join(out, "\n"), "\u00a0", " ")
}

func boxes(doc scene.Document) int {
	n := 0
	for _, p := range doc.Pages {
		for _, it := range p.Items {
			if r, ok := it.(scene.Rect); ok && r.Width == box && r.Height == box {
				n++
			}
		}
	}
	return n
}

// Each step has its box, in order, and a caution stands once.
func TestStepsHaveBoxes(t *testing.T) {
	r := reckoned(t, "berth-blanket.toml", plans(t)["berth-blanket.toml"])
	doc := mustMake(t, r, Options{Sheets: []string{"finishing"}})
	text := saysAll(doc)
	at := 0
	for _, step := range []string{"Hemstitch on the loom", "Cut the cloth off", "Let it rest", "Mend", "Make the fringe", "Wash and full", "Dry", "Press", "Trim the tails", "Measure the finished cloth", "Sizes of each blanket"} {
		next := strings.Index(text[at:], "\n"+step+"\n")
		if next < 0 {
			t.Errorf("%q does not follow in\n%s", step, text)
			continue
		}
		at += next
	}
	if want := len(app.FinishingOf(r).Steps); boxes(doc) != want {
		t.Errorf("%d boxes for %d steps", boxes(doc), want)
	}
	for _, care := range []string{"Care: Cutting frees lint", "Care: Hot water scalds", "Care: Iron and steam"} {
		if strings.Count(text, care) != 1 {
			t.Errorf("%q stands %d times", care, strings.Count(text, care))
		}
	}
}

// The record of a plan file is a form: what is planned, and lines for what is not known.
func TestRecordIsAForm(t *testing.T) {
	r := reckoned(t, "galley-towels.toml", plans(t)["galley-towels.toml"])
	text := saysAll(mustMake(t, r, Options{Sheets: []string{"record"}}))
	for _, want := range []string{"Length of towel", "Width of towel", "take-up, warp to relaxed cloth", "shrinkage in length, relaxed to washed", "8 % lost", wordLog} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in\n%s", want, text)
		}
	}
	if strings.Contains(text, " to 2") {
		t.Errorf("something was learnt of nothing measured:\n%s", text)
	}
}

// The record of a warp of the book has what was measured and written down.
func TestRecordOfTheBook(t *testing.T) {
	r := reckoned(t, "galley-towels.toml", plans(t)["galley-towels.toml"])
	came := app.RecordForm(r)
	long := &came.Sizes[0]
	last := len(long.States) - 1
	long.States[last].Measured = warp.Size{Is: 28 * qty.Inch, State: warp.Finished, Typed: "28 in"}
	came.Learnt = came.Learnt[:1]
	came.Learnt[0].From.Typed, came.Learnt[0].To.Typed = "33 in", "30 1/2 in"
	came.Log = []record.Event{{What: record.Noted, At: time.Date(2026, 3, 9, 8, 0, 0, 0, time.UTC), Note: "washed twice", Minutes: 40}}
	text := saysAll(mustMake(t, r, Options{Sheets: []string{"record"}, Record: came}))
	for _, want := range []string{"28 in", "33 in to 30¹⁄₂ in", "2026-03-09", "note, 40 min", "washed twice", wordMoreLog} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in\n%s", want, text)
		}
	}
}

// The text of a label is large, and its caution stands above it.
func TestLabelIsLarge(t *testing.T) {
	r := reckoned(t, "berth-blanket.toml", plans(t)["berth-blanket.toml"])
	doc := mustMake(t, r, Options{Sheets: []string{"label"}})
	large := 0
	for _, it := range texts(doc.Pages[0].Items) {
		if it.Size == fibres.pt {
			large++
		}
	}
	text := saysAll(doc)
	if large != 2 || !strings.Contains(text, "100 % wool") || !strings.Contains(text, "100% Wool") || !strings.Contains(text, "Check your local rule") || len(doc.Pages) != 1 {
		t.Errorf("%d large lines on %d pages:\n%s", large, len(doc.Pages), text)
	}
}
