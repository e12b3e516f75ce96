package reckon_test

import (
	"slices"
	"strings"
	"testing"

	"sley/internal/edge/planfile"
	"sley/internal/engine/reckon"
	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
)

// drafted is a plan of 10 in at 10 epi with a draft and a loom.
func drafted(t *testing.T, threading, draft, loom string) *reckon.Result {
	t.Helper()
	text := "sley = 1\n[[pieces]]\nlength = \"40 in\"\nwidth = \"10 in\"\n" + `
[allowances]
take-up = "none"
relaxation = "none"
shrinkage = "none"
reed-to-relaxed = "none"
width-shrinkage = "none"
width-relaxation = "none"
` + "[warp]\nsett = \"10 epi\"\nthreading = \"" + threading + "\"\n[draft]\n" + draft + "\n[loom]\n" + loom + "\n"
	plan, _, list := planfile.Decode("drafted.toml", []byte(text))
	if list.Failed() {
		t.Fatal(list.All())
	}
	return reckon.Reckon(plan, reckon.Options{})
}

// toldOf are the codes of what a reckoning says of its draft and its loom's part
// in it.
func toldOf(r *reckon.Result) []string {
	var out []string
	for _, p := range r.Problems.All() {
		if name, _, _ := strings.Cut(p.Code, "."); slices.Contains([]string{"draft", "loom", "cloth", "edges"}, name) {
			out = append(out, p.Code+" at "+p.Path)
		}
	}
	return out
}

const twillTies = `tie-up = ["1 2", "2 3", "3 4", "1 4"]` + "\n"

func TestDraftsOfAPlan(t *testing.T) {
	for _, c := range []struct {
		what, threading, draft, loom string
		want                         []string
	}{
		{"an ordinary twill: from which side to start", "(1 2 3 4) x fill", twillTies + `treadling = "1 2 3 4"`, `shafts = 4` + "\n" + `treadles = 6` + "\n" + `shed = "countermarch"`, []string{"edges.start at draft"}},
		{"more treadles than the loom has", "(1 2 3 4) x fill", twillTies + `treadling = "1 2 3 4"`, "treadles = 2", []string{"edges.start at draft", "loom.treadles at draft.tie-up", "loom.two-footed at loom.treadles"}},
		{"two feet on the treadles that there are", "(1 2) x fill", `tie-up = ["1", "2 3"]` + "\n" + `treadling = "1 2 1+2"`, "shafts = 3\ntreadles = 2", []string{"draft.all-up at draft.treadling"}},
		{"lifts for a loom with few treadles", "(1 2 3 4) x fill", `lift-plan = "1+2 2+3 3+4 1+4"`, "treadles = 3", []string{"edges.start at draft", "loom.two-footed at loom.treadles"}},
		{"lifts of a table loom", "(1 2 3 4) x fill", `lift-plan = "1+2 2+3 3+4 1+4"`, "treadles = 3\nshed = \"table\"", []string{"edges.start at draft"}},
		{"a shaft beyond the loom's, in the tie-up", "(1 2) x fill", `tie-up = ["1", "2 5"]` + "\n" + `treadling = "1 2"`, "shafts = 4", []string{"loom.shafts at draft"}},
		{"a pick that lifts nothing that is threaded", "(1 2) x fill", `lift-plan = "1 2 3"`, "", []string{"draft.none-up at draft.lift-plan"}},
		{"two feet against one another", "(1 2 3 4) x fill", twillTies + `treadling = "1+2 3 4 1"`, `shed = "countermarch"`, []string{"draft.locked at draft.treadling"}},
		{"plain weave is nothing to speak of", "(1 2 3 4) x fill", `tie-up = ["1 3", "2 4"]` + "\n" + `treadling = "1 2"`, "", nil},
		{"two layers", "(1 2 3 4) x fill", `lift-plan = "1 1+2+3 3 1+3+4"`, "", []string{"cloth.layers at draft"}},
		{"picks that nothing holds", "(1 2 3 4) x fill", `lift-plan = "1+2 1+2+3 1"`, "", []string{"cloth.loose at draft", "edges.bare at draft"}},
		{"long floats of a satin at a coarse sett", "(1-8) x fill", `lift-plan = "1 4 7 2 5 8 3 6"`, "", []string{"cloth.warp-float at draft", "cloth.weft-float at draft", "edges.bare at draft"}},
		{"one against three", "(1 2 3 4) x fill", `lift-plan = "1 2 3 4"`, `shed = "counterbalance"`, []string{
			"draft.uneven-shed at draft.lift-plan", "draft.uneven-shed at draft.lift-plan", "draft.uneven-shed at draft.lift-plan", "draft.uneven-shed at draft.lift-plan",
		}},
	} {
		if got := toldOf(drafted(t, c.threading, c.draft, c.loom)); !slices.Equal(got, c.want) {
			t.Errorf("%s: got %q, want %q", c.what, got, c.want)
		}
	}
}

// The draft of the warp has every working end, and is tied for the plan's loom.
func TestDrawnDraft(t *testing.T) {
	r := drafted(t, "(1 2 3 4 3 2) x fill, 1", twillTies+`treadling = "(1 2 3 4 3 2) x fill, 1"`, `shed = "sinking"`)
	d, ok := r.Drawn()
	ends, _ := r.Node("ends")
	if !ok || d.Ends() != ends.Is.Count(0) || d.Picks() != 7 || d.Shed != loom.Sinking || d.Ties[0].Tied != draft.Of(3, 4) {
		t.Fatalf("got %+v", d)
	}
	if w := d.Drawdown(); !strings.HasPrefix(w.String(), "##...###...#") {
		t.Errorf("got\n%s", w)
	}
	if _, ok := drafted(t, "(1 2 3 4) x fill", "", "").Drawn(); ok {
		t.Error("a draft without treadling")
	}
}
