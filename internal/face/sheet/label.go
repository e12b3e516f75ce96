package sheet

import (
	"strings"

	"sley/internal/app"
	"sley/internal/face/present"
)

// fibres are the letters of a label's text.
var fibres = style{serif, 24, 10.4}

func (d *desk) hasLabel() bool {
	label, _ := app.LabelOf(d.r)
	return len(label.Labels) > 0
}

// label is the text of a label by each set of rules, fibre by fibre, then the care, and
// how the shares were come by.
func (d *desk) label() {
	of, _ := app.LabelOf(d.r)
	shape := present.LabelJSONOf(of, d.u)
	blocks := d.text(body, shape.Check)
	for _, form := range shape.Forms {
		blocks = append(blocks, d.form(form)...)
	}
	blocks = append(blocks, d.cared(shape)...)
	blocks = append(blocks, d.inCloth(shape)...)
	d.flow(titleLabel, append(blocks, d.text(small, strings.Join(shape.Basis, " "))...))
}

func (d *desk) form(f present.LabelFormJSON) []block {
	out := []block{d.heading(f.Says)}
	for i, line := range f.Lines {
		lines := d.text(fibres, line)
		if i > 0 {
			lines[0].gap = 0
		}
		out = append(out, lines...)
	}
	notes := between(f.Rules, strings.Join(f.Notes, " "))
	return together(append(out, d.text(small, notes)...))
}

func (d *desk) cared(shape present.LabelJSON) []block {
	if len(shape.Care) == 0 {
		return nil
	}
	out := []block{d.heading(wordCareOf)}
	for i, c := range shape.Care {
		lines := d.text(body, present.Cared(c))
		if i > 0 {
			lines[0].gap = 0
		}
		out = append(out, lines...)
	}
	return together(append(out, d.text(small, shape.Cites)...))
}

// inCloth is what of each yarn is in the cloth, and the shares before they are rounded.
func (d *desk) inCloth(shape present.LabelJSON) []block {
	var yarns, shares [][]cell
	for _, y := range shape.Yarns {
		yarns = append(yarns, []cell{words(yarnName(y.Yarn)), words(y.Fibre), say(y.Warp), say(y.Weft), said(y.Weight)})
	}
	for _, s := range shape.Shares {
		shares = append(shares, []cell{words(s.Fibre), say(s.Dry), say(s.Allowance), said(s.Label)})
	}
	weighed := []column{{wordInCloth, 4, false}, {wordFibre, 4, false}, {wordTheWarp, 2, true}, {wordTheWeft, 2, true}, {wordWeight, 2.4, true}}
	of := []column{{wordFibre, 5, false}, {wordDryShare, 3, true}, {wordAllowance, 3, true}, {wordLabelShare, 3, true}}
	out := d.table(weighed, yarns)
	if len(shares) > 1 {
		out = append(out, d.table(of, shares)...)
	}
	return out
}
