package sheet

import (
	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
	"sley/internal/face/present"
)

// comesTo closes the handout and the worksheet: the figures to take to the loom,
// with the lines that they stand on; on the worksheet without the figures.
func (d *desk) comesTo(c present.Course, told bool) []block {
	steps := map[string]present.Step{}
	for _, s := range c.Stages {
		for _, step := range s.Steps {
			step.Form = formOf(s, step)
			steps[step.ID] = step
		}
	}
	var out []block
	for _, l := range present.Glance(d.r, d.u) {
		if step, ok := steps[l.ID]; ok {
			out = append(out, d.result(step, l, told))
		}
	}
	return append([]block{nearer(d.heading(wordComesTo))}, together(out)...)
}

// formOf is what a figure is called away from its stage, for any plan.
func formOf(s present.Stage, step present.Step) string {
	letter := ""
	if step.Owner > 0 {
		letter = " " + present.Letter(step.Owner)
	}
	switch s.Each {
	case present.EachYarn:
		return wordTheYarn + letter + ", " + step.Form
	case present.EachPiece:
		return wordPiece + letter + ", " + step.Form
	}
	return step.Form + letter
}

// Measures of the closing figures in mm.
const (
	resultHigh  = 6.4
	resultBlank = 44.0
)

// result is one of them; key figures are larger than the rest.
func (d *desk) result(s present.Step, l present.Line, told bool) block {
	end, text, value := figureEnd*d.width(), l.Label, letter.FractionText(l.Value)
	if !told {
		text = s.Form
	}
	lines := body.wrap(text, end-max(chief.wide(value), resultBlank)-2)
	high := resultHigh + float64(len(lines)-1)*body.lead
	note := filled(wordOnLine, "{n}", s.Number)
	return block{high: high, draw: func(x, y float64) []scene.Item {
		last := y + high - body.lead
		items := append(stacked(body, x, y+resultHigh-body.lead, lines), level(small, body, x+d.width(), last, note))
		base := body.base(last)
		if !told {
			return append(items, scene.Line{X1: x + end - resultBlank, Y1: base + 0.8, X2: x + end, Y2: base + 0.8, Pen: rule},
				unitAt(x+end+2, last, s.Unit))
		}
		from := x + body.wide(lines[len(lines)-1]) + 2
		return append(items, scene.Leader(from, x+end-chief.wide(value)-2, base), level(chief, body, x+end, last, value))
	}}
}

// chief is the key figures of the handout.
var chief = style{bold, 14, 6.4}

// unitAt is the unit that a figure is to be written in, beside its line.
func unitAt(x, y float64, unit string) scene.Item {
	t := small.at(x, y, unit)
	t.Y = body.base(y)
	return t
}
