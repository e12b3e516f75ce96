package app_test

import (
	"testing"

	"sley/examples"
	"sley/internal/app"
	"sley/internal/trade/record"
)

// BenchmarkReached is what one stroke at the loom costs, beside reading all that is to be
// done there, on the demo's blanket, whose length is found backwards.
func BenchmarkReached(b *testing.B) {
	s := inMemory()
	if err := s.FillDemo(ctxOf(), examples.Demo()); err != nil {
		b.Fatal(err)
	}
	card, _, _ := s.Named(ctxOf(), record.Warp, "Berth blanket")
	if saved, err := s.Start(ctxOf(), card.ID, card.Version, left); err != nil || saved.Problems.Failed() {
		b.Fatal(err)
	}
	b.Run("stroke", func(b *testing.B) {
		for b.Loop() {
			_, list, err := s.Reached(ctxOf(), app.Happened{Document: card.ID, Window: left, ID: "event-of-the-bench"}, app.Reach{Step: app.StepWeaving, Place: 9})
			if err != nil || list.Failed() {
				b.Fatal(list.All(), err)
			}
		}
	})
	b.Run("all", func(b *testing.B) {
		for b.Loop() {
			if _, err := s.Loomside(ctxOf(), card.ID); err != nil {
				b.Fatal(err)
			}
		}
	})
}
