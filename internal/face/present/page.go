package present

import (
	"strings"

	"sley/internal/engine/reckon"
	"sley/internal/trade/warp"
)

// Page is a reckoning laid out to be read: the same lines for the command, the
// page and the paper.
type Page struct {
	Title    string
	Note     string
	Sections []Section
	Sources  []string // of workings: id and citation
}

// Section is a stretch of lines under one heading.
type Section struct {
	ID    string // stable: glance, pieces[0], yarns[white]; empty outside of reckonings
	Title string
	Lines []Line
}

// Line is one figure with its label; every figure comes from the node ID.
type Line struct {
	ID      string
	Label   string
	Value   string
	Note    string   // how it is known: a default, as built, a reed and its order
	Working []string // formula and source, where workings were asked for
}

// pager lays out one reckoning.
type pager struct {
	r       *reckon.Result
	u       Units
	explain bool
	open    map[string]bool // lines that have their working all the same
	used    map[string]bool
	only    func(name string) bool // the sections that are wanted; nil: all
	within  string                 // what the heading says already, left out of the labels
}

// PageOf lays out a reckoning. With explain every line carries its working and
// a last section holds the figures that the page leaves out.
func PageOf(r *reckon.Result, u Units, explain bool) Page {
	p := &pager{r: r, u: u, explain: explain, used: map[string]bool{}}
	page := Page{Title: Title(r.Plan), Note: strings.TrimSpace(r.Plan.Note)}
	page.Sections = p.sections()
	if explain {
		page.Sections = append(page.Sections, p.rest())
		page.Sources = p.sources()
	}
	return page
}

// Title is what a plan is called.
func Title(plan *warp.Plan) string {
	if plan.Name == "" {
		return "A warp"
	}
	return plan.Name
}

// lines makes a line of every node named that there is; an id that ends in
// "[" stands for every node of that list.
func (p *pager) lines(ids ...string) []Line {
	var out []Line
	for _, id := range ids {
		if strings.HasSuffix(id, "[") {
			out = append(out, p.listed(id)...)
			continue
		}
		if n, ok := p.r.Node(id); ok {
			out = append(out, p.line(n))
		}
	}
	return out
}

func (p *pager) listed(prefix string) []Line {
	var out []Line
	for _, n := range p.r.Nodes {
		if rest, ok := strings.CutPrefix(n.ID, prefix); ok && strings.HasSuffix(rest, "]") {
			out = append(out, p.line(n))
		}
	}
	return out
}

func (p *pager) line(n reckon.Node) Line {
	p.used[n.ID] = true
	label := strings.TrimPrefix(Label(n), p.within)
	l := Line{ID: n.ID, Label: label, Value: p.u.Bench(n), Note: p.note(n)}
	if p.explain || p.open[n.ID] {
		l.Working = p.working(n)
	}
	return l
}

// working is the working of a node; one that is another node's figure under its
// own name says whose.
func (p *pager) working(n reckon.Node) []string {
	lines := p.u.Working(n)
	if n.Formula == nil || n.Formula.Op != reckon.Leaf || n.Formula.Node == "" {
		return lines
	}
	if same, ok := p.r.Node(n.Formula.Node); ok {
		lines[0] = "the same as " + Label(same) + ", " + p.u.Exact(same.Figure)
	}
	return lines
}

// note says what a reader must know to trust the figure.
func (p *pager) note(n reckon.Node) string {
	var parts []string
	if n.About.Order != "" {
		parts = append(parts, "reed "+n.About.Reed+", "+inDents(n.About.Order))
	}
	switch n.Origin {
	case reckon.Default:
		parts = append(parts, "default")
	case reckon.AsBuilt:
		parts = append(parts, "as built")
	case reckon.Found:
		parts = append(parts, "found")
	}
	if s := oddState(n); s != "" {
		parts = append(parts, s)
	}
	if picks, ok := p.r.Node(n.ID + ".picks"); ok && n.Says() == "pieces[].marks[]" && picks.Is.Sign() > 0 {
		parts = append(parts, "after "+p.u.Bench(picks)+" picks")
	}
	if text, ok := nodeNotes[n.ID]; ok {
		parts = append(parts, text)
	}
	if n.Origin == reckon.Given && p.otherUnit(n) {
		parts = append(parts, "written "+n.Typed)
	}
	return strings.Join(parts, ", ")
}

