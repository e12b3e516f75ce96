package finishing

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/engine/content"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

func ids(p *warp.Plan) string {
	var out []string
	for _, s := range Steps(p) {
		out = append(out, string(s.ID))
	}
	return strings.Join(out, " ")
}

func of(fibres ...string) []yarn.Yarn {
	var out []yarn.Yarn
	for _, f := range fibres {
		c, err := yarn.ParseComposition(f)
		if err != nil {
			panic(err)
		}
		out = append(out, yarn.Yarn{Name: f, Composition: qty.Typed[yarn.Composition]{Is: c, Typed: f}})
	}
	return out
}

func hem(before bool) warp.End { return warp.End{Finish: warp.Hem, TurnedBefore: before} }

var fringe = warp.End{Finish: warp.Fringe}

// TestUsualOrders holds the order for the cloths of the studio. That it is done so is common
// practice, no source.
func TestUsualOrders(t *testing.T) {
	for _, c := range []struct {
		what string
		plan warp.Plan
		want string
	}{
		{
			"towels",
			warp.Plan{Yarns: of("cottolin"), Wash: "washed", Pieces: []warp.Piece{{Count: 6, First: hem(false), Last: hem(false)}}},
			"measure-on-loom cut-off secure rest measure-relaxed mend cut-apart wash dry press trim hem-after rest-again measure-finished",
		},
		{
			"a blanket",
			warp.Plan{Yarns: of("wool woollen"), Wash: "fulled", Pieces: []warp.Piece{{Count: 1, First: fringe, Last: fringe}}},
			"hemstitch measure-on-loom cut-off rest measure-relaxed mend fringe full dry press trim rest-again measure-finished",
		},
		{
			"a curtain",
			warp.Plan{Yarns: of("linen"), Pieces: []warp.Piece{{Count: 1, Panels: 2, First: hem(true), Last: hem(false)}}},
			"measure-on-loom cut-off secure rest measure-relaxed mend cut-apart hem-before wash dry press trim seam hem-after rest-again measure-finished",
		},
		{
			"never washed",
			warp.Plan{Yarns: of("jute"), Wash: "unwashed", Pieces: []warp.Piece{{Count: 1}}},
			"measure-on-loom cut-off secure rest measure-relaxed mend press trim measure-finished",
		},
		{
			"never ironed",
			warp.Plan{Yarns: of("polypropylene", "cotton"), Pieces: []warp.Piece{{Count: 1}}},
			"measure-on-loom cut-off secure rest measure-relaxed mend wash dry trim rest-again measure-finished",
		},
	} {
		if got := ids(&c.plan); got != c.want {
			t.Errorf("%s:\n%s\nwant\n%s", c.what, got, c.want)
		}
	}
}

func find(p *warp.Plan, id ID) Step {
	for _, s := range Steps(p) {
		if s.ID == id {
			return s
		}
	}
	return Step{}
}

// TestHow holds how steps are done with one cloth or another.
func TestHow(t *testing.T) {
	plan := func(wash string, ends warp.End, fibres ...string) *warp.Plan {
		return &warp.Plan{Yarns: of(fibres...), Wash: wash, Warp: warp.Warp{Floats: 2}, Pieces: []warp.Piece{{Count: 2, First: ends}}}
	}
	twisted := fringe
	twisted.Twist = qty.Typed[qty.Share]{Typed: "15 %"}
	double := plan("", hem(false), "linen")
	double.Warp.Layers, double.Warp.Floats = 2, 0
	for _, c := range []struct {
		plan *warp.Plan
		id   ID
		want string
	}{
		{plan("", hem(false), "linen"), Wash, "[hot-for-linen] [hot-water] 60"},
		{plan("", hem(false), "linen", "wool"), Wash, "[cool-for-wool] [hot-water] 30"},
		{plan("", hem(false), "superwash wool"), Wash, "[] [hot-water] 40"},
		{plan("", hem(false), "coir"), Wash, "[water-harms] [hot-water] 0"},
		{plan("", hem(false)), Wash, "[] [hot-water] 0"},
		{plan("fulled", hem(false), "wool"), Full, "[look-often] [hot-water] 0"},
		{plan("fulled", hem(false), "cotton"), Full, "[look-often does-not-felt] [hot-water] 0"},
		{plan("", hem(false), "linen"), Press, "[press-damp] [hot-iron] 200"},
		{plan("unwashed", hem(false), "linen"), Press, "[] [hot-iron] 200"},
		{plan("", hem(false), "wool"), Press, "[steam-wool] [hot-iron] 150"},
		{plan("", hem(false), "wool"), Dry, "[dry-flat] [] 0"},
		{plan("", hem(false), "cotton"), Dry, "[dry-hanging] [] 0"},
		{plan("", twisted, "cotton"), FinishFringe, "[twist-fringe] [] 0"},
		{plan("", fringe, "cotton"), FinishFringe, "[knot-fringe] [] 0"},
		{plan("", hem(true), "cotton"), HemBefore, "[on-unwashed] [] 0"},
		{plan("unwashed", hem(true), "cotton"), HemBefore, "[] [] 0"},
		{plan("", hem(true), "cotton"), Mend, "[leave-tails] [] 0"},
		{plan("unwashed", hem(true), "cotton"), Mend, "[] [] 0"},
		{plan("", hem(true), "cotton"), CutOff, "[floats-off] [tight-warp] 0"},
		{double, CutOff, "[open-out] [tight-warp] 0"},
		{plan("", hem(true), "cotton"), CutApart, "[] [dust] 0"},
	} {
		s := find(c.plan, c.id)
		if got := fmt.Sprint(s.Notes, s.Cautions, s.Most); got != c.want {
			t.Errorf("%s of %s: %s, want %s", c.id, c.plan.Wash, got, c.want)
		}
	}
}

