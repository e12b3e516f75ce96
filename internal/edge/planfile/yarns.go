package planfile

import (
	"errors"
	"slices"
	"strings"

	"sley/internal/trade/near"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/yarn"
)

// readYarns reads the yarns in the order of the file. A yarn whose name cannot
// be called is not known by it.
func (d *decoder) readYarns(n *node) {
	if n == nil || !d.is(n, tableKind, "a table for each yarn, as [yarns.white]") {
		return
	}
	if len(n.items) > mostYarns {
		d.fail("yarns.many", n, problem.Args{"most": mostYarns})
		return
	}
	for _, c := range n.items {
		if d.validName(c, "yarn") {
			d.yarns = append(d.yarns, c.key)
		}
		d.plan.Yarns = append(d.plan.Yarns, d.yarn(c))
	}
}

func (d *decoder) yarn(n *node) yarn.Yarn {
	before := d.list.Len()
	t := d.open(yarnTable, n)
	y := yarn.Yarn{
		Name:        n.key,
		Count:       typed(t, "count", `a yarn count, as "8/2 Ne" or "3360 yd/lb"`, yarn.ParseCount),
		Skein:       d.skein(t.at("skein")),
		Wraps:       typed(t, "wraps", `wraps with their kind, as "28 wpi touching"`, yarn.ParseWraps),
		Composition: typed(t, "fibre", `a fibre, as "cotton" or "cotton 60 %, linen 40 %"`, yarn.ParseComposition),
		PutUp:       typed(t, "put-up", `an amount of yarn, as "8 oz cone"`, yarn.ParsePutUp),
		Colour:      typed(t, "colour", `a colour, as "madder" or "#a03020"`, yarn.ParseColour).Is,
		Stock:       typed(t, "stock", `an amount of yarn, as "1450 m" or "8 oz"`, yarn.ParseAmount),
		Handspun:    t.truth("handspun"),
		Samples:     d.samples(t.at("samples")),
		DiameterK:   typed(t, "diameter-constant", `a number, as "0.92"`, qty.ParseNumber).Is,
	}
	y.Price, y.PriceMass = t.price("price")
	t.bounded("stock", y.Stock.Is)
	t.bounded("put-up", y.PutUp.Is.Amount)
	if d.list.Len() == before {
		d.sound(y, n)
	}
	return y
}

// sound adds what a yarn that could be read has wrong as a whole.
func (d *decoder) sound(y yarn.Yarn, n *node) {
	found := &problem.List{}
	y.Validate(n.path(), found)
	for _, p := range found.All() {
		p.Path = strings.TrimPrefix(p.Path, ".") // of a yarn by itself
		if c := d.top.follow(p.Path); c != nil && c.text != "" {
			p.Read = c.text
		}
		d.list.Add(p)
	}
}

// price reads a price for a weight, or for one put-up when no weight is said.
func (t table) price(key string) (qty.Typed[qty.Money], qty.Mass) {
	var mass qty.Mass
	price := typed(t, key, wantMoney, func(text string) (qty.Money, error) {
		money, per, err := yarn.ParsePrice(text)
		var f *qty.Fault
		if errors.As(err, &f) && f.Code == "price.per" {
			return qty.ParseMoney(text)
		}
		mass = per
		return money, err
	})
	return price, mass
}

// mostYarn is the most yarn anybody has.
const mostYarn = 100_000 * qty.Kilogram

// bounded reports an amount of yarn that nobody can have.
func (t table) bounded(key string, a yarn.Amount) {
	n := t.at(key)
	switch {
	case n == nil:
	case a.Length > yarnLength.most:
		t.d.fail("length.range", n, problem.Args{"most": yarnLength.most})
	case a.Mass > mostYarn:
		t.d.fail("mass.range", n, problem.Args{"most": mostYarn})
	}
}

// skein reads a skein that was measured and weighed.
func (d *decoder) skein(n *node) yarn.Skein {
	t := d.open(skeinTable, n)
	return yarn.Skein{
		Length:  t.length("length", pieceOfYarn).Is,
		Mass:    t.mass("weight").Is,
		Skeins:  t.whole("skeins", 1, mostSkeins).Is,
		Relaxed: t.truth("relaxed"),
		Scoured: t.truth("scoured"),
	}
}

// mass gives a weight.
func (t table) mass(key string) qty.Typed[qty.Mass] {
	m := typed(t, key, `a weight with its unit, as "5 g"`, qty.ParseMass)
	if m.Is > mostYarn {
		t.d.fail("mass.range", t.at(key), problem.Args{"most": mostYarn})
		return qty.Typed[qty.Mass]{}
	}
	return m
}

// knowsKey reports whether the key of n is the name of a yarn.
func (d *decoder) knowsKey(n *node) bool {
	if slices.Contains(d.yarns, n.key) {
		return true
	}
	d.unknownYarn(n.key, n.path(), d.src.place(n.keyAt))
	return false
}

// knows reports a problem when the file has no yarn of the name that n holds.
func (d *decoder) knows(n *node, name string) bool {
	if slices.Contains(d.yarns, name) {
		return true
	}
	d.unknownYarn(name, n.path(), d.src.place(n.within(n.find(name, 0))))
	return false
}

func (d *decoder) unknownYarn(name, path string, place problem.Place) {
	p := problem.Problem{Code: "yarn.none", Path: path, Read: name, Place: place}
	if len(d.yarns) > 0 {
		p.Code, p.Args = "yarn.unknown", problem.Args{"valid": d.yarns}
		if close := near.To(name, d.yarns); close != "" {
			p.Args["near"] = close
		}
	}
	d.list.Add(p)
}
