package drafting

import (
	"fmt"

	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/qty"
)

// The drafts that the drawings are tried on: structures as handbooks name them, with
// the cloths of the demo.

var words = Words{
	Heading: "Galley towels: the draft",
	Page:    func(page, of int) string { return fmt.Sprintf("page %d of %d", page, of) },
	Ends:    "ends", Picks: "picks", Shafts: "shafts", Treadles: "treadles",
	Filled: "warp on top", Raised: "the treadle raises the shaft", Lowered: "the treadle lowers the shaft",
	Repeat: "one repeat", Float: "float of 4 and more", Behind: "float on the back", Pointed: "nothing holds it",
	Colour: func(i int) string { return []string{"bleached", "indigo", "madder", "weld"}[i%4] },
	Part: func(name string, ends, picks [2]int) string {
		return fmt.Sprintf("%s  ends %d–%d, picks %d–%d", name, ends[0], ends[1], picks[0], picks[1])
	},
	Cloth: "This draft is too large to be drawn thread by thread: 2000 ends and 4000 picks would take more pages than anyone would join. What follows is a picture of the cloth.",
}

var palette = []draft.Colour{{R: 0xf4, G: 0xf0, B: 0xe4}, {R: 0x25, G: 0x40, B: 0x7c}, {R: 0x9b, G: 0x2c, B: 0x24}, {R: 0xd9, G: 0xb1, B: 0x2f}}

// round is n numbers round the list.
func round(n int, list ...int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = list[i%len(list)]
	}
	return out
}

// straight is 1 to n.
func straight(n int) []int {
	var out []int
	for i := range n {
		out = append(out, i+1)
	}
	return out
}

// point is 1 to n and back.
func point(n int) []int {
	out := straight(n)
	for i := n - 1; i > 1; i-- {
		out = append(out, i)
	}
	return out
}

// ones is a treadle for each pick.
func ones(list []int) []draft.Set {
	var out []draft.Set
	for _, n := range list {
		out = append(out, draft.Of(n))
	}
	return out
}

// twillTies ties a treadle for each shaft: up shafts from it on, round the shafts.
func twillTies(shed loom.Shed, shafts, up int) []draft.Tie {
	var out []draft.Tie
	for t := range shafts {
		var s draft.Set
		for k := range up {
			s = s.With((t+k)%shafts + 1)
		}
		out = append(out, draft.TieFor(shed, s, shafts))
	}
	return out
}

func treadled(shed loom.Shed, shafts int, threading []int, ties []draft.Tie, treadling []int) *draft.Draft {
	return &draft.Draft{
		Shafts: shafts, Treadles: len(ties), Shed: shed, Threading: threading, Ties: ties,
		Treadling: ones(treadling), Palette: palette,
	}
}

func plainWeave() *draft.Draft {
	d := treadled(loom.Rising, 2, round(8, 1, 2), []draft.Tie{{Tied: draft.Of(1)}, {Tied: draft.Of(2)}}, round(8, 1, 2))
	d.Palette = nil
	return d
}

func twill() *draft.Draft {
	d := treadled(loom.Rising, 4, round(16, 1, 2, 3, 4), twillTies(loom.Rising, 4, 2), round(16, 1, 2, 3, 4))
	d.Weft.Colour = 1
	return d
}

// towel is a point twill with borders in colour.
func towel() *draft.Draft {
	d := treadled(loom.Countermarch, 8, round(56, point(8)...), twillTies(loom.Countermarch, 8, 4), round(42, point(8)...))
	d.Warp.Colours = append(append(round(6, 1), round(3, 2)...), round(38, 0)...)
	d.Warp.Colours = append(append(d.Warp.Colours, round(3, 2)...), round(6, 1)...)
	d.Weft.Colours = append(round(6, 1), round(36, 3)...)
	return d
}

// skeleton is a draft whose picks press two treadles.
func skeleton() *draft.Draft {
	d := treadled(loom.Rising, 8, round(40, straight(8)...), nil, nil)
	for _, s := range []draft.Set{draft.Of(1, 2), draft.Of(3, 4), draft.Of(5, 6), draft.Of(7, 8), draft.Of(1, 3), draft.Of(5, 7)} {
		d.Ties = append(d.Ties, draft.Tie{Tied: s})
	}
	d.Treadles = len(d.Ties)
	for i := range 32 {
		d.Treadling = append(d.Treadling, draft.Of(i%4+1, 5+i/4%2))
	}
	d.Palette = nil
	return d
}

// advancing is an advancing twill.
func advancing(shafts, ends, picks int) *draft.Draft {
	base := treadled(loom.Rising, shafts, straight(5), twillTies(loom.Rising, shafts, shafts/4), straight(5))
	d := base.AdvanceEnds((ends+4)/5, 1).AdvancePicks((picks+4)/5, 1)
	d.Palette = nil
	return d.DeleteEnds(ends, d.Ends()).DeletePicks(picks, d.Picks())
}

func houndstooth() *draft.Draft {
	d := twill().RepeatEnds(2).RepeatPicks(2)
	d.Warp.Colours = round(32, 1, 1, 1, 1, 0, 0, 0, 0)
	d.Weft.Colours = round(32, 1, 1, 1, 1, 0, 0, 0, 0)
	return d
}

// rib has thick and thin threads.
func rib() *draft.Draft {
	d := treadled(loom.Sinking, 2, round(20, 1, 2), []draft.Tie{{Tied: draft.Of(2)}, {Tied: draft.Of(1)}}, round(12, 1, 2))
	mm := qty.Millimetre
	d.Weft.Thicks, d.Weft.Aparts = make([]qty.Length, 12), make([]qty.Length, 12)
	for i := range d.Weft.Thicks {
		d.Weft.Thicks[i], d.Weft.Aparts[i] = mm/2, mm
		if i%2 == 1 {
			d.Weft.Thicks[i], d.Weft.Aparts[i] = 2*mm, 2*mm
		}
	}
	d.Warp.Thick, d.Warp.Apart, d.Warp.Colour = 8*mm/10, mm, 1
	d.Weft.Colours = round(12, 3, 2)
	return d
}

// table is a lift plan, with an end in no heddle at each edge.
func table() *draft.Draft {
	d := twill().WithoutTreadles()
	d.Shed = loom.Table
	d.Threading[0], d.Threading[15] = 0, 0
	return d
}

func named() map[string]*draft.Draft {
	sinking, _ := twill().OnLoom(loom.Sinking)
	return map[string]*draft.Draft{
		"plain": plainWeave(), "twill": twill(), "towel": towel(), "skeleton": skeleton(), "sinking": sinking,
		"houndstooth": houndstooth(), "rib": rib(), "table": table(), "advancing": advancing(16, 200, 120),
	}
}
