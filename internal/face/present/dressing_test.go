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

// A message names the first three stripes that do not make whole passes, and says
// how many more there are.
func TestUnevenStripesAreNamed(t *testing.T) {
	plan, _, list := planfile.Decode("plan.toml", []byte(`sley = 1
warp.sett = "24 epi"
warp.stripes = "white 1, blue 7, white 12, (blue 1, white 1) x 4, blue 1, sand 9, white 5, blue 4"
winding.together = 2
[[pieces]]
length = "28 in"
[yarns.white]
[yarns.blue]
[yarns.sand]
`))
	if list.Failed() {
		t.Fatal(list.All())
	}
	said := ""
	for _, p := range reckon.Reckon(plan, reckon.Options{}).Problems.All() {
		if p.Code == "winding.uneven" {
			said = present.Wrong(p)
		}
	}
	want := "stripe 1 with 1 end of white, stripe 2 with 7 ends of blue, stripes 3 to 12 with 21 ends of white and blue and 2 more"
	if !strings.HasSuffix(said, ": "+want) {
		t.Errorf("got %q, want %q at the end", said, want)
	}
}
