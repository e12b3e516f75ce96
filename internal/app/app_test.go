package app

import (
	"slices"
	"testing"

	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

const five = "sley = 1\nwarp.sett = \"20 epi\"\n[[pieces]]\nlength = \"60 in\"\nwidth = \"10 in\"\n"

func codes(list *problem.List) []string {
	var out []string
	for _, p := range list.All() {
		out = append(out, p.Code)
	}
	return out
}

var reckonTests = []struct {
	what, text, find string
	reckons          bool
	codes            []string
}{
	{"the beginner's five lines", five, "", true, nil},
	{"an unknown key", five + "girth = \"red\"\n", "", false, []string{"key.unknown"}},
	{"find something that is not there", five, "pieces[3].length", false, []string{"find.path"}},
	{"find without anything that limits", five, "pieces[0].length", true, []string{"find.unlimited"}},
	{"a loom too narrow", "loom.width = \"8 in\"\n" + five, "", false, []string{"format.first"}},
	{"a warning keeps the numbers", five + "[loom]\nwidth = \"8 in\"\n", "", true, []string{"loom.width"}},
	{"a warp that is too short", five + "[warp]\nwound = \"1 yd\"\n", "", false, nil},
}

func TestReckonPlan(t *testing.T) {
	for _, test := range reckonTests {
		result, list := ReckonPlan(Source{Name: "plan.toml", Text: []byte(test.text)}, test.find, false)
		if (result != nil) != test.reckons {
			t.Errorf("%s: reckoned %v, want %v: %v", test.what, result != nil, test.reckons, codes(list))
		}
		if test.codes != nil && !slices.Equal(codes(list), test.codes) {
			t.Errorf("%s: problems %v, want %v", test.what, codes(list), test.codes)
		}
	}
}

// What the reckoning finds stands in the file, as what the decoder finds does.
func TestProblemsOfTheReckoningHaveTheirPlace(t *testing.T) {
	_, list := ReckonPlan(Source{Name: "plan.toml", Text: []byte(five + "[loom]\nwidth = \"8 in\"\n")}, "", false)
	for _, p := range list.All() {
		if p.Place.Line != 7 || p.Place.File != "plan.toml" {
			t.Errorf("%s stands at %s, want plan.toml:7", p.Code, p.Place)
		}
	}
}

func TestFindPaths(t *testing.T) {
	got := FindPaths("plan.toml", []byte(five))
	want := []string{"pieces[0].length", "pieces[0].width", "pieces[0].count", "warp.sett"}
	if !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

// 8/2 cotton, plain, constant 0.9: 52 diameters, 26 ends (Ashenhurst's formula,
// Complex Weavers Medieval Textiles study group, 1999).
func TestSett(t *testing.T) {
	count, err := yarn.ParseCount("8/2 Ne")
	if err != nil {
		t.Fatal(err)
	}
	result, list, err := Sett(SettAsked{Count: count, Weave: "plain", K: qty.Frac(9, 10)})
	if err != nil || list.Len() > 0 {
		t.Fatal(err, list.All())
	}
	for id, want := range map[string]string{"yarns[yarn].diameters": "52.17", "sett.greatest": "26.08"} {
		n, _ := result.Node(id)
		if got := n.Is.Mul(qty.Inch.Rat()).Decimal(2); got != want {
			t.Errorf("%s: got %s, want %s", id, got, want)
		}
	}
	if _, _, err := Sett(SettAsked{Count: count, Fibre: "stone"}); err == nil {
		t.Error("an unknown fibre gave no fault")
	}
	if result, list, _ := Sett(SettAsked{Count: count, K: qty.Int(3)}); result != nil || !list.Failed() {
		t.Error("a constant of 3 gave no problem")
	}
}

func TestReeds(t *testing.T) {
	wanted, _ := qty.ParseDensity("24 epi")
	result, err := Reeds(warp.Sett{Is: wanted, State: warp.InReed, Typed: "24 epi"}, []string{"8 dpi", "60 Stockport"}, 0)
	if err != nil {
		t.Fatal(err)
	}
	first, _ := result.Node("sley.other[1].exact")
	if first.About.Reed != "8 dpi" || first.About.Order != "3" {
		t.Errorf("got reed %s, order %s, want 8 dpi, 3", first.About.Reed, first.About.Order)
	}
	if _, err := Reeds(warp.Sett{Is: wanted}, []string{"twelve"}, 0); err == nil {
		t.Error("a reed that is no reed gave no fault")
	}
}

func TestYarn(t *testing.T) {
	count, all, err := Yarn("8/2 Ne")
	if err != nil || count.Plies() != 2 || len(all) < 20 {
		t.Errorf("got %v, %d systems, %v", count, len(all), err)
	}
	if _, _, err := Yarn("eight"); err == nil {
		t.Error("a count that is no count gave no fault")
	}
}

func TestNames(t *testing.T) {
	if !slices.Contains(WeaveNames(), "2/2 twill") || !slices.Contains(FibreNames(), "cotton") {
		t.Error("the names of weaves or fibres lack the commonest")
	}
}
