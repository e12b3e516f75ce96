package loomside

import (
	"slices"

	"sley/internal/engine/dress"
	"sley/internal/engine/sett"
	"sley/internal/trade/qty"
)

// Reed gives the dents that the warp fills, from left to right: floating selvedges in
// dents of their own at the edges, doubled ends with their neighbours, each stretch of one
// order beginning in a new dent. Nil where no reed is chosen or the ends are not whole.
func (d dressing) reed() []Dent {
	if !d.r.Plan.Rounding.Off && len(d.r.Sleying) == 0 || whole(d.r, "dents") == 0 {
		return nil
	}
	cloth := d.dents()
	floats := d.r.Plan.Warp.Floats
	if floats > 0 {
		edge := Dent{Ends: floats / 2, Float: true}
		cloth = slices.Concat([]Dent{edge}, cloth, []Dent{edge})
	}
	first := whole(d.r, "dents.first")
	for i := range cloth {
		cloth[i].At = i + 1
		if first > 0 {
			cloth[i].Reed = first + i
		}
	}
	return cloth
}

// dents is the working ends in their dents.
func (d dressing) dents() []Dent {
	var out []Dent
	doubled, all := d.r.Plan.Warp.DoubledEnds, whole(d.r, "ends")
	at := 0
	for _, s := range ordersOf(d) {
		for i := 0; s.ends > 0; i++ {
			n := min(s.order[i%len(s.order)], s.ends)
			out = append(out, Dent{Ends: n + among(at, at+n, 0, doubled) + among(at, at+n, all-doubled, all)})
			at, s.ends = at+n, s.ends-n
		}
	}
	return out
}

// among is how many of the ends from, up to to, are among low up to high.
func among(from, to, low, high int) int { return max(min(to, high)-max(from, low), 0) }

// ordered is neighbouring ends in one order.
type ordered struct {
	order sett.Order
	ends  int
}

// ordersOf joins neighbouring stripes in the same order.
func ordersOf(d dressing) []ordered {
	var out []ordered
	for _, s := range d.r.Stripes {
		n := s.Ends.Count(qty.Nearest)
		if last := len(out) - 1; last >= 0 && slices.Equal(out[last].order, s.Order) {
			out[last].ends += n
			continue
		}
		out = append(out, ordered{s.Order, n})
	}
	return out
}

// sleying puts the dents into groups of whole orders, in the order of the work.
func (d dressing) sleying(from Side) []Part {
	var out []Part
	sum := 0
	for _, run := range sided(d.reed(), from) {
		for group := range slices.Chunk(run, d.inGroup()) {
			p := Part{From: reached(out), Dents: group}
			p.To = p.From + len(group)
			for _, dent := range group {
				p.Ends += dent.Ends
			}
			sum += p.Ends
			p.Sum = sum
			out = append(out, p)
		}
	}
	return out
}

// reached is where the parts so far have come to.
func reached(parts []Part) int {
	if len(parts) == 0 {
		return 0
	}
	return parts[len(parts)-1].To
}

// inGroup is how many dents are checked at once: whole orders.
func (d dressing) inGroup() int {
	order := 1
	if len(d.r.Sleying) > 0 {
		order = max(len(d.r.Sleying[0].Order), 1)
	}
	return max(dentsInGroup/order, 1) * order
}

// sided cuts a list as the work goes: from the left, from the right, or from the centre to
// the right and then from the centre to the left.
func sided[T any](list []T, from Side) [][]T {
	switch from {
	case Right:
		return [][]T{reversed(list)}
	case Centre:
		half := len(list) / 2
		return [][]T{list[half:], reversed(list[:half])}
	}
	return [][]T{list}
}

func reversed[T any](list []T) []T {
	out := slices.Clone(list)
	slices.Reverse(out)
	return out
}

// spaces is the ends in the spaces of the raddle, as wide as in the reed.
func (d dressing) spaces(from Side) []Part {
	w := d.r.Plan.Winding.Raddle
	list := d.r.Stretches()
	if !w.Given() || dress.Width(list).Mul(w.Is.PerNM()).Cmp(qty.Int(mostSpaces)) > 0 {
		return nil
	}
	var out []Part
	sum := 0
	for _, run := range sided(dress.Raddle(list, w.Is.PerNM()), from) {
		for group := range slices.Chunk(run, dentsInGroup) {
			p := Part{From: reached(out), Spaces: group}
			p.To = p.From + len(group)
			for _, n := range group {
				p.Ends += n
			}
			sum += p.Ends
			p.Sum = sum
			out = append(out, p)
		}
	}
	return out
}

// mostSpaces keeps a warp of kilometres across from filling the memory.
const mostSpaces = 20_000
