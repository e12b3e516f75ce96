package present

import (
	"strings"

	"sley/internal/app"
	"sley/internal/engine/reckon"
	"sley/internal/trade/problem"
	"sley/internal/trade/warp"
)

// Live is the documented shape of a preview (docs/api.md, docs/json.md): a warp as it
// would come out, worded and in its units.
type Live struct {
	Version    int                  `json:"version"`
	Name       string               `json:"name"`
	Mark       string               `json:"mark"`
	Sections   []LiveSection        `json:"sections"`
	Allowances []LiveAllowance      `json:"allowances"`
	Orders     map[string]LiveOrder `json:"orders"`
	Yarns      []LiveYarn           `json:"yarns"`
	Sett       *LiveSett            `json:"sett"`
	Found      *LiveFound           `json:"found,omitempty"`
	Findable   []LivePath           `json:"findable"`
	Limits     []LivePath           `json:"limits"`
	Stages     []LiveStage          `json:"stages"`
	Draft      *LiveDraft           `json:"draft,omitempty"`
	Problems   []LiveProblem        `json:"problems"`
}

// LiveSection is a stretch of lines under one heading.
type LiveSection struct {
	ID    string     `json:"id"`
	Title string     `json:"title"`
	Lines []LiveLine `json:"lines"`
}

// LiveLine is one figure. Path is where in the plan it is set; Working is there where it
// was asked for.
type LiveLine struct {
	ID      string   `json:"id"`
	Says    string   `json:"says"`
	Value   string   `json:"value"`
	Note    string   `json:"note,omitempty"`
	Origin  string   `json:"origin"`
	Path    string   `json:"path,omitempty"`
	Typed   string   `json:"typed,omitempty"`
	Working []string `json:"working,omitempty"`
}

// LiveYarn is a yarn of the plan and its colour, #rrggbb; empty where it says none.
type LiveYarn struct {
	Name   string `json:"name"`
	Colour string `json:"colour"`
}

// LivePath is something of a plan that can be named.
type LivePath struct {
	Path string `json:"path"`
	Says string `json:"says"`
}

// LiveProblem is a problem as it stands beside its field.
type LiveProblem struct {
	Code     string `json:"code"`
	Severity string `json:"severity"`
	Path     string `json:"path"`
	Read     string `json:"read,omitempty"`
	Says     string `json:"says"`
	Fix      string `json:"fix,omitempty"`
}

// LiveDraft is a draft in one line.
type LiveDraft struct {
	Shafts   int    `json:"shafts"`
	Treadles int    `json:"treadles"`
	Ends     int    `json:"ends"`
	Picks    int    `json:"picks"`
	Weave    string `json:"weave"`
}

// LiveOf words a preview. Lines with the ids in open have their working, where the
// preview has workings; parts that the preview does not want are empty.
func LiveOf(p *app.Preview, open []string) Live {
	u := UnitsIn(p.Plan, p.Units)
	out := Live{
		Version: p.Version, Name: p.Plan.Name, Mark: p.Mark, Sections: []LiveSection{}, Orders: map[string]LiveOrder{},
		Findable: []LivePath{}, Limits: []LivePath{}, Problems: u.Problems(p.Problems),
	}
	if p.Result != nil {
		out.Sections = u.liveSections(p, open)
	}
	out.Allowances = u.liveAllowances(p)
	for _, o := range p.Orders {
		out.Orders[o.Path] = liveOrder(o)
	}
	out.Yarns = liveYarns(p)
	out.Sett = u.liveSett(p)
	out.Found = u.liveFound(p)
	if p.Wants(app.PartFindable) {
		what, within := p.Findable()
		out.Findable, out.Limits = livePaths(p.Plan, what), livePaths(p.Plan, within)
	}
	if d := p.Draft; d != nil {
		out.Draft = &LiveDraft{d.Shafts, d.Treadles, d.Ends, d.Picks, Weave(d.Weave)}
	}
	out.Stages = u.liveStages(p)
	return out
}

func liveYarns(p *app.Preview) []LiveYarn {
	out := []LiveYarn{}
	if !p.Wants(app.PartYarns) {
		return out
	}
	for i := range p.Plan.Yarns {
		out = append(out, LiveYarn{p.Plan.Yarns[i].Name, p.Plan.Yarns[i].Colour.Hex})
	}
	return out
}

// Problems words problems in these units.
func (u Units) Problems(list *problem.List) []LiveProblem {
	out := []LiveProblem{}
	if list == nil {
		return out
	}
	for _, p := range list.All() {
		p = u.Localise(p)
		out = append(out, LiveProblem{p.Code, p.Severity.String(), p.Path, p.Read, Wrong(p), Fix(p)})
	}
	return out
}

func (u Units) liveSections(of *app.Preview, open []string) []LiveSection {
	r := of.Result
	p := &pager{r: r, u: u, used: map[string]bool{}, open: map[string]bool{}, only: of.Wants}
	for _, id := range open {
		p.open[id] = true
	}
	out := []LiveSection{}
	for _, s := range p.sections() {
		section := LiveSection{s.ID, s.Title, make([]LiveLine, 0, len(s.Lines))}
		for _, l := range s.Lines {
			n, _ := r.Node(l.ID)
			section.Lines = append(section.Lines, LiveLine{
				l.ID, l.Label, l.Value, l.Note, originName(n.Origin), pathOf(n), n.Typed, l.Working,
			})
		}
		out = append(out, section)
	}
	return out
}

// pathOf is where in a plan a figure is set: where it stands, or where what is usual
// would be said otherwise.
func pathOf(n reckon.Node) string {
	if n.Path != "" || n.Origin != reckon.Default {
		return n.Path
	}
	if path, ok := defaultPaths[n.ID]; ok {
		return path
	}
	if strings.HasPrefix(n.ID, "allowances.") {
		return n.ID
	}
	if yarn, ok := strings.CutSuffix(n.ID, "].diameter-constant"); ok {
		steps := problem.Path{{Key: "yarns"}, {Key: strings.TrimPrefix(yarn, "yarns[")}, {Key: "diameter-constant"}}
		return steps.String()
	}
	return ""
}

func livePaths(plan *warp.Plan, paths []string) []LivePath {
	out := []LivePath{}
	for _, path := range paths {
		out = append(out, LivePath{path, SoughtWords(plan, path)})
	}
	return out
}

// SoughtWords says what can be found backwards, or what limits it.
func SoughtWords(plan *warp.Plan, path string) string {
	if words, ok := soughtWords[path]; ok {
		return words
	}
	if name, ok := strings.CutPrefix(path, "yarns."); ok {
		return strings.ReplaceAll(soughtYarn, "{yarn}", name)
	}
	for i := range plan.Pieces {
		if field, ok := strings.CutPrefix(path, "pieces["+number(i)+"]."); ok {
			return strings.ReplaceAll(soughtPiece[field], "{piece}", named(plan.Pieces[i].Name, "piece"))
		}
	}
	return path
}

// TriedJSON is the documented shape of a preview that a command prints.
type TriedJSON struct {
	Format int `json:"format"`
	Live
}

// Text sets a preview as plain text.
func (l Live) Text() string {
	page := Page{Title: named(l.Name, "warp")}
	for _, s := range l.Sections {
		section := Section{Title: s.Title}
		for _, line := range s.Lines {
			section.Lines = append(section.Lines, Line{ID: line.ID, Label: line.Says, Value: line.Value, Note: line.Note, Working: line.Working})
		}
		page.Sections = append(page.Sections, section)
	}
	return page.Text()
}
