package block

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"sley/internal/engine/structure"
	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/problem"
	"sley/internal/trade/weave"
)

// units are what a unit of ends and a unit of picks weave, written by hand: pattern,
// then background; in tabby rows both are plain weave.
var units = map[string][2]string{
	"turned-twill-3":      {"##. / #.# / .##", "#.. / .#. / ..#"},
	"turned-twill-4":      {"###. / ##.# / #.## / .###", "#... / .#.. / ..#. / ...#"},
	"turned-broken-twill": {"###. / #.## / ##.# / .###", "#... / ..#. / .#.. / ...#"},
	"turned-satin-5":      {"#.### / ####. / ##.## / .#### / ###.#", "...#. / #.... / ..#.. / ....# / .#..."},
	"turned-satin-8": {
		"######.# / ###.#### / .####### / #####.## / ##.##### / #######. / ####.### / #.######",
		".#...... / ....#... / .......# / ..#..... / .....#.. / #....... / ...#.... / ......#.",
	},
	"huck": {
		"#.#.#.#.#. / .....#.#.# / #.#.#.#.#. / .....#.#.# / #.#.#.#.#. / .#.#.#.#.# / #.#.#..... / .#.#.#.#.# / #.#.#..... / .#.#.#.#.#",
		plainOf(10, 10),
	},
	"huck-lace": {
		"#.#.#.#.#. / .....##### / #.#.#.#.#. / .....##### / #.#.#.#.#. / .#.#.#.#.# / #####..... / .#.#.#.#.# / #####..... / .#.#.#.#.#",
		plainOf(10, 10),
	},
	"bronson-lace":        {"#.#.#. / .....# / #.#.#. / .....# / #.#.#. / .#.#.#", plainOf(6, 6)},
	"spot-bronson":        {"#.#. / .... / #.#. / ....", plainOf(4, 4)},
	"monks-belt":          {".... / #.#. / .... / .#.#", "#### / #.#. / #### / .#.#"},
	"summer-and-winter":   {"#... / #.#. / ..#. / .#.#", "##.# / #.#. / .### / .#.#"},
	"taquete":             {"#... / ##.# / ..#. / .###", "##.# / #... / .### / ..#."},
	"double-cloth-blocks": {"#... / ###. / ..#. / #.##", "##.# / .#.. / .### / ...#"},
	"rep":                 {"#.#. / .#.# / #.#. / .#.#", ".#.# / #.#. / .#.# / #.#."},
	// In these two, pattern, then the block farthest from it.
	"overshot": {".... / #.#. / .... / .#.#", "#### / #.#. / #### / .#.#"},
	"crackle":  {"..#. / #.#. / ..#. / .#.#", "##.# / #.#. / ##.# / .#.#"},
}

func plainOf(picks, ends int) string {
	var rows []string
	for i := range picks {
		rows = append(rows, strings.Repeat([]string{"#.", ".#"}[i%2], ends/2))
	}
	return strings.Join(rows, " / ")
}

// everyPattern is a profile of n blocks, each two units wide, in which every
// combination of blocks that the system can weave comes once; each two units high.
func everyPattern(s *System, n int) *Profile {
	p := &Profile{Blocks: n}
	for k := 1; k <= n; k++ {
		p.Threading = append(p.Threading, k, k)
	}
	if s.InTurn {
		p.Threading = [][]int{{1, 2}, {1, 2, 3, 2}, {1, 2, 3, 4}}[n-2]
	}
	for pattern := range draft.Set(1) << n {
		if s.Ground && pattern == draft.UpTo(n) || !s.Together && pattern.Len() > 1 {
			continue
		}
		p.Treadling = append(p.Treadling, pattern, pattern)
	}
	return p
}

// eachSystem runs a check for all systems with one to four blocks.
func eachSystem(t *testing.T, check func(t *testing.T, s *System, p *Profile)) {
	for _, s := range Systems() {
		for n := 1; n <= 4; n++ {
			if n == 1 && (s.ID == "monks-belt" || s.ID == "overshot" || s.InTurn) {
				continue // one block alone has nothing to lie beside
			}
			t.Run(fmt.Sprint(s.ID, "/", n), func(t *testing.T) { check(t, s, everyPattern(s, n)) })
		}
	}
}

func expanded(t *testing.T, s *System, p *Profile, feet Feet) *draft.Draft {
	t.Helper()
	d, list := s.Expand(p, feet)
	if d == nil {
		t.Fatalf("%s: %v", s.ID, list.All())
	}
	return d
}

