package present

import (
	"math"
	"strconv"
	"strings"

	"sley/internal/app"
	"sley/internal/engine/reckon"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// LiveAllowance is one allowance: between which states, what the plan says of it, what
// that comes to, and where it is from. Origin is given, default, reckoned from others, or
// none where no way leads from one state to the other.
type LiveAllowance struct {
	Key    string      `json:"key"`
	Path   string      `json:"path"`
	Says   string      `json:"says"`
	From   string      `json:"from"`
	To     string      `json:"to"`
	Across bool        `json:"across"`
	Typed  string      `json:"typed"`
	Value  string      `json:"value"`
	Origin string      `json:"origin"`
	Usual  string      `json:"usual,omitempty"`
	Source string      `json:"source,omitempty"`
	Others []LiveOther `json:"others"`
}

// LiveOther is another reading of what was typed, and how it is written.
type LiveOther struct {
	Says  string `json:"says"`
	Typed string `json:"typed"`
}

func (u Units) liveAllowances(p *app.Preview) []LiveAllowance {
	out := []LiveAllowance{}
	for _, a := range p.Allowed {
		path := "allowances." + a.Key
		l := LiveAllowance{
			Key: a.Key, Path: path, Says: nodeWords[path], From: a.Link.Earlier.String(), To: a.Link.Later.String(),
			Across: a.Width, Typed: p.Typed(path), Origin: originOf(a), Others: []LiveOther{},
		}
		if l.Typed != "" {
			l.Origin = originName(reckon.Given)
		}
		l.Value = u.lossWords(a, l.Typed)
		if a.Usual != nil {
			l.Usual = u.span(*a.Usual)
			l.Source = reckon.SourceText(a.Usual.Source)
		}
		if p.Result != nil {
			l.Others = u.otherReadings(p.Result.Readings, a.Key)
		}
		out = append(out, l)
	}
	return out
}

func originOf(a reckon.Allowed) string {
	if !a.Known {
		return originNone
	}
	return originName(a.Origin)
}

// lossWords says what an allowance comes to: the share that is lost or gained, or as it
// was written where it is no share.
func (u Units) lossWords(a reckon.Allowed, typed string) string {
	switch {
	case !a.Known:
		return ""
	case !a.Share:
		return typed
	case a.Is.Sign() < 0:
		f := a.Figure
		f.Is = f.Is.Neg()
		return strings.ReplaceAll(gainWords, "{share}", u.digits(f, 2))
	}
	return u.digits(a.Figure, 2)
}

func (u Units) otherReadings(readings []reckon.Reading, key string) []LiveOther {
	out := []LiveOther{}
	for _, r := range readings {
		if r.Key == key {
			out = append(out, LiveOther{strings.ReplaceAll(addedWords, "{wound}", u.Bench(r.Wound)), r.Typed})
		}
	}
	return out
}

// LiveSett is the setts that rules advise, numbers in the unit that Unit names.
type LiveSett struct {
	Bands  []LiveBand `json:"bands"`
	Unit   string     `json:"unit"`
	Wanted *float64   `json:"wanted,omitempty"`
	Exact  *float64   `json:"exact,omitempty"`
}

// LiveBand is the setts of one rule.
type LiveBand struct {
	ID     string  `json:"id"`
	Says   string  `json:"says"`
	Low    float64 `json:"low"`
	High   float64 `json:"high"`
	Value  string  `json:"value"`
	Typed  string  `json:"typed"` // the whole number nearest its middle, as a plan is written
	Source string  `json:"source"`
}

// settUnits are how a plan writes threads in each unit.
var settUnits = map[string]string{"in": " epi", "cm": " ends/cm", "10cm": "/10 cm"}

// settBands are the setts of Advise in the order they are shown.
var settBands = []string{
	"sett.delicate", "sett.ordinary", "sett.firm", "sett.greatest", "sett.by-wraps", "sett.plain-by-wraps", "sett.twill-by-wraps", "sett.closest-by-wraps",
}

// liveSett says what is advised for the yarn of the warp; nil where nothing is known of it,
// and where it is not wanted.
func (u Units) liveSett(p *app.Preview) *LiveSett {
	if p.Sett == nil {
		return nil
	}
	out := &LiveSett{Bands: []LiveBand{}, Unit: strings.TrimPrefix(u.unitName(reckon.Density), "/")}
	for _, id := range settBands {
		low, ok := p.Sett.Node(id)
		if !ok {
			continue
		}
		b := LiveBand{ID: id, Says: Label(low), Value: u.Bench(low), Source: reckon.SourceText(low.Source)}
		high, ranged := p.Sett.Node(id + "-to")
		if !ranged {
			high = low
		} else {
			b.Value = fillIn(spanWords, "{low}", u.bare(low), "{high}", u.Bench(high))
		}
		b.Low, b.High = u.inUnit(low), u.inUnit(high)
		b.Typed = strconv.Itoa(int(math.Round((b.Low+b.High)/2))) + settUnits[u.Density]
		out.Bands = append(out.Bands, b)
	}
	if len(out.Bands) == 0 {
		return nil
	}
	out.Wanted, out.Exact = u.number(p.Result, "sett.wanted"), u.number(p.Result, "sett.exact")
	return out
}

func (u Units) unitName(k reckon.Kind) string {
	_, unit := u.unitOf(reckon.Figure{Kind: k})
	return unit
}

// bare is a density without its unit.
func (u Units) bare(n reckon.Node) string { return strings.TrimSuffix(u.Bench(n), u.unitName(n.Kind)) }

func (u Units) inUnit(n reckon.Node) float64 {
	value, _ := u.unitOf(n.Figure)
	return value.Float()
}

func (u Units) number(r *reckon.Result, id string) *float64 {
	if r == nil {
		return nil
	}
	n, ok := r.Node(id)
	if !ok {
		return nil
	}
	value := u.inUnit(n)
	return &value
}

// LiveFound is what was found backwards. Typed is written at What to take it.
type LiveFound struct {
	What    string      `json:"what"`
	Says    string      `json:"says"`
	Value   string      `json:"value"`
	Typed   string      `json:"typed"`
	Binding string      `json:"binding,omitempty"`
	Limits  []LiveLimit `json:"limits"`
}

// LiveLimit is one limit: what is needed of it, and what there is.
type LiveLimit struct {
	Path string `json:"path"`
	Says string `json:"says"`
	Need string `json:"need"`
	Have string `json:"have"`
}

func (u Units) liveFound(p *app.Preview) *LiveFound {
	if p.Result == nil || p.Result.Backward == nil {
		return nil
	}
	b := p.Result.Backward
	n := reckon.Node{ID: b.What, Figure: b.Found, Origin: reckon.Found}
	if b.Found.Kind == reckon.YarnLength {
		n.Origin = reckon.Reckoned
	}
	out := &LiveFound{
		What: b.What, Says: SoughtWords(p.Plan, b.What), Value: u.Bench(n), Typed: foundText(p.Plan, b),
		Binding: b.Binding, Limits: []LiveLimit{},
	}
	for _, l := range b.Limits {
		need, _ := p.Result.Node(l.Need)
		have, _ := p.Result.Node(l.Have)
		out.Limits = append(out.Limits, LiveLimit{l.Path, SoughtWords(p.Plan, l.Path), u.Bench(need), u.Bench(have)})
	}
	return out
}

// foundText is what was found as a plan file writes it, exactly; empty for a need of yarn,
// which no plan says.
func foundText(plan *warp.Plan, b *reckon.Backward) string {
	switch {
	case b.Found.Kind == reckon.Pieces:
		return number(b.Found.Is.Count(qty.Down))
	case b.What == "warp.sett":
		return plan.Warp.Sett.Typed
	case b.Found.Kind != reckon.Length:
		return ""
	}
	for i := range plan.Pieces {
		at := "pieces[" + number(i) + "]."
		switch b.What {
		case at + "length":
			return sizeText(plan.Pieces[i].Length)
		case at + "width":
			return sizeText(plan.Pieces[i].Width)
		}
	}
	return ""
}

// sizeText writes a size, with its state where a bare one would be in another.
func sizeText(s warp.Size) string {
	if s.State == warp.Finished || s.State == warp.Unsaid {
		return s.Typed
	}
	return s.Typed + " " + s.State.String()
}
