package planfile

import (
	"strings"

	"sley/internal/trade/order"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// readGroups reads the named groups of the shorthand. Their texts are read
// where an order calls them.
func (d *decoder) readGroups(n *node) {
	if n == nil || !d.is(n, tableKind, `a table of groups, as edge = "blue 12, white 4"`) {
		return
	}
	d.plan.Groups = map[string]string{}
	for _, c := range n.items {
		if d.validName(c, "group") && d.is(c, textKind, wantOrder) {
			d.plan.Groups[c.key] = c.text
		}
	}
}

// validName reports whether orders can call a yarn or group by its key.
func (d *decoder) validName(c *node, what string) bool {
	if order.ValidName(c.key) && c.key != "none" {
		return true
	}
	d.failAt("name.form", c.path(), d.src.place(c.keyAt), problem.Args{"name": c.key, "what": what})
	return false
}

// readExtras reads the plain lengths that are added to the warp once.
func (d *decoder) readExtras(n *node) {
	if n == nil || !d.is(n, tableKind, `a table of lengths, as "take-up in all" = "13 in"`) {
		return
	}
	for _, c := range n.items {
		if strings.TrimSpace(c.key) == "" {
			d.failAt("extras.name", c.path(), d.src.place(c.keyAt), nil)
			continue
		}
		if l := d.lengthOf(c, detail); l.Given() {
			d.plan.Extras = append(d.plan.Extras, warp.Extra{Name: c.key, Length: l})
		}
	}
}

// readSampling reads the [sampling] table.
func (d *decoder) readSampling(n *node) {
	t := d.open(samplingTable, n)
	s := &d.plan.Sampling
	s.Length = t.size("length", sampleStates, detail)
	s.CutOff = t.truth("cut-off")
	if weft := t.at("weft"); weft != nil && weft.kind == textKind && weft.text == "none" {
		s.NoWeft = true
		return
	}
	s.Yarn = t.yarn("weft")
}

// readRounding reads the [rounding] table.
func (d *decoder) readRounding(n *node) {
	t := d.open(roundingTable, n)
	d.plan.Rounding = warp.Rounding{
		Off:   t.truth("off"),
		Step:  t.length("step", stepLength),
		Warp:  t.rounding("warp"),
		Picks: t.rounding("picks"),
		Bench: t.length("bench", stepLength),
	}
}

// readClass reads the [class] table.
func (d *decoder) readClass(n *node) {
	t := d.open(classTable, n)
	d.plan.Class.Looms = t.whole("looms", 1, mostLooms).Is
	d.plan.Class.InTurn = t.whole("in-turn", 1, mostLooms).Is
	t.exclude("looms", "in-turn")
}

// readWork reads the [work] table.
func (d *decoder) readWork(n *node) {
	t := d.open(workTable, n)
	d.plan.Work = warp.Work{
		Winding:   typed(t, "winding", wantRate, qty.ParseRate),
		Threading: typed(t, "threading", wantRate, qty.ParseRate),
		Sleying:   typed(t, "sleying", wantRate, qty.ParseRate),
		Weaving:   typed(t, "weaving", wantRate, qty.ParseRate),
		Wage:      t.wage("wage"),
	}
}

// hourly are the ways of saying that money is for an hour.
var hourly = []string{"/h", "/ h", "/hour", "/ hour", "an hour", "per hour", "per h"}

// wage gives the money for an hour, with or without the words for it.
func (t table) wage(key string) qty.Typed[qty.Money] {
	wage := typed(t, key, `a wage for an hour, as "18 EUR"`, func(text string) (qty.Money, error) {
		for _, words := range hourly {
			if before, ok := strings.CutSuffix(strings.TrimSpace(text), words); ok {
				return qty.ParseMoney(before)
			}
		}
		return qty.ParseMoney(text)
	})
	if wage.Is.Minor.Sign() < 0 {
		t.d.fail("money.negative", t.at(key), nil)
		return qty.Typed[qty.Money]{}
	}
	return wage
}

// lengthOf gives a plain length that a value holds.
func (d *decoder) lengthOf(n *node, b bound) qty.Typed[qty.Length] {
	l := typedNode(d, n, wantLength, qty.ParseLength)
	if !l.Given() || !d.fits(n, l.Is, b) {
		return qty.Typed[qty.Length]{}
	}
	return l
}
