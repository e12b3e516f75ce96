package planfile

import (
	"fmt"
	"strconv"
	"strings"

	"sley/internal/trade/loom"
	"sley/internal/trade/order"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
)

// readWarp reads the [warp] table.
func (d *decoder) readWarp(n *node) {
	t := d.open(warpTable, n)
	w := &d.plan.Warp
	w.Yarn = t.yarn("yarn")
	w.Sett = t.sett("sett", settStates)
	w.Stripes = t.order("stripes", order.Stripes)
	w.Threading = t.order("threading", order.Shafts)
	w.Ends = t.whole("ends", 1, mostEnds)
	w.Choose = t.rounding("choose").Is
	w.Wound = t.length("wound", wholeWarp)
	w.Layers = t.whole("layers", 1, 2).Is
	w.Unit = t.whole("unit", 1, mostUnit).Is
	w.Bundle = t.whole("bundle", 1, mostUnit).Is
	w.Sleying = t.sleying("sleying")
	w.Reed = t.reed("reed")
	d.floats(t.at("floating-selvedges"))
	d.doubled(t.at("doubled-edges"))
	second := d.open(secondTable, t.at("second-beam"))
	w.SecondTakeUp = second.allowance("take-up")
	w.SecondExtra = second.length("extra", detail)
}

// rounding gives nearest, up or down.
func (t table) rounding(key string) qty.Typed[qty.Rounding] {
	chosen := t.choice(key, []string{"nearest", "up", "down"})
	if chosen == "" {
		return qty.Typed[qty.Rounding]{}
	}
	r, err := qty.ParseRounding(chosen)
	if err != nil {
		panic(fmt.Sprintf("internal error: no rounding %q", chosen))
	}
	return qty.Typed[qty.Rounding]{Is: r, Typed: chosen}
}

// reed gives the dents of a reed as written.
func (t table) reed(key string) qty.Typed[qty.Density] {
	return typed(t, key, wantReed, loom.ParseReed).Is.Dents
}

// wantReed is what may stand for a reed.
const wantReed = `a reed, as "12 dpi", "50/10 cm" or "60 Stockport"`

// floats reads the floating selvedges: 0, 2, or 4 where each is doubled, with a
// yarn of their own when they are a table.
func (d *decoder) floats(n *node) {
	if n == nil {
		return
	}
	ends := n
	if n.kind == tableKind {
		t := d.open(floatsTable, n)
		d.plan.Warp.FloatYarn = t.yarn("yarn")
		if ends = t.at("ends"); ends == nil {
			d.plan.Warp.Floats = 2
			return
		}
	}
	count := d.wholeOf(ends, 0, 4)
	if count.Given() && count.Is%2 == 1 {
		d.fail("floats.one", ends, nil)
		return
	}
	d.plan.Warp.Floats = count.Is
}

// doubled reads how many working ends at each edge carry a second end. The two
// share a heddle unless the table says otherwise.
func (d *decoder) doubled(n *node) {
	if n == nil {
		return
	}
	w := &d.plan.Warp
	w.SharedHeddle = true
	if n.kind != tableKind {
		w.DoubledEnds = d.wholeOf(n, 0, mostDoubled).Is
		return
	}
	t := d.open(doubledTable, n)
	w.SharedHeddle = t.choice("heddle", []string{"shared", "own"}) != "own"
	w.DoubledEnds = 1
	if t.has("ends") {
		w.DoubledEnds = t.whole("ends", 0, mostDoubled).Is
	}
}

// sleying reads an order of ends in successive dents, as 2-3-2-3-2.
func (t table) sleying(key string) []int {
	n, text, ok := t.words(key, `ends in successive dents, as "2-3-2-3-2"`)
	if !ok {
		return nil
	}
	var dents []int
	total := 0
	at := 0
	for part := range strings.SplitSeq(text, "-") {
		ends, err := strconv.Atoi(strings.TrimSpace(part))
		if err != nil || ends < 0 || ends > mostInDent {
			t.d.part("sleying.form", n, at, part, problem.Args{"most": mostInDent})
			return nil
		}
		dents, total, at = append(dents, ends), total+ends, at+len(part)+1
	}
	if total == 0 || len(dents) > mostDents {
		t.d.fail("sleying.length", n, problem.Args{"most": mostDents})
		return nil
	}
	return dents
}
