package strokes

import (
	"testing"

	"sley/internal/trade/draft"
	"sley/internal/trade/weave"
)

// large is a draft of 1,000 ends on 40 shafts and 1,000 picks, 40 of which differ.
func large() *draft.Draft {
	d := &draft.Draft{Shafts: 40}
	for i := range 1000 {
		d.Threading = append(d.Threading, i*7%40+1)
		d.Lifts = append(d.Lifts, draft.Set(uint64(i%40+1)*0x9e3779b97f4a7c15)&draft.UpTo(40))
	}
	return d
}

// BenchmarkStrokes makes strokes on 1,000 × 1,000 crossings, and finds what differs then,
// beside drawing the draft down: the bar is ten times that for a put, twenty for cells.
func BenchmarkStrokes(b *testing.B) {
	d := large()
	w := weave.New(1000, 1000)
	b.Run("draw", func(b *testing.B) {
		for b.Loop() {
			draft.Draw(w, d.Threading, d.LiftPlan())
		}
	})
	b.Run("put", func(b *testing.B) {
		benchmark(b, d, Act{Do: Put, Part: Threading, At: 100, Remove: 200, Put: Numbers(d.Threading[300:500]...)})
	})
	// Two hundred cells of 20 ends: 20 columns that differ, so that shafts suffice.
	cells := Act{Do: Cells, Up: true}
	for i := range 200 {
		cells.Cells = append(cells.Cells, Cell{Pick: 37 * i % 1000, End: 11 * (i % 20)})
	}
	b.Run("cells", func(b *testing.B) { benchmark(b, d, cells) })
	tied, _ := d.WithTreadles(d.Shed)
	cells.Cells = cells.Cells[:20]
	b.Run("treadled", func(b *testing.B) { benchmark(b, tied, cells) })
}

func benchmark(b *testing.B, d *draft.Draft, a Act) {
	b.ReportAllocs()
	for b.Loop() {
		is, list := Do(d, []Act{a})
		if is == nil {
			b.Fatal(list.All())
		}
		Between(d, is)
	}
}
