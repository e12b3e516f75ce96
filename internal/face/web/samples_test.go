package web_test

import "testing"

func TestSamples(t *testing.T) {
	r := newReal(t)
	yarn, version := r.named("yarns", "wool 7/2, harbour")
	at := "/api/documents/" + itoa(yarn)
	set := func(path, value string) map[string]any {
		return map[string]any{"path": `samples."2/2 twill, fulled".` + path, "value": value}
	}
	var saved answered
	if status := r.ask("POST", at+"/changes", map[string]any{"base": version, "window": "w", "set": []map[string]any{
		set("weave", "2/2 twill"), set("sett", "6 ends/cm"), set("on-loom", "30 cm"), set("washed", "24 cm"),
	}}, &saved); status != 200 || len(saved.Problems) != 0 {
		t.Fatalf("%d %+v", status, saved)
	}
	var samples []struct {
		Name, Weave, Wash string
		Sizes             []struct{ Key, Says, Typed string }
		Learnt            []learnt
	}
	r.ask("GET", at+"/samples", nil, &samples)
	if len(samples) != 1 || samples[0].Name != "2/2 twill, fulled" || samples[0].Weave != "2/2 twill" || len(samples[0].Sizes) != 3 || samples[0].Sizes[1].Key != "on-loom" || len(samples[0].Learnt) != 1 || samples[0].Learnt[0].Value != "20 % lost" {
		t.Errorf("%+v", samples)
	}
	var advice []struct {
		learnt
		Warp int
	}
	blanket, _ := r.named("warps", "Berth blanket")
	r.ask("GET", "/api/documents/"+itoa(blanket)+"/samples", nil, &advice)
	said := map[string]string{}
	for _, a := range advice {
		said[a.Says+", "+a.Key] = a.Typed
	}
	const of = ": 2/2 twill, fulled, tape-to-washed"
	if said["your sample of wool 7/2, harbour"+of] != "30 cm -> 24 cm" || said["your sample of handspun, grey ewe"+of] != "40 cm -> 31 cm" {
		t.Errorf("advice for the blanket: %+v", advice)
	}
	advice = nil
	curtain, _ := r.named("warps", "Huck lace curtain")
	runner, _ := r.named("warps", "Hatch runner, finished")
	r.ask("GET", "/api/documents/"+itoa(curtain)+"/samples", nil, &advice)
	if len(advice) != 2 || advice[0].Says != "your record: Hatch runner, finished" || advice[0].Warp != runner || advice[0].Typed != "152 cm -> 139 cm" {
		t.Errorf("advice for the curtain: %+v", advice)
	}
	loom, _ := r.named("looms", "countermarch, 120 cm")
	for path, want := range map[string]int{"/api/documents/" + itoa(loom) + "/samples": 404, "/api/documents/99999/samples": 404} {
		if status := r.ask("GET", path, nil, nil); status != want {
			t.Errorf("%s: %d", path, status)
		}
	}
}