func drawEnd(t *rapid.T, name string) warp.End {
	return warp.End{Finish: warp.Finish(rapid.IntRange(0, 2).Draw(t, name)), TurnedBefore: rapid.Bool().Draw(t, name+" before")}
}

func drawPlan(t *rapid.T) *warp.Plan {
	p := &warp.Plan{Wash: rapid.SampledFrom(append(warp.WashNames(), "")).Draw(t, "wash")}
	for _, f := range rapid.SliceOfN(rapid.SampledFrom(yarn.Fibres()), 0, 3).Draw(t, "fibres") {
		p.Yarns = append(p.Yarns, of(f.Name)...)
	}
	for range rapid.IntRange(1, 3).Draw(t, "pieces") {
		p.Pieces = append(p.Pieces, warp.Piece{
			Count: rapid.IntRange(1, 3).Draw(t, "count"), Panels: rapid.IntRange(0, 2).Draw(t, "panels"),
			First: drawEnd(t, "first"), Last: drawEnd(t, "last"),
		})
	}
	p.Warp.Floats = rapid.SampledFrom([]int{0, 2, 4}).Draw(t, "floats")
	p.Warp.Layers = rapid.IntRange(0, 2).Draw(t, "layers")
	return p
}

// TestOrderIsLawful: of any plan every step stands once and in order, and those that depend
// on something are there where, and only where, it is so.
func TestOrderIsLawful(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlan(t)
		at, last := map[ID]bool{}, -1
		for _, s := range Steps(p) {
			place := slices.Index(Order(), s.ID)
			if place <= last {
				t.Fatalf("%s is out of order", s.ID)
			}
			at[s.ID], last = true, place
		}
		any := func(as func(warp.End) bool) bool {
			return slices.ContainsFunc(p.Pieces, func(one warp.Piece) bool { return as(one.First) || as(one.Last) })
		}
		n, panels := 0, false
		for _, one := range p.Pieces {
			n += one.Count * max(one.Panels, 1)
			panels = panels || one.Panels > 1
		}
		isHem := func(before bool) bool {
			return any(func(e warp.End) bool { return e.Finish == warp.Hem && e.TurnedBefore == before })
		}
		for id, want := range map[ID]bool{
			Hemstitch: any(isFringe), FinishFringe: any(isFringe), HemBefore: isHem(true), HemAfter: isHem(false),
			Secure:   any(func(e warp.End) bool { return !isFringe(e) }),
			CutApart: n > 1, Seam: panels, CutOff: true, Mend: true, Trim: true, Rest: true,
			Wash: p.Wash == "washed" || p.Wash == "", Full: p.Wash == "fulled", Dry: p.Wash != "unwashed",
			RestAgain: p.Wash != "unwashed", MeasureOnLoom: true, MeasureRelaxed: true, MeasureFinished: true,
		} {
			if at[id] != want {
				t.Fatalf("%s: %v, want %v", id, at[id], want)
			}
		}
	})
}

// TestEveryEndIsFinishedOnce: each end is hemmed once, or hemstitched and its fringe made,
// or left a raw edge; and the steps name no other end.
func TestEveryEndIsFinishedOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlan(t)
		done := map[End][]ID{}
		for _, s := range Steps(p) {
			for _, e := range s.Ends {
				done[e] = append(done[e], s.ID)
			}
		}
		for i, one := range p.Pieces {
			for last, e := range map[bool]warp.End{false: one.First, true: one.Last} {
				want := []ID{Secure}
				switch {
				case isFringe(e):
					want = []ID{Hemstitch, FinishFringe}
				case e.Finish == warp.Hem && e.TurnedBefore:
					want = []ID{Secure, HemBefore}
				case e.Finish == warp.Hem:
					want = []ID{Secure, HemAfter}
				}
				if got := done[End{i, last}]; !slices.Equal(got, want) {
					t.Fatalf("an end of piece %d: %v, want %v", i, got, want)
				}
				delete(done, End{i, last})
			}
		}
		if len(done) > 0 {
			t.Fatalf("ends that are not there: %v", done)
		}
	})
}

// TestMeasuresAndCautions: each size is measured in every state once, water and iron never
// go without their caution, and neither is hotter than the tenderest fibre bears.
func TestMeasuresAndCautions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlan(t)
		seen := map[Measure]int{}
		c := clothOf(p)
		for _, s := range Steps(p) {
			for _, m := range s.Measure {
				seen[m]++
			}
			if wet := s.ID == Wash || s.ID == Full; wet != slices.Contains(s.Cautions, HotWater) {
				t.Fatalf("%s has the cautions %v", s.ID, s.Cautions)
			}
			if (s.ID == Press) != slices.Contains(s.Cautions, HotIron) {
				t.Fatalf("%s has the cautions %v", s.ID, s.Cautions)
			}
			for _, f := range c.fibres {
				one, _ := content.CareFor([]yarn.Fibre{f}, p.Wash)
				if s.ID == Wash && s.Most > one.Wash || s.ID == Press && s.Most > one.Iron {
					t.Fatalf("%s at %d with %s", s.ID, s.Most, f.Name)
				}
			}
		}
		if len(seen) != 6*len(p.Pieces) {
			t.Fatalf("%d sizes of %d pieces: %v", len(seen), len(p.Pieces), seen)
		}
		for m, n := range seen {
			if long := strings.HasSuffix(m.Path, ".length"); n != 1 || long && !m.State.IsLength() || !long && !m.State.IsWidth() {
				t.Fatalf("%+v is measured %d times", m, n)
			}
		}
	})
}
