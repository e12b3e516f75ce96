package drafting

import (
	"cmp"
	"math"
	"slices"
	"testing"

	"sley/internal/engine/draw/scene"
	"sley/internal/trade/draft"
)

// marked are the strokes of paths in an ink, and which of them are dashed.
func marked(p scene.Page, k scene.Ink) (whole, dashed [][4]float64) {
	for _, it := range p.Items {
		path, ok := it.(scene.Path)
		if !ok || path.Pen.Ink != k {
			continue
		}
		for i := 0; i+1 < len(path.Segments); i += 2 {
			a, b := path.Segments[i].To, path.Segments[i+1].To
			one := [4]float64{min(a.X, b.X), min(a.Y, b.Y), max(a.X, b.X), max(a.Y, b.Y)}
			if len(path.Pen.Dash) > 0 {
				dashed = append(dashed, one)
			} else {
				whole = append(whole, one)
			}
		}
	}
	return whole, dashed
}

// covers are the cells, as end and pick on the front, whose middles lie under strokes.
func covers(strokes [][4]float64, ends, picks []float64) [][2]int {
	var out [][2]int
	for pick, y := range picks {
		for end, x := range ends {
			for _, s := range strokes {
				if x >= s[0]-1e-6 && x <= s[2]+1e-6 && y >= s[1]-1e-6 && y <= s[3]+1e-6 {
					out = append(out, [2]int{pick, end})
				}
			}
		}
	}
	return out
}

// Floats are struck through at exactly their crossings, from either face and in every
// direction; those of the other face only where they are wanted, dashed.
func TestFloatsAreStruckThrough(t *testing.T) {
	d := twill() // 16 ends, 16 picks
	floats := []Float{
		{Pick: 3, End: 5, Long: 4, Warp: true, Face: Front},
		{Pick: 14, End: 2, Long: 3, Warp: true, Face: Back},
		{Pick: 7, End: 14, Long: 4, Face: Front},
		{Pick: 9, End: 1, Long: 99, Face: Back},
	}
	want := map[Face][][2]int{Front: {{3, 5}, {4, 5}, {5, 5}, {6, 5}, {7, 0}, {7, 1}, {7, 14}, {7, 15}}, Back: {{0, 2}}}
	for e := range 16 {
		want[Back] = append(want[Back], [2]int{9, e})
	}
	want[Back] = append(want[Back], [2]int{14, 2}, [2]int{15, 2})
	for _, look := range []Look{{}, {Below: true, Upwards: true}, {TieUpLeft: true}, {Alone: true, Face: Back}, {Alone: true, Face: Back, Upwards: true, Cells: Colours}} {
		for _, behind := range []bool{false, true} {
			page, _ := Draw(d, look, Marks{Floats: floats, FloatsBehind: behind}, Words{})
			ends, picks := where(d, look, readPage(page).frames[0])
			whole, dashed := marked(page, madder)
			if got := covers(whole, ends, picks); !slices.Equal(got, want[look.Face]) {
				t.Errorf("%+v: struck %v, want %v", look, got, want[look.Face])
			}
			other := want[1-look.Face]
			if !behind {
				other = nil
			}
			if got := covers(dashed, ends, picks); !slices.Equal(got, other) {
				t.Errorf("%+v: dashed %v, want %v", look, got, other)
			}
		}
	}
}

// A repeat is framed in the drawdown, the threading and the treadling; on white and
// black alike, since the frame lies on white.
func TestARepeatIsFramed(t *testing.T) {
	d := twill()
	page, _ := Draw(d, Look{}, Marks{Repeat: Part{Pick: 4, End: 8, Picks: 4, Ends: 4}}, Words{})
	r := readPage(page)
	cloth, threading, treadling := r.frames[0], r.frames[1], r.frames[2]
	want := []scene.Box{
		{X: cloth.X + 8*usual, Y: cloth.Y + 4*usual, Width: 4 * usual, Height: 4 * usual},
		{X: cloth.X + 8*usual, Y: threading.Y, Width: 4 * usual, Height: threading.Height},
		{X: treadling.X, Y: cloth.Y + 4*usual, Width: treadling.Width, Height: 4 * usual},
	}
	var got []scene.Box
	var before scene.Path
	for _, it := range page.Items {
		path, ok := it.(scene.Path)
		if ok && path.Fill.IsNone() && path.Pen.Ink.IsNone() && len(path.Segments) == 5 && path.Segments[4].Step == scene.Close {
			got = append(got, scene.Around([]scene.Point{path.Segments[0].To, path.Segments[2].To}))
			if before.Pen.Ink != white || before.Pen.Width <= path.Pen.Width {
				t.Error("a frame does not lie on white")
			}
		}
		before = path
	}
	same := func(a, b scene.Box) bool {
		return near(a.X, b.X) && near(a.Y, b.Y) && near(a.Width, b.Width) && near(a.Height, b.Height)
	}
	if !slices.EqualFunc(got, want, same) {
		t.Errorf("framed %v, want %v", got, want)
	}
}

