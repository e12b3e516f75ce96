package loomside

import "sley/internal/trade/qty"

// WeftLeft is a weft yarn: what it has still to do, and whether there is enough. Lengths
// are nanometres.
type WeftLeft struct {
	Yarn    string
	Picks   int      // to go
	Pick    qty.Rat  // what one takes, with its share of all reserves
	Needs   qty.Rat  // for those to go
	Left    *qty.Rat // what there is; nil: not known
	Weighed bool     // by the scale, not by what was reckoned
	Lasts   *int     // picks that what is left lasts for
	Long    *qty.Rat // how much cloth those make, as the tape reads it, where the yarn makes all of it
	Bobbins *int     // still to be wound; nil where the plan does not say what one holds
	Woven   qty.Rat  // what the picks since the last weighing, or since the first, took
}

// weft tells of each weft yarn.
func (l *looking) weft(f Forecast) []WeftLeft {
	var out []WeftLeft
	for at, yarn := range l.Yarns {
		all, woven := l.picksOf(at, l.Total), l.picksOf(at, l.told.Pick)
		w := WeftLeft{Yarn: yarn, Picks: all - woven}
		if all == 0 {
			continue
		}
		w.Pick = l.is("yarns[" + yarn + "].weft").Div(qty.Int(int64(max(l.plannedPicks(yarn, all), 1))))
		w.Needs = w.Pick.Mul(qty.Int(int64(w.Picks)))
		l.left(&w, at, woven)
		l.lasts(&w, f, len(l.Yarns) == 1)
		l.bobbins(&w)
		out = append(out, w)
	}
	return out
}

// plannedPicks is the picks that the reckoning has of a yarn; pieces that ended otherwise
// have other ones.
func (l *looking) plannedPicks(yarn string, all int) int {
	if n := whole(l.r, "yarns["+yarn+"].picks"); n > 0 {
		return n
	}
	if n := whole(l.r, "weft.picks"); n > 0 && len(l.Yarns) == 1 {
		return n
	}
	return all
}

// picksOf counts the picks of a yarn among the first of the warp.
func (l *looking) picksOf(yarn, picks int) int {
	n := 0
	for _, p := range l.Pieces {
		weft := l.Kinds[p.Kind].Weft
		for _, y := range weft[:min(max(picks-p.Before, 0), len(weft))] {
			if y == yarn {
				n++
			}
		}
	}
	return n
}

// left is what there is of a yarn: by its last weighing less what was woven since, else by
// what there was before the warp was wound less warp and weft.
func (l *looking) left(w *WeftLeft, at, woven int) {
	if s, ok := l.told.Left[w.Yarn]; ok {
		w.Weighed = true
		w.Woven = w.Pick.Mul(qty.Int(int64(max(woven-l.picksOf(at, s.Pick), 0))))
		is := qty.Max(s.Is.Sub(w.Woven), qty.Rat{})
		w.Left = &is
		return
	}
	w.Woven = w.Pick.Mul(qty.Int(int64(woven)))
	if stock, ok := l.told.Stock[w.Yarn]; ok {
		is := qty.Max(stock.Sub(l.is("yarns["+w.Yarn+"].warp")).Sub(w.Woven), qty.Rat{})
		w.Left = &is
	}
}

// lasts is how far what is left goes.
func (l *looking) lasts(w *WeftLeft, f Forecast, alone bool) {
	if w.Left == nil || w.Pick.Sign() <= 0 {
		return
	}
	n := w.Left.Div(w.Pick).Count(qty.Down)
	w.Lasts = &n
	if long, ok := l.long(f.Piece, n); ok && alone {
		w.Long = &long
	}
}

// bobbins is what is still to be wound for the picks to go.
func (l *looking) bobbins(w *WeftLeft) {
	full := l.is("weft.bobbin").Sub(l.is("weft.bobbin-end"))
	if full.Sign() <= 0 {
		return
	}
	n := w.Needs.Div(full).Count(qty.Up)
	w.Bobbins = &n
}
