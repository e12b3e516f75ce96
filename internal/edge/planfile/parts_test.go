package planfile

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"sley/internal/trade/problem"
)

// TestPartsOfEveryPlan: yarns, the loom and the winding of every plan are the
// same taken out, through JSON, as in the plan, with the same problems; put into
// an empty document they stand there as they stood.
func TestPartsOfEveryPlan(t *testing.T) {
	seen := map[string]int{}
	for name, text := range plansOfTheHouse(t) {
		d, _ := ReadText("plan.toml", text)
		if d == nil {
			continue
		}
		plan, list := d.Plan("")
		for i, y := range plan.Yarns {
			path := join("yarns", y.Name)
			part, ok := takenOut(t, d, path)
			if !ok {
				continue // of the wrong kind
			}
			got, problems := ReadYarn(y.Name, part)
			if !reflect.DeepEqual(got, plan.Yarns[i]) {
				t.Errorf("%s: %s is %+v, want %+v", name, path, got, plan.Yarns[i])
			}
			samePart(t, name, path, problems, list)
			seen["yarns"]++
		}
		if part, ok := takenOut(t, d, "loom"); ok {
			got, problems := ReadLoom(part)
			if !reflect.DeepEqual(got, plan.Loom) {
				t.Errorf("%s: the loom is %+v, want %+v", name, got, plan.Loom)
			}
			samePart(t, name, "loom", problems, list)
			seen["loom"]++
		}
		if part, ok := takenOut(t, d, "winding"); ok {
			got, problems := ReadWinding(part)
			if !reflect.DeepEqual(got, plan.Winding) {
				t.Errorf("%s: the winding is %+v, want %+v", name, got, plan.Winding)
			}
			samePart(t, name, "winding", problems, list)
			seen["winding"]++
		}
	}
	if seen["yarns"] < 60 || seen["loom"] < 20 || seen["winding"] < 15 {
		t.Errorf("only %v", seen)
	}
}

// takenOut takes a part out, writes and reads it in both ways, and puts it into
// another document.
func takenOut(t *testing.T, d *Document, path string) (*Document, bool) {
	t.Helper()
	part, ok := d.Part(path)
	if !ok {
		return nil, false
	}
	other := NewDocument()
	if err := other.Graft(path, part); err != nil {
		t.Fatal(err)
	}
	is, _ := other.Get(path)
	was, _ := d.Get(path)
	if string(is.JSON()) != string(was.JSON()) || string(part.JSON()) != string(was.JSON()) {
		t.Errorf("%s is %s, was %s", path, is.JSON(), was.JSON())
	}
	fromText, list := ReadText("part.toml", part.Text())
	if fromText == nil || !fromText.Equal(part) {
		t.Errorf("%s: %v\n%s", path, told(list), part.Text())
	}
	fromJSON, err := ReadJSON(part.JSON())
	if err != nil || !fromJSON.Equal(part) {
		t.Errorf("%s: %v", path, err)
	}
	return fromJSON, true
}

// samePart compares the problems of a part with those that the plan has there,
// without what only a whole plan can tell.
func samePart(t *testing.T, name, path string, part, plan *problem.List) {
	t.Helper()
	var want []string
	for _, p := range plan.All() {
		if below, ok := strings.CutPrefix(p.Path, path); ok && (below == "" || below[0] == '.') && p.Code != "find.limit-missing" {
			p.Path = strings.TrimPrefix(below, ".")
			want = append(want, told(listOf(p))...)
		}
	}
	slices.Sort(want)
	if got := told(part); !slices.Equal(got, want) {
		t.Errorf("%s: %s has %q, in the plan %q", name, path, got, want)
	}
}

func listOf(p problem.Problem) *problem.List {
	list := &problem.List{}
	list.Add(p)
	return list
}

// TestFaultyParts: everything wrong with a part is said at once, at its own paths.
func TestFaultyParts(t *testing.T) {
	d := readJSONOf(t, `{"yarns":{"white":{"count":"8/2","wraps":"28 wpi","lenght":1,"handspun":true,"skein":{"weight":"5"}}},`+
		`"loom":{"shafts":99,"width":"120","heddles":[1,2],"reeds":["12","8 dpi"]},"winding":{"pegs":["a"],"board":"usual","bout":1}}`)
	white, _ := d.Part("yarns.white")
	loom, _ := d.Part("loom")
	winding, _ := d.Part("winding")
	_, yarns := ReadYarn("two words", white)
	_, looms := ReadLoom(loom)
	_, windings := ReadWinding(winding)
	for what, c := range map[string][2][]string{
		"yarn": {codesAt(yarns), {
			"name.form@", "count.no-system@count", "wraps.kind@wraps", "key.unknown@lenght", "mass.no-unit@skein.weight",
		}},
		"loom":    {codesAt(looms), {"whole.range@shafts", "length.no-unit@width", "reed.no-unit@reeds[0]"}},
		"winding": {codesAt(windings), {"pegs.count@pegs", "keys.both@pegs", "whole.range@bout"}},
	} {
		slices.Sort(c[0])
		slices.Sort(c[1])
		if !slices.Equal(c[0], c[1]) {
			t.Errorf("%s has %q, want %q", what, c[0], c[1])
		}
	}
	for _, path := range []string{"yarns.blue", "loom.shafts", "loom.reeds", "loom["} {
		if part, ok := d.Part(path); ok {
			t.Errorf("%s is the part %s", path, part.JSON())
		}
	}
	if err := white.Set("count", TextValue("8/2 Ne")); err != nil || strings.Contains(string(d.JSON()), "8/2 Ne") {
		t.Errorf("a change of the part reached the document, or failed: %v", err)
	}
	if y, _ := ReadYarn("white", white); y.Name != "white" || y.Count.Typed != "8/2 Ne" {
		t.Errorf("%+v", y)
	}
}

func codesAt(list *problem.List) []string {
	var out []string
	for _, p := range list.All() {
		out = append(out, p.Code+"@"+p.Path)
	}
	return out
}
