package web_test

import (
	"encoding/json"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"
	"unicode/utf16"

	"sley/internal/face/present"
)

// warpNamed gives the number and the version of a warp of the demo.
func (r *real) warpNamed(name string) (id, version int) {
	r.t.Helper()
	var l list
	r.ask("GET", "/api/warps?words="+strings.Fields(name)[0], nil, &l)
	for _, c := range l.Items {
		if c.Name == name {
			return c.ID, c.Version
		}
	}
	r.t.Fatalf("the demo has no warp %q", name)
	return 0, 0
}

// tried asks for a preview of a warp.
func (r *real) tried(id int, body map[string]any) present.Live {
	r.t.Helper()
	var live present.Live
	if status := r.ask("POST", "/api/documents/"+itoa(id)+"/reckoning", body, &live); status != 200 {
		r.t.Fatalf("%v: %d", body, status)
	}
	return live
}

func set(path string, value any) map[string]any { return map[string]any{"path": path, "value": value} }

func lineOf(t *testing.T, live present.Live, section, id string) present.LiveLine {
	t.Helper()
	for _, s := range live.Sections {
		for _, l := range s.Lines {
			if s.ID == section && l.ID == id {
				return l
			}
		}
	}
	t.Fatalf("there is no %s in %s", id, section)
	return present.LiveLine{}
}

// What is not asked for is empty, what is asked for is as it is among all.
func TestPreviewOfSomeParts(t *testing.T) {
	r := newReal(t)
	id, _ := r.warpNamed("Galley towels")
	all := r.tried(id, map[string]any{})
	some := r.tried(id, map[string]any{"only": []string{"glance", "pieces", "reed", "winding", "yarns", "sett"}})
	var want []present.LiveSection
	for _, s := range all.Sections {
		if name, _, _ := strings.Cut(s.ID, "["); slices.Contains([]string{"glance", "pieces", "reed", "winding", "yarns"}, name) {
			want = append(want, s)
		}
	}
	if len(want) < 5 || len(want) == len(all.Sections) || !reflect.DeepEqual(some.Sections, want) {
		t.Errorf("sections %v, want %v", some.Sections, want)
	}
	if !reflect.DeepEqual(some.Yarns, all.Yarns) || !reflect.DeepEqual(some.Sett, all.Sett) || !reflect.DeepEqual(some.Stages, all.Stages) || some.Mark != all.Mark {
		t.Errorf("yarns %v, sett %v, stages %v", some.Yarns, some.Sett, some.Stages)
	}
	if len(some.Allowances)+len(some.Orders)+len(some.Findable)+len(some.Limits) != 0 || some.Draft != nil {
		t.Errorf("more came than was asked for: %+v", some)
	}
	none := r.tried(id, map[string]any{"only": []string{"orders"}})
	if len(none.Sections)+len(none.Yarns) != 0 || none.Sett != nil || !reflect.DeepEqual(none.Orders, all.Orders) {
		t.Errorf("orders alone: %+v", none)
	}
}

// A preview says all that the page shows, and nothing is written by it.
func TestPreviewOfAWarp(t *testing.T) {
	r := newReal(t)
	id, version := r.warpNamed("Galley towels")
	was := r.tried(id, map[string]any{"open": []string{"warp.wound"}})
	live := r.tried(id, map[string]any{"set": []any{set("pieces[0].count", 5)}, "open": []string{}})
	if live.Version != version || live.Name != "Galley towels" || live.Mark == was.Mark || len(live.Problems) != 0 {
		t.Errorf("version %d, %q, %s, %v", live.Version, live.Name, live.Mark, live.Problems)
	}
	before, after := lineOf(t, was, "glance", "warp.wound"), lineOf(t, live, "glance", "warp.wound")
	if before.Value == after.Value || before.Working == nil || after.Working != nil || before.Origin != "reckoned" {
		t.Errorf("%+v, then %+v", before, after)
	}
	if l := lineOf(t, live, "pieces[0]", "pieces[0].length"); l.Path != "pieces[0].length" || l.Origin != "given" || l.Typed != l.Value {
		t.Errorf("%+v", l)
	}
	var ids []string
	for _, s := range live.Sections {
		ids = append(ids, s.ID)
	}
	for _, want := range []string{"glance", "pieces[0]", "warp", "across", "winding", "reed", "weft", "yarns[white]", "defaults"} {
		if !slices.Contains(ids, want) {
			t.Errorf("no section %s in %q", want, ids)
		}
	}
	if live.Draft == nil || live.Draft.Shafts != 4 || live.Draft.Weave == "" || len(live.Yarns) != 2 || live.Yarns[0].Colour == "" {
		t.Errorf("%+v %+v", live.Draft, live.Yarns)
	}
	var shown struct{ Version int }
	if r.ask("GET", "/api/documents/"+itoa(id), nil, &shown); shown.Version != version {
		t.Error("the preview was written")
	}
}