// oddState gives the state of a written size or density where it is another than
// a bare one would be in.
func oddState(n reckon.Node) string {
	usual := map[string]warp.State{
		"pieces[].length": warp.Finished, "pieces[].width": warp.Finished, "sett.wanted": warp.InReed, "picks.wanted": warp.OnLoom,
	}
	if s, ok := usual[n.Says()]; ok && n.State != s && n.State != warp.Unsaid {
		return n.State.String()
	}
	return ""
}

// inDents says an order in words where it is the same in every dent.
func inDents(order string) string {
	if strings.Contains(order, "-") {
		return "dents " + order
	}
	return order + " to a dent"
}

// otherUnit reports whether a written length was written in another system of
// units than it is shown in.
func (p *pager) otherUnit(n reckon.Node) bool {
	shown, ok := map[reckon.Kind]string{reckon.Length: p.u.Length, reckon.YarnLength: p.u.Yarn, reckon.Weight: p.u.Weight}[n.Kind]
	if !ok || n.Typed == "" {
		return false
	}
	return reckon.Metric(n.Typed) != reckon.Metric(shown)
}

// Label says what a node is.
func Label(n reckon.Node) string {
	text, ok := nodeText(n.Says())
	if !ok {
		text = allowanceLabel(n)
	}
	if !strings.Contains(text, "{") {
		return text
	}
	a := n.About
	mark := markText(n)
	text = fillIn(text, "{piece}", named(a.Piece, "piece"), "{reed}", a.Reed, "{order}", inDents(a.Order), "{n}", number(a.Index), "{mark}", mark)
	return strings.ReplaceAll(text, "{yarn}", named(a.Yarn, "yarn"))
}

func named(name, usual string) string {
	if name == "" {
		return usual
	}
	return name
}

// allowanceLabel says a figure of an allowance: the allowance's own words, with
// which piece, which of its terms, and which end of a sample it is. What is no
// allowance keeps its path.
func allowanceLabel(n reckon.Node) string {
	at := strings.Index(n.ID, "allowances.")
	if at < 0 {
		return n.ID
	}
	id, after := n.ID[at:], ""
	for suffix, words := range map[string]string{".before": ", sample before", ".after": ", sample after"} {
		if rest, ok := strings.CutSuffix(id, suffix); ok {
			id, after = rest, words
		}
	}
	key, _, many := strings.Cut(id, "[")
	words, ok := nodeWords[key]
	if !ok {
		return n.ID
	}
	if many {
		words += ", term {n}"
	}
	switch {
	case strings.HasPrefix(n.ID, "pieces["):
		words = "{piece}, " + words
	case strings.HasPrefix(n.ID, "second-beam."):
		words = "second beam, " + words
	}
	return words + after
}

// Working gives the lines of a node's working: the formula, or where a written
// or starting figure comes from; the state; the source.
func (u Units) Working(n reckon.Node) []string {
	var out []string
	switch {
	case n.Formula != nil && n.Formula.Op != reckon.Leaf:
		out = append(out, u.Formula(n)+" = "+u.Exact(n.Figure))
	case n.Formula != nil:
		out = append(out, "= "+u.Exact(n.Figure))
	case n.Origin == reckon.Default:
		out = append(out, "default "+u.Exact(n.Figure)+", usually "+u.span(n))
	case n.Origin == reckon.AsBuilt:
		out = append(out, "as built: "+n.Typed)
	case n.Origin == reckon.Found:
		out = append(out, "found: the most, in steps read at the bench, that what is given is enough for")
	default:
		out = append(out, "as written: "+n.Typed)
	}
	if s := n.State.String(); s != "" {
		out = append(out, "state: "+s)
	}
	if cited(n) {
		out = append(out, "source: "+n.Source)
	}
	return out
}

// cited reports whether a node has a source beyond the terms themselves.
func cited(n reckon.Node) bool { return n.Source != "definition" && n.Source != "given" }

// sources lists every source that the reckoning cites, once.
func (p *pager) sources() []string {
	var out []string
	seen := map[string]bool{}
	for _, n := range p.r.Nodes {
		if cited(n) && !seen[n.Source] {
			seen[n.Source] = true
			out = append(out, n.Source+": "+reckon.SourceText(n.Source))
		}
	}
	return out
}

// span gives the range of a default.
func (u Units) span(n reckon.Node) string {
	low, high := n.Figure, n.Figure
	low.Is, high.Is = n.Low, n.High
	return u.Exact(low) + " to " + u.Exact(high)
}

// rest holds the figures that the other sections leave out.
func (p *pager) rest() Section {
	s := Section{ID: "rest", Title: "Also reckoned"}
	for _, n := range p.r.Nodes {
		if !p.used[n.ID] {
			s.Lines = append(s.Lines, p.line(n))
		}
	}
	return s
}
