package web_test

import (
	"strings"
	"testing"
)

type figureRead struct{ ID, Says, Value, Note string }

// Each kind is offered at its own round size, and a warp of it has that size.
func TestWarpIsBegunByItsKind(t *testing.T) {
	r := newReal(t)
	var kinds []struct {
		ID, Name, Says string
		Pieces         []struct {
			Name, Length, Width, Both string
			Count                     int
		}
		Usual []figureRead
	}
	if status := r.ask("GET", "/api/kinds?units=metric", nil, &kinds); status != 200 || len(kinds) < 16 {
		t.Fatalf("%d, %d kinds", status, len(kinds))
	}
	for _, k := range kinds {
		if k.Says == "" || len(k.Pieces) != 1 || k.Usual[0].ID != "length" || k.Usual[0].Note == "" {
			t.Errorf("%+v", k)
		}
	}
	towel := kinds[1]
	if towel.ID != "tea-towel" || towel.Pieces[0].Length != "70 cm" || towel.Pieces[0].Both != "hem 2 cm + 0.5 cm" {
		t.Errorf("%+v", towel)
	}
	if status := r.ask("GET", "/api/kinds?units=ells", nil, nil); status != 400 {
		t.Errorf("units that are none: %d", status)
	}
	var begun answered
	body := map[string]any{"window": "w", "kind": "tea-towel", "name": "For the quay", "count": 3, "units": "metric", "yarn": r.yarnNamed("cottolin, white")}
	if status := r.ask("POST", "/api/warps/new", body, &begun); status != 200 || begun.Version != 1 {
		t.Fatalf("%d %+v", status, begun)
	}
	var shown struct {
		Text    string
		Origins []struct{ Part string }
	}
	r.ask("GET", "/api/documents/"+itoa(begun.ID), nil, &shown)
	if !strings.Contains(shown.Text, "length = \"70 cm\"") || !strings.Contains(shown.Text, "count = 3") || len(shown.Origins) != 1 {
		t.Errorf("%+v", shown)
	}
	var refused answered
	if status := r.ask("POST", "/api/warps/new", map[string]any{"window": "w", "kind": "sail"}, &refused); status != 422 || refused.Problems[0].Path != "kind" {
		t.Errorf("%d %+v", status, refused)
	}
	if status := r.ask("POST", "/api/warps/new", map[string]any{"window": "w", "kind": "rug", "loom": begun.ID}, nil); status != 404 {
		t.Errorf("a loom that is a warp: %d", status)
	}
}

func (r *real) yarnNamed(name string) int {
	r.t.Helper()
	var l list
	r.ask("GET", "/api/yarns?most=200", nil, &l)
	for _, y := range l.Items {
		if y.Name == name {
			return y.ID
		}
	}
	r.t.Fatalf("there is no yarn %q", name)
	return 0
}

// A copy stands beside what it was made of.
func TestDocumentIsCopied(t *testing.T) {
	r := newReal(t)
	id, version, name := r.firstWarp()
	var copied answered
	if status := r.ask("POST", "/api/documents/"+itoa(id)+"/copy", map[string]any{"window": "w"}, &copied); status != 200 || copied.ID == id || copied.Version != 1 {
		t.Fatalf("%d %+v", status, copied)
	}
	var shown struct {
		Name, Stage string
		Demo        bool
	}
	r.ask("GET", "/api/documents/"+itoa(copied.ID), nil, &shown)
	if shown.Name != name+" 2" || shown.Stage != "planned" || shown.Demo {
		t.Errorf("%+v", shown)
	}
	if _, now, _ := r.firstWarp(); now != version {
		t.Errorf("what was copied has version %d, had %d", now, version)
	}
	if status := r.ask("POST", "/api/documents/99999/copy", map[string]any{"window": "w"}, nil); status != 404 {
		t.Errorf("a copy of nothing: %d", status)
	}
}
