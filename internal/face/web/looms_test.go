package web_test

import (
	"strings"
	"testing"
)

// A loom is added with all that a plan can say of one, and each is changed by its path,
// items of lists too; its card tells what it is known by.
func TestLoomWithAllItHas(t *testing.T) {
	r := newReal(t)
	set := func(path string, value any) map[string]any { return map[string]any{"path": path, "value": value} }
	var added answered
	status := r.ask("POST", "/api/looms", map[string]any{"window": "w", "name": "jack loom", "set": []any{
		set("shafts", 4), set("treadles", 6), set("shed", "rising"), set("width", "36 in"),
		set("reeds", []string{"8 dpi", "10 dpi"}), set("heddles", []int{100, 200, 200, 100}),
		set("waste", map[string]any{"tie-on": "10 in", "unreachable": "18 in"}), set("beam-holds", "12 yd"),
		set("winding.pegs", []string{"start 0 in, 0 in", "cross-1 1 yd, 0 in", "cross-2 1 yd, 1 yd", "end 0 in, 1 yd"}), set("winding.raddle", "2/in"),
	}}, &added)
	if status != 200 || len(added.Problems) != 0 {
		t.Fatalf("%d %+v", status, added)
	}
	at := "/api/documents/" + itoa(added.ID)
	var changed answered
	status = r.ask("POST", at+"/changes", map[string]any{"base": 1, "window": "w", "set": []any{
		set("reeds[1]", "12 dpi"), set("reeds[2]", "50/10 cm"),
		map[string]any{"path": "reeds[0]"},
		set("heddles[0]", 150), set("waste.back", "5 in"), set("winding.pegs[3]", "end 0 in, 40 in"), set("shed", "countermarch"),
	}}, &changed)
	if status != 200 || len(changed.Problems) != 0 {
		t.Fatalf("%d %+v", status, changed)
	}
	var shown struct {
		Text    string
		Figures []figureRead
	}
	r.ask("GET", at, nil, &shown)
	for _, want := range []string{
		`reeds = ["12 dpi", "50/10 cm"]`, "heddles = [150, 200, 200, 100]", `shed = "countermarch"`,
		`back = "5 in"`, "end 0 in, 40 in", `raddle = "2/in"`,
	} {
		if !strings.Contains(shown.Text, want) {
			t.Errorf("%s is not in\n%s", want, shown.Text)
		}
	}
	figures := map[string]string{}
	for _, f := range shown.Figures {
		figures[f.ID] = f.Value
	}
	for id, want := range map[string]string{
		"loom.shafts": "4", "loom.treadles": "6", "loom.reeds": "2", "loom.shed": "countermarch", "loom.width": "36 in",
	} {
		if figures[id] != want {
			t.Errorf("%s is %q, want %q", id, figures[id], want)
		}
	}
}