// The stages say in a few words where a warp stands.
func TestStagesOfAPreview(t *testing.T) {
	r := newReal(t)
	half := []any{set("pieces[0].length", "28 i"), set("weave", "2/2 twill")}
	for words, ask := range map[string]struct {
		set  []any
		want string
	}{
		"galley towels": {nil, "piece: 6 towels; cloth: point twill, 24/in; numbers: all fits; dress: not begun; weave: ; finish: "},
		"towels galley": {half, "piece: 6 towels; cloth: 2/2 twill; numbers: 1 thing to mend; dress: not begun; weave: ; finish: "},
		"towel galley":  {[]any{set("loom.beam-holds", "2 m")}, "piece: 6 towels; cloth: point twill, 24/in; numbers: 1 thing needs care; dress: not begun; weave: ; finish: "},
		"hatch":         {nil, "piece: 2 runners; cloth: plain, 8/cm; numbers: all fits; dress: dressed; weave: 2200 of 2264 picks; finish: washed and measured"},
	} {
		var l list
		r.ask("GET", "/api/warps?words="+strings.ReplaceAll(words, " ", "+"), nil, &l)
		live := r.tried(l.Items[0].ID, map[string]any{"set": ask.set})
		var got []string
		for _, s := range live.Stages {
			got = append(got, s.ID+": "+s.Says)
		}
		if strings.Join(got, "; ") != ask.want {
			t.Errorf("%s: %s, want %s", words, strings.Join(got, "; "), ask.want)
		}
	}
}

// Allowances say where they come from, and how else what was typed can be read.
func TestAllowancesOfAPreview(t *testing.T) {
	r := newReal(t)
	id, _ := r.warpNamed("Galley towels")
	live := r.tried(id, map[string]any{"set": []any{
		set("allowances.take-up", "10 %"), set("allowances.shrinkage", "8 % + 2 %, then 1 in"),
		map[string]any{"path": "allowances.relaxation"},
		set("allowances.width-shrinkage", "10 in -> 9 in"), set("allowances.reed-to-relaxed", "gain 2 %"), set("pieces[0].count", 24),
	}})
	by := map[string]present.LiveAllowance{}
	for _, a := range live.Allowances {
		by[a.Key] = a
	}
	for key, want := range map[string]string{
		"take-up": "given 10 %", "shrinkage": "given 8 % + 2 %, then 1 in", "relaxation": "default 3 %", "loom-take-up": "reckoned 7.22 %",
		"width-shrinkage": "given 10 %", "reed-to-relaxed": "given gains 2 %", "reed-to-washed": "reckoned 8.2 %",
	} {
		if a := by[key]; a.Origin+" "+a.Value != want || a.Says == "" || a.From == "" || a.To == "" || a.Path != "allowances."+key {
			t.Errorf("%s: %+v, want %s", key, a, want)
		}
	}
	if a := by["relaxation"]; a.Usual == "" || a.Source == "" || a.Typed != "" || a.Across {
		t.Errorf("%+v", a)
	}
	for key, typed := range map[string]string{"take-up": "add 10 %", "shrinkage": "add 8 % + add 2 %, then 1 in"} {
		others := by[key].Others
		if len(others) != 1 || others[0].Typed != typed || !strings.Contains(others[0].Says, "yd") {
			t.Errorf("%s: other readings %+v", key, others)
			continue
		}
		again := r.tried(id, map[string]any{"set": []any{set("allowances."+key, others[0].Typed)}})
		if len(again.Problems) > 0 || again.Sections == nil {
			t.Errorf("%s cannot be written as %q: %+v", key, typed, again.Problems)
		}
	}
	if len(by["width-shrinkage"].Others) > 0 || len(live.Allowances) != 12 {
		t.Errorf("%d allowances", len(live.Allowances))
	}
}

