package present_test

import (
	"strings"
	"testing"

	"sley/internal/edge/planfile"
	"sley/internal/engine/reckon"
	"sley/internal/face/present"
)

// Pegs are called by their own names, also by one that is the name of a mark of
// the tape.
func TestPegsKeepTheirNames(t *testing.T) {
	plan, _, list := planfile.Decode("plan.toml", []byte(`sley = 1
warp.sett = "24 epi"
warp.wound = "3 yd"
winding.pegs = ["start 0 in, 0 in", "middle 1 yd, 0 in", "fold 1 yd, 1 yd", "end 0 in, 1 yd"]
[[pieces]]
length = "28 in"
width = "18 in"
`))
	if list.Failed() {
		t.Fatal(list.All())
	}
	text := present.PageOf(reckon.Reckon(plan, reckon.Options{}), present.Imperial, true).Text()
	for _, want := range []string{"start, middle, fold, end", "from the start to end ...", "from the start to middle ..."} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in\n%s", want, text)
		}
	}
}

// The sections of dressing stand between the width and the reed, and are left
// out where nothing is said of them.
func TestDressingStandsBeforeTheReed(t *testing.T) {
	for name, r := range plans(t) {
		var titles []string
		for _, s := range present.PageOf(r, present.Imperial, false).Sections {
			titles = append(titles, s.Title)
		}
		all := strings.Join(titles, "|")
		if r.Plan.Winding.IsWound() != strings.Contains(all, "Width and ends|Winding|") {
			t.Errorf("%s: %s", name, all)
		}
		if w := r.Plan.Winding; w.Raddle.Given() && w.Section.Given() && !strings.Contains(all, "|Raddle|Sectional beam|") {
			t.Errorf("%s: %s", name, all)
		}
	}
}
