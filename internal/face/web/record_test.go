package web_test

import (
	"strings"
	"testing"
)

type learnt struct{ Key, Path, Says, From, To, Value, Typed, Planned, Note string }

// named is the id of a document of the demo.
func (r *real) named(of, name string) (id, version int) {
	r.t.Helper()
	var l list
	r.ask("GET", "/api/"+of+"?most=200", nil, &l)
	for _, one := range l.Items {
		if one.Name == name {
			return one.ID, one.Version
		}
	}
	r.t.Fatalf("the demo has no %s in %s", name, of)
	return 0, 0
}

func TestRecordOfAWarp(t *testing.T) {
	r := newReal(t)
	id, _ := r.named("warps", "Hatch runner, finished")
	var got struct {
		Name, Stage, Sett string
		Sizes             []struct {
			Path, Says string
			States     []struct {
				State, Planned, Measured, Event string
				Counted                         bool
			}
		}
		Learnt []learnt
		Yarn   []struct{ ID, Says, Value, Note string }
		Log    []struct{ ID, What, Says, Note string }
	}
	if status := r.ask("GET", "/api/documents/"+itoa(id)+"/record", nil, &got); status != 200 || got.Stage != "finished" || got.Sett != "8/cm" {
		t.Fatalf("%d %+v", status, got)
	}
	if len(got.Sizes) != 2 || got.Sizes[0].Path != "pieces[0].length" || got.Sizes[0].Says != "length of runner" || len(got.Sizes[0].States) != 4 {
		t.Errorf("sizes %+v", got.Sizes)
	}
	if on := got.Sizes[0].States[1]; on.State != "on the loom" || on.Measured != "152 cm" || on.Planned == "" || on.Event == "" {
		t.Errorf("on the loom %+v", on)
	}
	if len(got.Learnt) != 2 || got.Learnt[0].Typed != "152 cm -> 139 cm" || got.Learnt[0].Value != "8.6 % lost" || got.Learnt[0].Planned != "7.9 % lost" || got.Learnt[0].From != "on the loom" || got.Learnt[0].Note == "" {
		t.Errorf("learnt %+v", got.Learnt)
	}
	if len(got.Yarn) == 0 || len(got.Log) != 4 || got.Log[3].Says == "" {
		t.Errorf("yarn %+v, log %+v", got.Yarn, got.Log)
	}
	yarn, _ := r.named("yarns", "linen 8/1, flax")
	for path, want := range map[string]int{"/api/documents/" + itoa(yarn) + "/record": 404, "/api/documents/x/record": 404, "/api/records?most=x": 400} {
		if status := r.ask("GET", path, nil, nil); status != want {
			t.Errorf("%s: %d, want %d", path, status, want)
		}
	}
}

func TestRecords(t *testing.T) {
	r := newReal(t)
	type records struct {
		Items []struct {
			Name, Sett string
			Yarns      []string
			Learnt     []learnt
		}
		Total int
		Next  string
	}
	var all, first, rest, found records
	r.ask("GET", "/api/records", nil, &all)
	if all.Total != 2 || len(all.Items) != 2 || all.Next != "" || strings.Join(all.Items[1].Yarns, "; ") != "linen 8/1, flax; cotton 8/2, indigo" || len(all.Items[1].Learnt) != 2 {
		t.Errorf("%+v", all)
	}
	r.ask("GET", "/api/records?most=1", nil, &first)
	r.ask("GET", "/api/records?most=1&after="+first.Next, nil, &rest)
	if first.Total != 2 || len(first.Items) != 1 || len(rest.Items) != 1 || rest.Items[0].Name != all.Items[1].Name || rest.Next == "" && first.Next == "" {
		t.Errorf("pages %+v and %+v", first, rest)
	}
	r.ask("GET", "/api/records?words=linen", nil, &found)
	if found.Total != 1 || found.Items[0].Name != "Hatch runner, finished" {
		t.Errorf("words %+v", found)
	}
}
