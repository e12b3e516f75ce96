package drafting

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/engine/draw/scene"
	"sley/internal/trade/draft"
)

// From 2 to 40 shafts, on both papers, small drafts and those that take several
// pages: nothing is off the page, cut, or over something else.
func TestFromTwoToFortyShafts(t *testing.T) {
	sizes := [][2]int{{30, 20}, {160, 90}, {400, 400}}
	if testing.Short() {
		sizes = sizes[:1]
	}
	for shafts := 2; shafts <= 40; shafts++ {
		size := sizes[shafts%len(sizes)]
		d := advancing(max(shafts, 4), size[0], size[1])
		d.Shafts, d.Palette = max(d.Shafts, shafts), palette
		if shafts < 4 {
			d = plainWeave().RepeatEnds(size[0] / 8).RepeatPicks(size[1] / 8)
			d.Shafts = shafts
		}
		for name, paper := range map[string]scene.Size{"A4": scene.A4, "Letter": scene.Letter} {
			for i, look := range []Look{{}, {Bars: true, Numbers: true}, {Below: true, TieUpLeft: true, Upwards: true, FromRight: true}, {LiftPlan: true}} {
				if size[0] == 400 && shafts/3%4 != i || shafts%2 == 1 {
					continue // thirteen pages each: one manner is enough
				}
				pages, fit := Pages(d, look, Marks{}, paper, words)
				if fit.Cloth || fit.Refused || fit.Cell < Least || len(pages) == 0 {
					t.Errorf("%d shafts, %v on %s: %+v", shafts, size, name, fit)
				}
				clean(t, pages, margin-0.01)
			}
		}
	}
}

// Every crossing of a draft in parts is on a part with the ink that it should have,
// at the place that the numbers of the part say.
func TestPartsShowEveryCrossing(t *testing.T) {
	for _, look := range []Look{{}, {Below: true, TieUpLeft: true}, {Upwards: true, FromRight: true}, {Alone: true, Face: Back}} {
		d := advancing(24, 230, 170)
		pages, fit := Pages(d, look, Marks{}, scene.A4, words)
		if fit.Across*fit.Down+1 != len(pages) || len(pages) < 3 {
			t.Fatalf("%+v: %d pages", fit, len(pages))
		}
		seen := map[[2]int]bool{}
		for _, p := range pages[1:] {
			r := readPage(p)
			ends, picks := partSays(t, pages[0], r)
			cloth := r.frames[0]
			for i := ends[0]; i <= ends[1]; i++ {
				for j := picks[0]; j <= picks[1]; j++ {
					end := i - 1
					if look.FromRight {
						end = d.Ends() - i
					}
					column, row := i-ends[0], j-picks[0]
					if look.FromRight || look.Face == Back {
						column = ends[1] - i
					}
					if look.Upwards {
						row = picks[1] - j
					}
					x := cloth.X + (float64(column)+0.5)*cloth.Width/float64(ends[1]-ends[0]+1)
					y := cloth.Y + (float64(row)+0.5)*cloth.Height/float64(picks[1]-picks[0]+1)
					if _, want := wantInk(d, look, j-1, end); r.ink(x, y) != want {
						t.Fatalf("%+v: end %d, pick %d: %v, want %v", look, i, j, r.ink(x, y).Hex(), want.Hex())
					}
					seen[[2]int{i, j}] = true
				}
			}
		}
		if len(seen) != d.Ends()*d.Picks() {
			t.Errorf("%+v: %d of %d crossings are on a part", look, len(seen), d.Ends()*d.Picks())
		}
	}
}

// partSays finds what the overview says of the part on a page, by its name.
func partSays(t *testing.T, overview scene.Page, r *read) (ends, picks [2]int) {
	t.Helper()
	name := ""
	for _, text := range r.texts {
		if text.Font == bold && text.Anchor == scene.End && near(text.Y, margin+line-0.6) {
			name = text.Text
		}
	}
	for _, text := range readPage(overview).texts {
		if rest, ok := strings.CutPrefix(text.Text, name+"  "); ok && name != "" {
			if _, err := fmt.Sscanf(rest, "ends %d–%d, picks %d–%d", &ends[0], &ends[1], &picks[0], &picks[1]); err != nil {
				t.Fatal(err)
			}
			return ends, picks
		}
	}
	t.Fatalf("the overview says nothing of the part %q", name)
	return ends, picks
}

