package present

import (
	"sley/internal/engine/reckon"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
)

// JSON is the documented shape of a reckoning (docs/json.md). Exact values are
// rationals in the base unit that ExactIn names.
type JSON struct {
	Format   int           `json:"format"`
	Name     string        `json:"name,omitempty"`
	Mark     string        `json:"mark,omitempty"`     // which version of the plan file
	Defaults string        `json:"defaults,omitempty"` // version of the table of starting values
	Found    *FoundJSON    `json:"found,omitempty"`
	Nodes    []NodeJSON    `json:"nodes"`
	Problems []ProblemJSON `json:"problems"`
}

// FoundJSON is what was reckoned backwards.
type FoundJSON struct {
	What    string `json:"what"`
	Exact   string `json:"exact"`
	ExactIn string `json:"exact_in,omitempty"`
	Binding string `json:"binding,omitempty"`
}

// NodeJSON is one number.
type NodeJSON struct {
	ID      string   `json:"id"`
	Says    string   `json:"says"`
	Exact   string   `json:"exact"`
	ExactIn string   `json:"exact_in,omitempty"` // nm, ng, per_nm, nm_per_ng, s, per_s, minor
	Value   float64  `json:"value"`              // in Unit, nearest double
	Unit    string   `json:"unit,omitempty"`
	Bench   string   `json:"bench"`
	State   string   `json:"state,omitempty"`
	Formula string   `json:"formula,omitempty"`
	Inputs  []string `json:"inputs,omitempty"`
	Origin  string   `json:"origin"`
	Path    string   `json:"path,omitempty"`
	Typed   string   `json:"typed,omitempty"`
	Range   []string `json:"range,omitempty"`
	Source  string   `json:"source"`
	Cites   string   `json:"cites,omitempty"`
}

// ProblemJSON is one problem with its words.
type ProblemJSON struct {
	Severity string        `json:"severity"`
	Code     string        `json:"code"`
	Path     string        `json:"path,omitempty"`
	Read     string        `json:"read,omitempty"`
	Wrong    string        `json:"wrong"`
	Fix      string        `json:"fix,omitempty"`
	Place    problem.Place `json:"place"`
}

// JSONOf gives the shape of a reckoning and its problems; r is nil where the
// plan had errors.
func JSONOf(r *reckon.Result, list *problem.List, u Units) JSON {
	out := JSON{Format: 1, Nodes: []NodeJSON{}, Problems: []ProblemJSON{}}
	if r != nil {
		out.Name, out.Defaults = r.Plan.Name, r.Defaults
		if b := r.Backward; b != nil {
			out.Found = &FoundJSON{b.What, b.Found.Is.String(), baseUnit(b.Found), b.Binding}
		}
		for _, n := range r.Nodes {
			out.Nodes = append(out.Nodes, u.nodeJSON(n))
		}
	}
	for _, p := range list.All() {
		p = u.Localise(p)
		out.Problems = append(out.Problems, ProblemJSON{
			p.Severity.String(), p.Code, p.Path, p.Read, Wrong(p), Fix(p), p.Place,
		})
	}
	return out
}

func (u Units) nodeJSON(n reckon.Node) NodeJSON {
	value, unit := u.unitOf(n.Figure)
	out := NodeJSON{
		ID: n.ID, Says: Label(n), Exact: n.Is.String(), ExactIn: baseUnit(n.Figure),
		Value: value.Float(), Unit: trimUnit(unit), Bench: u.Bench(n), State: n.State.String(),
		Formula: u.Formula(n), Inputs: n.Inputs(), Origin: originName(n.Origin),
		Path: n.Path, Typed: n.Typed, Source: n.Source,
	}
	if n.Source != "definition" && n.Source != "given" {
		out.Cites = reckon.SourceText(n.Source)
	}
	if n.Origin == reckon.Default {
		out.Range = []string{n.Low.String(), n.High.String()}
	}
	return out
}

func trimUnit(unit string) string {
	if len(unit) > 0 && unit[0] == ' ' {
		return unit[1:]
	}
	return unit
}

func originName(o reckon.Origin) string {
	return [...]string{"reckoned", "given", "default", "as-built", "found"}[o]
}

func baseUnit(f reckon.Figure) string {
	switch f.Kind {
	case reckon.Length, reckon.YarnLength:
		return "nm"
	case reckon.Weight:
		return "ng"
	case reckon.Density:
		return "per_nm"
	case reckon.Grist:
		return "nm_per_ng"
	case reckon.Seconds:
		return "s"
	case reckon.RateOf:
		return "per_s"
	case reckon.Money:
		return "minor"
	}
	return ""
}

// Localise writes the figures among a problem's Args in these units, as they are
// read at the bench.
func (u Units) Localise(p problem.Problem) problem.Problem {
	args := problem.Args{}
	for name, value := range p.Args {
		switch v := value.(type) {
		case reckon.Node:
			args[name] = u.Bench(v)
		case reckon.Figure:
			args[name] = u.Bench(reckon.Node{Figure: v})
		case qty.Length:
			args[name] = u.Bench(reckon.Node{Figure: reckon.Figure{Is: v.Rat(), Kind: reckon.Length}})
		default:
			args[name] = value
		}
	}
	p.Args = args
	return p
}