// What is found is written so that it is found again.
func TestFindingInAPreview(t *testing.T) {
	r := newReal(t)
	id, _ := r.warpNamed("Galley towels")
	for _, what := range []string{"pieces[0].length", "pieces[0].width", "pieces[0].count", "warp.sett"} {
		sets := []any{set("warp.wound", "13 yd"), set("loom.width", "47 in"), set("yarns.white.stock", "12000 yd")}
		if what == "warp.sett" { // with bands of fixed ends the loosest cloth would be endlessly wide
			sets = append(sets, set("warp.stripes", "(white 1) x fill"), set("warp.threading", "(1 2) x fill"), map[string]any{"path": "draft"})
		}
		live := r.tried(id, map[string]any{"set": sets, "find": map[string]any{"what": what, "within": []string{"warp.wound", "yarns.white"}}})
		f := live.Found
		if f == nil || f.Typed == "" || f.Value == "" || f.Binding == "" || len(f.Limits) != 2 || f.Says == "" {
			t.Errorf("%s: %+v %+v", what, f, live.Problems)
			continue
		}
		var value any = f.Typed
		if strings.HasSuffix(what, "count") {
			value = json.Number(f.Typed)
		}
		taken := r.tried(id, map[string]any{"set": append(sets, set(what, value))})
		if len(taken.Sections) == 0 || taken.Found != nil {
			t.Errorf("%s taken as %q: %+v", what, f.Typed, taken.Problems)
		}
		if got, want := lineOf(t, taken, "glance", "ends.wound").Value, lineOf(t, live, "glance", "ends.wound").Value; got != want {
			t.Errorf("%s taken as %q winds %s ends, not %s", what, f.Typed, got, want)
		}
	}
	need := r.tried(id, map[string]any{"find": map[string]any{"what": "yarns.white"}})
	if need.Found == nil || need.Found.Typed != "" || need.Found.Value == "" {
		t.Errorf("a need: %+v", need.Found)
	}
	if len(need.Findable) < 5 || len(need.Limits) == 0 {
		t.Errorf("%+v %+v", need.Findable, need.Limits)
	}
}

// The parts of an order stand where a browser counts them, also behind letters that take
// two units there.
func TestOrdersOfAPreview(t *testing.T) {
	r := newReal(t)
	id, _ := r.warpNamed("Galley towels")
	live := r.tried(id, map[string]any{"set": []any{
		set("yarns.𝒷å", map[string]string{"count": "8/2 Ne"}), set("warp.stripes", "𝒷å 4, (white 6, 2 blue at 30 epi) x fill, 𝒷å 4"), set("warp.threading", "(1-4) x fill, 1"),
	}})
	o := live.Orders["warp.stripes"]
	if len(o.Runs) != 4 || !o.Fills || o.Total == 0 || len(o.Whole) < 20 {
		t.Fatalf("%+v %+v", o, live.Problems)
	}
	units := utf16Of(o.Typed)
	for i, want := range []string{"𝒷å 4", "white 6", "2 blue at 30 epi", "𝒷å 4"} {
		if got := string(units.text(o.Runs[i].At, o.Runs[i].To)); got != want {
			t.Errorf("part %d is %q, want %q", i, got, want)
		}
	}
	if run := o.Runs[2]; run.Yarn != "blue" || run.Count != 2 || run.Density != "30 epi" || run.Depth != 1 || !run.Fills {
		t.Errorf("%+v", run)
	}
	if threading := live.Orders["warp.threading"]; len(threading.Whole) > 0 || threading.Total != o.Total {
		t.Errorf("the threading is written out, or is not of every end: %+v", threading)
	}
	if run := live.Orders["warp.threading"].Runs[0]; run.First != 1 || run.Last != 4 || run.Count != 4 || run.Set != nil {
		t.Errorf("%+v", run)
	}
}