// TestEveryPattern: pattern and background lie where the profile says, in every
// combination of up to four blocks.
func TestEveryPattern(t *testing.T) {
	eachSystem(t, func(t *testing.T, s *System, p *Profile) {
		w := expanded(t, s, p, LiftPlan).Drawdown()
		figures := units[s.ID]
		if s.InTurn {
			figures = units["huck-lace"]
		}
		pattern, ground := weave.Must(figures[0]), weave.Must(figures[1])
		pick := 0
		for _, shown := range p.Patterns() {
			high := len(s.Picks(shown, p.Blocks))
			for block, end := range places(s, p) {
				if high != pattern.Picks() {
					continue // a unit of tabby alone: TestBackground
				}
				pattern, ground := pattern, ground
				if s.InTurn { // a block is one half of the unit
					half := (block + 1) % 2 * 5
					pattern, ground = pattern.Crop(0, half, 10, 5), ground.Crop(0, half, 10, 5)
				}
				got := w.Crop(pick, end, pattern.Picks(), pattern.Ends())
				switch is := s.Shows(shown, p.Blocks).Has(block); {
				case s.ID == "overshot" || s.ID == "crackle":
					neighbour(t, s, p, block, shown, got)
				case is && !got.Equal(pattern), !is && !got.Equal(ground):
					t.Fatalf("block %s of pattern %s (%v):\n%s", Letter(block), shown, is, got)
				}
			}
			pick += high
		}
	})
}

// places gives the first end of the first unit of each block.
func places(s *System, p *Profile) map[int]int {
	out := map[int]int{}
	end := 0
	for i, block := range p.Threading {
		if _, met := out[block]; !met {
			out[block] = end
		}
		end += len(s.Unit(block, p.Blocks))
		if s.between != nil {
			end += len(s.between(block, p.Threading[(i+1)%len(p.Threading)], p.Blocks))
		}
	}
	return out
}

// neighbour counts how much of the pattern weft lies on the face: all of a block of
// overshot, none of the farthest, half of the two that share a shaft with it; of
// crackle, three ends of four or one.
func neighbour(t *testing.T, s *System, p *Profile, block int, shown draft.Set, got *weave.Weave) {
	t.Helper()
	k := shown.Most()
	ring := s.Shafts(p.Blocks)
	apart := min(((block-k)%ring+ring)%ring, ((k-block)%ring+ring)%ring)
	want := map[int]int{0: 4, 1: 2, 2: 0}[apart]
	if s.ID == "crackle" {
		want = 1
		if s.Shows(shown, p.Blocks).Has(block) {
			want = 3
		}
	}
	for _, row := range []int{0, 2} {
		if on := got.Ends() - got.UpsOfPick(row); on != want {
			t.Fatalf("block %s of pattern %s shows %d of %d ends, want %d:\n%s", Letter(block), shown, on, got.Ends(), want, got)
		}
	}
}

// TestSound: what is written out is clean, hangs together, needs the shafts promised,
// and is the same with one foot, with two and by a lift plan.
func TestSound(t *testing.T) {
	eachSystem(t, func(t *testing.T, s *System, p *Profile) {
		if s.Needs(p).OneFoot > draft.MostTreadles {
			if _, list := s.Expand(p, OneFoot); codes(list.All())[0] != "block.treadles treadling" {
				t.Error(list.All())
			}
			return
		}
		one, plan := expanded(t, s, p, OneFoot), expanded(t, s, p, LiftPlan)
		two := expanded(t, s, p, TwoFeet)
		for _, d := range []*draft.Draft{one, two, plan} {
			if list := d.Check(); list.Len() > 0 {
				t.Fatalf("%v", list.All())
			}
			if !d.Drawdown().Equal(plan.Drawdown()) || d.Shafts != s.Shafts(p.Blocks) {
				t.Fatalf("%d treadles weave another cloth", d.Treadles)
			}
		}
		if needs := s.Needs(p); needs.OneFoot != one.Treadles || needs.TwoFeet != two.Treadles {
			t.Errorf("needs %+v, has %d and %d", needs, one.Treadles, two.Treadles)
		}
		if !structure.HangsTogether(plan.Drawdown()) {
			// Layers change places only at the edges of blocks.
			if s.Layers < 2 || p.Blocks > 1 {
				t.Error("falls apart")
			}
		}
	})
}

