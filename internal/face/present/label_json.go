package present

import (
	"strings"

	"sley/internal/app"
	"sley/internal/engine/content"
	"sley/internal/engine/reckon"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/yarn"
)

// LabelJSON is the documented shape of a cloth's label (docs/json.md).
type LabelJSON struct {
	Format int              `json:"format"`
	Name   string           `json:"name"`
	Forms  []LabelFormJSON  `json:"forms"` // none where something is missing for them
	Shares []LabelShareJSON `json:"shares"`
	Yarns  []LabelYarnJSON  `json:"yarns"`
	Basis  []string         `json:"basis"` // what was weighed and how
	Care   []CareJSON       `json:"care"`
	Cites  string           `json:"cites"` // of the care
	Check  string           `json:"check"`
}

// LabelFormJSON is the text of a label by one set of rules.
type LabelFormJSON struct {
	Form  string   `json:"form"`
	Says  string   `json:"says"`
	Rules string   `json:"rules"`
	Text  string   `json:"text"`  // in one line
	Lines []string `json:"lines"` // fibre by fibre
	Notes []string `json:"notes"`
}

// LabelShareJSON is a fibre's share of a cloth, before it is rounded.
type LabelShareJSON struct {
	Fibre     string `json:"fibre"`
	Dry       string `json:"dry"`
	Allowance string `json:"allowance,omitempty"` // none: the rules have none
	Label     string `json:"label"`
}

// LabelYarnJSON is what is in the cloth of one yarn.
type LabelYarnJSON struct {
	Yarn   string `json:"yarn"`
	Fibre  string `json:"fibre"`
	Warp   string `json:"warp,omitempty"`
	Weft   string `json:"weft,omitempty"`
	Weight string `json:"weight"`
	Basis  string `json:"basis"` // shelf, scoured, grease
}

// CareJSON is one thing to do, or not to do, when the cloth is washed.
type CareJSON struct {
	About string `json:"about"` // wash, bleach, dry, iron, first
	Says  string `json:"says"`
	Why   string `json:"why,omitempty"` // which fibre decides, where there are several
}

// LabelFile is what a command prints of a label.
type LabelFile struct {
	LabelJSON
	Problems []ProblemJSON `json:"problems"`
}

// LabelFileOf gives the shape with the problems; l is nil where there is no reckoning.
func LabelFileOf(l *app.ClothLabel, list *problem.List, u Units) LabelFile {
	return LabelFile{LabelJSONOf(l, u), JSONOf(nil, list, u).Problems}
}

// LabelJSONOf words the label of a cloth; l is nil where there is no reckoning.
func LabelJSONOf(l *app.ClothLabel, u Units) LabelJSON {
	out := LabelJSON{
		Format: 1, Forms: []LabelFormJSON{}, Shares: []LabelShareJSON{}, Yarns: []LabelYarnJSON{},
		Basis: []string{}, Care: []CareJSON{}, Cites: labelSource, Check: labelCheck,
	}
	if l == nil {
		return out
	}
	out.Name = Title(l.Result.Plan)
	for _, form := range l.Labels {
		out.Forms = append(out.Forms, labelForm(form))
	}
	for _, s := range l.Shares {
		out.Shares = append(out.Shares, labelShare(s))
	}
	for _, y := range l.Yarns {
		out.Yarns = append(out.Yarns, u.labelYarn(y))
	}
	if len(l.Labels) > 0 {
		out.Basis = basisWords(l)
	}
	if l.Care != nil {
		out.Care = careWords(*l.Care)
	}
	return out
}

func labelForm(l content.Label) LabelFormJSON {
	out := LabelFormJSON{Form: string(l.Form), Says: formNames[l.Form], Rules: formRules[l.Form], Notes: []string{}}
	for _, i := range l.Items {
		out.Lines = append(out.Lines, labelLine(l, i))
	}
	out.Text = strings.Join(out.Lines, ", ")
	for _, n := range l.Notes {
		out.Notes = append(out.Notes, fillIn(labelNotes[n.Topic], "{name}", n.Name, "{limit}", percentOf(n.Limit, 1)))
	}
	return out
}

