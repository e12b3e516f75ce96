package web_test

import (
	"slices"
	"strings"
	"testing"
)

type labelled struct {
	Name  string
	Forms []struct {
		Form, Says, Rules, Text string
		Lines, Notes            []string
	}
	Shares   []struct{ Fibre, Dry, Allowance, Label string }
	Yarns    []struct{ Yarn, Fibre, Warp, Weft, Weight, Basis string }
	Basis    []string
	Care     []struct{ About, Says, Why string }
	Check    string
	Problems []struct{ Code, Path, Severity, Says, Fix string }
}

// TestLabelOfAWarp: what is in the cloth of the runner as it was amended: 294 ends, one of
// two runners longer than planned.
func TestLabelOfAWarp(t *testing.T) {
	r := newReal(t)
	id, _ := r.named("warps", "Hatch runner, finished")
	var got labelled
	if status := r.ask("GET", "/api/documents/"+itoa(id)+"/label", nil, &got); status != 200 || len(got.Problems) > 0 || len(got.Forms) != 2 {
		t.Fatalf("%d %+v", status, got)
	}
	if got.Forms[0].Text != "86.4 % linen, 13.6 % cotton" || got.Forms[1].Text != "86% Linen, 14% Cotton" {
		t.Errorf("%q and %q", got.Forms[0].Text, got.Forms[1].Text)
	}
	if len(got.Yarns) != 2 || got.Yarns[1].Yarn != "indigo" || got.Yarns[1].Weft != "" || got.Yarns[1].Basis != "shelf" {
		t.Errorf("yarns %+v", got.Yarns)
	}
	if len(got.Care) != 4 || !strings.Contains(got.Check, "local rule") || len(got.Basis) != 2 {
		t.Errorf("care %+v, check %q, basis %q", got.Care, got.Check, got.Basis)
	}
}

// TestLabelAsksForShares: of the towels' cottolin nobody said the shares; care is told all
// the same.
func TestLabelAsksForShares(t *testing.T) {
	r := newReal(t)
	id, _ := r.named("warps", "Galley towels")
	var got labelled
	if status := r.ask("GET", "/api/documents/"+itoa(id)+"/label", nil, &got); status != 200 || len(got.Forms) != 0 || len(got.Care) != 4 {
		t.Fatalf("%d %+v", status, got)
	}
	for i, path := range []string{"yarns.blue.fibre", "yarns.white.fibre"} {
		if p := got.Problems[i]; p.Code != "content.blend" || p.Path != path || !strings.Contains(p.Says, "cottolin") || !strings.Contains(p.Fix, "cotton 60 %, linen 40 %") {
			t.Errorf("problem %+v", p)
		}
	}
}

type finished struct {
	Name  string
	Steps []struct {
		Step, Says, How string
		Notes, Cautions []string
		Figures         []struct{ ID, Says, Value string }
		Measures        []struct{ Path, State, Says, Planned string }
	}
	Problems []struct{ Code string }
}

func TestStepsOfAWarp(t *testing.T) {
	r := newReal(t)
	id, _ := r.named("warps", "Berth blanket")
	var got finished
	if status := r.ask("GET", "/api/documents/"+itoa(id)+"/finishing", nil, &got); status != 200 || len(got.Problems) > 0 || got.Name != "Berth blanket" {
		t.Fatalf("%d %+v", status, got)
	}
	var steps []string
	for _, s := range got.Steps {
		steps = append(steps, s.Step)
		for _, text := range append(append([]string{s.Says, s.How}, s.Notes...), s.Cautions...) {
			if text == "" || strings.Contains(text, "{") {
				t.Errorf("%s says %q", s.Step, text)
			}
		}
	}
	want := strings.Fields("hemstitch measure-on-loom cut-off rest measure-relaxed mend fringe full dry press trim rest-again measure-finished")
	if !slices.Equal(steps, want) {
		t.Errorf("%q, want %q", steps, want)
	}
	if m := got.Steps[1].Measures; len(m) != 2 || m[0].Path != "pieces[0].length" || m[0].State != "on the loom" || m[0].Planned != "268 cm" || m[1].State != "at the fell" {
		t.Errorf("measures %+v", m)
	}
	if f := got.Steps[6].Figures; len(f) != 9 || f[0].ID != "pieces[0].first.fringe-cut" || f[0].Value != "13.5 cm" {
		t.Errorf("figures %+v", f)
	}
}

// TestAfterTheLastPickOfNothing: neither is of anything but a warp, nor of a plan that
// cannot be reckoned, which says why.
func TestAfterTheLastPickOfNothing(t *testing.T) {
	r := newReal(t)
	yarn, _ := r.named("yarns", "linen 8/1, flax")
	id, version := r.named("warps", "Galley towels")
	r.ask("POST", "/api/documents/"+itoa(id)+"/changes", object{"window": "a window", "base": version, "set": []object{{"path": "pieces[0].width", "value": "18"}}}, nil)
	for _, what := range []string{"label", "finishing"} {
		if status := r.ask("GET", "/api/documents/"+itoa(yarn)+"/"+what, nil, nil); status != 404 {
			t.Errorf("%s of a yarn: %d", what, status)
		}
		if status := r.ask("GET", "/api/documents/x/"+what, nil, nil); status != 404 {
			t.Errorf("%s of x: %d", what, status)
		}
		var got finished
		if status := r.ask("GET", "/api/documents/"+itoa(id)+"/"+what, nil, &got); status != 200 || len(got.Problems) == 0 || len(got.Steps) > 0 {
			t.Errorf("%s of half a plan: %d %+v", what, status, got)
		}
	}
}
