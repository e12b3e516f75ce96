package structure

import (
	"testing"

	"sley/internal/trade/draft"
	"sley/internal/trade/weave"
)

// large is a threading of 10,000 ends on 16 shafts and 10,000 lifts, 16 of which
// differ.
func large() ([]int, []draft.Set) {
	threading, lifts := make([]int, 10_000), make([]draft.Set, 10_000)
	for i := range threading {
		threading[i] = i*7%16 + 1
	}
	for i := range lifts {
		lifts[i] = draft.Set(uint64(i%16)*0x9e3779b97f4a7c15>>48 | 1)
	}
	return threading, lifts
}

// BenchmarkAnalysis judges 10,000 × 10,000 crossings of 16 lifts beside drawing them
// down: the bar is forty times that. Beside it 2,000 × 2,000 crossings at random,
// where all threads differ.
func BenchmarkAnalysis(b *testing.B) {
	threading, lifts := large()
	w := weave.New(len(lifts), len(threading))
	draft.Draw(w, threading, lifts)
	b.Run("draw", func(b *testing.B) {
		for b.Loop() {
			draft.Draw(w, threading, lifts)
		}
	})
	b.Run("16", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			Of(w)
		}
	})
	random := weave.New(2000, 2000)
	fill(random, 1, 8)
	b.Run("random", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			Of(random)
		}
	})
}
