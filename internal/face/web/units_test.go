package web_test

import (
	"strings"
	"testing"
)

// Figures are shown in the units of the book, unless the plan says its own; no number and
// no step changes by it.
func TestUnitsOfTheBook(t *testing.T) {
	r := newReal(t)
	towels, version := r.warpNamed("Galley towels")
	blanket, _ := r.warpNamed("Berth blanket")
	was := r.tried(towels, map[string]any{})
	var u struct {
		Length, Yarn, Weight, Density, Count string
		Choices                              map[string][]string
	}
	if status := r.ask("GET", "/api/units", nil, &u); status != 200 || u.Length != "" || len(u.Choices) != 5 || len(u.Choices["count"]) < 8 {
		t.Fatalf("%d %+v", status, u)
	}
	if status := r.ask("POST", "/api/units", map[string]string{"length": "cm", "yarn": "m", "weight": "G", "density": "10cm", "count": "nm"}, &u); status != 200 || u.Count != "Nm" || u.Weight != "g" {
		t.Fatalf("%d %+v", status, u)
	}
	live := r.tried(towels, map[string]any{})
	wound := lineOf(t, live, "glance", "warp.wound").Value
	if !strings.Contains(wound, " m (") || strings.Contains(lineOf(t, was, "glance", "warp.wound").Value, " m") {
		t.Errorf("wound: %s", wound)
	}
	if got := lineOf(t, live, "pieces[0]", "pieces[0].length").Value; got != "71.12 cm" {
		t.Errorf("28 in is %s", got)
	}
	if step := lineOf(t, live, "defaults", "step"); step.Value != "22.86 cm" {
		t.Errorf("the winding step became %s", step.Value)
	}
	if live.Sett.Unit != "10 cm" {
		t.Errorf("setts are over %s", live.Sett.Unit)
	}
	var full struct {
		Figures []struct{ ID, Value string }
		Nodes   []struct{ ID, Bench string }
	}
	r.ask("GET", "/api/documents/"+itoa(towels), nil, &full)
	if len(full.Figures) == 0 || !strings.Contains(full.Figures[0].Value, " m") {
		t.Errorf("the card: %+v", full.Figures)
	}
	r.ask("GET", "/api/documents/"+itoa(towels)+"/reckoning", nil, &full)
	for _, n := range full.Nodes {
		if n.ID == "warp.wound" && n.Bench != wound {
			t.Errorf("reckoned %s, previewed %s", n.Bench, wound)
		}
	}
	r.ask("POST", "/api/units", map[string]string{"length": "in"}, nil)
	if got := lineOf(t, r.tried(blanket, map[string]any{}), "glance", "warp.wound").Value; !strings.Contains(got, " m") {
		t.Errorf("the blanket says its own units, and is shown as %s", got)
	}
	var done answered
	r.ask("POST", "/api/documents/"+itoa(towels)+"/changes", edit(version, "w", "units.length", "in"), &done)
	r.ask("POST", "/api/units", map[string]string{"length": "cm"}, nil)
	if got := lineOf(t, r.tried(towels, map[string]any{}), "pieces[0]", "pieces[0].length").Value; got != "28 in" {
		t.Errorf("the plan's own units: %s", got)
	}
	for _, bad := range []map[string]string{{"length": "ell"}, {"colour": "blue"}} {
		var refused answered
		if status := r.ask("POST", "/api/units", bad, &refused); status != 422 || len(refused.Problems) != 1 || refused.Problems[0].Fix == "" {
			t.Errorf("%v: %d %+v", bad, status, refused)
		}
	}
	r.ask("POST", "/api/units", map[string]string{"length": "", "yarn": "", "weight": "", "density": "", "count": ""}, &u)
	if u.Length+u.Yarn+u.Weight+u.Density+u.Count != "" {
		t.Errorf("unset: %+v", u)
	}
}