// A repeat that runs over a seam has no edge there.
func TestAFrameIsOpenAtASeam(t *testing.T) {
	d := advancing(16, 200, 120)
	pages, fit := Pages(d, Look{}, Marks{Repeat: Part{Ends: 200, Picks: 120}}, scene.A4, words)
	if fit.Across < 2 || fit.Down != 1 {
		t.Fatalf("%+v", fit)
	}
	for i, p := range pages[1:] {
		cloth := slices.MaxFunc(readPage(p).frames, func(a, b scene.Box) int { return cmp.Compare(a.Height, b.Height) })
		upright := 0
		for _, it := range p.Items {
			path, ok := it.(scene.Path)
			if !ok || !path.Pen.Ink.IsNone() || path.Pen.Width <= 0.35 || len(path.Segments) > 8 {
				continue
			}
			for j := 0; j+1 < len(path.Segments); j += 2 {
				if a, b := path.Segments[j].To, path.Segments[j+1].To; near(a.X, b.X) && near(math.Abs(a.Y-b.Y), cloth.Height) {
					upright++
				}
			}
		}
		want := 0
		if i == 0 || i == fit.Across-1 {
			want = 1 // its outer edge; the frame of the treadling is closed
		}
		if upright != want {
			t.Errorf("part %d has %d upright edges, want %d", i+1, upright, want)
		}
	}
}

// Ends and picks that are pointed at have a mark beside them and lines along them.
func TestPointing(t *testing.T) {
	d := twill()
	for _, look := range []Look{{}, {Below: true, TieUpLeft: true, Upwards: true}} {
		page, _ := Draw(d, look, Marks{Ends: []int{3, 99}, Picks: []int{6, -1}}, Words{})
		r := readPage(page)
		ends, picks := where(d, look, r.frames[0])
		var tips []scene.Point
		for _, it := range page.Items {
			if p, ok := it.(scene.Polyline); ok {
				tips = append(tips, p.Points[0])
			}
		}
		if len(tips) != 2 || !near(tips[0].X, ends[3]) || !near(tips[1].Y, picks[6]) || r.frames[0].Contains(tips[0]) || r.frames[0].Contains(tips[1]) {
			t.Errorf("%+v: marks at %v, want beside end 3 at %v and pick 6 at %v", look, tips, ends[3], picks[6])
		}
	}
}

// Greys are as light as their colours: white and black stay, and a colour's grey has
// its luminance. The grey of pure green is 220 by the formulas of IEC 61966-2-1:
// luminance 0.7152, 255 (1.055 × 0.7152^(1/2.4) − 0.055) = 219.9.
func TestLightness(t *testing.T) {
	for c, want := range map[draft.Colour]uint8{
		{R: 255, G: 255, B: 255}: 255, {}: 0, {G: 255}: 220, {R: 128, G: 128, B: 128}: 128, {R: 2, G: 2, B: 2}: 2,
	} {
		if got := lightness(c); got != want {
			t.Errorf("%v is as light as %d, want %d", c, got, want)
		}
	}
	if against(white) != black || against(black) != white || against(scene.RGB(0x25, 0x40, 0x7c)) != white {
		t.Error("what is written cannot be read")
	}
}

// Threads are to one scale: one that is twice as far apart has twice the room, along
// the warp and the weft alike, and a thread is as thick of its place as it says.
func TestThreadsToScale(t *testing.T) {
	ends, picks := scaled(rib(), 4)
	w, thin, thick := ends.long(0, 1), picks.long(0, 1), picks.long(1, 2)
	if !near(thin, w) || !near(thick, 2*w) {
		t.Errorf("ends %v apart, picks %v and %v: want one, one and two", w, thin, thick)
	}
	if !near(ends.thick[0], 0.8) || !near(picks.thick[0], 0.5) || !near(picks.thick[1], 1) {
		t.Errorf("thick %v, %v and %v of their places", ends.thick[0], picks.thick[0], picks.thick[1])
	}
	if back := picks.reversed(); !near(back.long(11, 12), thin) || !near(back.thick[11], 0.5) || !near(back.thick[10], 1) {
		t.Errorf("from the other end picks are %v, %v thick", back.edges, back.thick)
	}
	whole := ends.long(0, 20) + picks.long(0, 12)
	if math.Abs(whole/32-4) > 1e-9 {
		t.Errorf("places are %v in the mean, want 4", whole/32)
	}
}

// The colours have letters in bars and key, but none without words for them.
func TestLettersOfColours(t *testing.T) {
	page, _ := Draw(towel(), Look{Bars: true}, Marks{}, words)
	said := map[string]int{}
	for _, text := range readPage(page).texts {
		said[text.Text]++
	}
	for text, want := range map[string]int{"A": 1, "B": 3, "C": 2, "D": 1, "A  bleached": 1, "D  weld": 1} {
		if said[text] != want {
			t.Errorf("%q stands %d times, want %d", text, said[text], want)
		}
	}
	silent, _ := Draw(towel(), Look{Bars: true}, Marks{}, Words{})
	for _, text := range readPage(silent).texts {
		if text.Text == "A" {
			t.Error("a letter without a key")
		}
	}
}
