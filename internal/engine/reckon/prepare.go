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
	r.metric = typedMetric(r.plan)
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
	name := r.plan.Warp.Yarn
	if names := r.plan.Warp.Stripes.Names(); name == "" && len(names) > 0 {
		name = names[0]
	}
	if name == "" && len(r.plan.Yarns) > 0 {
		return &r.plan.Yarns[0], true
	}
	return r.plan.YarnNamed(name)
}

// typedMetric reports whether the first size of the plan was typed in metric
// units; it decides winding step and bench step, never a value.
func typedMetric(p *warp.Plan) bool {
	switch p.Units.Length {
	case "cm", "mm", "m":
		return true
	case "in":
		return false
	}
	for i := range p.Pieces {
		if text := p.Pieces[i].Length.Typed; text != "" {
			return Metric(text)
		}
	}
	return false
}

// Metric reports whether a typed length is in metric units.
func Metric(text string) bool {
	fields := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool {
		return r == ' ' || r >= '0' && r <= '9' || r == '.' || r == ',' || r == '/'
	})
	for _, f := range fields {
		switch f {
		case "cm", "mm", "m", "dm", "metre", "metres", "centimetre", "centimetres", "millimetre", "millimetres":
			return true
		}
	}
	return false
}
