package app_test

import (
	"fmt"
	"strings"
	"testing"

	"sley/internal/app"
	"sley/internal/trade/record"
)

// advice is what a warp is advised, as WHOSE: KEY = TYPED.
func advice(t tb, s *app.Studio, id record.ID) string {
	t.Helper()
	all, err := s.Advice(ctxOf(), id)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, a := range all {
		out = append(out, a.Yarn+a.Warp+" "+a.Sample+": "+a.Key+" = "+a.Typed())
	}
	return strings.Join(out, "; ")
}

// A sample is entered size by size, and says an allowance when two states are there.
func TestSamplesOfAYarn(t *testing.T) {
	s := openStudio(t)
	yarn := addYarn(t, s, "grey ewe", "count=2/8 Nm", "fibre=wool")
	save(t, s, yarn.ID, left, `samples."2/2 twill, fulled".on-loom=10 in`, `samples."2/2 twill, fulled".wash=fulled`)
	got, err := s.Samples(t.Context(), yarn.ID)
	if err != nil || len(got) != 1 || got[0].Name != "2/2 twill, fulled" || got[0].Wash != "fulled" || len(got[0].Learnt) != 0 {
		t.Fatalf("%+v, %v", got, err)
	}
	saved := save(t, s, yarn.ID, left, `samples."2/2 twill, fulled".washed=8 1/2 in`, `samples.plain.reed=35`)
	wantCodes(t, "a bare number", saved.Problems, "samples.plain.reed length.no-unit")
	got, _ = s.Samples(t.Context(), yarn.ID)
	if len(got) != 2 || len(got[0].Learnt) != 1 || got[0].Learnt[0].Typed() != "10 in -> 8 1/2 in" || len(got[1].Learnt) != 0 {
		t.Errorf("%+v", got)
	}
	if on := shown(t, s, yarn.ID); len(on.Samples) != 2 || !strings.Contains(string(on.Text), "\"2/2 twill, fulled\" = { ") {
		t.Errorf("shown with %d samples:\n%s", len(on.Samples), on.Text)
	}
	warp := addWarp(t, s, towels)
	if _, err := s.Samples(t.Context(), warp.ID); !record.Is(err, record.NotFound) {
		t.Errorf("the samples of a warp: %v", err)
	}
	if _, err := s.Advice(t.Context(), yarn.ID); !record.Is(err, record.NotFound) {
		t.Errorf("advice for a yarn: %v", err)
	}
}

// A warp goes by the samples that its own copy of a yarn has, and by those that the shelf
// has besides.
func TestAdviceOfSamples(t *testing.T) {
	s := openStudio(t)
	yarn := addYarn(t, s, "grey ewe", "count=2/8 Nm", "fibre=wool", "samples.first.on-loom=10 in", "samples.first.washed=9 in")
	warp := addWarp(t, s, hemmed)
	if got := advice(t, s, warp.ID); got != "" {
		t.Errorf("of no yarn of the shelf: %q", got)
	}
	saved, err := s.Use(t.Context(), edit(t, s, warp.ID, left), "yarns.white", yarn.ID)
	mustSaved(t, saved, err)
	save(t, s, yarn.ID, left, "samples.first.washed=8 in", "samples.second.reed=35 cm", "samples.second.width-washed=30 cm")
	want := "grey ewe first: tape-to-washed = 10 in -> 9 in; grey ewe second: reed-to-washed = 35 cm -> 30 cm"
	if got := advice(t, s, warp.ID); got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// Records advise warps in the same fibre, the newest first and five for each allowance.
func TestAdviceOfRecords(t *testing.T) {
	s := openStudio(t)
	plan := func(name, fibre string) string {
		return strings.Replace(strings.Replace(hemmed, "Hemmed", name, 1), "[yarns.white]\n", "[yarns.white]\nfibre = \""+fibre+"\"\n", 1)
	}
	finish := func(name, fibre, washed string) {
		warp := addWarp(t, s, plan(name, fibre))
		measure(t, s, warp.ID, "pieces[0].length", "on the loom", "34 in")
		measure(t, s, warp.ID, "pieces[0].length", "finished", washed)
		start(t, s, warp.ID)
		if _, list, err := s.Logged(t.Context(), app.Happened{Document: warp.ID, What: record.Finished}, 0); err != nil || list.Failed() {
			t.Fatal(err, list.All())
		}
	}
	for i := range 7 {
		finish(fmt.Sprintf("linen %d", 9-i), []string{"linen", "flax"}[i%2], fmt.Sprintf("%d in", 20+i))
	}
	finish("wool", "wool", "25 in")
	planned := addWarp(t, s, plan("next", "linen"))
	got := advice(t, s, planned.ID)
	if strings.Count(got, "tape-to-washed") != 5 || !strings.HasPrefix(got, "linen 3 : tape-to-washed = 34 in -> 28 1/2 in; linen 4 : ") || strings.Contains(got, "wool") {
		t.Errorf("%q", got)
	}
	unsaid := addWarp(t, s, hemmed)
	if got := advice(t, s, unsaid.ID); got != "" {
		t.Errorf("of a fibre that is not known: %q", got)
	}
}
