package reckon

import (
	"strings"

	"sley/internal/engine/defaults"
	"sley/internal/trade/loom"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

// prepare finds what starting values are looked up for.
func (r *run) prepare() {
	r.metric = MetricPlan(r.plan)
	r.kase = defaults.Case{Wash: r.plan.Wash, Loom: "floor"}
	if r.plan.Wash == "" {
		r.kase.Wash = "washed"
	}
	if w, ok := warp.WeaveNamed(r.plan.Weave); ok {
		r.kase.Weave = w.Class
	}
	if r.plan.Loom.Shed == loom.Table {
		r.kase.Loom = "table"
	}
	if y, ok := r.warpYarn(); ok {
		r.kase.Fibre = y.Class().String()
	}
}

// warpYarn gives the yarn that most of the warp is planned in: the one named,
// else the first of the stripes, else the only one.
func (r *run) warpYarn() (*yarn.Yarn, bool) {
	return r.plan.MainYarn()
}

// MetricPlan reports whether a plan is written in metric units: as it says, or
// as its first size or density was typed, what is sought left aside. It decides
// steps and the units shown, never a value.
func MetricPlan(p *warp.Plan) bool {
	if p.Units.Length != "" {
		return Metric(p.Units.Length)
	}
	for _, text := range firstTyped(p) {
		if text != "" {
			return Metric(text)
		}
	}
	return false
}

// firstTyped lists what was typed, what tells most of the weaver's habit first.
func firstTyped(p *warp.Plan) []string {
	var out []string
	for i := range p.Pieces {
		id := pieceID(i)
		if p.Find.What != id+"length" {
			out = append(out, p.Pieces[i].Length.Typed)
		}
		if p.Find.What != id+"width" {
			out = append(out, p.Pieces[i].Width.Typed)
		}
	}
	if p.Find.What != "warp.sett" {
		out = append(out, p.Warp.Sett.Typed)
	}
	return append(out, p.Weft.Picks.Typed, p.Warp.Wound.Typed, p.Loom.Waste.Lump.Typed)
}

// Metric reports whether a typed length is in metric units.
func Metric(text string) bool {
	fields := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool {
		return r == ' ' || r >= '0' && r <= '9' || r == '.' || r == ',' || r == '/'
	})
	for _, f := range fields {
		switch f {
		case "cm", "mm", "m", "dm", "g", "kg", "metre", "metres", "centimetre", "centimetres", "millimetre", "millimetres":
			return true
		}
	}
	return false
}
