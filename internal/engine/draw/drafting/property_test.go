package drafting

import (
	"testing"

	"pgregory.net/rapid"

	"sley/internal/engine/draw/check"
	"sley/internal/engine/draw/scene"
	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/qty"
)

// drawn draws a sound draft of any kind.
func drawn(t *rapid.T, most int) *draft.Draft {
	sheds := []loom.Shed{loom.UnsaidShed, loom.Rising, loom.Sinking, loom.Counterbalance, loom.Countermarch, loom.Table}
	d := &draft.Draft{Shafts: rapid.IntRange(1, 12).Draw(t, "shafts"), Shed: rapid.SampledFrom(sheds).Draw(t, "shed")}
	d.Threading = rapid.SliceOfN(rapid.IntRange(0, d.Shafts), 1, most).Draw(t, "threading")
	set := func(n int, what string) draft.Set { return draft.Set(rapid.Uint64().Draw(t, what)) & draft.UpTo(n) }
	picks := rapid.IntRange(1, most).Draw(t, "picks")
	if rapid.Bool().Draw(t, "treadled") {
		d.Treadles = rapid.IntRange(1, 12).Draw(t, "treadles")
		for range d.Treadles {
			d.Ties = append(d.Ties, draft.TieFor(d.Shed, set(d.Shafts, "tie"), d.Shafts))
		}
		for range picks {
			d.Treadling = append(d.Treadling, set(d.Treadles, "pressed"))
		}
	} else {
		for range picks {
			d.Lifts = append(d.Lifts, set(d.Shafts, "lift"))
		}
	}
	d.Palette = palette[:rapid.SampledFrom([]int{0, 1, 4}).Draw(t, "colours")]
	colours := rapid.IntRange(0, max(len(d.Palette)-1, 0))
	d.Warp.Colours = rapid.SliceOfN(colours, 0, len(d.Threading)).Draw(t, "warp")
	d.Weft.Colours = rapid.SliceOfN(colours, 0, picks).Draw(t, "weft")
	sizes := rapid.Custom(func(t *rapid.T) qty.Length { return qty.Length(rapid.IntRange(0, 3).Draw(t, "mm")) * qty.Millimetre })
	d.Warp.Thick, d.Warp.Aparts = sizes.Draw(t, "thick"), rapid.SliceOfN(sizes, 0, len(d.Threading)).Draw(t, "aparts")
	d.Weft.Thicks = rapid.SliceOfN(sizes, 0, picks).Draw(t, "thicks")
	return d
}

func drawnLook(t *rapid.T) Look {
	yes := func(what string) bool { return rapid.Bool().Draw(t, what) }
	return Look{
		Alone: yes("alone"), Face: Face(rapid.IntRange(0, 1).Draw(t, "face")), Below: yes("below"), TieUpLeft: yes("tie-up left"),
		FromRight: yes("from the right"), Upwards: yes("upwards"), Numbers: yes("numbers"), LiftPlan: yes("lift plan"),
		Cells: Cells(rapid.IntRange(0, 2).Draw(t, "cells")), Grey: yes("grey"), Bars: yes("bars"), ToScale: yes("to scale"),
		Cell: rapid.SampledFrom([]float64{0, 1.5, 4.5, 7}).Draw(t, "cell"),
	}
}

// middles are where threads have their middles, from the first, between two edges.
func middles(edges []float64, from float64) []float64 {
	var out []float64
	for i := range len(edges) - 1 {
		out = append(out, from+(edges[i]+edges[i+1])/2)
	}
	return out
}

// backwards gives middles from the other edge.
func backwards(at []float64, low, high float64) []float64 {
	out := make([]float64, len(at))
	for i, m := range at {
		out[i] = low + high - m
	}
	return out
}

