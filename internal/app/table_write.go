package app

import (
	"slices"
	"strings"

	"sley/internal/edge/planfile"
	"sley/internal/trade/draft"
	"sley/internal/trade/order"
	"sley/internal/trade/problem"
)

// takeTable puts a draft that was drawn on into the body it came from. Of a plan only what was
// changed is written.
func (b *body) takeTable(t *Table, is *draft.Draft) *problem.List {
	if b.WIF != nil && !t.Whole {
		return b.drawnText(is)
	}
	tree, err := b.plan()
	if err != nil {
		return unread("", err)
	}
	w := planned{tree: tree, was: t, is: is, list: &problem.List{}}
	w.threading()
	w.picks()
	w.colours()
	if !w.list.Failed() {
		b.Plan = tree.JSON()
	}
	return w.list
}

// drawnText puts it into an interchange text, whose other words are kept.
func (b *body) drawnText(is *draft.Draft) *problem.List {
	d, list := ReadDraft(Source{Name: interchangeName(b.WIF.Name), Text: []byte(b.WIF.Text)})
	if d == nil {
		return list
	}
	plain := len(d.Draft.Palette) == 0
	d.Draft = uncoloured(is, plain)
	b.WIF = &text{b.WIF.Name, string(WriteDraft(d))}
	return &problem.List{}
}

// uncoloured takes out again what a table has for a draft to be drawn: colours of each
// thread where all are of one, and all of them where the draft had none.
func uncoloured(d *draft.Draft, plain bool) *draft.Draft {
	d = d.Clone()
	alike := 0
	for _, of := range []*draft.Threads{&d.Warp, &d.Weft} {
		if len(of.Colours) > 0 && len(slices.Compact(slices.Clone(of.Colours))) == 1 {
			of.Colour, of.Colours = of.Colours[0], nil
			alike++
		}
	}
	if plain && alike == 2 {
		d.Palette, d.Warp.Colour, d.Weft.Colour = nil, 0, 0
	}
	return d
}

// planned writes a draft into a plan.
type planned struct {
	tree *planfile.Document
	was  *Table
	is   *draft.Draft
	list *problem.List
}

func (p *planned) threading() {
	was := p.was.Draft.Threading
	if slices.Equal(was, p.is.Threading) {
		return
	}
	if at := slices.Index(p.is.Threading, 0); at >= 0 {
		p.list.Fail("table.no-heddle", "warp.threading", "", problem.Args{"end": at + 1})
		return
	}
	var runs []order.Run
	for _, shaft := range p.is.Threading {
		runs = append(runs, order.Run{Shaft: shaft, Count: 1})
	}
	p.set("warp.threading", spelt(order.Shafts, runs, moved(p.was.FillEnds, was, p.is.Threading)))
}

// picks writes tie-up and treadling, or the lift plan.
func (p *planned) picks() {
	was := p.was.Draft
	if slices.Equal(was.Ties, p.is.Ties) && slices.Equal(was.Treadling, p.is.Treadling) && slices.Equal(was.Lifts, p.is.Lifts) && was.Shed == p.is.Shed {
		return
	}
	if p.is.Treadled() || len(p.is.Lifts) == 0 {
		p.treadled()
		return
	}
	for _, path := range []string{"draft.tie-up", "draft.treadling"} {
		p.tree.Remove(path)
	}
	p.order("draft.lift-plan", p.is.Lifts, p.was.picksAs(p.is))
}

func (p *planned) treadled() {
	p.tree.Remove("draft.lift-plan")
	p.tree.Remove("draft.tie-up")
	for i := range p.is.Ties {
		mustSet(p.tree, problem.Path{{Key: "draft"}, {Key: "tie-up"}, {Item: true, Index: i}}.String(), planfile.TextValue(shaftsText(p.is.Open(draft.Of(i+1)).Up)))
	}
	p.order("draft.treadling", p.is.Treadling, p.was.picksAs(p.is))
}

// picksAs are the picks of the table as the new draft says them; nil where it says them
// otherwise.
func (t *Table) picksAs(is *draft.Draft) []draft.Set {
	if is.Treadled() {
		return t.Draft.Treadling
	}
	return t.Draft.Lifts
}

