package planfile

import (
	"time"

	"sley/internal/trade/near"
	"sley/internal/trade/problem"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

// head reads the keys at the top of the file.
func (d *decoder) head(t table) {
	p := d.plan
	p.Name = t.text("name")
	p.Note = t.text("note")
	p.Date = t.date("date")
	p.Weave = t.choice("weave", weaveNames())
	p.Wash = t.choice("wash", warp.WashNames())
	p.Gap = t.length("gap", detail)
	p.Header = t.length("header", detail)
	if t.choice("tape", []string{"under tension", "slackened"}) == "slackened" {
		p.Tape = warp.Slackened
	}
	p.Units = d.units(t.at("units"))
}

func weaveNames() []string {
	var names []string
	for _, w := range warp.Weaves() {
		names = append(names, w.Name)
	}
	return names
}

// date gives a day, written as a TOML date or as a text.
func (t table) date(key string) string {
	n := t.at(key)
	if n == nil {
		return ""
	}
	if n.kind != textKind && n.kind != dateKind {
		t.d.wrongKind(n, `a date, as "2026-03-01"`)
		return ""
	}
	if _, err := time.Parse(time.DateOnly, n.text); err != nil {
		t.d.fail("date.form", n, nil)
		return ""
	}
	return n.text
}

// systemUnits are the five units that one word stands for.
var systemUnits = map[string]warp.Units{
	"metric":   {Length: "cm", Yarn: "m", Weight: "g", Density: "cm", Count: "Nm"},
	"imperial": {Length: "in", Yarn: "yd", Weight: "oz", Density: "in", Count: "Ne"},
}

// units reads the units a person wants to see.
func (d *decoder) units(n *node) warp.Units {
	if n == nil {
		return warp.Units{}
	}
	if n.kind == textKind {
		return systemUnits[d.choiceOf(n, n.text, []string{"metric", "imperial"})]
	}
	t := d.open(unitsTable, n)
	return warp.Units{
		Length:  t.choice("length", []string{"in", "cm"}),
		Yarn:    t.choice("yarn", []string{"yd", "m"}),
		Weight:  t.choice("weight", []string{"oz", "lb", "g", "kg"}),
		Density: t.choice("density", []string{"in", "cm", "10cm"}),
		Count:   t.countSystem("count"),
	}
}

// countSystem gives the symbol of a count system.
func (t table) countSystem(key string) string {
	n := t.at(key)
	if n == nil || !t.d.is(n, textKind, `the sign of a count system, as "Ne"`) {
		return ""
	}
	if s, ok := yarn.SystemNamed(n.text); ok {
		return s.Symbol()
	}
	var valid []string
	for _, s := range yarn.Systems() {
		valid = append(valid, s.Symbol())
	}
	args := problem.Args{"valid": valid}
	if close := near.To(n.text, valid); close != "" {
		args["near"] = close
	}
	t.d.fail("choice.unknown", n, args)
	return ""
}
