package strokes

import (
	"slices"
	"testing"

	"sley/internal/engine/catalogue/block"
	"sley/internal/trade/draft"
)

func huck(t *testing.T, blocks string) *draft.Draft {
	t.Helper()
	system, _ := block.Find("huck")
	p, list := block.Read(block.Text{Threading: blocks})
	if p == nil {
		t.Fatal(list.All())
	}
	d, list := system.Expand(p, block.OneFoot)
	if d == nil {
		t.Fatal(list.All())
	}
	return d
}

// TestThreadedWhole: blocks in the place of the whole threading are woven as they ask.
func TestThreadedWhole(t *testing.T) {
	d, made := twill(8), huck(t, "A B")
	d.Note = "for the galley"
	is, ok := Threaded(d, made, 0, 8)
	if !ok || !is.Drawdown().Equal(made.Drawdown()) || is.Note != d.Note || is.Check().Failed() {
		t.Errorf("%v %s", ok, table(is))
	}
	for i := range is.Picks() {
		if is.Palette[is.Weft.ColourOf(i)] != made.Palette[made.Weft.ColourOf(i)] {
			t.Errorf("pick %d has another colour", i)
		}
	}
}

// TestThreadedPart: blocks in the place of a stretch leave the picks alone.
func TestThreadedPart(t *testing.T) {
	d, made := twill(8), huck(t, "A B")
	is, ok := Threaded(d, made, 2, 4)
	want := slices.Concat(d.Threading[:2], made.Threading, d.Threading[4:])
	if !ok || !slices.Equal(is.Threading, want) || !slices.Equal(is.Treadling, d.Treadling) {
		t.Errorf("%v %s", ok, table(is))
	}
	if _, ok := Threaded(d, made, 4, 9); ok {
		t.Error("a stretch beyond the threading")
	}
	if _, ok := Threaded(d, &draft.Draft{Shafts: 1}, 0, 8); ok {
		t.Error("no ends at all")
	}
}
