package planfile

import (
	"sley/internal/trade/order"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

// readWeft reads the [weft] table.
func (d *decoder) readWeft(n *node) {
	t := d.open(weftTable, n)
	w := &d.plan.Weft
	w.Picks = t.sett("picks", pickStates)
	w.Yarn = t.yarn("yarn")
	w.Order = t.order("order", order.Stripes)
	w.Shares = d.shares(t.at("shares"))
	w.OfWarp = t.share("of-warp")
	w.PerPiece = typed(t, "per-piece", `an amount of yarn, as "100 yd" or "120 g"`, yarn.ParseAmount)
	t.bounded("per-piece", w.PerPiece.Is)
	w.Slack = t.share("slack")
	w.Crimp = t.share("crimp")
	w.Turn = t.length("turn", detail)
	w.Reserve = t.share("reserve")
	w.Tail = t.length("tail", detail)
	w.Hemstitch = t.widths("hemstitch")
	w.Repairs = t.length("repairs", pieceOfYarn)
	w.Bobbin = t.length("bobbin", pieceOfYarn)
	w.BobbinEnd = t.length("bobbin-end", pieceOfYarn)
	t.exclude("slack", "crimp")
	t.exclude("order", "shares")
	t.exclude("of-warp", "per-piece")
}

// exclude reports two keys that say the same thing twice.
func (t table) exclude(one, other string) {
	if t.has(one) && t.has(other) {
		t.failKey("keys.both", other, problem.Args{"other": one})
	}
}

// shares reads the share of each yarn of the weft. Together they are all of
// it.
func (d *decoder) shares(n *node) []warp.YarnShare {
	if n == nil || !d.is(n, tableKind, `shares by yarn, as { white = "80 %", blue = "20 %" }`) {
		return nil
	}
	if len(n.items) > mostYarns {
		d.fail("yarns.many", n, problem.Args{"most": mostYarns})
		return nil
	}
	var out []warp.YarnShare
	sum := qty.Rat{}
	for _, c := range n.items {
		share := typedNode(d, c, wantShare, qty.ParseShare)
		if d.knowsKey(c) && share.Given() {
			out = append(out, warp.YarnShare{Yarn: c.key, Share: share})
			sum = sum.Add(share.Is.Of)
		}
	}
	if len(out) == len(n.items) && !sum.Equal(qty.Int(1)) {
		d.fail("shares.sum", n, problem.Args{"sum": qty.Share{Of: sum}})
	}
	return out
}

// widths gives a number of widths of the cloth.
func (t table) widths(key string) qty.Typed[qty.Rat] {
	widths := typed(t, key, `a number of widths, as 4 or "4 1/2"`, qty.ParseNumber)
	if widths.Given() && (widths.Is.Sign() < 0 || qty.Int(mostWidths).Less(widths.Is)) {
		t.d.fail("whole.range", t.at(key), problem.Args{"least": 0, "most": mostWidths})
		return qty.Typed[qty.Rat]{}
	}
	return widths
}