// where are the middles of the ends, left to right on the front, and of the picks: as
// a reader of the page finds them from the outline of the drawdown.
func where(d *draft.Draft, look Look, cloth scene.Box) (ends, picks []float64) {
	e, p := even(d.Ends(), 1), even(d.Picks(), 1)
	if look.ToScale {
		e, p = scaled(d, 1)
	}
	scale := cloth.Width / e.edges[d.Ends()]
	for i := range e.edges {
		e.edges[i] *= scale
	}
	for i := range p.edges {
		p.edges[i] *= scale
	}
	ends, picks = middles(e.edges, cloth.X), middles(p.edges, cloth.Y)
	if look.Alone && look.Face == Back {
		ends = backwards(ends, cloth.X, cloth.Right())
	}
	if look.Upwards {
		picks = backwards(picks, cloth.Y, cloth.Bottom())
	}
	return ends, picks
}

// wantInk is the ink of the thread on top, asked of the draft itself.
func wantInk(d *draft.Draft, look Look, pick, end int) (up bool, k scene.Ink) {
	up = d.UpAt(pick, end) != (look.Alone && look.Face == Back)
	if len(d.Palette) == 0 || look.Cells == Filled {
		if up {
			return up, black
		}
		return up, white
	}
	at := d.Weft.ColourOf(pick)
	if up {
		at = d.Warp.ColourOf(end)
	}
	return up, look.inkOf(d.Palette[at])
}

// Every cell of a drawing is what the draft says, whatever the settings.
func TestCellsAreTheDraft(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, look := drawn(t, 30), drawnLook(t)
		page, ok := Draw(d, look, Marks{}, words)
		if !ok {
			t.Fatal("not drawn")
		}
		r := readPage(page)
		cloth := r.frames[0]
		ends, picks := where(d, look, cloth)
		for pick, y := range picks {
			for end, x := range ends {
				up, want := wantInk(d, look, pick, end)
				if look.Cells == Both && len(d.Palette) > 0 && up {
					if got := r.ink(x, y); got != against(want) {
						t.Fatalf("pick %d, end %d: the square is %v, want %v", pick, end, got.Hex(), against(want).Hex())
					}
					// Beside the square and within the thinnest thread there may be no
					// room: the square of the next test is enough.
					continue
				}
				if got := r.ink(x, y); got != want {
					t.Fatalf("pick %d, end %d: %v, want %v", pick, end, got.Hex(), want.Hex())
				}
			}
		}
		if !look.Alone {
			beside(t, d, look, r, ends, picks)
		}
	})
}

// beside reads threading, treadling or lift plan, and tie-up.
func beside(t *rapid.T, d *draft.Draft, look Look, r *read, ends, picks []float64) {
	threading, treadling := r.frames[1], r.frames[2]
	cloth := r.frames[0]
	if (threading.Y > cloth.Y) != look.Below || (treadling.X < cloth.X) != look.TieUpLeft {
		t.Fatalf("threading at %v and treadling at %v of the cloth at %v", threading, treadling, cloth)
	}
	shaftY := func(s int) float64 {
		each := threading.Height / float64(d.Shafts)
		if look.Below {
			return threading.Y + (float64(s)-0.5)*each
		}
		return threading.Bottom() - (float64(s)-0.5)*each
	}
	n, lifts := d.Treadles, !d.Treadled() || look.LiftPlan
	if lifts {
		n = d.Shafts
	}
	treadleX := func(k int) float64 {
		each := treadling.Width / float64(n)
		if look.TieUpLeft {
			return treadling.Right() - (float64(k)-0.5)*each
		}
		return treadling.X + (float64(k)-0.5)*each
	}
	marked := func(x, y float64, name string) bool {
		if text := r.written(x, y); text != "" {
			return text == name
		}
		return r.ink(x, y) == black
	}
	for end, x := range ends {
		for s := 1; s <= d.Shafts; s++ {
			if got := marked(x, shaftY(s), number(s)); got != (d.Threading[end] == s) {
				t.Fatalf("end %d on shaft %d: %v", end, s, got)
			}
		}
	}
	plan := d.LiftPlan()
	for pick, y := range picks {
		for k := 1; k <= n; k++ {
			want := lifts && plan[pick].Has(k) || !lifts && d.Treadling[pick].Has(k)
			if got := marked(treadleX(k), y, number(k)); got != want {
				t.Fatalf("pick %d, treadle or shaft %d: %v", pick, k, got)
			}
		}
	}
	if lifts {
		return
	}
	sinks := d.Shed == loom.Sinking || d.Shed == loom.Counterbalance
	for k, tie := range d.Ties {
		for s := 1; s <= d.Shafts; s++ {
			x, y := treadleX(k+1), shaftY(s)
			if r.circled(x, y) != (!sinks && tie.Tied.Has(s)) || r.crossed(x, y) != (sinks && tie.Tied.Has(s) || tie.Lowered.Has(s)) {
				t.Fatalf("treadle %d, shaft %d: circle %v, cross %v", k+1, s, r.circled(x, y), r.crossed(x, y))
			}
		}
	}
}

