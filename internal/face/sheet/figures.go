package sheet

import (
	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
	"sley/internal/face/present"
)

// figureEnd is where figures end, as a share of the width; notes stand right of
// it.
const figureEnd = 0.66

// figures is a line for each figure: label, leader dots, the figure, its note.
func (p *press) figures(lines []present.Line) []block {
	return p.figuresIn(body, figured, small, lines)
}

// keyed is the figures a sheet is looked at for, larger, above the others.
func (p *press) keyed(keys, others []present.Line) []block {
	out := p.figuresIn(telling, told, small, keys)
	more := p.figures(others)
	if len(more) > 0 {
		more[0].gap = 0
	}
	return append(out, more...)
}

func (p *press) figuresIn(words, value, note style, lines []present.Line) []block {
	var out []block
	for _, l := range lines {
		out = append(out, p.figure(words, value, note, l))
	}
	if len(out) > 0 {
		out[0].gap = 2
	}
	return bound(out)
}

// figure is one line; a long label or note takes more below it.
func (p *press) figure(words, value, note style, l present.Line) block {
	const apart = 3
	end := figureEnd * p.width()
	is := letter.FractionText(l.Value)
	labels := words.even(l.Label, end-value.wide(is)-2*apart)
	notes := note.wrap(letter.FractionText(l.Note), p.width()-end-apart-1)
	high := float64(len(labels))*words.lead + float64(max(len(notes)-1, 0))*note.lead // notes begin on the last line
	return block{high: high, draw: func(x, y float64) []scene.Item {
		last := y + float64(len(labels)-1)*words.lead
		items := stacked(words, x, y, labels)
		from := x + words.wide(labels[len(labels)-1]) + apart/2.0
		return append(append(items,
			scene.Leader(from, x+end-value.wide(is)-apart/2.0, words.base(last)),
			level(value, words, x+end, last, is)), notesAt(words, note, x+end+apart+1, last, notes)...)
	}}
}

// stacked sets lines one below the other.
func stacked(s style, x, y float64, lines []string) []scene.Item {
	var items []scene.Item
	for i, line := range lines {
		items = append(items, s.at(x, y+float64(i)*s.lead, line))
	}
	return items
}

// level sets a figure on the baseline of the words beside it.
func level(value, words style, x, y float64, text string) scene.Text {
	t := value.ending(x, y, text)
	t.Y = words.base(y)
	return t
}

// notesAt sets a note's first line on the baseline of the figure's.
func notesAt(words, note style, x, y float64, lines []string) []scene.Item {
	var items []scene.Item
	for i, line := range lines {
		t := note.at(x, y, line)
		t.Y = words.base(y) + float64(i)*note.lead
		items = append(items, t)
	}
	return items
}
