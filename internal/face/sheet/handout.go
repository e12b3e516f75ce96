package sheet

import (
	"regexp"
	"strings"

	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
	"sley/internal/face/present"
)

// Measures of the handout in mm: the column for working by hand, what stands
// between it and the figures, and what a row keeps free for a pencil.
const (
	byHandWide = 34.0
	byHandGap  = 4.0
	pencilHigh = 7.6
	rowGap     = 0.9
)

// The formulas of the handout, with figures and in words, and its labels: set closer
// than on the other sheets.
var (
	worked = style{formula.font, 11, 5}
	aloud  = style{aside.font, 11, 5}
	named  = style{sans, 12, 5.8}
)

// handout is where things stand in a row of the handout: the number, the words
// from left on, the figure that ends at end, the line by hand from hand on.
type handout struct {
	left, end, hand, wide float64
	head                  block
}

func (d *desk) handoutRows(c present.Course) handout {
	h := handout{left: numbersWide(c), wide: d.width(), hand: d.width() - byHandWide}
	h.end = h.hand - byHandGap
	h.head = block{high: label.lead + 1, gap: 3, keep: true, draw: func(x, y float64) []scene.Item {
		at := y + label.lead + 1
		return []scene.Item{
			label.at(x, y, wordLine), label.ending(x+h.end, y, wordFigure), label.at(x+h.hand, y, wordByPencil),
			scene.Line{X1: x, Y1: at, X2: x + h.wide, Y2: at, Pen: rule},
		}
	}}
	return h
}

// numbersWide is the width of the column of numbers.
func numbersWide(c present.Course) float64 {
	widest := label.wide(wordLine)
	for _, s := range c.Stages {
		for _, step := range s.Steps {
			widest = max(widest, small.wide(step.Number))
		}
	}
	return widest + 3
}

// under has the heads of the columns drawn again where a block begins a page.
func (h handout) under(b block) block {
	b.head = &h.head
	return b
}

// row is one figure: number, label, what small letters say of it, the figure; its
// working below, and where it is worked out a line for a pencil.
func (h handout) row(s present.Step) block {
	top, lines := h.labelled(s), h.working(s)
	if s.Words == "" && len(lines) == 1 {
		if short, ok := h.oneLine(s, lines[0]); ok {
			top, lines = short, nil
		}
	}
	high := top.high + float64(len(lines))*worked.lead
	if s.Derived {
		high = max(high, pencilHigh)
	}
	return block{high: high, gap: rowGap, draw: func(x, y float64) []scene.Item {
		from := y + high - top.high - float64(len(lines))*worked.lead
		items := top.draw(x, from)
		for i, line := range lines {
			items = append(items, line.set(x+h.left, from+top.high+float64(i)*worked.lead)...)
		}
		if s.Derived {
			items = append(items, scene.Line{X1: x + h.hand, Y1: y + high, X2: x + h.wide, Y2: y + high, Pen: rule})
		}
		return items
	}}
}

// apart is what stands between the parts of a line, in mm.
const apart = 2.0

// labelled is the number, the label with its remarks, and the figure.
func (h handout) labelled(s present.Step) block {
	value := letter.FractionText(s.Value)
	room := h.end - strong.wide(value) - 2*apart - h.left
	lines, remark := named.wrap(s.Label, room), remarks(s)
	last := named.wide(lines[len(lines)-1])
	var beside, below []string
	switch {
	case remark == "":
	case last+apart+small.wide(remark) <= room:
		beside = []string{remark}
	default:
		below = small.wrap(remark, h.end-h.left)
	}
	high := float64(len(lines))*named.lead + float64(len(below))*small.lead
	return block{high: high, draw: func(x, y float64) []scene.Item {
		left, at := x+h.left, y+float64(len(lines)-1)*named.lead
		items := append(stacked(named, left, y, lines), level(small, named, x+small.wide(s.Number), y, s.Number))
		items = append(items, notesAt(named, small, left+last+apart, at, beside)...)
		from := left + last + apart
		for _, text := range beside {
			from += small.wide(text) + apart
		}
		items = append(items, h.leadTo(from, x, at, value)...)
		return append(items, stacked(small, left, at+named.lead, below)...)
	}}
}

// leadTo is the dots from a label to its figure.
func (h handout) leadTo(from, x, y float64, value string) []scene.Item {
	return []scene.Item{
		scene.Leader(from, x+h.end-strong.wide(value)-apart, named.base(y)),
		level(strong, named, x+h.end, y, value),
	}
}

// oneLine is a row whose working goes beside its label.
func (h handout) oneLine(s present.Step, l line) (block, bool) {
	value := letter.FractionText(s.Value)
	remark, from := remarks(s), named.wide(s.Label)+apart
	if remark != "" {
		from += small.wide(remark) + apart
	}
	long := from + l.wide()
	if long+2*apart+strong.wide(value) > h.end-h.left {
		return block{}, false
	}
	return block{high: named.lead, draw: func(x, y float64) []scene.Item {
		left := x + h.left
		items := []scene.Item{named.at(left, y, s.Label), level(small, named, x+small.wide(s.Number), y, s.Number)}
		items = append(items, notesAt(named, small, left+named.wide(s.Label)+apart, y, []string{remark})...)
		items = append(items, l.set(left+from, y+(named.lead-worked.lead)/2)...)
		return append(items, h.leadTo(left+long+apart, x, y, value)...)
	}}, true
}

// tied keeps the number of a line and the first word of its name together.
func tied(text string) string { return reference.ReplaceAllString(text, "[$1\u00a0") }

var reference = regexp.MustCompile(`\[(\d+[A-Z]*(?:\.\d+)?) `)

// remarks say in small letters in which state a figure is, how it is known and
// which source its working has; of a figure that is another's, whose.
func remarks(s present.Step) string {
	var parts []string
	for _, part := range []string{s.State, s.How} {
		if part != "" {
			parts = append(parts, letter.FractionText(part))
		}
	}
	if s.Derived && s.Figures == "" {
		parts = append(parts, tied(s.Words))
	}
	text := strings.Join(parts, "; ")
	if s.Source > 0 {
		text = strings.TrimSpace(text + " " + sourceMark(s.Source))
	}
	return text
}

// line is a line of a working: words, then figures.
type line struct{ words, figures string }

func (l line) wide() float64 { return aloud.wide(l.words) + worked.wide(l.figures) }

func (l line) set(x, y float64) []scene.Item {
	var items []scene.Item
	if l.words != "" {
		items = append(items, aloud.at(x, y, l.words))
	}
	if l.figures != "" {
		items = append(items, worked.at(x+aloud.wide(l.words), y, l.figures))
	}
	return items
}

// working is the formula in words and then with figures, which go on behind the
// words where there is room for them.
func (h handout) working(s present.Step) []line {
	if s.Figures == "" {
		return nil
	}
	var out []line
	room, figures := h.end-h.left, "= "+s.Figures
	for _, text := range aloud.wrap(tied(s.Words), room) {
		if text != "" {
			out = append(out, line{words: text})
		}
	}
	if n := len(out); n > 0 {
		both := line{out[n-1].words, " " + figures}
		if both.wide() <= room {
			out[n-1] = both
			return out
		}
	}
	for _, text := range worked.wrap(figures, room) {
		out = append(out, line{figures: text})
	}
	return out
}
