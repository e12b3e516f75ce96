package sheet

import (
	"slices"

	"sley/internal/app"
	"sley/internal/engine/draw/board"
	"sley/internal/engine/draw/drafting"
	"sley/internal/engine/draw/scene"
	"sley/internal/engine/dress"
	"sley/internal/engine/reckon"
	"sley/internal/face/present"
	"sley/internal/trade/draft"
)

// PictureNames lists what can be drawn by itself: the draft as handbooks print it, the
// warping board with the way over it, the stripes to scale, the first measuring tape.
func PictureNames() []string { return []string{"draft", "board", "ribbon", "tape"} }

// The most of a draft that is drawn by itself.
const (
	mostEndsDrawn  = 60
	mostPicksDrawn = 60
)

// PictureOf draws something of a document of the book by itself.
func PictureOf(p *app.Pictured, of string) (scene.Document, bool) {
	switch {
	case p.Draft != nil && of == "draft":
		return PictureDraft(p.Draft.Draft)
	case p.Result == nil:
		return scene.Document{}, false
	}
	return Picture(of, p.Result, present.UnitsOf(p.Result.Plan))
}

// Picture draws something of a reckoned warp by itself, as one page of its own size. Of a
// plan that is not reckoned there is the board alone. It reports false where there is
// nothing to draw.
func Picture(of string, r *reckon.Result, u present.Units) (scene.Document, bool) {
	if r == nil || !slices.Contains(PictureNames(), of) {
		return scene.Document{}, false
	}
	d := &desk{r: r, u: u, press: press{size: scene.A4, plan: facts{name: present.Title(r.Plan)}}}
	if of == "draft" {
		unit, _, ok := r.Cycles()
		if !ok {
			return scene.Document{}, false
		}
		return PictureDraft(unit)
	}
	var page scene.Page
	switch of {
	case "board":
		page = d.boardAlone()
	case "ribbon":
		page = d.alone(d.warpAcross())
	case "tape":
		if pages := d.tapes(1, 1); len(pages) > 0 {
			page = pages[0]
		}
	}
	return scene.Document{Title: d.plan.name, Subject: wordSubject, Pages: []scene.Page{page}}, len(page.Items) > 0
}

// PictureDraft draws a draft as handbooks print it, twice both ways where it is small. Of
// a large one the first ends and picks are drawn, which its heading says.
func PictureDraft(d *draft.Draft) (scene.Document, bool) {
	if d.Ends() == 0 || d.Picks() == 0 || d.Check().Failed() {
		return scene.Document{}, false
	}
	shown := d.RepeatEnds(twice(d.Ends())).RepeatPicks(twice(d.Picks())).First(mostEndsDrawn, mostPicksDrawn)
	marks := drafting.Marks{}
	if shown.Ends() > d.Ends() || shown.Picks() > d.Picks() {
		marks.Repeat = drafting.Part{Picks: d.Picks(), Ends: d.Ends()}
	}
	words := draftWords(shown)
	words.Heading = ""
	if shown.Ends() < d.Ends() || shown.Picks() < d.Picks() {
		words.Heading = filled(wordFirstOf, "{ends}", count(shown.Ends()), "{of}", count(d.Ends()), "{picks}", count(shown.Picks()), "{all}", count(d.Picks()))
	}
	page, ok := drafting.Draw(shown, drafting.Look{}, marks, words)
	return scene.Document{Title: draftName(d), Subject: wordDraftSubject, Pages: []scene.Page{page}}, ok
}

// boardAlone is the board, with the way over it where the warp was reckoned.
func (d *desk) boardAlone() scene.Page {
	w := &d.r.Plan.Winding
	if _, ok := d.r.Node("winding.turns"); ok {
		return d.alone(d.onMill())
	}
	if _, _, ok := d.boardAndWay(); ok {
		return d.alone(d.overBoard())
	}
	if !w.UsualBoard && len(w.Pegs) == 0 {
		return scene.Page{}
	}
	b := d.boardOf()
	words := board.Words{Wide: d.apart(b, acrossOf), High: d.apart(b, downOf)}
	return d.alone([]block{{high: boardHigh, draw: func(x, y float64) []scene.Item {
		box := scene.Box{X: x, Y: y, Width: d.width(), Height: boardHigh}
		return []scene.Item{board.Draw(b, dress.Path{}, nil, box, words)}
	}}})
}

// edge is the white around what stands alone.
const edge = 3.0

// alone sets blocks on a page that is as large as they are.
func (d *desk) alone(blocks []block) scene.Page {
	page := scene.Page{Width: d.width() + 2*edge}
	y := edge
	for i, b := range blocks {
		if i > 0 {
			y += b.gap
		}
		if b.draw != nil {
			page.Items = append(page.Items, b.draw(edge, y)...)
		}
		y += b.high
	}
	page.Height = y + edge
	return page
}
