package draft

import (
	"testing"

	"sley/internal/trade/weave"
)

// large is a threading of 10,000 ends on 16 shafts, and 10,000 lifts of which so
// many differ.
func large(distinct int) ([]int, []Set) {
	threading, lifts := make([]int, 10_000), make([]Set, 10_000)
	for i := range threading {
		threading[i] = i*7%16 + 1
	}
	for i := range lifts {
		lifts[i] = Set(uint64(i%distinct)*0x9e3779b97f4a7c15>>48 | 1)
	}
	return threading, lifts
}

// BenchmarkDrawdown draws 10,000 × 10,000 crossings beside clearing the same memory:
// the bar for 16 lifts is twice that.
func BenchmarkDrawdown(b *testing.B) {
	w := weave.New(10_000, 10_000)
	b.Run("clear", func(b *testing.B) {
		b.SetBytes(10_000 * 157 * 8)
		for b.Loop() {
			for i := range w.Picks() {
				clear(w.Row(i))
			}
		}
	})
	for name, distinct := range map[string]int{"16": 16, "500": 500} {
		threading, lifts := large(distinct)
		b.Run(name, func(b *testing.B) {
			b.SetBytes(10_000 * 157 * 8)
			b.ReportAllocs()
			for b.Loop() {
				Draw(w, threading, lifts)
			}
		})
	}
}

// BenchmarkDrawEnd puts one end of 1,000 × 1,000 crossings on another shaft.
func BenchmarkDrawEnd(b *testing.B) {
	threading, lifts := large(16)
	w := weave.New(1000, 1000)
	Draw(w, threading[:1000], lifts[:1000])
	b.ReportAllocs()
	for b.Loop() {
		DrawEnd(w, 500, 3, lifts[:1000])
	}
}
