package loomside

import "sley/internal/trade/qty"

// warp tells how much warp is left; nil where the plan does not know what a piece takes.
// What is used, what is left and what cannot be woven come to the warp that was wound.
func (l *looking) warp(f Forecast) *WarpLeft {
	wound := l.is("warp.wound")
	if wound.IsZero() {
		return nil
	}
	used, ok := l.used(f)
	if !ok {
		return nil
	}
	waste := l.behind()
	left := qty.Max(wound.Sub(used).Sub(waste), qty.Rat{})
	out := &WarpLeft{Used: used, Left: left, Waste: wound.Sub(used).Sub(left)}
	out.Needs, _ = l.needs(f)
	out.Spare = left.Sub(out.Needs)
	l.fits(f, out)
	return out
}

// is is a figure of the reckoning; 0 where it has none.
func (l *looking) is(id string) qty.Rat {
	n, ok := l.r.Node(id)
	if !ok {
		return qty.Rat{}
	}
	return n.Is
}

// front is what is tied on. A waste that is said in one lump is taken to lie half in
// front: common practice, no source.
func (l *looking) front() qty.Rat {
	front := l.is("tie-on")
	if front.IsZero() && l.is("unreachable").IsZero() && l.is("back").IsZero() {
		front = l.is("warp.waste").Div(qty.Int(2))
	}
	return front
}

// before is the warp in front of the first pick.
func (l *looking) before() qty.Rat {
	return l.front().Add(l.is("warp.header")).Add(l.is("warp.sampling")).Add(l.besides())
}

// besides is what the warp as planned needs besides its parts: what is tied on again after
// the cloth is cut off, less the fringe that comes out of the waste. Where along the warp
// it lies the plan does not say; it is counted in front.
func (l *looking) besides() qty.Rat {
	sum := l.front().Add(l.is("warp.header")).Add(l.is("warp.sampling"))
	for _, id := range []string{"warp.pieces", "warp.gaps"} {
		sum = sum.Add(l.is(id))
	}
	return l.is("warp.needed").Sub(sum).Sub(l.behind())
}

// behind is the warp that cannot be woven at the end.
func (l *looking) behind() qty.Rat {
	back := l.is("unreachable").Add(l.is("back"))
	if back.IsZero() && l.is("tie-on").IsZero() {
		back = l.is("warp.waste").Div(qty.Int(2))
	}
	return back
}

// takes is the warp that a piece takes of which so much is woven on the loom, with all
// that is its own: ends, fringes, trims.
func (l *looking) takes(piece int, long qty.Rat, whole bool) (qty.Rat, bool) {
	id := pieceID(l.Kinds[l.Pieces[piece].Kind].Piece)
	onLoom, cloth, each := l.is(id+"on-loom"), l.is(id+"warp"), l.is(id+"warp-each")
	if onLoom.IsZero() || cloth.IsZero() {
		return qty.Rat{}, false
	}
	out := cloth.Mul(long).Div(onLoom)
	if own := each.Sub(cloth); whole {
		out = out.Add(own)
	} else if long.Sign() > 0 {
		out = out.Add(own.Div(qty.Int(2))) // of both its ends, the first
	}
	return out, true
}

// used is the warp from the rod to the fell.
func (l *looking) used(f Forecast) (qty.Rat, bool) {
	sum := l.before()
	for i := range l.Pieces[:f.Piece+1] {
		picks := min(l.told.Pick-l.Pieces[i].Before, l.picks(i))
		long, ok := l.long(i, picks)
		if !ok {
			return sum, false
		}
		took, ok := l.takes(i, long, picks == l.picks(i))
		if !ok {
			return sum, false
		}
		sum = sum.Add(took)
		if i > 0 && picks > 0 {
			sum = sum.Add(l.is("gap"))
		}
	}
	return sum, true
}

// needs is the warp for what is still to be woven, piece by piece: the rest of the one
// under way, and each one after it.
func (l *looking) needs(f Forecast) (all qty.Rat, each []qty.Rat) {
	for i := f.Piece; i < len(l.Pieces); i++ {
		woven := max(l.told.Pick-l.Pieces[i].Before, 0)
		if woven >= l.picks(i) {
			continue
		}
		whole, _ := l.long(i, l.picks(i))
		now, _ := l.long(i, woven)
		takes, _ := l.takes(i, whole, true)
		took, _ := l.takes(i, now, false)
		need := takes.Sub(took)
		if i > 0 && woven == 0 {
			need = need.Add(l.is("gap"))
		}
		all, each = all.Add(need), append(each, need)
	}
	return all, each
}

// fits counts the pieces that the warp still holds, and how long the next can be.
func (l *looking) fits(f Forecast, out *WarpLeft) {
	_, each := l.needs(f)
	left := out.Left
	first := len(l.Pieces) - len(each)
	for k, need := range each {
		if left.Less(need) {
			out.Last = l.shortened(first+k, left, need)
			return
		}
		left = left.Sub(need)
		out.Pieces++
	}
}

// shortened is how long on the loom a piece can be, in all, that has only left of the warp
// that it still needs.
func (l *looking) shortened(piece int, left, need qty.Rat) qty.Rat {
	whole, _ := l.long(piece, l.picks(piece))
	now, _ := l.long(piece, max(l.told.Pick-l.Pieces[piece].Before, 0))
	id := pieceID(l.Kinds[l.Pieces[piece].Kind].Piece)
	per := l.is(id + "warp").Div(l.is(id + "on-loom")) // warp for a length of cloth
	return qty.Max(whole.Sub(need.Sub(left).Div(per)), now)
}