// labelLine is a fibre with its share. The European form has one place in all lines, unless
// every share is whole.
func labelLine(l content.Label, i content.Item) string {
	percent := i.Share.Mul(qty.Int(100))
	if l.Form == content.US {
		return percent.Short(0) + "% " + americanName(i)
	}
	places := 0
	for _, other := range l.Items {
		if !other.Share.Mul(qty.Int(100)).IsInt() {
			places = 1
		}
	}
	return percent.Decimal(places) + " % " + i.Name
}

// americanName is a fibre's name with capitals, as labels there have it.
func americanName(i content.Item) string {
	switch {
	case i.Others == 1:
		return labelOther
	case i.Others > 1:
		return labelOthers
	}
	words := strings.Fields(i.Name)
	for k, w := range words {
		words[k] = strings.ToUpper(w[:1]) + w[1:]
	}
	return strings.Join(words, " ")
}

func percentOf(share qty.Rat, places int) string {
	return Imperial.digits(reckon.Figure{Is: share, Kind: reckon.Share}, places)
}

func labelShare(s content.Share) LabelShareJSON {
	out := LabelShareJSON{Fibre: s.Fibre.Name, Dry: percentOf(s.Bare, 2), Label: percentOf(s.Label, 2)}
	if s.Allowance.Known {
		out.Allowance = percentOf(s.Allowance.Share, 2)
	}
	return out
}

func (u Units) labelYarn(y content.Yarn) LabelYarnJSON {
	weight := func(is qty.Rat) string {
		if is.Sign() == 0 {
			return ""
		}
		return u.Bench(reckon.Node{Figure: reckon.Figure{Is: is, Kind: reckon.Weight}})
	}
	return LabelYarnJSON{y.Name, y.Composition.String(), weight(y.Warp), weight(y.Weft), weight(y.Mass()), y.Basis.String()}
}

// basisWords say what was weighed, in which condition.
func basisWords(l *app.ClothLabel) []string {
	out := []string{labelWhole, labelShelf}
	for _, of := range []struct {
		basis content.Basis
		words string
	}{{content.Scoured, labelScoured}, {content.Grease, labelGrease}} {
		var names []string
		for _, y := range l.Yarns {
			if y.Basis == of.basis {
				names = append(names, y.Name)
			}
		}
		if len(names) > 0 {
			out = append(out, fillIn(of.words, "{yarns}", strings.Join(names, ", ")))
		}
	}
	for _, s := range l.Shares {
		if s.Allowance.Assume && len(l.Shares) > 1 {
			out = append(out, fillIn(labelAssumed, "{fibre}", s.Fibre.Name, "{share}", percentOf(s.Allowance.Share, 2)))
		}
	}
	return out
}

// careWords say how the cloth is cared for, in the order of care labels.
func careWords(c content.Care) []CareJSON {
	dry := careNoDryer
	switch {
	case c.Tumble > 0:
		dry = careDryer
	case c.Flat:
		dry = careFlat
	}
	iron := careIron
	switch {
	case c.Iron == 0:
		iron = careNoIron
	case c.Damp:
		iron = careDamp
	}
	out := []CareJSON{
		{"wash", fillIn(washWords[c.Handling], "{most}", Celsius(c.Wash)), careFor(c.HandledFor)},
		{"bleach", careBleach, ""},
		{"dry", fillIn(dry, "{most}", Celsius(c.Tumble)), careFor(c.DryFor)},
		{"iron", fillIn(iron, "{how}", ironWords[c.Iron], "{most}", Celsius(c.Iron)), careFor(c.IronFor)},
	}
	if words := firstWords[c.First]; words != "" {
		out = append(out, CareJSON{"first", words, ""})
	}
	return out
}

func careFor(f yarn.Fibre) string {
	if f.Name == "" {
		return ""
	}
	return fillIn(careWhy, "{fibre}", f.Name)
}

// Celsius says a temperature in both scales: 30 °C (86 °F).
func Celsius(degrees int) string {
	return number(degrees) + " °C (" + number(degrees*9/5+32) + " °F)"
}