// TestTabby: where two sheds of plain weave are promised, every two neighbouring ends
// are in different ones, round the repeat.
func TestTabby(t *testing.T) {
	eachSystem(t, func(t *testing.T, s *System, p *Profile) {
		if !s.Tabby {
			return
		}
		d, sheds := expanded(t, s, p, LiftPlan), s.TabbySheds(p.Blocks)
		for i, shaft := range d.Threading {
			next := d.Threading[(i+1)%d.Ends()]
			if sheds[0].Has(shaft) == sheds[1].Has(shaft) || sheds[0].Has(shaft) == sheds[0].Has(next) {
				t.Fatalf("ends %d and %d, on %d and %d, of %v", i, i+1, shaft, next, sheds)
			}
		}
	})
}

// floats are the longest of each system where every block is two units wide: of the
// warp, and of the weft where they do not grow with the width of the blocks.
var floats = map[string]struct{ warp, weft int }{
	"turned-twill-3": {2, 2}, "turned-twill-4": {3, 3}, "turned-broken-twill": {3, 3}, "turned-satin-5": {4, 4}, "turned-satin-8": {7, 7},
	"huck": {5, 5}, "huck-lace": {5, 5}, "huck-half-units": {5, 5}, "bronson-lace": {5, 5},
	"summer-and-winter": {3, 3}, "taquete": {2, 3}, "crackle": {3, 3},
	"double-cloth-blocks": {3, 3}, "rep": {2, 2},
}

// TestFloats: no float is longer than the system allows, whatever the pattern, and with
// four blocks some are as long.
func TestFloats(t *testing.T) {
	eachSystem(t, func(t *testing.T, s *System, p *Profile) {
		want, fixed := floats[s.ID]
		if !fixed {
			return
		}
		a := structure.Of(expanded(t, s, p, LiftPlan).Drawdown())
		long := func(way structure.Way) int {
			return max(a.Floats(way, structure.Front).Longest, a.Floats(way, structure.Back).Longest)
		}
		warp, weft := long(structure.Warp), long(structure.Weft)
		if warp > want.warp || weft > want.weft || p.Blocks == 4 && (warp < want.warp || weft < want.weft) {
			t.Errorf("warp %d, weft %d, want %d and %d", warp, weft, want.warp, want.weft)
		}
	})
}

// TestWideBlocks: in overshot, monk's belt and spot Bronson the weft floats as wide as
// the block, which three units side by side show.
func TestWideBlocks(t *testing.T) {
	for id, want := range map[string]int{"overshot": 13, "monks-belt": 12, "spot-bronson": 13} {
		s, _ := Find(id)
		p := &Profile{Blocks: 2, Threading: []int{1, 1, 1, 2, 2, 2}, Treadling: []draft.Set{draft.Of(1), draft.Of(2)}}
		a := structure.Of(expanded(t, s, p, LiftPlan).Drawdown())
		if got := a.Floats(structure.Weft, structure.Front).Longest; got != want {
			t.Errorf("%s: %d, want %d", id, got, want)
		}
	}
}

// TestCleanCuts: where blocks of a turned weave meet, side by side or one above the
// other, every float ends.
func TestCleanCuts(t *testing.T) {
	for _, s := range Systems()[:5] {
		p := &Profile{Blocks: 2, Threading: []int{1, 2}, Treadling: []draft.Set{draft.Of(1), draft.Of(2)}}
		w := expanded(t, s, p, LiftPlan).Drawdown()
		n := w.Ends() / 2
		for i := range 2 * n {
			if w.WarpUp(i, n-1) == w.WarpUp(i, n) {
				t.Errorf("%s: pick %d floats over the edge", s.ID, i)
			}
			if w.WarpUp(n-1, i) == w.WarpUp(n, i) {
				t.Errorf("%s: end %d floats over the edge", s.ID, i)
			}
		}
	}
}