// Ranges hold all threads, share the overlap, and have room.
func TestRangesHoldAllThreads(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := axis{edges: []float64{0}}
		widths := rapid.SliceOfN(rapid.Float64Range(0.4, 3), 1, 20).Draw(t, "places")
		for i := range rapid.IntRange(1, 500).Draw(t, "threads") {
			a.edges = append(a.edges, a.edges[i]+widths[i%len(widths)])
		}
		room, first, last := rapid.Float64Range(60, 200).Draw(t, "room"), rapid.Float64Range(0, 20).Draw(t, "first"), rapid.Float64Range(0, 20).Draw(t, "last")
		got := balanced(a, room, first, last, func(i int) int { return i + 1 })
		if len(got) == 0 {
			t.Fatal("no ranges")
		}
		for i, r := range got {
			less := 0.0
			if i == 0 {
				less = first
			}
			if i == len(got)-1 {
				less += last
			}
			if a.long(r[0], r[1]) > room-less+1e-9 {
				t.Fatalf("%v has no room", r)
			}
			if i > 0 && (r[0] != got[i-1][1]-overlap || r[0] <= got[i-1][0]) {
				t.Fatalf("%v after %v", r, got[i-1])
			}
		}
		if got[0][0] != 0 || got[len(got)-1][1] != a.n() {
			t.Fatalf("%v of %d threads", got, a.n())
		}
	})
}

// Neighbours name one another.
func TestPartsNameTheirNeighbours(t *testing.T) {
	pages, fit := Pages(advancing(40, 400, 400), Look{}, Marks{}, scene.A4, words)
	if fit.Across < 2 || fit.Down < 2 {
		t.Fatalf("%+v", fit)
	}
	if got := names(pages[0]); len(slices.Compact(got)) != fit.Across*fit.Down {
		t.Errorf("the overview names %v", got)
	}
	for i := range fit.Down {
		for j := range fit.Across {
			var want []string
			for _, at := range [][2]int{{i, j - 1}, {i, j + 1}, {i - 1, j}, {i + 1, j}} {
				if at[0] >= 0 && at[0] < fit.Down && at[1] >= 0 && at[1] < fit.Across {
					want = append(want, string(rune('A'+at[1]))+number(at[0]+1))
				}
			}
			got := names(pages[1+i*fit.Across+j])
			slices.Sort(want)
			if !slices.Equal(got, want) {
				t.Errorf("part %d, %d names %v, want %v", i, j, got, want)
			}
		}
	}
}

// names are the bold texts below the heading; those of a part lie off its cells.
func names(p scene.Page) []string {
	var out []string
	r := readPage(p)
	for _, text := range r.texts {
		if text.Font == bold && r.picture == nil && r.frames[0].Contains(scene.Point{X: text.X, Y: text.Y - high}) {
			out = append(out, text.Text+" over the cells")
		}
		if text.Font == bold && text.Y > margin+head {
			out = append(out, text.Text)
		}
	}
	slices.Sort(out)
	return out
}

func TestTooLarge(t *testing.T) {
	pages, fit := Pages(advancing(16, 2000, 4000), Look{Numbers: true}, Marks{Ends: []int{3}}, scene.A4, words)
	if !fit.Cloth || len(pages) != 1 {
		t.Fatalf("%+v, %d pages", fit, len(pages))
	}
	r := readPage(pages[0])
	if r.picture == nil || r.picture.Cells.Rect.Dx() != 2000 || r.picture.Cells.Rect.Dy() != 4000 {
		t.Errorf("the cloth is %v", r.picture)
	}
	said := ""
	for _, text := range r.texts {
		said += text.Text + " "
	}
	if !strings.Contains(said, "too large to be drawn thread by thread") {
		t.Errorf("the page says %q", said)
	}
	clean(t, pages, margin-0.01)

	for name, d := range map[string]*draft.Draft{"none": nil, "no picks": {Shafts: 2, Threading: []int{1}}, "vast": {Shafts: 1, Threading: make([]int, 10_000), Lifts: make([]draft.Set, 10_000)}} {
		if pages, fit := Pages(d, Look{}, Marks{}, scene.A4, words); !fit.Refused || len(pages) > 0 {
			t.Errorf("%s: %+v, %d pages", name, fit, len(pages))
		}
		if _, ok := Draw(d, Look{}, Marks{}, words); ok {
			t.Errorf("%s is drawn", name)
		}
		if _, ok := Picture(d, Look{}, 1, 1); ok {
			t.Errorf("%s is pictured", name)
		}
	}
	if _, ok := Picture(plainWeave(), Look{}, 0, 1); ok {
		t.Error("a picture of no dots")
	}
}

// Numbers that would make a draft too large for paper are left out.
func TestNumbersGiveWay(t *testing.T) {
	_, fit := Pages(advancing(40, 400, 400), Look{Numbers: true}, Marks{}, scene.A4, words)
	if fit.Cloth || fit.Across*fit.Down > MostParts {
		t.Errorf("%+v", fit)
	}
}

// A draft of one page fills it as well as its shape allows.
func TestOnePageHasLargeCells(t *testing.T) {
	for name, least := range map[string]float64{"plain": greatest, "twill": greatest, "towel": 3} {
		if pages, fit := Pages(named()[name], Look{}, Marks{}, scene.A4, words); len(pages) != 1 || fit.Cell < least {
			t.Errorf("%s: %d pages with cells of %v mm, want one with %v", name, len(pages), fit.Cell, least)
		}
	}
}
