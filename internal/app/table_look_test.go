package app_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"sley/examples"
	"sley/internal/app"
	"sley/internal/engine/review"
	"sley/internal/trade/record"
)

// topics are what is told of a draft.
func topics(t tb, s *app.Studio, asked app.Looking) []review.Topic {
	t.Helper()
	looked, list, err := s.LookOver(context.Background(), asked)
	if err != nil || looked == nil {
		t.Fatal(err, codesOf(list))
	}
	var out []review.Topic
	for _, f := range looked.Findings {
		out = append(out, f.Topic)
	}
	return out
}

// A warp is judged on its loom and over its ends, a draft of the shelf by itself.
func TestLookOver(t *testing.T) {
	s := openStudio(t)
	sound := addWarp(t, s, string(examples.GalleyTowels))
	if got := topics(t, s, app.Looking{ID: sound.ID}); len(got) != 0 {
		t.Errorf("the towels: %v", got)
	}
	if got := topics(t, s, app.Looking{ID: sound.ID, Whole: true, Use: "towel"}); len(got) != 0 {
		t.Errorf("the towels, whole: %v", got)
	}
	small := addWarp(t, s, withThreading(strings.Replace(threaded, "shafts = 4", "shafts = 3", 1)))
	if got := topics(t, s, app.Looking{ID: small.ID}); !slices.Contains(got, review.LacksShafts) {
		t.Errorf("four shafts on a loom with three: %v", got)
	}
	saved, err := s.AddWeave(context.Background(), left, "ground", "twill", nil)
	mustSaved(t, saved, err)
	if got := topics(t, s, app.Looking{ID: saved.ID}); len(got) != 0 {
		t.Errorf("a twill: %v", got)
	}
}

// What is asked for wrongly is told at once; what has no draft is trouble.
func TestLookOverRefuses(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, string(examples.GalleyTowels))
	asked := app.Looking{ID: warp.ID, Use: "sails", Shuttles: app.Shuttles{Order: "1 x", Starts: []string{"up"}}}
	looked, list, err := s.LookOver(context.Background(), asked)
	if looked != nil || err != nil {
		t.Fatal(looked, err)
	}
	wantCodes(t, "no use, no shuttles", list, "shuttles look.shuttles", "use look.use")
	yarn := addYarn(t, s, "white")
	if _, _, err := s.LookOver(context.Background(), app.Looking{ID: yarn.ID}); !record.Is(err, record.NotFound) {
		t.Errorf("a yarn: %v", err)
	}
	if _, _, err := s.Table(context.Background(), yarn.ID, false); !record.Is(err, record.NotFound) {
		t.Errorf("a yarn: %v", err)
	}
}