// The setts that are advised lie in bands, and what there is stands beside them.
func TestSettOfAPreview(t *testing.T) {
	r := newReal(t)
	id, _ := r.warpNamed("Galley towels")
	live := r.tried(id, map[string]any{"set": []any{set("yarns.white.wraps", "34 wpi touching")}})
	s := live.Sett
	if s == nil || s.Unit != "in" || s.Wanted == nil || *s.Wanted != 24 || s.Exact == nil || len(s.Bands) < 6 {
		t.Fatalf("%+v", s)
	}
	for _, b := range s.Bands {
		if b.Low <= 0 || b.High < b.Low || b.Value == "" || b.Source == "" || b.Says == b.ID {
			t.Errorf("%+v", b)
		}
	}
	five, err := os.ReadFile("../../../examples/five-lines.toml")
	if err != nil {
		t.Fatal(err)
	}
	var saved answered
	r.ask("POST", "/api/warps", map[string]any{"window": "w", "name": "Five lines.toml", "text": string(five)}, &saved)
	if live := r.tried(saved.ID, map[string]any{}); live.Sett != nil || live.Draft != nil || len(live.Sections) == 0 {
		t.Errorf("of a plan without yarn: %+v %+v", live.Sett, live.Draft)
	}
}

// What cannot be previewed says so; half-typed plans can.
func TestPreviewsThatCannotBe(t *testing.T) {
	r := newReal(t)
	id, _ := r.warpNamed("Galley towels")
	live := r.tried(id, map[string]any{"set": []any{set("pieces[0].length", "28"), set("pieces[", "x")}})
	if len(live.Sections) != 0 || len(live.Problems) != 2 || len(live.Allowances) != 12 || len(live.Orders) == 0 || len(live.Stages) != 6 {
		t.Errorf("%+v", live.Problems)
	}
	if status := r.ask("POST", "/api/documents/"+itoa(r.firstYarn())+"/reckoning", map[string]any{}, nil); status != 404 {
		t.Errorf("of a yarn: %d", status)
	}
	if status := r.ask("POST", "/api/documents/"+itoa(id)+"/reckoning", map[string]any{"sets": 1}, nil); status != 400 {
		t.Errorf("a key that is none: %d", status)
	}
}

// A document's values stand at the paths that changes are made by.
func TestPlanOfADocument(t *testing.T) {
	r := newReal(t)
	id, _ := r.warpNamed("Galley towels")
	var warp struct {
		Plan struct {
			Sley   int
			Pieces []struct{ Length string }
			Warp   struct{ Sett string }
		}
	}
	r.ask("GET", "/api/documents/"+itoa(id), nil, &warp)
	if warp.Plan.Sley != 1 || len(warp.Plan.Pieces) != 1 || warp.Plan.Pieces[0].Length == "" || warp.Plan.Warp.Sett != "24 epi" {
		t.Errorf("%+v", warp)
	}
	var yarn struct{ Plan struct{ Name, Count string } }
	r.ask("GET", "/api/documents/"+itoa(r.firstYarn()), nil, &yarn)
	if yarn.Plan.Name == "" || yarn.Plan.Count == "" {
		t.Errorf("%+v", yarn)
	}
	var saved answered
	r.ask("POST", "/api/looms", map[string]any{"window": "w", "name": "Board", "set": []any{
		set("shafts", 8), set("note", "by the window"), set("winding.mill", "2 yd"), set("reeds[0]", "12 dpi"),
	}}, &saved)
	var loom struct {
		Plan struct {
			Name, Note string
			Shafts     int
			Reeds      []string
			Winding    struct{ Mill string }
		}
	}
	r.ask("GET", "/api/documents/"+itoa(saved.ID), nil, &loom)
	if p := loom.Plan; p.Name != "Board" || p.Note != "by the window" || p.Shafts != 8 || len(p.Reeds) != 1 || p.Winding.Mill != "2 yd" {
		t.Errorf("%+v", loom)
	}
}

// units16 is a text as a browser counts it.
type units16 []uint16

func utf16Of(text string) units16 { return utf16.Encode([]rune(text)) }

func (u units16) text(from, to int) []rune { return utf16.Decode(u[from:to]) }
