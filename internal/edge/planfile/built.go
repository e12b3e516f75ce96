package planfile

import (
	"sley/internal/trade/problem"
	"sley/internal/trade/warp"
)

// readBuilt reads what stands on the loom, where it differs from the plan.
func (d *decoder) readBuilt(n *node) {
	t := d.open(builtTable, n)
	b := &d.plan.Built
	b.Ends = t.whole("ends", 1, mostEnds)
	b.Wound = t.length("wound", wholeWarp)
	b.Sett = t.sett("sett", []warp.State{warp.InReed})
	b.Picks = t.sett("picks", []warp.State{warp.OnLoom})
	b.Note = t.text("note")
	b.Waste = t.length("waste", detail)
	b.Sampling = t.length("sampling", detail)
	b.Woven = d.woven(t.at("woven"))
}

// woven reads the pieces that came off the loom otherwise than planned.
func (d *decoder) woven(n *node) []warp.Woven {
	if n == nil || !d.is(n, listKind, `a list of pieces, as [{ piece = 0, on-loom = "35 in" }]`) {
		return nil
	}
	var out []warp.Woven
	left := map[int]int{}
	for i, p := range d.plan.Pieces {
		left[i] = p.Count
	}
	for _, c := range n.items {
		w, ok := d.wovenPiece(d.open(wovenTable, c))
		if !ok {
			continue
		}
		if left[w.Piece]--; left[w.Piece] < 0 {
			d.fail("woven.many", c, problem.Args{"piece": w.Piece, "count": d.plan.Pieces[w.Piece].Count})
			continue
		}
		out = append(out, w)
	}
	return out
}

func (d *decoder) wovenPiece(t table) (warp.Woven, bool) {
	if t.n == nil {
		return warp.Woven{}, false
	}
	for _, key := range []string{"piece", "on-loom"} {
		if !t.has(key) {
			t.failKey("key.missing", key, problem.Args{"key": key})
			return warp.Woven{}, false
		}
	}
	if len(d.plan.Pieces) == 0 {
		return warp.Woven{}, false
	}
	piece := t.whole("piece", 0, len(d.plan.Pieces)-1)
	w := warp.Woven{Piece: piece.Is, OnLoom: t.length("on-loom", pieceLength)}
	return w, piece.Given() && w.OnLoom.Given()
}
