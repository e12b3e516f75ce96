package app_test

import (
	"context"
	"testing"

	"sley/internal/app"
	"sley/internal/trade/record"
)

// Both books list the warps in hand and those that are finished.
func TestListsOfAStage(t *testing.T) {
	for name, s := range map[string]*app.Studio{"file": openStudio(t), "memory": inMemory()} {
		for range 3 {
			addWarp(t, s, towels)
		}
		done := addWarp(t, s, towels).ID
		start(t, s, done)
		if _, list, err := s.Logged(context.Background(), app.Happened{Document: done, Window: left, What: record.Finished}, 0); err != nil || list.Failed() {
			t.Fatal(err, codesOf(list))
		}
		for stage, want := range map[string]int{"": 4, record.InHand: 3, record.Done: 1, record.Planned: 3} {
			cards, total, err := s.List(context.Background(), record.Query{Kind: record.Warp, Stage: stage, Most: 10})
			if err != nil || total != want || len(cards) != want {
				t.Errorf("%s: %d of stage %q, want %d: %v", name, total, stage, want, err)
			}
		}
	}
}