// TestCounts holds shafts for blocks against what the trade says: spot Bronson weaves
// one block fewer than shafts (Petrini), Bronson lace and summer and winter two fewer
// (common practice, no source), and the rest by the shafts of a unit.
func TestCounts(t *testing.T) {
	for _, c := range []struct {
		id             string
		shafts, blocks int
	}{
		{"spot-bronson", 4, 3},
		{"spot-bronson", 8, 7},
		{"bronson-lace", 4, 2},
		{"bronson-lace", 8, 6},
		{"summer-and-winter", 4, 2},
		{"summer-and-winter", 8, 6},
		{"overshot", 4, 4},
		{"crackle", 4, 4},
		{"monks-belt", 4, 2},
		{"turned-twill-4", 8, 2},
		{"turned-satin-5", 10, 2},
		{"double-cloth-blocks", 8, 2},
		{"huck-lace", 4, 1},
		{"huck-half-units", 4, 2},
		{"huck-half-units", 8, 6},
		{"turned-satin-8", 7, 0},
	} {
		s, _ := Find(c.id)
		if got := s.Fit(c.shafts); got != c.blocks {
			t.Errorf("%s on %d shafts: %d blocks, want %d", c.id, c.shafts, got, c.blocks)
		}
	}
	if _, likely := Find("overshoot"); likely != "overshot" {
		t.Errorf("overshoot: %q", likely)
	}
}

// TestThreadingOfBlocks holds the threadings of the blocks that handbooks print, from
// memory; Bronson's unit is also that of a Swedish page, turned round.
func TestThreadingOfBlocks(t *testing.T) {
	for id, want := range map[string]string{
		"overshot":          "[1 2 1 2 3 2 3 2 3 4 3 4 1 4 1 4]",
		"crackle":           "[1 2 3 2 1 2 3 4 3 2 3 4 1 4 3 4 1 2 1 4]",
		"summer-and-winter": "[1 3 2 3 1 4 2 4 1 5 2 5 1 6 2 6]",
		"bronson-lace":      "[1 3 1 3 1 2 1 4 1 4 1 2 1 5 1 5 1 2 1 6 1 6 1 2]",
		"spot-bronson":      "[1 2 1 2 1 3 1 3 1 4 1 4 1 5 1 5]",
		"monks-belt":        "[1 2 1 2 3 4 3 4 5 6 5 6 7 8 7 8]",
	} {
		s, _ := Find(id)
		p := &Profile{Blocks: 4, Threading: []int{1, 2, 3, 4}, Treadling: []draft.Set{draft.Of(1)}}
		if got := fmt.Sprint(expanded(t, s, p, LiftPlan).Threading); got != want {
			t.Errorf("%s: %s", id, got)
		}
	}
}

// TestRead reads profiles by the one shorthand.
func TestRead(t *testing.T) {
	p, list := Read(Text{Threading: "(A B) x 2, C mirrored, motif", Treadling: "A 1+3 2-3 motif", Groups: map[string]string{"motif": "B A"}})
	if p == nil {
		t.Fatal(list.All())
	}
	if want := []int{1, 2, 1, 2, 3, 2, 1}; !slices.Equal(p.Threading, want) || p.Blocks != 3 {
		t.Errorf("%+v", p)
	}
	if want := []draft.Set{1, 5, 2, 4, 2, 1}; !slices.Equal(p.Treadling, want) {
		t.Errorf("%v", p.Treadling)
	}
	p, _ = Read(Text{Threading: "A B C D", Treadling: "1 2 1", Ties: []string{"1+2", "3+4"}})
	if want := []draft.Set{3, 12, 3}; !slices.Equal(p.Patterns(), want) {
		t.Errorf("%v", p.Patterns())
	}
	if p, _ = Read(Text{Threading: "A C B"}); !slices.Equal(p.Patterns(), []draft.Set{1, 4, 2}) {
		t.Errorf("as drawn in: %v", p.Patterns())
	}
}

// TestFaultyProfiles: every problem at once, with its place.
func TestFaultyProfiles(t *testing.T) {
	for _, c := range []struct {
		text Text
		want []string
	}{
		{Text{Threading: "A, q", Treadling: "1 +"}, []string{"order.name-unknown threading", "order.unexpected treadling"}},
		{Text{Threading: "A B", Treadling: "1 3"}, []string{"block.treadle treadling[1]"}},
		{Text{Threading: "A B", Ties: []string{"1+3", "2"}}, []string{"block.unknown tie-up[0]"}},
		{Text{Threading: "A x 3000"}, []string{"block.units threading", "block.units treadling"}},
		{Text{Threading: "30"}, []string{"block.blocks blocks"}},
		{Text{}, []string{"order.empty threading"}},
	} {
		p, list := Read(c.text)
		if got := codes(list.All()); p != nil || !slices.Equal(got, c.want) {
			t.Errorf("%+v: %q, want %q", c.text, got, c.want)
		}
	}
	p := &Profile{Blocks: 2, Threading: []int{1, 3}, Treadling: []draft.Set{1}}
	if got := codes(p.Check().All()); !slices.Equal(got, []string{"block.unknown threading[1]"}) {
		t.Error(got)
	}
}

