package reckon

import (
	"fmt"

	"pgregory.net/rapid"

	"sley/internal/trade/loom"
	"sley/internal/trade/order"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

// The plans that the properties are tried on: every form of allowance, hems
// and fringes inside and outside, borders, gaps, cut-offs, panels, layers,
// stripes, floating selvedges, estimates and orders of weft. All lengths are
// eighths of an inch, so that a tenth of them is whole too.

func drawLength(t *rapid.T, low, high int64, name string) qty.Typed[qty.Length] {
	eighths := rapid.Int64Range(low*8, high*8).Draw(t, name)
	l := qty.Length(eighths) * (qty.Inch / 8)
	return qty.Typed[qty.Length]{Is: l, Typed: l.String()}
}

func drawShare(t *rapid.T, most int64, name string) qty.Typed[qty.Share] {
	p := rapid.Int64Range(0, most).Draw(t, name)
	return qty.Typed[qty.Share]{Is: qty.Percent(qty.Int(p)), Typed: fmt.Sprint(p, " %")}
}

func maybe(t *rapid.T, name string) bool { return rapid.Bool().Draw(t, name) }

func drawTerm(t *rapid.T) warp.Term {
	share := qty.Frac(rapid.Int64Range(1, 12).Draw(t, "share"), 100)
	switch rapid.IntRange(0, 5).Draw(t, "form") {
	case 0:
		return warp.Term{Form: warp.Lose, Share: share, Typed: "lose"}
	case 1:
		return warp.Term{Form: warp.Gain, Share: share, Typed: "gain"}
	case 2:
		return warp.Term{Form: warp.Add, Share: share, Typed: "add"}
	case 3:
		return warp.Term{Form: warp.Plain, Length: drawLength(t, 0, 3, "plain").Is, Sides: rapid.IntRange(1, 2).Draw(t, "sides"), Typed: "plain"}
	case 4:
		return warp.Term{Form: warp.PerLength, Length: drawLength(t, 1, 3, "per").Is, Per: qty.Yard, Typed: "per"}
	}
	return warp.Term{Form: warp.Measured, Before: 10 * qty.Inch, After: drawLength(t, 8, 10, "after").Is, Typed: "measured"}
}

func drawAllowance(t *rapid.T) warp.Allowance {
	a := warp.Allowance{Typed: "drawn"}
	for range rapid.IntRange(0, 2).Draw(t, "steps") {
		var step []warp.Term
		for range rapid.IntRange(1, 2).Draw(t, "terms") {
			step = append(step, drawTerm(t))
		}
		a.Steps = append(a.Steps, step)
	}
	a.None = len(a.Steps) == 0
	return a
}

func drawAllowances(t *rapid.T) warp.Allowances {
	out := warp.Allowances{}
	sets := [][]string{
		{"shrinkage", "relaxation", "take-up"},
		{"shrinkage", "relaxation", "loom-take-up"},
		{"tape-to-washed", "take-up"},
		{"tape-to-washed", "loom-take-up"},
		{"warp-to-washed"},
		{},
	}
	widths := [][]string{{"width-shrinkage", "reed-to-relaxed"}, {"width-shrinkage", "width-relaxation", "draw-in"}, {"reed-to-washed"}, {"fell-to-washed", "draw-in"}, {}}
	for _, set := range [][]string{rapid.SampledFrom(sets).Draw(t, "links"), rapid.SampledFrom(widths).Draw(t, "width links")} {
		for _, key := range set {
			out[key] = drawAllowance(t)
		}
	}
	return out
}

func drawEnd(t *rapid.T, name string) warp.End {
	e := warp.End{Finish: warp.Finish(rapid.IntRange(0, 2).Draw(t, name))}
	switch e.Finish {
	case warp.Hem:
		e.Depth = drawLength(t, 1, 2, name+" hem")
		e.Outside, e.TurnedBefore = maybe(t, name+" outside"), maybe(t, name+" before")
		if maybe(t, name+" turn") {
			e.TurnIn = drawLength(t, 1, 1, name+" turn-in")
		}
	case warp.Fringe:
		e.Depth, e.Inside = drawLength(t, 3, 8, name+" fringe"), maybe(t, name+" inside")
		e.Twist, e.YarnShrinkage = drawShare(t, 20, name+" twist"), drawShare(t, 5, name+" yarn")
		e.Knot = drawLength(t, 0, 1, name+" knot")
	}
	return e
}

func drawPiece(t *rapid.T, i int) warp.Piece {
	p := warp.Piece{
		Name: fmt.Sprint("piece ", i), Count: rapid.IntRange(1, 4).Draw(t, "count"), CountTyped: "n",
		First: drawEnd(t, "first"), Last: drawEnd(t, "last"),
		Motif: rapid.IntRange(0, 9).Draw(t, "motif"), Balance: rapid.IntRange(0, 3).Draw(t, "balance"),
		BorderPicks: rapid.IntRange(0, 12).Draw(t, "border"), Far: warp.FarBorder(rapid.IntRange(0, 2).Draw(t, "far")),
	}
	long := drawLength(t, 20, 80, "length")
	p.Length = warp.Size{Is: long.Is, State: warp.Finished, Typed: long.Typed}
	wide := drawLength(t, 6, 30, "width")
	p.Width = warp.Size{Is: wide.Is, State: warp.Finished, Typed: wide.Typed}
	if maybe(t, "trim") {
		p.Trim = drawLength(t, 0, 1, "trim by")
	}
	if maybe(t, "panels") {
		p.Panels, p.Seam = 2, drawLength(t, 0, 1, "seam")
	}
	if maybe(t, "order") {
		p.Order, _ = order.Parse("(blue 2, white 4) x fill, blue 2", order.Context{Kind: order.Stripes})
	}
	return p
}

func inches(t *rapid.T, low, high int64, name string) qty.Density {
	return qty.Density{Threads: qty.Int(rapid.Int64Range(low, high).Draw(t, name)), Over: qty.Inch}
}

// drawPlan draws a plan that needs no starting value that is a length.
func drawPlan(t *rapid.T) *warp.Plan {
	p := &warp.Plan{Format: 1, Weave: "plain", Allowances: drawAllowances(t), Gap: drawLength(t, 0, 2, "gap")}
	for i := range rapid.IntRange(1, 3).Draw(t, "kinds") {
		p.Pieces = append(p.Pieces, drawPiece(t, i))
	}
	count, _ := yarn.ParseCount("8/2 Ne")
	for _, name := range []string{"white", "blue"} {
		p.Yarns = append(p.Yarns, yarn.Yarn{Name: name, Count: qty.Typed[yarn.Count]{Is: count, Typed: "8/2 Ne"}})
	}
	p.Warp = warp.Warp{Yarn: "white", Sett: warp.Sett{Is: inches(t, 6, 40, "sett"), State: warp.InReed, Typed: "sett"}}
	p.Warp.Choose = qty.Rounding(rapid.IntRange(0, 2).Draw(t, "choose"))
	p.Warp.Floats = 2 * rapid.IntRange(0, 1).Draw(t, "floats")
	p.Warp.DoubledEnds = rapid.IntRange(0, 2).Draw(t, "doubled")
	p.Warp.Layers = rapid.IntRange(1, 2).Draw(t, "layers")
	drawStripes(t, p)
	p.Weft = warp.Weft{Yarn: "white", Picks: warp.Sett{Is: inches(t, 6, 30, "picks"), State: warp.OnLoom, Typed: "picks"}}
	p.Weft.Slack, p.Weft.Reserve, p.Weft.Tail = drawShare(t, 5, "slack"), drawShare(t, 10, "reserve"), drawLength(t, 0, 1, "tail")
	if maybe(t, "of warp") {
		p.Weft.OfWarp = drawShare(t, 100, "share of warp")
	}
	p.Loom.Waste = warpWaste(t)
	for _, n := range []int64{8, 10, 12} {
		d := qty.Density{Threads: qty.Int(n), Over: qty.Inch}
		p.Loom.Reeds = append(p.Loom.Reeds, loom.Reed{Dents: qty.Typed[qty.Density]{Is: d, Typed: d.String()}})
	}
	sample := drawLength(t, 0, 12, "sample")
	p.Sampling = warp.Sampling{Length: warp.Size{Is: sample.Is, State: warp.Straight, Typed: sample.Typed}, CutOff: maybe(t, "cut off")}
	return p
}

func drawStripes(t *rapid.T, p *warp.Plan) {
	switch rapid.IntRange(0, 3).Draw(t, "stripes") {
	case 0:
		p.Warp.Stripes, _ = order.Parse("blue 4, (white 6, blue 2) x fill, white 6, blue 4", order.Context{Kind: order.Stripes})
	case 1:
		p.Warp.Threading, _ = order.Parse("(1 2 3 4 3 2) x fill, 1", order.Context{Kind: order.Shafts})
	case 2:
		p.Warp.Stripes, _ = order.Parse("(white 3, blue 1) x fill, white 3", order.Context{Kind: order.Stripes})
		p.Warp.Threading, _ = order.Parse("(1 2 3 4) x fill, 1", order.Context{Kind: order.Shafts})
	}
}

func warpWaste(t *rapid.T) loom.Waste {
	w := loom.Waste{TieOn: drawLength(t, 4, 10, "tie-on")}
	if maybe(t, "parts") {
		w.Unreachable, w.Back = drawLength(t, 6, 20, "unreachable"), drawLength(t, 2, 6, "back")
		w.GivesFringe = maybe(t, "gives fringe")
	}
	return w
}
