package sheet

import (
	"strings"

	"sley/internal/app"
	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
	"sley/internal/face/present"
)

// finishing is the steps after the last pick, each with a box to tick, and then the
// sizes planned beside lines for those measured, with what is folded, hemmed and left
// for fringe.
func (d *desk) finishing() {
	blocks := d.steps()
	for i := range d.r.Plan.Pieces {
		blocks = append(blocks, d.finishingOf(i)...)
	}
	d.flow(titleFinishing, append(blocks, d.room(wordWashing, 4)...))
}

// steps are the steps in their order. A caution stands where it applies first.
func (d *desk) steps() []block {
	shape := present.FinishingJSONOf(app.FinishingOf(d.r), d.u)
	said := map[string]bool{}
	var out []block
	for i, s := range shape.Steps {
		var cares []string
		for _, c := range s.Cautions {
			if !said[c] {
				said[c] = true
				cares = append(cares, c)
			}
		}
		out = append(out, d.step(i+1, s, cares))
	}
	return append(out, d.text(small, shape.Cites)...)
}

// stepIn is how far the words of a step stand right of its box, in mm.
const stepIn = box + afterBox + 8

// step is one step in one piece: box, number and what to do, and below it how.
func (d *desk) step(n int, s present.StepJSON, cares []string) block {
	wide := d.width() - stepIn
	how := small.wrap(strings.Join(append([]string{s.How}, s.Notes...), " "), wide)
	figures := label.wrap(letter.FractionText(stepFigures(s)), wide)
	high := strong.lead + float64(len(how)+len(figures))*small.lead
	var care []string
	for _, c := range cares {
		care = append(care, small.wrap(wordCare+": "+c, wide-careIn)...)
	}
	careHigh := float64(len(care)) * small.lead
	if len(care) > 0 {
		careHigh += 1
	}
	return block{high: high + careHigh, gap: 2.4, draw: func(x, y float64) []scene.Item {
		items := []scene.Item{
			scene.TickBox(x, y+(strong.lead+box)/2, box),
			strong.ending(x+stepIn-2, y, count(n)), strong.at(x+stepIn, y, s.Says),
		}
		items = append(items, stacked(small, x+stepIn, y+strong.lead, how)...)
		items = append(items, stacked(label, x+stepIn, y+strong.lead+float64(len(how))*small.lead, figures)...)
		if len(care) == 0 {
			return items
		}
		at := y + high + 1
		items = append(items, scene.Line{X1: x + stepIn + 0.6, Y1: at + 0.4, X2: x + stepIn + 0.6, Y2: at + careHigh - 1, Pen: scene.Solid(1.2)})
		return append(items, stacked(small, x+stepIn+careIn, at, care)...)
	}}
}

// careIn is how far the words of a caution stand right of its stroke.
const careIn = 3.5

// stepFigures joins the figures of a step; those of hems and fringes stand below.
func stepFigures(s present.StepJSON) string {
	var out []string
	for _, f := range s.Figures {
		if !strings.HasPrefix(f.ID, "pieces[") && f.ID != "ends.bundles" {
			out = append(out, f.Says+" "+firm.Replace(f.Value))
		}
	}
	return between(out...)
}

func (d *desk) finishingOf(i int) []block {
	name, id := d.pieceName(i), pieceID(i)
	out := []block{d.heading(filled(wordSizes, "{piece}", name))}
	columns := []column{{wordSize, 5, false}, {wordPlanned, 3, true}, {wordMeasure, 3, false}, {wordMeasure, 3, false}, {wordMeasure, 3, false}}
	var rows [][]cell
	for _, l := range d.linesIn(name+", ",
		id+"on-loom", id+"relaxed", id+"comes-out", "width.fell", "width.relaxed", "width.finished", "width.opened", id+"seamed-width") {
		rows = append(rows, []cell{words(l.Label), said(l.Value), blank, blank, blank})
	}
	out = append(out, d.table(columns, rows)...)
	hems := d.figures(d.linesIn(name+", ", ends(id)...))
	if len(hems) == 0 {
		return out
	}
	return append(append(out, d.heading(wordHemming)), hems...)
}

// ends names the nodes of both ends of a piece.
func ends(id string) []string {
	var out []string
	for _, end := range []string{"first.", "last."} {
		for _, part := range strings.Fields("hem turn-in fold fringe-cut twist knot fringe") {
			out = append(out, id+end+part)
		}
	}
	return append(out, "ends.bundles")
}
