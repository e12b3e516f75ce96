package present

import (
	"cmp"
	"strings"

	"sley/internal/app"
	"sley/internal/engine/reckon"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/yarn"
)

// systemPlaces is how many digits after the point a yarn number shows.
const systemPlaces = 3

// YarnPage lays out a yarn's number in every system, each with its working.
func YarnPage(text string, read app.YarnRead) Page {
	count := read.Yarn.Count.Is
	if read.Yarn.Basis() != yarn.FromCount {
		return Page{Title: cmp.Or(text, "yarn"), Sections: []Section{{Title: "As measured", Lines: YarnFigures(read)}}}
	}
	tex := count.Grist().Tex()
	s := Section{Title: "The whole yarn, all plies together"}
	for _, c := range yarn.Conversions(count) {
		s.Lines = append(s.Lines, Line{
			Label: c.System.Name, Value: c.Value.Short(systemPlaces), Note: c.System.Symbol(), Working: []string{conversion(c, tex)},
		})
	}
	page := Page{Title: text, Note: readAs(text, count), Sections: []Section{strands(count), s, thickness(read.Yarn)}}
	if label := labelFigures(read); len(label) > 1 || read.Label.Taken != "" {
		for i, l := range label {
			if l.Note != "" {
				label[i].Note, label[i].Working = "", []string{l.Note}
			}
		}
		page.Sections = append([]Section{{Title: "The label", Lines: label}}, page.Sections...)
	}
	return page
}

// readAs says how the count was understood, where it is not as it was typed.
func readAs(text string, count yarn.Count) string {
	if read := count.String(); read != text {
		return "read as " + read
	}
	return ""
}

// conversions are the numbers of a yarn in every system; of one without a count none.
func conversions(y yarn.Yarn) []yarn.Conversion {
	if y.Count.Is.IsZero() {
		return nil
	}
	return yarn.Conversions(y.Count.Is)
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

// thickness gives the diameters in an inch by two rules, for a firm yarn where the fibre
// is unknown.
func thickness(y yarn.Yarn) Section {
	k, _ := y.K()
	s := Section{Title: "Side by side in an inch", Lines: []Line{
		{Label: "Ashenhurst's rule, constant " + k.Short(2), Value: y.Diameters().Short(1), Working: []string{k.Short(2) + " × √(yards to the pound)"}},
		{Label: "Peirce's rule", Value: yarn.PeirceDiameters(y.Grist()).Short(1), Working: []string{"28 × √(cotton count)"}},
		{Label: "specific volume at that constant, cm³/g", Value: yarn.SpecificVolume(k).Short(3), Working: []string{"1.0215 ÷ constant²"}},
	}}
	if y.Class() == yarn.UnsaidClass {
		s.Title += ", as a firm yarn"
	}
	return s
}

// YarnJSON is the documented shape of sley yarn (docs/json.md).
type YarnJSON struct {
	Format  int              `json:"format"`
	Typed   string           `json:"typed"`
	ReadAs  string           `json:"read_as"`
	Tex     string           `json:"tex"` // exact
	Plies   int              `json:"plies"`
	Label   YarnLabelJSON    `json:"label"`
	Systems []YarnSystemJSON `json:"systems"`
	// Problems are those of the label; never null.
	Problems []ProblemJSON `json:"problems"`
}

// YarnLabelJSON is what the label says beside the count; fields that it does not say are
// empty.
type YarnLabelJSON struct {
	Name   string    `json:"name"`
	Fibre  string    `json:"fibre"`
	Colour string    `json:"colour"`
	System string    `json:"system"` // taken by the fibre's custom; empty where it is written
	Source string    `json:"source"`
	Others []string  `json:"others"` // counts the same figures are in other systems
	Set    []app.Set `json:"set"`    // by the keys of [yarns.NAME]
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
func YarnJSONOf(text string, read app.YarnRead, list *problem.List) YarnJSON {
	count, label := read.Yarn.Count.Is, read.Label
	out := YarnJSON{Problems: ProblemsJSONOf(list), Format: 1, Typed: text, ReadAs: count.String(), Tex: read.Yarn.Grist().Tex().String(), Plies: count.Plies()}
	out.Label = YarnLabelJSON{
		Name: label.Name, Fibre: label.Composition.Is.String(), Colour: label.Colour.String(),
		System: string(label.Taken), Source: label.Source, Others: append([]string{}, label.Others...), Set: read.Sets,
	}
	for _, c := range conversions(read.Yarn) {
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