// TestCapacity: what a loom lacks, and what else could be done.
func TestCapacity(t *testing.T) {
	wide := &Profile{Blocks: 6, Threading: []int{1, 2, 3, 4, 5, 6}}
	for k := 1; k <= 6; k++ {
		wide.Treadling = append(wide.Treadling, draft.Of(k))
	}
	for _, c := range []struct {
		id   string
		p    *Profile
		loom loom.Loom
		want []string
	}{
		{"summer-and-winter", wide, loom.Loom{Shafts: 8, Treadles: 14, Shed: loom.Rising}, nil},
		{"summer-and-winter", wide, loom.Loom{Shafts: 8, Treadles: 10, Shed: loom.Rising}, []string{"block.two-feet treadling"}},
		{"summer-and-winter", wide, loom.Loom{Shafts: 8, Treadles: 10, Shed: loom.Countermarch}, []string{"block.treadles treadling"}},
		{"summer-and-winter", wide, loom.Loom{Shafts: 8, Treadles: 6, Shed: loom.Rising}, []string{"block.treadles treadling"}},
		{"summer-and-winter", wide, loom.Loom{Shafts: 8, Shed: loom.Table}, nil},
		{"summer-and-winter", wide, loom.Loom{Shafts: 4, Treadles: 6, Shed: loom.Rising}, []string{"block.shafts blocks", "block.treadles treadling"}},
		{"summer-and-winter", wide, loom.Loom{}, nil},
		{"overshot", everyPattern(&System{Together: true}, 3), loom.Loom{}, []string{"block.together treadling[10]", "block.together treadling[11]", "block.together treadling[12]", "block.together treadling[13]", "block.together treadling[14]", "block.together treadling[15]", "block.together treadling[6]", "block.together treadling[7]"}},
		{"huck-half-units", &Profile{Blocks: 3, Threading: []int{1, 2, 3, 3}, Treadling: []draft.Set{1}}, loom.Loom{}, []string{"block.in-turn threading[2]", "block.in-turn threading[3]"}},
		{"monks-belt", &Profile{Blocks: 2, Threading: []int{1, 2}, Treadling: []draft.Set{3}}, loom.Loom{}, []string{"block.ground treadling[0]"}},
		{"turned-satin-8", &Profile{Blocks: 9, Threading: []int{9}, Treadling: []draft.Set{1}}, loom.Loom{}, []string{"block.shafts blocks"}},
	} {
		s, _ := Find(c.id)
		list := s.Capacity(c.p, &c.loom)
		if got := codes(list.All()); !slices.Equal(got, c.want) {
			t.Errorf("%s on %+v: %q, want %q", c.id, c.loom, got, c.want)
		}
	}
	s, _ := Find("summer-and-winter")
	p := s.Capacity(wide, &loom.Loom{Shafts: 4}).All()[0]
	if p.Args["needs"] != 8 || p.Args["fit"] != 2 {
		t.Errorf("%+v", p.Args)
	}
	if n := s.Needs(wide); n != (Needs{Blocks: 6, Shafts: 8, OneFoot: 14, TwoFeet: 10}) {
		t.Errorf("%+v", n)
	}
}

func codes(list []problem.Problem) []string {
	var out []string
	for _, p := range list {
		out = append(out, p.Code+" "+p.Path)
	}
	return out
}

// FuzzRead: no text of a profile breaks the reader or a system.
func FuzzRead(f *testing.F) {
	f.Add("A B C D", "", "")
	f.Add("(A B) x 3, C mirrored", "1+3 2", "1+2")
	f.Add("1-26", "A B", "")
	f.Add("A x 3000", "((A", "Z")
	f.Fuzz(func(t *testing.T, threading, treadling, tie string) {
		text := Text{Threading: threading, Treadling: treadling}
		if tie != "" {
			text.Ties = []string{tie}
		}
		p, list := Read(text)
		if (p == nil) != list.Failed() {
			t.Fatalf("%+v: %v", text, list.All())
		}
		if p == nil || len(p.Threading) > 40 || len(p.Treadling) > 40 {
			return
		}
		for _, s := range Systems() {
			if d, list := s.Expand(p, TwoFeet); (d == nil) != list.Failed() {
				t.Errorf("%s of %+v: %v", s.ID, text, list.All())
			}
		}
	})
}
