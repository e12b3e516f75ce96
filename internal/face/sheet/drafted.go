package sheet

import (
	"fmt"
	"slices"
	"strings"

	"sley/internal/engine/draw/drafting"
	"sley/internal/engine/draw/scene"
	"sley/internal/trade/draft"
)

// DraftLook is how a draft is drawn by itself. The zero look is as handbooks print
// it: threading above, tie-up on the right, cells filled where the warp is on top.
type DraftLook struct {
	Paper                   string // one of PaperNames; empty: one picture of its own size
	Cells                   string // one of CellNames; empty: filled
	Alone, Back             bool   // the drawdown alone; its back
	Below, TieUpLeft        bool
	FromRight, Upwards      bool
	Numbers, LiftPlan, Grey bool
	ToScale                 bool
	RepeatEnds, RepeatPicks int              // of the weave, to be framed
	Floats                  []drafting.Float // to be struck through
}

// CellNames lists the ways of drawing crossings.
func CellNames() []string { return []string{"filled", "colours", "both"} }

// Switches are what of a look is set or not, by the names that commands and addresses have
// for it.
func (l *DraftLook) Switches() map[string]*bool {
	return map[string]*bool{
		"drawdown": &l.Alone, "back": &l.Back, "below": &l.Below, "tie-up-left": &l.TieUpLeft,
		"from-right": &l.FromRight, "upwards": &l.Upwards, "numbers": &l.Numbers, "lift-plan": &l.LiftPlan,
		"grey": &l.Grey, "to-scale": &l.ToScale,
	}
}

// Check says what is wrong with a look.
func (l DraftLook) Check() error {
	if l.Paper != "" && !slices.Contains(PaperNames(), l.Paper) {
		return fmt.Errorf("--paper: %q is not known; the papers are %s", l.Paper, strings.Join(PaperNames(), ", "))
	}
	if l.Cells != "" && !slices.Contains(CellNames(), l.Cells) {
		return fmt.Errorf("--cells: %q is not known; cells are drawn %s", l.Cells, strings.Join(CellNames(), ", "))
	}
	if l.Back && !l.Alone {
		return fmt.Errorf("--back: a whole draft shows the front; say --drawdown as well")
	}
	return nil
}

func (l DraftLook) drafting() drafting.Look {
	look := drafting.Look{
		Alone: l.Alone, Below: l.Below, TieUpLeft: l.TieUpLeft, FromRight: l.FromRight, Upwards: l.Upwards,
		Numbers: l.Numbers, LiftPlan: l.LiftPlan, Grey: l.Grey, ToScale: l.ToScale,
		Cells: drafting.Cells(max(slices.Index(CellNames(), l.Cells), 0)),
	}
	look.Bars = look.Cells != drafting.Filled && !l.Alone
	if l.Back {
		look.Face = drafting.Back
	}
	return look
}

// DrawDraft draws a draft on paper, or as one picture. It reports false where the
// draft has no crossings, or more than can be pictured.
func DrawDraft(d *draft.Draft, l DraftLook) (scene.Document, bool) {
	marks := drafting.Marks{Floats: l.Floats}
	if l.RepeatEnds < d.Ends() || l.RepeatPicks < d.Picks() {
		marks.Repeat = drafting.Part{Picks: l.RepeatPicks, Ends: l.RepeatEnds}
	}
	doc := scene.Document{Title: draftName(d), Subject: wordDraftSubject}
	words := draftWords(d)
	if l.Paper == "" {
		page, ok := drafting.Draw(d, l.drafting(), marks, words)
		doc.Pages = []scene.Page{page}
		return doc, ok
	}
	pages, fit := drafting.Pages(d, l.drafting(), marks, papers[l.Paper], words)
	doc.Pages = pages
	return doc, !fit.Refused
}

func draftName(d *draft.Draft) string {
	if d.Name == "" {
		return wordADraft
	}
	return d.Name
}

// draftWords are the words of a drawn draft.
func draftWords(d *draft.Draft) drafting.Words {
	return drafting.Words{
		Heading: draftName(d),
		Page:    func(page, of int) string { return filled(wordPage, "{n}", count(page), "{of}", count(of)) },
		Ends:    wordEnds, Picks: wordPicksOf, Shafts: wordShafts, Treadles: wordTreadles,
		Filled: wordFilledCell, Raised: wordRaisedMark, Lowered: wordLoweredMark,
		Repeat: wordOneRepeat, Float: wordLongFloat, Behind: wordFloatBehind, Pointed: wordPointedAt,
		Colour: func(i int) string { return colourName(d, i) },
		Part: func(name string, ends, picks [2]int) string {
			return filled(wordPart, "{name}", name, "{from}", count(ends[0]), "{to}", count(ends[1]), "{first}", count(picks[0]), "{last}", count(picks[1]))
		},
		Cloth: wordClothOnly,
	}
}

// colourName is what a colour of the palette is called: its three parts.
func colourName(d *draft.Draft, i int) string {
	if i < 0 || i >= len(d.Palette) {
		return ""
	}
	c := d.Palette[i]
	return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B)
}

// mostShown is how many threads of a plan's draft are drawn on its sheet: a repeat
// or two, no more than can be read.
const mostShown = 40

// hasDrawn reports whether the plan has a draft to draw.
func (d *desk) hasDrawn() bool {
	_, _, ok := d.r.Cycles()
	return ok
}

// drafted is the plan's draft as handbooks print it: what comes again of it, twice
// where there is room, with the first repeat framed.
func (d *desk) drafted() {
	unit, _, ok := d.r.Cycles()
	if !ok {
		return
	}
	shown := unit.RepeatEnds(twice(unit.Ends())).RepeatPicks(twice(unit.Picks()))
	shown.Name = ""
	marks := drafting.Marks{}
	if shown.Ends() > unit.Ends() || shown.Picks() > unit.Picks() {
		marks.Repeat = drafting.Part{Picks: unit.Picks(), Ends: unit.Ends()}
	}
	words := draftWords(shown)
	words.Heading = ""
	blocks := d.facts(wordAsWritten, d.draftFacts())
	page, ok := drafting.Draw(shown, drafting.Look{Cell: d.cellFor(shown)}, marks, words)
	if ok && page.Width <= d.width() && page.Height <= d.bottom()-margin-headHigh-40 {
		blocks = append(blocks, block{high: page.Height, gap: 4, draw: func(x, y float64) []scene.Item {
			return []scene.Item{scene.Group{X: x, Y: y, Items: page.Items}}
		}})
	} else {
		blocks = append(blocks, d.text(body, wordTooLarge)...)
	}
	d.flow(titleDraft, append(blocks, d.ofDraft()...))
}

// twice is how often threads are shown: two times where they are few.
func twice(n int) int {
	if 2*n <= mostShown {
		return 2
	}
	return 1
}

// cellFor is how large cells are so that the draft fits across the page.
func (d *desk) cellFor(shown *draft.Draft) float64 {
	across := shown.Ends() + max(shown.Treadles, shown.Shafts) + 4
	return min(max(d.width()/float64(across+6), drafting.Least), 4)
}

// draftFacts are threading and treadling as they were written.
func (d *desk) draftFacts() [][]cell {
	rows := [][]cell{{words(wordThreadedAs), words(d.r.Plan.Warp.Threading.Text)}, {words(wordTreadledAs), words(d.r.Plan.Drafting.Picked().Text)}}
	if d.r.Plan.Drafting.File != "" {
		rows = append(rows, []cell{words(wordDraftFrom), words(d.r.Plan.Drafting.File)})
	}
	return rows
}
