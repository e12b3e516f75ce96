package reckon

import (
	"sley/internal/engine/defaults"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// Allowed is how one allowance of a plan stands.
type Allowed struct {
	warp.LinkName
	// Known says that a size can be carried between the two states. Node then has the share
	// of the earlier state that is lost, below 0 where the cloth grows; of an allowance with
	// a plain length, which is no share, only where it comes from. Given: the plan says it;
	// Default: a starting value; Reckoned: it follows from others.
	Known, Share bool
	Node
	// Usual is the starting value of such a cloth; nil where the table has none.
	Usual *Node
}

// Allowances tells of every allowance how it stands in a plan, in the order they are
// shown. The plan may have errors: what could not be read is not said.
func Allowances(plan *warp.Plan) []Allowed {
	r := &run{plan: plan, out: &Result{Plan: plan}, shown: map[string]term{}, silent: true}
	r.prepare()
	lengths := r.links("", r.tapeRead(plan.Allowances), false)
	widths := r.links("", plan.Allowances, true)
	var out []Allowed
	for _, name := range warp.LinkNames() {
		c := &lengths
		if name.Width {
			c = &widths
		}
		out = append(out, r.allowed(c, name))
	}
	return out
}

func (r *run) allowed(c *chain, name warp.LinkName) Allowed {
	a := Allowed{LinkName: name, Node: Node{ID: "allowances." + name.Key, Source: "definition"}}
	if v, ok := defaults.For(name.Key, r.kase); ok {
		a.Usual = &Node{
			ID: a.ID, Figure: share(v.Share), Origin: Default, Source: v.Source, Low: v.Low, High: v.High, Default: v.Key,
		}
	}
	way, ok := c.path(name.Link.Later, name.Link.Earlier)
	if a.Known = ok; !ok {
		return a
	}
	if a.Share = inShares(way); a.Share {
		a.Figure = share(r.lost(way))
	}
	said := r.plan.Allowances[name.Key]
	switch {
	case len(way) > 1 || way[0].link.key != name.Key:
		a.Origin = Reckoned
	case said.Given() && !said.Accept:
		a.Origin = Given
	case a.Usual != nil:
		figure := a.Figure
		a.Node = *a.Usual
		a.Figure = figure
	}
	return a
}

// inShares reports whether a way has no plain lengths on it.
func inShares(way []hop) bool {
	for _, h := range way {
		for _, step := range h.link.steps {
			if len(step.lengths) > 0 {
				return false
			}
		}
	}
	return true
}

// lost is what of the earlier state's size is gone in the later one.
func (r *run) lost(way []hop) qty.Rat {
	x := r.plain(length(qty.Metre))
	one := x
	for _, h := range way {
		x = r.cross(x, h)
	}
	return qty.Int(1).Sub(one.Is.Div(x.Is))
}
