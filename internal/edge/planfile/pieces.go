package planfile

import (
	"fmt"
	"strings"

	"sley/internal/trade/order"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// readPieces reads the kinds of pieces, one [[pieces]] each.
func (d *decoder) readPieces(n *node) {
	if n == nil {
		return
	}
	if n.kind == tableKind {
		d.fail("pieces.single", n, nil)
		return
	}
	if !d.is(n, listKind, "a list of tables, as [[pieces]]") {
		return
	}
	if len(n.items) > mostKinds {
		d.fail("pieces.many", n, problem.Args{"most": mostKinds})
		return
	}
	for _, c := range n.items {
		d.plan.Pieces = append(d.plan.Pieces, d.piece(d.open(piecesTable, c)))
	}
}

func (d *decoder) piece(t table) warp.Piece {
	p := warp.Piece{
		Name:       t.text("name"),
		Count:      1,
		Length:     t.size("length", lengthStates, pieceLength),
		Width:      t.size("width", widthStates, pieceWidth),
		Order:      t.order("order", order.Stripes),
		Trim:       t.length("trim", detail),
		CutOff:     t.truth("cut-off"),
		Panels:     t.whole("panels", 1, mostPanels).Is,
		Seam:       t.length("seam", detail),
		Allowances: d.allowances(pieceLinks, t.at("allowances")),
	}
	if count := t.whole("count", 1, mostPieces); count.Given() {
		p.Count, p.CountTyped = count.Is, count.Typed
	}
	p.First, p.Last = t.ends()
	p.Motif, p.Balance, p.MotifTyped = t.motif("motif")
	t.borders(&p)
	return p
}

// motif reads "6 + 1", the picks of a motif and those that balance it, or the
// picks of the motif alone.
func (t table) motif(key string) (motif, balance int, typed string) {
	n, text, ok := t.words(key, `the picks of a motif, as 6 or "6 + 1"`)
	if !ok {
		return 0, 0, ""
	}
	first, second, balanced := strings.Cut(text, "+")
	motif, ok1 := picks(first, 1)
	balance, ok2 := picks(second, 0)
	if !ok1 || balanced && !ok2 {
		t.d.fail("motif.form", n, problem.Args{"most": mostMotif})
		return 0, 0, ""
	}
	return motif, balance, text
}

// picks reads a whole number of picks, not below least.
func picks(text string, least int) (int, bool) {
	n, ok := wholeNumber(strings.TrimSpace(text))
	return n, ok && n >= least && n <= mostMotif
}

// borderNumber reads a border that is only a number of picks, in quotes too.
func borderNumber(n *node) (int, bool) {
	if n == nil || n.kind != textKind {
		return 0, false
	}
	return picks(n.text, 1)
}

// borders reads the border at the near end and what becomes of it at the far
// end.
func (t table) borders(p *warp.Piece) {
	n := t.at("border")
	if picks, bare := borderNumber(n); bare {
		p.BorderPicks = picks
	} else if n != nil && n.kind == wholeKind {
		p.BorderPicks = t.whole("border", 1, mostMotif).Is
	} else {
		p.Border = t.order("border", order.Stripes)
	}
	if p.Border.Filler() > 0 {
		t.d.fail("border.fill", n, nil)
	}
	far := []string{"mirrored", "repeated", "none"}
	switch t.choice("far-border", far) {
	case "repeated":
		p.Far = warp.Repeated
	case "none":
		p.Far = warp.NoFarBorder
	}
	if t.has("far-border") && n == nil {
		t.failKey("border.missing", "far-border", nil)
	}
}

// order reads an order of threads with every fault in it.
func (t table) order(key string, kind order.Kind) order.Order {
	n := t.at(key)
	if n == nil || !t.d.is(n, textKind, wantOrder) {
		return order.Order{}
	}
	ctx := order.Context{Kind: kind, Groups: t.d.plan.Groups}
	if kind == order.Stripes {
		ctx.Names = t.d.names()
	}
	o, faults := order.Parse(n.text, ctx)
	for _, f := range faults[:min(len(faults), mostFaults)] {
		t.d.orderFault(n, f)
	}
	if len(faults) > 0 {
		return order.Order{}
	}
	return o
}

// orderFault reports a fault of an order. One inside a named group stands in
// the group's own text, and is said once however often the group is called.
func (d *decoder) orderFault(n *node, f *qty.Fault) {
	name, _ := f.Args["group"].(string)
	inside, _ := f.Args["inside"].(int)
	group := d.top.child("groups").child(name)
	if group == nil {
		d.fault(n, f)
		return
	}
	if key := fmt.Sprint(name, inside, f.Code); !d.said[key] {
		d.said[key] = true
		d.fault(group, &qty.Fault{Code: f.Code, Read: f.Read, At: inside, Args: f.Args})
	}
}

// names gives the yarns an order may name: never nil, which would allow all.
func (d *decoder) names() []string {
	if d.yarns == nil {
		return []string{}
	}
	return d.yarns
}
