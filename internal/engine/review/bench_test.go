package review

import (
	"testing"

	"sley/internal/engine/structure"
	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
)

// BenchmarkReview looks over 1,000 × 1,000 crossings on 40 shafts, threaded and treadled
// in curves, and so that no two threads agree for long. The bar is 25 ms, which is little
// beside what a weaver waits for.
func BenchmarkReview(b *testing.B) {
	curved, wild := &draft.Draft{Shafts: 40}, &draft.Draft{Shafts: 40}
	for i := range 1000 {
		curved.Threading = append(curved.Threading, (i+i*i/300)%40+1)
		curved.Lifts = append(curved.Lifts, draft.Set(0x3f0f3<<(i%40)|0x3f0f3>>(40-i%40))&draft.UpTo(40))
		wild.Threading = append(wild.Threading, i*7%40+1)
		wild.Lifts = append(wild.Lifts, draft.Set(uint64(i+1)*0x9e3779b97f4a7c15)&draft.UpTo(40))
	}
	c := Context{Use: "towel", Ends: 1000, Start: []structure.Side{structure.Left}, Loom: &loom.Loom{Shafts: 32, Heddles: []int{20, 30}}}
	for name, d := range map[string]*draft.Draft{"curved": curved, "wild": wild} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Review(d, c)
			}
		})
	}
}
