package web_test

import (
	"testing"
)

// going is a card as far as the work on it goes.
type going struct {
	ID       int
	Name     string
	Cloth    string
	Next     *struct{ Says, Stage string }
	Progress *struct{ Done, Of int }
}

func (r *real) going(query string) (out map[string]going, total int) {
	r.t.Helper()
	var l struct {
		Items []going
		Total int
	}
	if status := r.ask("GET", "/api/warps"+query, nil, &l); status != 200 {
		r.t.Fatalf("%s: %d", query, status)
	}
	out = map[string]going{}
	for _, c := range l.Items {
		out[c.Name] = c
	}
	return out, l.Total
}

// What there is to do next with a warp goes on with the work.
func TestNextOfAWarp(t *testing.T) {
	r := newReal(t)
	id, version := r.warpNamed("Galley towels")
	at := "/api/documents/" + itoa(id)
	next := func(want, stage string) {
		t.Helper()
		cards, _ := r.going("")
		if c := cards["Galley towels"]; c.Next == nil || c.Next.Says != want || c.Next.Stage != stage {
			t.Errorf("%+v, want %s at %s", c.Next, want, stage)
		}
	}
	next("print the sheets, then wind the warp", "dress")
	var done answered
	r.ask("POST", at+"/changes", edit(version, "w", "pieces[0].length", "28"), &done)
	next("1 thing to mend", "numbers")
	r.ask("POST", at+"/changes", edit(done.Version, "w", "pieces[0].length", "28 in"), &done)
	if status := r.ask("POST", at+"/start", map[string]any{"base": done.Version, "window": "w"}, nil); status != 200 {
		t.Fatal(status)
	}
	next("dress the loom and begin to weave", "weave")
	r.ask("POST", at+"/woven", map[string]any{"id": "woven-00000001", "window": "w", "pick": 320}, nil)
	next("weave on from pick 321", "weave")
	cards, _ := r.going("?stage=hand")
	if p := cards["Galley towels"].Progress; p == nil || p.Done != 320 || p.Of < 4000 {
		t.Errorf("%+v", p)
	}
	r.ask("POST", at+"/woven", map[string]any{"id": "woven-00000002", "window": "w", "pick": 9000}, nil)
	next("cut it off, wash it and measure it", "finish")
	r.ask("POST", at+"/log", map[string]any{"id": "done-00000001", "window": "w", "what": "finished"}, nil)
	if cards, _ := r.going("?stage=finished"); cards["Galley towels"].Next != nil || cards["Galley towels"].Name == "" {
		t.Errorf("finished: %+v", cards["Galley towels"])
	}
}

// Warps in hand and those that are finished are all warps, and each is in one list only.
func TestWarpsInHand(t *testing.T) {
	r := newReal(t)
	all, n := r.going("")
	hand, some := r.going("?stage=hand")
	finished, rest := r.going("?stage=finished")
	if some == 0 || rest == 0 || some+rest != n || len(hand)+len(finished) != len(all) {
		t.Errorf("%d in hand and %d finished of %d", some, rest, n)
	}
	for name := range hand {
		if _, both := finished[name]; both {
			t.Errorf("%s is in both", name)
		}
	}
	if got := all["Galley towels"].Cloth; got != "cottolin, point twill, 4 shafts" {
		t.Errorf("the cloth: %q", got)
	}
	for _, bad := range []string{"/api/warps?stage=dyed", "/api/drafts?stage=hand"} {
		if status := r.ask("GET", bad, nil, nil); status != 400 {
			t.Errorf("%s: %d", bad, status)
		}
	}
}
