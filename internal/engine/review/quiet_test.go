package review

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"sley/internal/edge/planfile"
	"sley/internal/engine/catalogue"
	"sley/internal/engine/reckon"
	"sley/internal/engine/structure"
	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/qty"
)

// twill is a 2/2 twill on so many ends, with tabby tied beside it.
func twill(ends int) *draft.Draft {
	d := &draft.Draft{Shafts: 4, Treadles: 6, Shed: loom.Rising}
	for i := range ends {
		d.Threading = append(d.Threading, i%4+1)
	}
	for k := range 4 {
		d.Treadling = append(d.Treadling, draft.Of(k+1))
		d.Ties = append(d.Ties, draft.Tie{Tied: draft.Of(k+1, (k+1)%4+1)})
	}
	d.Ties = append(d.Ties, draft.Tie{Tied: draft.Of(1, 3)}, draft.Tie{Tied: draft.Of(2, 4)})
	return d
}

func topics(list []Finding) []Topic {
	var out []Topic
	for _, f := range list {
		out = append(out, f.Topic)
	}
	return out
}

func density(t testing.TB, text string) qty.Density {
	d, err := qty.ParseDensity(text)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// TestQuietOnATwillTowel: an ordinary towel has nothing to tell.
func TestQuietOnATwillTowel(t *testing.T) {
	for _, c := range []Context{
		{},
		{Use: "towel", Ends: 504, Sett: density(t, "20 epi"), Picks: density(t, "20 ppi")},
		{Use: "towel", Ends: 504, Loom: &loom.Loom{Shafts: 8, Treadles: 10, Shed: loom.Rising, Heddles: []int{130, 130, 130, 130}}},
		{Use: "towel", Ends: 504, Floating: [2]bool{true, true}, Start: []structure.Side{structure.Left}},
	} {
		if found := Review(twill(8), c); len(found) > 0 {
			t.Errorf("%+v: %v", c, topics(found))
		}
	}
	selvedged := twill(12)
	selvedged.Threading[0], selvedged.Threading[11] = 0, 0
	if found := Review(selvedged, Context{Ends: 12, Start: []structure.Side{structure.Left}}); len(found) > 0 {
		t.Errorf("with floating selvedges: %v", topics(found))
	}
}

// TestQuietOnThePracticeOfPlainWeave: on four shafts, with a treadle for each pair and foot.
func TestQuietOnThePracticeOfPlainWeave(t *testing.T) {
	d := twill(8)
	d.Ties = []draft.Tie{{Tied: 5}, {Tied: 10}, {Tied: 5}, {Tied: 10}}
	d.Treadles = 4
	if found := Review(d, Context{Use: "towel", Ends: 400}); len(found) > 0 {
		t.Errorf("%v", topics(found))
	}
}

// expected are the weaves of the catalogue that have something to tell by their nature.
var expected = map[string][]Topic{
	"double-cloth": {Layers}, "tube": {Layers}, "double-width": {Layers}, "many-layers": {Layers}, "double-twill": {Layers},
}

// TestQuietOnTheCatalogue: what handbooks teach is good practice.
func TestQuietOnTheCatalogue(t *testing.T) {
	for _, e := range catalogue.All() {
		found := topics(Review(e.Default(), Context{}))
		if d := e.Default(); e.Layered {
			if layers := structure.OfDraft(d).Woven(); len(Review(d, Context{Layers: layers})) > 0 {
				t.Errorf("%s is in %d layers as wanted, and that is told", e.ID, layers)
			}
		}
		slices.Sort(found)
		if found = slices.Compact(found); !slices.Equal(found, expected[e.ID]) {
			t.Errorf("%s: %v, want %v", e.ID, found, expected[e.ID])
		}
	}
}

// TestQuietOnTheDemo: the warps of the studio are sound, on their looms and at their setts.
func TestQuietOnTheDemo(t *testing.T) {
	files, err := filepath.Glob("../../../examples/*.toml")
	if err != nil {
		t.Fatal(err)
	}
	drafts := 0
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		plan, _, list := planfile.Decode(filepath.Base(file), text)
		if list.Failed() {
			t.Fatal(file, list.All())
		}
		result := reckon.Solve(plan, reckon.Options{})
		d, ok := result.Drawn()
		if !ok {
			continue
		}
		drafts++
		n, _ := result.Node("ends")
		ends := n.Is.Count(qty.Nearest)
		c := Context{Loom: &plan.Loom, Ends: ends, Floating: [2]bool{plan.Warp.Floats > 0, plan.Warp.Floats > 0}}
		if found := Review(d, c); len(found) > 0 {
			t.Errorf("%s: %v", file, found)
		}
	}
	if drafts < 4 {
		t.Errorf("only %d drafts in the demo", drafts)
	}
}
