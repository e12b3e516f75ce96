package web_test

import (
	"fmt"
	"net/http"
	"sync"
	"testing"
)

// begun starts work on a warp of the demo.
func (r *real) begun(name string) int {
	r.t.Helper()
	id, version := r.warpNamed(name)
	if status := r.ask("POST", "/api/documents/"+itoa(id)+"/start", map[string]any{"base": version, "window": "w-test"}, nil); status != http.StatusOK {
		r.t.Fatal("not started:", status)
	}
	return id
}

func TestLoomsideIsTold(t *testing.T) {
	r := newReal(t)
	id := r.begun("Galley towels")
	l := r.loomside(id)
	if len(l.Steps) != 8 || l.Weaving.Total != 4542 || len(l.Forecast) < 6 || l.Way != "back to front" {
		t.Errorf("%+v", l)
	}
	if status := r.ask("GET", "/api/documents/9999/loomside", nil, nil); status != http.StatusNotFound {
		t.Errorf("no such warp: %d", status)
	}
	yarn, _ := r.named("yarns", "handspun, grey ewe")
	if status := r.ask("GET", "/api/documents/"+itoa(yarn)+"/loomside", nil, nil); status != http.StatusNotFound {
		t.Errorf("a yarn beside the loom: %d", status)
	}
}

// What is said at the loom is kept, and all that is wrong with it is said.
func TestWhatIsSaidAtTheLoom(t *testing.T) {
	r := newReal(t)
	id := r.begun("Galley towels")
	type refused struct{ Problems []struct{ Code, Fix string } }
	say := func(route string, said map[string]any) (int, refused) {
		var out refused
		said["window"] = "w-test"
		return r.ask("POST", "/api/documents/"+itoa(id)+"/"+route, said, &out), out
	}
	for _, c := range []struct {
		route string
		said  map[string]any
		code  string // empty: it is kept
	}{
		{"reached", map[string]any{"id": "event-001", "step": "threading", "place": 24}, ""},
		{"reached", map[string]any{"id": "event-002", "step": "weaving", "place": 400, "set": true}, ""},
		{"reached", map[string]any{"id": "event-003", "step": "weaving", "place": 4543, "set": true}, "loomside.place"},
		{"reached", map[string]any{"id": "event-004", "step": "spinning", "place": 1}, "loomside.step"},
		{"reached", map[string]any{"id": "short", "step": "weaving", "place": 1}, "event.id"},
		{"chosen", map[string]any{"id": "event-005", "what": "way", "value": "tying on"}, ""},
		{"chosen", map[string]any{"id": "event-006", "what": "way", "value": "upside down"}, "loomside.way"},
		{"tape", map[string]any{"id": "event-007", "typed": "18 1/4 in"}, ""},
		{"tape", map[string]any{"id": "event-008", "typed": "18 1/4"}, "size.unit"},
		{"weighed", map[string]any{"id": "event-009", "yarn": "white", "typed": "40 g"}, ""},
		{"weighed", map[string]any{"id": "event-010", "yarn": "gold", "typed": "40 g"}, "loomside.yarn"},
	} {
		status, out := say(c.route, c.said)
		switch {
		case c.code == "" && status != http.StatusOK:
			t.Errorf("%s %v: %d, %+v", c.route, c.said, status, out)
		case c.code != "" && (status != http.StatusUnprocessableEntity || len(out.Problems) == 0 || out.Problems[0].Fix == ""):
			t.Errorf("%s %v: %d, %+v", c.route, c.said, status, out)
		case c.code != "" && c.code != "size.unit" && out.Problems[0].Code != c.code:
			t.Errorf("%s %v: %+v, want %s", c.route, c.said, out.Problems, c.code)
		}
	}
	if status := r.ask("POST", "/api/documents/"+itoa(id)+"/reached", map[string]any{"id": "event-011", "pace": 3}, nil); status != http.StatusBadRequest {
		t.Errorf("an unknown key: %d", status)
	}
	if l := r.loomside(id); l.Woven != 400 || l.done("beaming") != 0 || l.Way != "tying on" {
		t.Errorf("%+v", l)
	}
}

// Four devices weave at once, each asking for all of it meanwhile: no pick is lost or
// counted twice.
func TestFourDevicesWeaveAtOnce(t *testing.T) {
	r := newReal(t)
	id := r.begun("Galley towels")
	var all sync.WaitGroup
	for device := range 4 {
		all.Go(func() {
			for pick := range 12 + device {
				said := map[string]any{"id": fmt.Sprintf("event-%d-%d", device, pick), "window": "w-test", "step": "weaving", "from": pick, "place": pick + 1}
				if status := r.ask("POST", "/api/documents/"+itoa(id)+"/reached", said, nil); status != http.StatusOK {
					t.Errorf("device %d, pick %d: %d", device, pick, status)
				}
				if got := r.loomside(id).Woven; got < pick+1 || got > 15 {
					t.Errorf("device %d, pick %d: it stands at %d", device, pick, got)
				}
			}
		})
	}
	all.Wait()
	if got := r.loomside(id).Woven; got != 15 {
		t.Errorf("%d picks, want 15", got)
	}
}
