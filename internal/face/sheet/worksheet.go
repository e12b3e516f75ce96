package sheet

import (
	"cmp"
	"slices"
	"strings"

	"sley/internal/engine/draw/scene"
	"sley/internal/face/present"
)

// Measures of the worksheet in mm: how wide a line to write on is where there is
// one and where there are several beside each other, how many there are at most,
// and the column of units.
const (
	oneBlank   = 36.0
	eachBlank  = 24.0
	mostBlanks = 3
	unitWide   = 13.0
	blankGap   = 2.0
)

// Lines for the figures of a list: how many, and how many abreast.
const (
	listBlanks  = 8
	listAbreast = 4
)

// worksheet is the handout for a piece of one's own: the same lines with the same
// numbers, and nothing on them.
func (d *desk) worksheet() {
	c := present.CourseOf(d.r, d.u)
	f := form{left: numbersWide(c), wide: d.width()}
	blocks := d.text(small, wordByHand)
	title := ""
	for _, q := range questions(c) {
		if q.stage.Title != title {
			title = q.stage.Title
			blocks = append(blocks, d.askStage(q)...)
		}
		blocks = append(blocks, f.ask(q))
	}
	d.flow(titleWorksheet, append(blocks, d.comesTo(c, false)...))
}

// question is one numbered line of the worksheet: what the steps with that number
// ask alike, and the ways in which they are worked out.
type question struct {
	present.Step
	stage present.Stage
	list  bool // it is asked along a list
	ways  []string
}

// questions are the lines of the worksheet in the order of their numbers.
func questions(c present.Course) []question {
	at, out := map[int]int{}, []question{}
	for _, s := range c.Stages {
		for _, step := range s.Steps {
			i, ok := at[step.Line]
			if !ok {
				at[step.Line] = len(out)
				out = append(out, question{Step: step, stage: s})
				i = len(out) - 1
			}
			q := &out[i]
			q.list = q.list || step.Place > 0
			q.add(step)
		}
	}
	slices.SortStableFunc(out, func(a, b question) int { return cmp.Compare(a.Line, b.Line) })
	return out
}

// add takes a step to a question: along a list every way of working it out, else
// the longest.
func (q *question) add(s present.Step) {
	way := strings.TrimSpace(s.Way + " = " + s.Ask)
	switch {
	case s.Ask == "" || slices.Contains(q.ways, way):
	case q.list || len(q.ways) == 0:
		q.ways = append(q.ways, way)
	case len(way) > len(q.ways[0]):
		q.ways[0] = way
	}
}

// askStage is the heading of a stage, with lines for the names of those it is
// asked of.
func (d *desk) askStage(q question) []block {
	out := []block{nearer(d.heading(q.stage.Title))}
	if q.stage.Each == present.Once {
		return out
	}
	n := min(max(q.Of, 1), mostBlanks)
	each := d.width() / float64(n)
	return append(out, block{high: pencilHigh, keep: true, draw: func(x, y float64) []scene.Item {
		var items []scene.Item
		for i := range n {
			text := wordName
			if n > 1 {
				text = present.Letter(i+1) + ", " + wordName
			}
			left, at := x+float64(i)*each, y+pencilHigh-body.lead
			base := body.base(at) + 0.8
			items = append(items, small.at(left, at, text),
				scene.Line{X1: left + small.wide(text) + blankGap, Y1: base, X2: left + each - blankGap, Y2: base, Pen: rule})
		}
		return items
	}})
}

// form is where things stand on a line of the worksheet.
type form struct{ left, wide float64 }

// ask is one line: number, label, how it is worked out, and where to write.
func (f form) ask(q question) block {
	places := f.places(q)
	room := f.wide - f.left - blankGap
	if len(places) > 0 {
		room = places[0].left - f.left - 2*blankGap
	}
	words := f.wording(q, room)
	high := max(words.high, pencilHigh)
	if q.list {
		high = words.high + pencilHigh*listBlanks/listAbreast + rowGap
	}
	return block{high: high, gap: rowGap, draw: func(x, y float64) []scene.Item {
		if q.list {
			items := append(words.draw(x, y), level(small, named, x+small.wide(count(q.Line)), y, count(q.Line)))
			return append(items, f.along(x, y+words.high, q.Unit)...)
		}
		top := y + high - words.high
		items := append(words.draw(x, top), level(small, named, x+small.wide(count(q.Line)), top, count(q.Line)))
		items = append(items, unitAt(x+f.wide-unitWide, y+high-body.lead, q.Unit))
		for _, p := range places {
			items = append(items, p.draw(x, y+high)...)
		}
		return items
	}}
}

// wording is the label with its remarks, and the formula in words below it.
func (f form) wording(q question, room float64) block {
	lines, remark := named.wrap(q.Form, room), q.remark()
	last := lines[len(lines)-1]
	beside := named.wide(last)+blankGap+small.wide(remark) <= room
	var below []string
	if !beside {
		below = small.wrap(remark, room)
	}
	var how []string
	for _, way := range q.ways {
		how = append(how, aloud.wrap(tied(way), room)...)
	}
	high := float64(len(lines))*named.lead + float64(len(below))*small.lead + float64(len(how))*aloud.lead
	return block{high: high, draw: func(x, y float64) []scene.Item {
		left, at := x+f.left, y+float64(len(lines)-1)*named.lead
		items := stacked(named, left, y, lines)
		if beside && remark != "" {
			items = append(items, notesAt(named, small, left+named.wide(last)+blankGap, at, []string{remark})...)
		}
		items = append(items, stacked(small, left, at+named.lead, below)...)
		return append(items, stacked(aloud, left, at+named.lead+float64(len(below))*small.lead, how)...)
	}}
}

// remark is the state that a figure is in, and what it usually is.
func (q question) remark() string {
	switch {
	case q.Usual == "":
		return q.State
	case q.State == "":
		return filled(wordUsually, "{range}", q.Usual)
	}
	return q.State + "; " + filled(wordUsually, "{range}", q.Usual)
}

// place is a line to write on, with a letter before it where there are several.
type place struct {
	left, right float64
	letter      string
}

// places are the lines of a question, the first at the left.
func (f form) places(q question) []place {
	right := f.wide - unitWide - blankGap
	switch {
	case q.list:
		return nil
	case q.Of < 2:
		return []place{{left: right - oneBlank, right: right}}
	}
	n := min(q.Of, mostBlanks)
	out := make([]place, n)
	for i := range out {
		end := right - float64(n-1-i)*(eachBlank+blankGap)
		out[i] = place{end - eachBlank, end, present.Letter(i + 1)}
	}
	return out
}

// draw draws the line so that what is written on it ends at y.
func (p place) draw(x, y float64) []scene.Item {
	from := x + p.left
	var items []scene.Item
	if p.letter != "" {
		items = append(items, small.at(from, y-small.lead, p.letter))
		from += small.wide("M") + 1
	}
	return append(items, scene.Line{X1: from, Y1: y, X2: x + p.right, Y2: y, Pen: rule})
}

// along is the numbered lines of a list.
func (f form) along(x, y float64, unit string) []scene.Item {
	each := (f.wide - f.left - unitWide) / listAbreast
	items := []scene.Item{unitAt(x+f.wide-unitWide, y+pencilHigh-body.lead, unit)}
	for i := range listBlanks {
		p := place{left: f.left + float64(i%listAbreast)*each, letter: count(i + 1)}
		p.right = p.left + each - 2*blankGap
		items = append(items, p.draw(x, y+float64(i/listAbreast+1)*pencilHigh)...)
	}
	return items
}
