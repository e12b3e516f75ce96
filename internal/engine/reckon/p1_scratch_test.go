package reckon

import (
	"fmt"
	"testing"

	"sley/internal/trade/loom"
	"sley/internal/trade/order"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

func tl(l qty.Length, s string) qty.Typed[qty.Length] { return qty.Typed[qty.Length]{Is: l, Typed: s} }
func lose(n int64) warp.Allowance {
	return warp.Allowance{Steps: [][]warp.Term{{{Form: warp.Lose, Share: qty.Frac(n, 100), Typed: "x"}}}, Typed: "x"}
}
func perInch(n int64) qty.Density { return qty.Density{Threads: qty.Int(n), Over: qty.Inch} }

func p1() *warp.Plan {
	th, f := order.Parse("(1 2 3 4 3 2) x fill, 1", order.Context{Kind: order.Shafts})
	if f != nil {
		panic(f[0])
	}
	c, err := yarn.ParseCount("8/2 Ne")
	if err != nil {
		panic(err)
	}
	hem := warp.End{Finish: warp.Hem, Depth: tl(qty.Inch+qty.Inch/4, "1 1/4 in")}
	p := &warp.Plan{Format: 1,
		Pieces: []warp.Piece{{Name: "towel", Count: 4, CountTyped: "4", Length: warp.Size{Is: 28 * qty.Inch, State: warp.Finished, Typed: "28 in"}, Width: warp.Size{Is: 18 * qty.Inch, State: warp.Finished, Typed: "18 in"}, First: hem, Last: hem, Motif: 6, Balance: 1}},
		Gap:    tl(qty.Inch, "1 in"), Header: tl(2*qty.Inch, "2 in"),
		Allowances: warp.Allowances{"take-up": lose(8), "relaxation": lose(3), "shrinkage": lose(8), "width-shrinkage": lose(8), "reed-to-relaxed": lose(6)},
		Yarns:      []yarn.Yarn{{Name: "white", Count: qty.Typed[yarn.Count]{Is: c, Typed: "8/2 Ne"}}},
		Sampling:   warp.Sampling{Length: warp.Size{Is: 10 * qty.Inch, State: warp.Straight, Typed: "10 in"}, NoWeft: true},
	}
	p.Warp = warp.Warp{Yarn: "white", Sett: warp.Sett{Is: perInch(24), State: warp.InReed, Typed: "24 epi"}, Threading: th, Choose: qty.Up, Floats: 2}
	p.Weft.Picks = warp.Sett{Is: perInch(22), State: warp.OnLoom, Typed: "22 ppi"}
	p.Weft.Slack = qty.Typed[qty.Share]{Is: qty.Percent(qty.Int(3)), Typed: "3 %"}
	p.Weft.Reserve = qty.Typed[qty.Share]{Is: qty.Percent(qty.Int(5)), Typed: "5 %"}
	p.Loom.Waste.Lump = tl(30*qty.Inch, "30 in")
	for _, n := range []int64{8, 10, 12} {
		p.Loom.Reeds = append(p.Loom.Reeds, reedOf(n))
	}
	return p
}

func TestScratch(t *testing.T) {
	res := Reckon(p1(), Options{Workings: true})
	for _, n := range res.Nodes {
		v := n.Is
		switch n.Kind {
		case Length:
			v = v.Div(qty.Inch.Rat())
		case YarnLength:
			v = v.Div(qty.Yard.Rat())
		case Weight:
			v = v.Div(qty.Pound.Rat())
		case Density:
			v = v.Mul(qty.Inch.Rat())
		}
		fmt.Println(n.ID, v.Decimal(4), n.State, n.About.Order, n.Inputs())
	}
	fmt.Println(res.Problems.All())
}
func BenchmarkP1(b *testing.B) {
	p := p1()
	b.ReportAllocs()
	for b.Loop() {
		Reckon(p, Options{})
	}
}

func reedOf(n int64) (r loom.Reed) {
	r.Dents = qty.Typed[qty.Density]{Is: perInch(n), Typed: fmt.Sprint(n, " dpi")}
	return
}
