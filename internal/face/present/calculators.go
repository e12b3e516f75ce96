package present

import (
	"strings"

	"sley/internal/engine/reckon"
	"sley/internal/trade/qty"
	"sley/internal/trade/yarn"
)

// systemPlaces is how many digits after the point a yarn number shows.
const systemPlaces = 3

// YarnPage lays out a yarn's number in every system, each with its working.
func YarnPage(text string, count yarn.Count, all []yarn.Conversion) Page {
	tex := count.Grist().Tex()
	s := Section{Title: "The whole yarn, all plies together"}
	for _, c := range all {
		s.Lines = append(s.Lines, Line{
			Label: c.System.Name, Value: c.Value.Short(systemPlaces), Note: c.System.Symbol(), Working: []string{conversion(c, tex)},
		})
	}
	return Page{Title: text, Note: readAs(text, count), Sections: []Section{strands(count), s, thickness(count)}}
}

// readAs says how the count was understood, where it is not as it was typed.
func readAs(text string, count yarn.Count) string {
	if read := count.String(); read != text {
		return "read as " + read
	}
	return ""
}

// conversion writes the working of one number: tex ÷ constant in a direct
// system, constant ÷ tex in an indirect one.
func conversion(c yarn.Conversion, tex qty.Rat) string {
	over, under := tex, c.Constant
	if !c.Direct {
		over, under = under, over
	}
	return divided(over, under)
}

// divided writes a division of two plain numbers and what it comes to.
func divided(over, under qty.Rat) string {
	leaf := func(r qty.Rat) *reckon.Expr { return &reckon.Expr{Leaf: reckon.Figure{Is: r}} }
	n := reckon.Node{
		Figure:  reckon.Figure{Is: over.Div(under)},
		Formula: &reckon.Expr{Op: reckon.Over, Args: []*reckon.Expr{leaf(over), leaf(under)}},
	}
	return Metric.Formula(n) + " = " + Metric.Exact(n.Figure)
}

// strands gives the grist of each part of the yarn: its constant ÷ the number
// that its plies come to together.
func strands(count yarn.Count) Section {
	s := Section{Title: "The yarn as written"}
	for _, strand := range count.Strands {
		one := yarn.Count{Strands: []yarn.Strand{strand}}
		system, ok := yarn.SystemNamed(string(strand.System))
		if !ok {
			continue // a plain grist: its own working is the definition of tex
		}
		tex, number := one.Grist().Tex(), one.In(system)
		working := divided(system.Constant(), number)
		if system.Direct {
			working = divided(number, system.Constant().Inv())
		}
		s.Lines = append(s.Lines, Line{Label: strand.String(), Value: tex.Short(systemPlaces) + " tex", Note: number.Short(systemPlaces) + " " + system.Symbol(), Working: []string{working}})
	}
	return s
}

// thickness gives the diameters in an inch by two rules, for a firm yarn.
func thickness(count yarn.Count) Section {
	k := yarn.DefaultK(yarn.UnsaidClass, yarn.UnsaidSpinning)
	g := count.Grist()
	return Section{Title: "Side by side in an inch, as a firm yarn", Lines: []Line{
		{Label: "Ashenhurst's rule, constant " + k.K.Short(2), Value: yarn.Diameters(g, k.K).Short(1), Working: []string{k.K.Short(2) + " × √(yards to the pound)"}},
		{Label: "Peirce's rule", Value: yarn.PeirceDiameters(g).Short(1), Working: []string{"28 × √(cotton count)"}},
		{Label: "specific volume at that constant, cm³/g", Value: yarn.SpecificVolume(k.K).Short(3), Working: []string{"1.0215 ÷ constant²"}},
	}}
}

// YarnJSON is the documented shape of sley yarn (docs/json.md).
type YarnJSON struct {
	Format  int              `json:"format"`
	Typed   string           `json:"typed"`
	ReadAs  string           `json:"read_as"`
	Tex     string           `json:"tex"` // exact
	Plies   int              `json:"plies"`
	Systems []YarnSystemJSON `json:"systems"`
}

// YarnSystemJSON is the yarn's number in one system.
type YarnSystemJSON struct {
	ID       string  `json:"id"`
	Name     string  `json:"name"`
	Symbol   string  `json:"symbol"`
	Exact    string  `json:"exact"`
	Value    float64 `json:"value"`
	Direct   bool    `json:"direct"`
	Constant string  `json:"constant"` // tex of a yarn numbered 1, exact
	Source   string  `json:"source"`
}

// YarnJSONOf gives the shape of a yarn's conversions.
func YarnJSONOf(text string, count yarn.Count, all []yarn.Conversion) YarnJSON {
	out := YarnJSON{Format: 1, Typed: text, ReadAs: count.String(), Tex: count.Grist().Tex().String(), Plies: count.Plies()}
	for _, c := range all {
		out.Systems = append(out.Systems, YarnSystemJSON{
			string(c.System.ID), c.System.Name, c.System.Symbol(), c.Value.String(), c.Value.Float(), c.Direct, c.Constant.String(), c.System.Source,
		})
	}
	return out
}

// SettPage lays out the setts advised for a yarn in a weave.
func SettPage(r *reckon.Result, u Units, count, weave string) Page {
	p := &pager{r: r, u: u, explain: true, used: map[string]bool{}}
	return Page{Title: count + " in " + weave, Sources: p.sources(), Sections: []Section{
		{Title: "The yarn", Lines: p.lines("yarns[yarn].grist", "yarns[yarn].yards-per-pound", "yarns[yarn].diameter-constant", "yarns[yarn].diameters", "yarns[yarn].wraps")},
		{Title: "Ends in the reed", Lines: p.lines(
			"sett.delicate", "sett.delicate-to", "sett.ordinary", "sett.ordinary-to", "sett.firm", "sett.greatest", "sett.by-wraps", "sett.plain-by-wraps", "sett.twill-by-wraps", "sett.closest-by-wraps",
		)},
	}}
}

// ReedsPage lays out the ranking of sleying orders.
func ReedsPage(r *reckon.Result, u Units) Page {
	p := &pager{r: r, u: u, explain: true, used: map[string]bool{}}
	wanted, _ := r.Node("sett.wanted")
	s := Section{Title: "Best first"}
	for i := range r.Sleying {
		id := "sley.other[" + number(i+1) + "]."
		off, _ := r.Node(id + "off")
		for _, l := range p.lines(id + "exact") {
			l.Label = strings.TrimPrefix(l.Label, "or ")
			l.Note = u.Bench(off) + " off"
			if off.Is.Equal(qty.Rat{}) {
				l.Note = "exact"
			}
			s.Lines = append(s.Lines, l)
		}
	}
	return Page{Title: "Orders for " + wanted.Typed, Sections: []Section{s}}
}