// In a cell with a square the colour of the warp is round the square.
func TestSquaresLieOnTheirColour(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, look := drawn(t, 12), drawnLook(t)
		look.Cells, look.ToScale = Both, false
		if len(d.Palette) == 0 {
			return
		}
		page, _ := Draw(d, look, Marks{}, words)
		r := readPage(page)
		ends, picks := where(d, look, r.frames[0])
		off := 0.4 * r.frames[0].Width / float64(d.Ends())
		for pick, y := range picks {
			for end, x := range ends {
				if _, want := wantInk(d, look, pick, end); r.ink(x+off, y+off) != want {
					t.Fatalf("pick %d, end %d: %v, want %v", pick, end, r.ink(x+off, y+off).Hex(), want.Hex())
				}
			}
		}
	})
}

// A printer finds nothing, whatever is drawn and marked, on one page or on many.
func TestAPrinterFindsNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, look := drawn(t, 60), drawnLook(t)
		marks := Marks{
			Repeat: Part{0, 0, 3, 3}, Ends: []int{0, d.Ends() - 1, d.Ends()}, Picks: []int{0, d.Picks() - 1, -1}, FloatsBehind: true,
			Floats: []Float{{0, 0, 3, true, Front}, {0, d.Ends() - 1, 4, false, Back}, {9, 9, 9, true, Back}, {-1, 0, 2, true, Front}},
		}
		page, _ := Draw(d, look, marks, words)
		pages, fit := Pages(d, look, marks, rapid.SampledFrom([]scene.Size{scene.A4, scene.Letter}).Draw(t, "paper"), words)
		if len(pages) == 0 || fit.Cell < Least {
			t.Fatalf("%d pages: %+v", len(pages), fit)
		}
		clean(t, []scene.Page{page}, border-0.01)
		clean(t, pages, margin-0.01)
	})
}

func clean(t interface{ Errorf(string, ...any) }, pages []scene.Page, margin float64) {
	for _, f := range check.Read(scene.Document{Pages: pages}, check.Rules{MinPt: 10, Margin: margin}) {
		t.Errorf("%v", f)
	}
	for i, p := range pages {
		if err := p.Validate(); err != nil {
			t.Errorf("page %d: %v", i+1, err)
		}
	}
}

// The picture is its slow twin, which asks the draft of every crossing.
func TestPictureIsItsSlowTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, look := drawn(t, 150), drawnLook(t)
		wide, high := rapid.IntRange(1, 3).Draw(t, "wide"), rapid.IntRange(1, 3).Draw(t, "high")
		p, ok := Picture(d, look, wide, high)
		if !ok || p.Rect.Dx() != d.Ends()*wide || p.Rect.Dy() != d.Picks()*high {
			t.Fatalf("%v %v", ok, p)
		}
		look.Alone = true
		for y := range p.Rect.Dy() {
			for x := range p.Rect.Dx() {
				pick, end := y/high, x/wide
				if look.Upwards {
					pick = d.Picks() - 1 - pick
				}
				if look.Face == Back {
					end = d.Ends() - 1 - end
				}
				if _, want := wantInk(d, look, pick, end); p.At(x, y) != colourOf(want) {
					t.Fatalf("dot %d, %d: %v, want %v", x, y, p.At(x, y), want.Hex())
				}
			}
		}
	})
}
