package loomside

import (
	"sley/internal/engine/dress"
	"sley/internal/trade/qty"
)

// bouts is the warp as it is wound: bout by bout, with its yarns, its changes and its
// counting ties.
func (d dressing) bouts() []Part {
	w := &d.r.Plan.Winding
	list := d.r.Stretches()
	winder := dress.Winder{Together: max(w.Together.Is, 1), Most: d.mostInBout(list)}
	yarns := ofEnds(list)
	var out []Part
	at := 0
	for i, b := range winder.Bouts(list) {
		p := Part{From: at, To: at + b.Ends, Ends: b.Ends, Sum: at + b.Ends, Number: i + 1, Passes: b.Passes, Changes: b.Changes}
		p.Yarns = runsOf(yarns[at:p.To])
		if w.Tie.Is > 0 {
			p.Ties = (b.Ends - 1) / w.Tie.Is
		}
		at = p.To
		out = append(out, p)
	}
	return out
}

// mostInBout is the most ends of a bout: as the plan says, what a peg holds, or as usual.
func (d dressing) mostInBout(list []dress.Stretch) int {
	most := usualBout
	for _, id := range []string{"winding.peg-holds", "winding.most", "winding.bout"} {
		if n, ok := d.r.Node(id); ok && n.Is.Sign() > 0 {
			most = n.Is.Count(qty.Down)
		}
	}
	return max(most, 2*max(d.r.Plan.Winding.Together.Is, 1), dress.Ends(list)/1000)
}

// sections is a sectional beam wound section by section: the ends of each by yarn.
func (d dressing) sections() []Part {
	list := d.r.Stretches()
	width := d.r.Plan.Winding.Section.Is
	if len(list) == 0 || dress.Width(list).Div(width.Rat()).Cmp(qty.Int(mostSpaces)) > 0 {
		return nil
	}
	wound, _ := d.r.Node("warp.wound")
	long, _ := qty.LengthOf(wound.Is, qty.Up)
	yarns := ofEnds(list)
	var out []Part
	at := 0
	for i, s := range dress.Sections(list, width) {
		p := Part{From: i, To: i + 1, Number: i + 1, Ends: s.Ends, Sum: at + s.Ends, Whole: s.Whole, Distance: long}
		p.Yarns = runsOf(yarns[at : at+s.Ends])
		at += s.Ends
		out = append(out, p)
	}
	return out
}
