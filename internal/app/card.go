package app

import (
	"encoding/json"
	"math/big"
	"strings"

	"golang.org/x/text/collate"
	"golang.org/x/text/language"

	"sley/internal/engine/reckon"
	"sley/internal/engine/structure"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/record"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

// FactsEngine is the number of the engine that finds facts: it grows when what it finds
// of the same document changes, and then all facts are found anew.
const FactsEngine = 2

// sortKey puts names in the order people expect: case and accents last, figures as
// numbers, "warp 9" before "warp 10".
func sortKey(name string) []byte {
	return collate.New(language.Und, collate.Numeric).KeyFromString(&collate.Buffer{}, name)
}

// Card is what a list shows of a document.
type Card struct {
	record.Document
	Units   ListUnits
	Figures []reckon.Node
	Fibre   string      // of a warp: what its main yarn is of, as it was typed
	Woven   int         // of a warp: the pick that was woven last
	Colour  yarn.Colour // of a yarn
	Takes   []Take      // of a warp: what it takes of the yarns of the shelf
	Shed    string      // of a loom, as the trade names it; empty where it is not said
	Reeds   int         // of a loom: how many it has
}

// ListUnits is what the units of a list's figures are chosen by.
type ListUnits struct {
	Metric bool       `json:"metric"`
	Said   warp.Units `json:"said"`
	Bench  qty.Length `json:"bench_nm"`
	Book   warp.Units `json:"-"` // what the book shows where the document says nothing
}

// listed is how the figures of a card are kept.
type listed struct {
	Units   ListUnits      `json:"units"`
	Fibre   string         `json:"fibre,omitempty"`
	Figures []listedFigure `json:"figures"`
	Colour  string         `json:"colour,omitempty"`
	Takes   []listedTake   `json:"takes,omitempty"`
	Shed    string         `json:"shed,omitempty"`
	Reeds   int            `json:"reeds,omitempty"`
}

type listedFigure struct {
	ID       string      `json:"id"`
	Is       string      `json:"is"` // exactly, in the base unit of its kind
	Kind     reckon.Kind `json:"kind"`
	Currency string      `json:"currency,omitempty"`
	Typed    string      `json:"typed,omitempty"`
	Origin   int         `json:"origin,omitempty"`
}

func (l listed) bytes() []byte {
	data, _ := json.Marshal(l) // plain values, which cannot fail
	return data
}

func (l *listed) add(n reckon.Node) {
	l.Figures = append(l.Figures, listedFigure{n.ID, n.Is.String(), n.Kind, n.Currency, n.Typed, int(n.Origin)})
}

// cardOf reads what a list shows of a document.
func cardOf(d record.Document) Card {
	c := Card{Document: d}
	var l listed
	if json.Unmarshal(d.Facts.Figures, &l) != nil {
		return c
	}
	c.Units, c.Fibre = l.Units, l.Fibre
	c.Takes, c.Shed, c.Reeds = takesOf(l.Takes), l.Shed, l.Reeds
	c.Colour, _ = yarn.ParseColour(l.Colour) // none, where none was said
	for _, f := range l.Figures {
		is, ok := new(big.Rat).SetString(f.Is)
		if !ok {
			continue
		}
		n := reckon.Node{ID: f.ID, Figure: reckon.Figure{Is: qty.FromBig(is), Kind: f.Kind, Currency: f.Currency}}
		n.Typed, n.Origin = f.Typed, reckon.Origin(f.Origin)
		c.Figures = append(c.Figures, n)
	}
	return c
}

// card is what a document is listed and found by. stage is where its work stands.
func (b *body) card(kind record.Kind, version int, stage string) record.Card {
	c := record.Card{Name: b.name(kind)}
	c.Sort = sortKey(c.Name)
	c.Facts = record.Facts{Of: version, Engine: FactsEngine, Stage: stage}
	var words []string
	switch kind {
	case record.Warp:
		words = b.warpFacts(&c.Facts)
	case record.Draft:
		words = b.draftFacts(&c.Facts)
	case record.Yarn:
		words = b.yarnFacts(&c.Facts)
	case record.Loom:
		words = b.loomFacts(&c.Facts)
	}
	c.Words = strings.Join(append(words, b.Note), " ")
	return c
}

// warpFigures are the numbers that a list of warps shows: of each row the first that the
// reckoning has.
var warpFigures = [][]string{
	{"warp.wound"},
	{"ends.wound"},
	{"sett.exact", "sett.in-reed", "sett.wanted"},
	{"width.occupied"},
	{"weft.picks"},
}

// warpFacts reckons a warp.
func (b *body) warpFacts(f *record.Facts) []string {
	r := b.reckon()
	f.Errors, f.Warnings = countOf(r.list, problem.Error), countOf(r.list, problem.Warning)
	f.Weave = r.plan.Weave
	l := listed{Takes: b.takes(r.result)}
	if r.result != nil {
		l.list(r.result)
		f.Shafts, f.Ends = r.plan.Shafts(), wholeOf(r.result, "ends.wound")
		f.Picks = wholeOf(r.result, "weft.picks")
	}
	if r.result != nil || len(l.Takes) > 0 {
		f.Figures = l.bytes()
	}
	words := wordsOfPlan(r.plan)
	if f.Stage != record.Done {
		words = append(words, wordsOfTakes(l.Takes)...)
	}
	return words
}

// list takes what a list shows of a reckoned warp.
func (l *listed) list(result *reckon.Result) {
	plan := result.Plan
	l.Units = ListUnits{Metric: reckon.MetricPlan(plan), Said: plan.Units, Bench: plan.Rounding.Bench.Is}
	if y, ok := plan.MainYarn(); ok {
		l.Fibre = y.Composition.Typed
	}
	for _, row := range warpFigures {
		for _, id := range row {
			if n, ok := result.Node(id); ok {
				l.add(n)
				break
			}
		}
	}
}

func wholeOf(result *reckon.Result, id string) int {
	n, ok := result.Node(id)
	if !ok {
		return 0
	}
	return max(0, int(n.Is.Float()))
}

func countOf(list *problem.List, s problem.Severity) int {
	n := 0
	for _, p := range list.All() {
		if p.Severity == s {
			n++
		}
	}
	return n
}

// wordsOfPlan are what a warp is found by, beside its name.
func wordsOfPlan(plan *warp.Plan) []string {
	words := []string{plan.Note, plan.Weave, plan.Wash, plan.Loom.Name}
	for _, p := range plan.Pieces {
		words = append(words, p.Name)
	}
	for _, y := range plan.Yarns {
		words = append(words, y.Name, y.Composition.Typed, y.Count.Typed)
	}
	return words
}

// draftFacts analyses a draft.
func (b *body) draftFacts(f *record.Facts) []string {
	d, list := b.draft()
	f.Errors, f.Warnings = countOf(list, problem.Error), countOf(list, problem.Warning)
	if d == nil {
		return nil
	}
	a := structure.OfDraft(d)
	f.Shafts, f.Treadles, f.Ends, f.Picks = d.Shafts, d.Treadles, d.Ends(), d.Picks()
	for _, way := range []structure.Way{structure.Warp, structure.Weft} {
		for _, face := range []structure.Face{structure.Front, structure.Back} {
			f.LongestFloat = max(f.LongestFloat, a.Floats(way, face).Longest)
		}
	}
	f.Weave = weaveSlugs[a.Name.Kind]
	return []string{strings.ReplaceAll(f.Weave, "-", " "), d.Name, d.Origin}
}

// weaveSlugs are the kinds of weave as a search has them.
var weaveSlugs = map[structure.Kind]string{
	structure.Plain: "plain", structure.WarpRib: "warp-rib", structure.WeftRib: "weft-rib",
	structure.Basket: "basket", structure.Twill: "twill", structure.BrokenTwill: "broken-twill",
	structure.PointTwill: "point-twill", structure.Herringbone: "herringbone", structure.Diamond: "diamond",
	structure.Satin: "satin", structure.IrregularSatin: "irregular-satin", structure.DoubleCloth: "double-cloth",
}

// DraftWeaves lists the weaves that drafts are found by.
func DraftWeaves() []string {
	var out []string
	for _, k := range structure.Kinds() {
		if slug := weaveSlugs[k]; slug != "" {
			out = append(out, slug)
		}
	}
	return out
}

// yarnFacts says what a list shows of a yarn; what is left of it is not in its document.
func (b *body) yarnFacts(f *record.Facts) []string {
	y, list := b.yarn()
	f.Errors, f.Warnings = countOf(list, problem.Error), countOf(list, problem.Warning)
	l := listed{Units: ListUnits{Metric: MetricCount(y.Count.Typed)}, Colour: y.Colour.String()}
	if g := y.Grist(); !g.IsZero() {
		l.add(reckon.Node{ID: "yarns[].grist", Figure: reckon.Figure{Is: g.NGPerNM().Inv(), Kind: reckon.Grist}, Typed: y.Count.Typed})
	}
	f.Figures = l.bytes()
	return []string{y.Count.Typed, y.Composition.Typed, y.Colour.Name}
}

// MetricCount reports whether a count was typed in a metric system.
func MetricCount(typed string) bool {
	return reckon.Metric(typed) || strings.Contains(typed, "tex") || strings.Contains(typed, "Nm")
}

// loomFacts says what a list shows of a loom.
func (b *body) loomFacts(f *record.Facts) []string {
	l, _, list := b.loom()
	f.Errors, f.Warnings = countOf(list, problem.Error), countOf(list, problem.Warning)
	f.Shafts, f.Treadles = l.Shafts, l.Treadles
	shown := listed{
		Units: ListUnits{Metric: l.Width.Typed == "" || reckon.Metric(l.Width.Typed)},
		Shed:  l.Shed.String(), Reeds: len(l.Reeds),
	}
	if l.Width.Given() {
		width := reckon.Figure{Is: l.Width.Is.Rat(), Kind: reckon.Length}
		shown.add(reckon.Node{ID: "loom.width", Figure: width, Typed: l.Width.Typed, Origin: reckon.Given})
	}
	f.Figures = shown.bytes()
	return []string{l.Shed.String()}
}

// sizeForBackground is how many crossings a draft may have for its facts to be found
// while the weaver waits: the rest is found in the background.
const sizeForBackground = 1 << 20

// waits reports whether the facts of a draft are left for later.
func (b *body) waits() bool {
	d, _ := b.draft()
	return d != nil && d.Ends()*d.Picks() > sizeForBackground
}