func (p *planned) order(path string, sets, was []draft.Set) {
	if len(sets) == 0 {
		p.tree.Remove(path)
		return
	}
	if at := slices.Index(sets, 0); at >= 0 {
		p.list.Fail("table.no-lift", path, "", problem.Args{"pick": at + 1})
		return
	}
	var runs []order.Run
	for _, set := range sets {
		runs = append(runs, order.Run{Set: uint64(set), Count: 1})
	}
	fills := p.was.FillPicks
	if was == nil && len(sets) != p.was.Draft.Picks() {
		fills = [2]int{}
	}
	if was != nil {
		fills = moved(fills, was, sets)
	}
	p.set(path, spelt(order.Treadles, runs, fills))
}

func (p *planned) set(path, text string) {
	if text == "" {
		p.tree.Remove(path)
		return
	}
	mustSet(p.tree, path, planfile.TextValue(text))
}

// shaftsText is a tie as a plan writes it.
func shaftsText(set draft.Set) string {
	if set == 0 {
		return ""
	}
	return strings.ReplaceAll(set.String(), "+", " ")
}

// spelt writes an order of which a stretch fills.
func spelt(kind order.Kind, runs []order.Run, fills [2]int) string {
	if fills[0] >= fills[1] {
		return order.Spell(kind, runs)
	}
	text := "(" + order.Spell(kind, runs[fills[0]:fills[1]]) + ") x fill"
	if before := order.Spell(kind, runs[:fills[0]]); before != "" {
		text = before + ", " + text
	}
	if after := order.Spell(kind, runs[fills[1]:]); after != "" {
		text += ", " + after
	}
	return text
}

// moved is where a stretch that fills lies after a change of the list it is of. What was
// put at its edges, or over them, belongs to it.
func moved[T comparable](fills [2]int, was, is []T) [2]int {
	if fills[0] >= fills[1] {
		return [2]int{}
	}
	lo, hi := differing(was, is)
	grown := len(is) - len(was)
	out := fills
	switch {
	case hi <= fills[0] && lo < fills[0]:
		out[0] += grown
	case lo < fills[0]:
		out[0] = lo
	}
	switch {
	case hi <= fills[1]:
		out[1] += grown
	case lo < fills[1]:
		out[1] = hi + grown
	}
	return out
}

// differing is the stretch of was, the second left out, outside of which is has the same.
func differing[T comparable](was, is []T) (lo, hi int) {
	least := min(len(was), len(is))
	for lo < least && was[lo] == is[lo] {
		lo++
	}
	back := 0
	for back < least-lo && was[len(was)-1-back] == is[len(is)-1-back] {
		back++
	}
	return lo, len(was) - back
}

// colours writes the stripes of a warp that was drawn whole, and the order of its picks.
func (p *planned) colours() {
	if !p.was.Whole || p.list.Failed() {
		return
	}
	p.stripes("warp.stripes", p.was.Draft.Warp.Colours, p.is.Warp.Colours)
	p.stripes("weft.order", p.was.Draft.Weft.Colours, p.is.Weft.Colours)
}

// stripes writes the colours of threads as stripes of their yarns. Where stripes say more
// than that, or picks have borders, it says so and writes nothing.
func (p *planned) stripes(path string, was, is []int) {
	if slices.Equal(was, is) {
		return
	}
	if p.was.Crammed && path == "warp.stripes" {
		p.list.Fail("table.crammed", path, "", nil)
		return
	}
	if p.was.Bordered && path == "weft.order" {
		p.list.Fail("table.bordered", path, "", nil)
		return
	}
	var runs []order.Run
	for _, colour := range is {
		if colour >= len(p.was.Names) {
			p.list.Fail("table.no-yarn", path, "", problem.Args{"valid": p.was.Names})
			return
		}
		name := p.was.Names[colour]
		if n := len(runs); n > 0 && runs[n-1].Name == name {
			runs[n-1].Count++
		} else {
			runs = append(runs, order.Run{Name: name, Count: 1})
		}
	}
	p.set(path, order.Spell(order.Stripes, runs))
}
