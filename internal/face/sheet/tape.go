package sheet

import (
	"slices"

	"sley/internal/engine/draw/scene"
	"sley/internal/engine/draw/tape"
	"sley/internal/engine/reckon"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// tape is the measuring tapes at true scale, which package tape lays out on pages
// of their own; they are made when the pages of all sheets are counted.
func (d *desk) tape() {
	n := len(d.tapes(0, 0))
	first := len(d.pages) + 1
	var made []scene.Page
	for i := range n {
		d.pages = append(d.pages, leaf{whole: func(of int) scene.Page {
			if made == nil {
				made = d.tapes(first, of)
			}
			return made[i]
		}})
	}
}

// hasTape reports whether any piece can be measured on the loom.
func (d *desk) hasTape() bool { return len(d.tapes(0, 0)) > 0 }

// tapes lays the strips out, the first on that page of how many.
func (d *desk) tapes(first, of int) []scene.Page {
	pages, _ := tape.Pages(d.strips(), d.size, tape.Words{
		Heading: filled(wordTapeOf, "{name}", d.plan.name),
		Page: func(page, _ int) string {
			return filled(wordPage, "{n}", count(first+page-1), "{of}", count(of))
		},
		Note:        d.tapeNote(),
		Running:     func(from, to float64) string { return d.millimetres(from) + " – " + d.millimetres(to) },
		Centimetres: "cm", Inches: "in", BarMetric: "100 mm", BarIn: "4 in",
	})
	return pages
}

// tapeNote says how the strips are joined and read, and what stands at the foot of
// the other sheets.
func (d *desk) tapeNote() string {
	read := wordTapeTight
	if d.r.Plan.Tape == warp.Slackened {
		read = wordTapeSlack
	}
	return wordTapeCut + " " + read + "\n" + wordTapeDated + " " + d.dated() + ", " + filled(wordDefaults, "{version}", d.plan.defaults)
}

// strips is a strip for each kind of piece that is known on the loom.
func (d *desk) strips() []tape.Strip {
	var out []tape.Strip
	for i := range d.r.Plan.Pieces {
		long, ok := d.r.Node(pieceID(i) + "on-loom")
		s := tape.Strip{Title: d.pieceName(i), Length: inMM(long.Figure), Marks: d.tapeMarks(i)}
		if ok && len(s.Marks) > 0 {
			out = append(out, s)
		}
	}
	return out
}

// tapeMarks is the marks of a kind of piece; those where cloth begins, ends or is
// folded are strong.
func (d *desk) tapeMarks(i int) []tape.Mark {
	strong := []string{reckon.MarkStart, reckon.MarkFold, reckon.MarkFarFold, reckon.MarkEnd}
	var out []tape.Mark
	for _, n := range d.listed(pieceID(i) + "marks[") {
		label := d.linesIn(d.pieceName(i)+", ", n.ID)[0].Label
		out = append(out, tape.Mark{At: inMM(n.Figure), Label: label, Strong: slices.Contains(strong, n.About.Mark)})
	}
	return out
}

// inMM is a length for drawing.
func inMM(f reckon.Figure) float64 { return f.Is.Div(qty.Millimetre.Rat()).Float() }

// millimetres is a length on the tape, as read at the bench.
func (d *desk) millimetres(mm float64) string {
	is := qty.Int(int64(mm)).Mul(qty.Millimetre.Rat())
	return say(d.u.Bench(reckon.Node{Figure: reckon.Figure{Is: is, Kind: reckon.Length}})).text
}
