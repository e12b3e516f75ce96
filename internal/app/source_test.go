package app

import (
	"io/fs"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/edge/wif"
	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/warp"
)

const pointing = "sley = 1\nwarp.sett = \"20 epi\"\ndraft.wif = \"twill.wif\"\n[[pieces]]\nlength = \"30 in\"\nwidth = \"10 in\"\n"

// pointTwill is a point twill of two repeats and its balancing end, with a floating
// selvedge at each edge, as an interchange text.
func pointTwill() []byte {
	d := &draft.Draft{
		Shafts: 4, Treadles: 4, Shed: loom.Sinking,
		Threading: []int{0, 1, 2, 3, 4, 3, 2, 1, 2, 3, 4, 3, 2, 1, 0},
		Treadling: []draft.Set{1, 2, 4, 8},
		Palette:   []draft.Colour{{R: 255, G: 255, B: 255}},
	}
	for _, up := range []draft.Set{draft.Of(1, 2), draft.Of(2, 3), draft.Of(3, 4), draft.Of(1, 4)} {
		d.Ties = append(d.Ties, draft.TieFor(d.Shed, up, 4))
	}
	return wif.Encode(wif.FromDraft(d))
}

func beside(files map[string][]byte) func(string) ([]byte, error) {
	return func(name string) ([]byte, error) {
		text, ok := files[name]
		if !ok {
			return nil, fs.ErrNotExist
		}
		return text, nil
	}
}

func TestPlanTakesItsDraftFromAFile(t *testing.T) {
	r, list := ReckonPlan(Source{Name: "p.toml", Text: []byte(pointing), Beside: beside(map[string][]byte{"twill.wif": pointTwill()})}, "", false)
	if list.Failed() {
		t.Fatal(list.All())
	}
	p := r.Plan
	if got := p.Warp.Threading.String(); got != "(1 2 3 4 3 2) x fill, 1" {
		t.Errorf("threading %q", got)
	}
	if got := p.Drafting.Treadling.String(); got != "(1 2 3 4) x fill" {
		t.Errorf("treadling %q", got)
	}
	if !slices.Equal(p.Drafting.Ups, []draft.Set{draft.Of(1, 2), draft.Of(2, 3), draft.Of(3, 4), draft.Of(1, 4)}) || p.Loom.Shed != loom.Sinking {
		t.Errorf("tie-up %v on a %s shed", p.Drafting.Ups, p.Loom.Shed)
	}
	if p.Drafting.Source == nil || p.Drafting.Source.Origin != "twill.wif" {
		t.Error("the plan keeps no copy of the draft")
	}
	if n, ok := r.Node("heddles[2]"); !ok || !n.Is.IsInt() {
		t.Error("no heddles are counted")
	}
}

func TestDraftsThatCannotBeTaken(t *testing.T) {
	for name, c := range map[string]struct {
		beside func(string) ([]byte, error)
		code   string
	}{
		"no folder":  {nil, "draft.no-folder"},
		"no file":    {beside(nil), "draft.not-found"},
		"a closed":   {func(string) ([]byte, error) { return nil, fs.ErrPermission }, "draft.unreadable"},
		"no draft":   {beside(map[string][]byte{"twill.wif": []byte("hello")}), "draft.faulty"},
		"empty file": {beside(map[string][]byte{"twill.wif": nil}), "draft.faulty"},
	} {
		r, list := ReckonPlan(Source{Name: "p.toml", Text: []byte(pointing), Beside: c.beside}, "", false)
		found := false
		for _, p := range list.All() {
			found = found || p.Code == c.code && p.Path == "draft.wif" && p.Place.Line == 3
		}
		if r != nil || !found {
			t.Errorf("%s: %v, want %s on line 3", name, list.All(), c.code)
		}
	}
}

// Whatever draft is adopted, what the plan draws is that draft again.
func TestAdoptedDraftsDrawTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		unit := rapid.SliceOfN(rapid.IntRange(1, 6), 1, 8).Draw(t, "unit")
		d := &draft.Draft{Shafts: 6, Threading: slices.Repeat(unit, rapid.IntRange(1, 5).Draw(t, "times"))}
		d.Lifts = rapid.SliceOfN(rapid.Map(rapid.IntRange(1, 62), func(n int) draft.Set { return draft.Set(n) }), 1, 12).Draw(t, "lifts")
		plan := &warp.Plan{}
		adoptDraft(plan, d)
		threading, lifts := plan.Warp.Threading, plan.Drafting.LiftPlan
		got, ok := plan.Drawn((d.Ends()-threading.Fixed())/threading.Filler(), (d.Picks()-lifts.Fixed())/lifts.Filler())
		if !ok || !got.Drawdown().Equal(d.Drawdown()) {
			t.Fatalf("%s and %s draw\n%swant\n%s", threading, lifts, got.Drawdown(), d.Drawdown())
		}
		if strings.Contains(threading.Text, "fill") == false {
			t.Fatal("nothing fills")
		}
	})
}

const colouredPlan = "sley = 1\nwarp.sett = \"20 epi\"\n[draft]\nwif = \"twill.wif\"\ncolours = { 1 = \"white\", 2 = \"blue\" }\n" +
	"[yarns.white]\ncount = \"8/2 Ne\"\n[yarns.blue]\ncount = \"8/2 Ne\"\n[[pieces]]\nlength = \"30 in\"\nwidth = \"10 in\"\n"

// striped is a twill whose ends come four and four in two colours between floating
// selvedges, and whose picks are two of one colour and two of the other.
func striped(palette int) []byte {
	d := &draft.Draft{Shafts: 4, Threading: []int{0, 1, 2, 3, 4, 1, 2, 3, 4, 0}, Lifts: []draft.Set{3, 6, 12, 9}, Palette: make([]draft.Colour, palette)}
	last := palette - 1
	d.Warp.Colours = []int{1, 0, 0, 0, 0, 1, 1, 1, 1, 0}
	d.Weft.Colours = []int{0, 0, last, last}
	return wif.Encode(wif.FromDraft(d))
}

func TestColoursOfADraft(t *testing.T) {
	r, list := ReckonPlan(Source{Name: "p.toml", Text: []byte(colouredPlan), Beside: beside(map[string][]byte{"twill.wif": striped(2)})}, "", false)
	if list.Failed() {
		t.Fatal(list.All())
	}
	if got := r.Plan.Warp.Stripes.String(); got != "(white 4, blue 4) x fill" {
		t.Errorf("stripes %q", got)
	}
	if got := r.Plan.Weft.Order.String(); got != "(white 2, blue 2) x fill" {
		t.Errorf("picks %q", got)
	}
	if n, ok := r.Node("yarns[blue].picks"); !ok || n.Is.IsZero() {
		t.Error("no picks are counted in blue")
	}
	_, list = ReckonPlan(Source{Name: "p.toml", Text: []byte(colouredPlan), Beside: beside(map[string][]byte{"twill.wif": striped(3)})}, "", false)
	all := list.All()
	if len(all) != 1 || all[0].Code != "draft.colour-yarn" || all[0].Place.Line != 5 {
		t.Errorf("a colour without a yarn: %v", all)
	}
}
