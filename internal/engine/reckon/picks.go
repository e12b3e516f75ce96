package reckon

import (
	"slices"

	"sley/internal/trade/order"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// picked is a number of neighbouring picks of one yarn.
type picked struct {
	yarn string
	n    qty.Rat // whole unless rounding is off
}

func picksIn(list []picked) qty.Rat {
	sum := qty.Rat{}
	for _, p := range list {
		sum = sum.Add(p.n)
	}
	return sum
}

// tally is what one yarn has in an order of picks.
type tally struct {
	picked
	begins qty.Rat // how often it begins after another
}

func tallied(list []picked) []tally {
	var out []tally
	for k, p := range list {
		i := slices.IndexFunc(out, func(t tally) bool { return t.yarn == p.yarn })
		if i < 0 {
			i = len(out)
			out = append(out, tally{picked: picked{yarn: p.yarn}})
		}
		out[i].n = out[i].n.Add(p.n)
		if k > 0 {
			out[i].begins = out[i].begins.Add(qty.Int(1))
		}
	}
	return out
}

// laidRepeats is how many repeats of the order are laid out to be counted: from
// the second on each is like the one before.
const laidRepeats = 3

// tallyOf counts the picks of each yarn in one piece. Of a long body three
// repeats are laid out and two, and what the third adds is added for every
// other.
func (r *run) tallyOf(pr *pieceRun) []tally {
	each, times := r.repeatsOf(pr)
	more := times.Sub(qty.Int(laidRepeats))
	if more.Sign() <= 0 {
		return tallied(r.pickOrder(pr))
	}
	out := tallied(r.layOut(pr, each.Mul(more)))
	less := tallied(r.layOut(pr, each.Mul(more.Add(qty.Int(1)))))
	for i := range out {
		for _, l := range less {
			if l.yarn == out[i].yarn {
				out[i].n = out[i].n.Add(out[i].n.Sub(l.n).Mul(more))
				out[i].begins = out[i].begins.Add(out[i].begins.Sub(l.begins).Mul(more))
			}
		}
	}
	return out
}

// repeatsOf gives the picks in one repeat of the body's order, and the whole
// repeats that the body has room for.
func (r *run) repeatsOf(pr *pieceRun) (each, times qty.Rat) {
	o := r.orderOf(pr)
	group := o.Filler()
	if group == 0 {
		group = o.Fixed()
	}
	if group == 0 {
		return qty.Rat{}, qty.Rat{}
	}
	room := pr.picks.Is.Sub(qty.Int(int64(pr.near + pr.far)))
	if o.Filler() > 0 {
		room = room.Sub(qty.Int(int64(o.Fixed())))
	}
	each = qty.Int(int64(group))
	return each, room.Div(each).Floor()
}

// orderOf is the order of the piece's body: its own, or the weft's.
func (r *run) orderOf(pr *pieceRun) order.Order {
	if pr.piece.Order.IsZero() {
		return r.plan.Weft.Order
	}
	return pr.piece.Order
}

// pickOrder lays the picks of one piece out, once.
func (r *run) pickOrder(pr *pieceRun) []picked {
	if pr.order == nil {
		pr.order = r.layOut(pr, qty.Rat{})
	}
	return pr.order
}

// layOut lays the picks of one piece out, border, body, far border, the body
// shorter by less.
func (r *run) layOut(pr *pieceRun, less qty.Rat) []picked {
	near := r.borderOrder(pr)
	body := pr.picks.Is.Sub(qty.Int(int64(pr.near + pr.far))).Sub(less)
	out := r.bodyOrder(pr, body, append([]picked{}, near...))
	if pr.far > 0 {
		out = append(out, turned(near, pr.piece.Far == warp.Mirrored)...)
	}
	return mergePicks(out)
}

func (r *run) borderOrder(pr *pieceRun) []picked {
	if !pr.piece.Border.IsZero() {
		return picksOf(pr.piece.Border.Runs(1))
	}
	if pr.near > 0 {
		return []picked{{r.weftYarn(), qty.Int(int64(pr.near))}}
	}
	return nil
}

func picksOf(runs []order.Run) []picked {
	out := make([]picked, len(runs))
	for i, run := range runs {
		out[i] = picked{run.Name, qty.Int(int64(run.Count))}
	}
	return out
}

func turned(list []picked, mirrored bool) []picked {
	out := slices.Clone(list)
	if mirrored {
		slices.Reverse(out)
	}
	return out
}

// bodyOrder adds the body to out: it repeats the order of picks and cuts it
// off at the body's end; the group that fills where there is one, else the
// whole order.
func (r *run) bodyOrder(pr *pieceRun, body qty.Rat, out []picked) []picked {
	o := r.orderOf(pr)
	if o.IsZero() {
		return append(out, picked{r.weftYarn(), body})
	}
	before, group, after := picksOf(o.Before()), picksOf(o.FillRuns()), picksOf(o.After())
	if len(group) == 0 {
		before, group = nil, before
	}
	room := body.Sub(picksIn(before)).Sub(picksIn(after))
	start := len(out)
	out = repeatTo(append(out, before...), group, room)
	return cut(append(out, after...), start, body)
}

// repeatTo adds group to out until it makes room picks, the last time cut
// short.
func repeatTo(out, group []picked, room qty.Rat) []picked {
	each := picksIn(group)
	if each.IsZero() {
		return out
	}
	if times := room.Div(each); times.Sign() > 0 {
		out = slices.Grow(out, (times.Count(qty.Up)+1)*len(group))
	}
	for room.Sign() > 0 {
		for _, p := range group {
			if room.Sign() <= 0 {
				break
			}
			p.n = qty.Min(p.n, room)
			room = room.Sub(p.n)
			out = append(out, p)
		}
	}
	return out
}

// cut keeps the first n picks of list from index start on.
func cut(list []picked, start int, n qty.Rat) []picked {
	for i := start; i < len(list); i++ {
		if n.Cmp(list[i].n) <= 0 {
			list[i].n = qty.Max(n, qty.Rat{})
			return list[:i+1]
		}
		n = n.Sub(list[i].n)
	}
	return list
}

// mergePicks joins neighbours of one yarn.
func mergePicks(list []picked) []picked {
	out := list[:0]
	for _, p := range list {
		switch n := len(out); {
		case p.n.Sign() <= 0:
		case n > 0 && out[n-1].yarn == p.yarn:
			out[n-1].n = out[n-1].n.Add(p.n)
		default:
			out = append(out, p)
		}
	}
	return out
}
