package present

import (
	"fmt"
	"strings"

	"sley/internal/app"
	"sley/internal/engine/reckon"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// Units are the units a person wants to see, by kind of quantity.
type Units struct {
	Length  string     // in, cm
	Yarn    string     // yd, m
	Weight  string     // oz, lb, g, kg
	Density string     // in, cm, 10cm
	Count   string     // symbol of a count system
	Step    qty.Length // figures at the bench are made multiples of it
}

// Imperial and Metric are the two usual sets: figures at the bench to 1/8 in
// or 5 mm.
var (
	Imperial = Units{"in", "yd", "oz", "in", "Ne", qty.Inch / 8}
	Metric   = Units{"cm", "m", "g", "cm", "Nm", 5 * qty.Millimetre}
)

// UnitWords lists, for each kind of quantity, the units that can be asked for.
func UnitWords() map[string][]string { return app.UnitChoices() }

// UnitsOf gives the units of a plan: those it names, the rest as its first
// size was typed.
func UnitsOf(p *warp.Plan) Units {
	u := Imperial
	if reckon.MetricPlan(p) {
		u = Metric
	}
	for _, pair := range []struct {
		to   *string
		said string
	}{{&u.Length, p.Units.Length}, {&u.Yarn, p.Units.Yarn}, {&u.Weight, p.Units.Weight}, {&u.Density, p.Units.Density}, {&u.Count, p.Units.Count}} {
		if pair.said != "" {
			*pair.to = strings.ReplaceAll(pair.said, " ", "")
		}
	}
	if u.Length == "mm" || u.Length == "m" {
		u.Length = "cm"
	}
	if u.Length == "yd" || u.Length == "ft" {
		u.Length = "in"
	}
	if p.Rounding.Bench.Given() {
		u.Step = p.Rounding.Bench.Is
	}
	return u
}

// UnitsIn gives the units of a plan that is in a book: those it names, then those of the
// book, the rest as its first size was typed.
func UnitsIn(p *warp.Plan, book warp.Units) Units {
	u := UnitsOf(p)
	for _, one := range []struct{ kind, said, book string }{
		{"length", p.Units.Length, book.Length},
		{"yarn", p.Units.Yarn, book.Yarn},
		{"weight", p.Units.Weight, book.Weight},
		{"density", p.Units.Density, book.Density},
		{"count", p.Units.Count, book.Count},
	} {
		if one.said == "" && one.book != "" {
			u = u.with(one.kind, one.book)
		}
	}
	if p.Rounding.Bench.Given() {
		u.Step = p.Rounding.Bench.Is
	}
	return u
}

// UnitsFor gives the units to show a reckoning in: its plan's in a book, with what the
// text asks for over them. Where the plan had errors there is no reckoning, and
// imperial units stand in for its own.
func UnitsFor(r *reckon.Result, book warp.Units, text string) (Units, error) {
	plan := &warp.Plan{}
	if r != nil {
		plan = r.Plan
	}
	return ParseUnits(text, UnitsIn(plan, book))
}

// ParseUnits reads metric, imperial, or kind=unit pairs over the units given:
// "length=cm,weight=g".
func ParseUnits(text string, over Units) (Units, error) {
	for _, part := range strings.Split(text, ",") {
		part = strings.TrimSpace(strings.ToLower(part))
		switch kind, unit, ok := strings.Cut(part, "="); {
		case part == "":
		case part == "metric":
			over = Metric
		case part == "imperial":
			over = Imperial
		case ok && isUnit(kind, unit):
			named, _ := app.UnitNamed(kind, unit)
			over = over.with(kind, named)
		default:
			return over, fmt.Errorf("--units: %q is not known; write metric, imperial, or pairs such as length=cm,yarn=m,weight=g,density=cm", part)
		}
	}
	return over, nil
}

func isUnit(kind, unit string) bool {
	_, ok := app.UnitNamed(kind, unit)
	return ok
}

func (u Units) with(kind, unit string) Units {
	switch kind {
	case "length":
		u.Length = unit
		u.Step = map[string]qty.Length{"in": Imperial.Step, "cm": Metric.Step}[unit]
	case "yarn":
		u.Yarn = unit
	case "weight":
		u.Weight = unit
	case "density":
		u.Density = unit
	case "count":
		u.Count = unit
	}
	return u
}

var lengthUnits = map[string]qty.Length{
	"in": qty.Inch, "cm": qty.Centimetre, "yd": qty.Yard, "m": qty.Metre, "10cm": qty.Decimetre, "mm": qty.Millimetre, "ft": qty.Foot,
}

var massUnits = map[string]qty.Mass{
	"oz": qty.Ounce, "lb": qty.Pound, "g": qty.Gram, "kg": qty.Kilogram,
}
