package catalogue

import (
	"strings"

	"sley/internal/engine/catalogue/block"
	"sley/internal/trade/draft"
	"sley/internal/trade/problem"
)

// blocked are the systems of package block, each with a small profile.
func blocked() []*Entry {
	var out []*Entry
	for _, s := range block.Systems() {
		kin := kinOf[s.ID]
		e := &Entry{
			ID: s.ID, Family: kin.family, Sett: kin.sett, Source: s.Source, Layered: s.Layers > 1,
			Params: []Param{
				{Name: "units", Kind: Units, Default: kin.units},
				{Name: "weft-units", Kind: Units, Default: ""},
				choice("feet", "one", "two", "none"),
			},
		}
		e.make = func(m *making) *draft.Draft { return m.units(s) }
		out = append(out, e)
	}
	return out
}

// kinOf says where a system stands in the catalogue, its sett and its first profile.
var kinOf = map[string]struct {
	family Family
	sett   Basis
	units  string
}{
	"turned-twill-3":      {Blocks, ByInterlacings, "A x 2, B x 2"},
	"turned-twill-4":      {Blocks, ByInterlacings, "A x 2, B x 2"},
	"turned-broken-twill": {Blocks, ByInterlacings, "A x 2, B x 2"},
	"turned-satin-5":      {Blocks, ByInterlacings, "A x 2, B x 2"},
	"turned-satin-8":      {Blocks, ByInterlacings, "A, B"},
	"huck":                {Laces, AsPlain, "A"},
	"huck-lace":           {Laces, AsPlain, "A, B"},
	"huck-half-units":     {Laces, AsPlain, "A B"},
	"bronson-lace":        {Laces, AsPlain, "A, B"},
	"spot-bronson":        {Laces, AsPlain, "A B C B"},
	"overshot":            {Blocks, AsPlain, "A B C D"},
	"monks-belt":          {Blocks, AsPlain, "A x 3, B x 2"},
	"summer-and-winter":   {Blocks, AsPlain, "A x 2, B x 2"},
	"taquete":             {Faced, WeftFaced, "A x 2, B x 2"},
	"crackle":             {Blocks, AsPlain, "A x 2, B x 2, C x 2, D x 2"},
	"double-cloth-blocks": {Layers, TwoLayers, "A, B"},
	"rep":                 {Faced, WarpFaced, "A x 2, B x 2"},
}

// units writes the profile out by a system.
func (m *making) units(s *block.System) *draft.Draft {
	p, list := block.Read(block.Text{Threading: m.text("units"), Treadling: m.text("weft-units")})
	if p == nil {
		m.profile(list)
		return nil
	}
	feet := map[string]block.Feet{"one": block.OneFoot, "two": block.TwoFeet, "none": block.LiftPlan}[m.text("feet")]
	d, list := s.Expand(p, feet)
	if d == nil {
		m.profile(list)
	}
	return d
}

// profile tells what is wrong with the profile at the parameters it was written in.
func (m *making) profile(list *problem.List) {
	for _, p := range list.All() {
		switch {
		case strings.HasPrefix(p.Path, "treadling") && m.text("weft-units") != "":
			p.Path = "weft-units"
		default:
			p.Path = "units"
		}
		m.list.Add(p)
	}
}
