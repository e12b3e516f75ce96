package sheet

import (
	"strings"

	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
	"sley/internal/engine/reckon"
	"sley/internal/face/present"
)

// indent is how far workings stand in, in mm.
const indent = 8

// class is every figure with its working, and the sources.
func (d *desk) class() {
	blocks := d.text(body, wordWorking)
	page := present.PageOf(d.r, d.u, true)
	for _, s := range page.Sections {
		blocks = append(blocks, d.heading(s.Title))
		for _, l := range s.Lines {
			blocks = append(blocks, d.worked(l)...)
		}
	}
	if len(page.Sources) > 0 {
		blocks = append(blocks, d.heading(wordSources))
	}
	for _, source := range page.Sources {
		blocks = append(blocks, d.text(small, source)...)
	}
	d.flow(titleClass, blocks)
}

// worked is a figure with its working below it, on one page.
func (d *desk) worked(l present.Line) []block {
	out := []block{d.figure(body, strong, small, l)}
	for _, text := range inTwo(l.Working) {
		out = append(out, d.indented(formula, text))
	}
	out[0].gap = 1.5
	return together(out)
}

// inTwo is the lines of a working as two: the formula; the state and the source.
func inTwo(working []string) []string {
	if len(working) < 2 {
		return working
	}
	return []string{working[0], strings.Join(working[1:], "; ")}
}

// indented is a text that stands in.
func (d *desk) indented(s style, text string) block {
	lines := s.wrap(text, d.width()-indent)
	return block{high: float64(len(lines)) * s.lead, draw: func(x, y float64) []scene.Item {
		return stacked(s, x+indent, y, lines)
	}}
}

// worksheet is the same with the figures that are worked out left blank.
func (d *desk) worksheet() {
	blocks := d.text(body, wordByHand)
	for _, s := range present.PageOf(d.r, d.u, true).Sections {
		blocks = append(blocks, d.heading(s.Title))
		for _, l := range s.Lines {
			blocks = append(blocks, d.unworked(l)...)
		}
	}
	d.flow(titleWorksheet, blocks)
}

// unworked is a figure that is known, or a line to write one on above the words of
// its formula.
func (d *desk) unworked(l present.Line) []block {
	n, _ := d.r.Node(l.ID)
	if n.Formula == nil {
		known := d.figure(body, strong, small, l)
		known.gap = 2
		return []block{known}
	}
	out := []block{d.toFill(l.Label)}
	if text := d.u.FormulaWords(d.r, n); n.Formula.Op != reckon.Leaf || n.Formula.Node != "" {
		out = append(out, d.indented(aside, "= "+text))
	}
	return together(out)
}

// toFill is a label with a line to write its figure on.
func (d *desk) toFill(text string) block {
	const line, high = 46, 10.0
	end := figureEnd * d.width()
	labels := body.wrap(text, end-line-3)
	tall := high + float64(len(labels)-1)*body.lead
	return block{high: tall, draw: func(x, y float64) []scene.Item {
		top := y + high - body.lead
		at := body.base(top+float64(len(labels)-1)*body.lead) + 0.8
		items := stacked(body, x, top, labels)
		return append(items, scene.Line{X1: x + end - line, Y1: at, X2: x + end, Y2: at, Pen: rule})
	}}
}

// mostKits is how many kits have slips of their own.
const mostKits = 60

// kits is the yarn for each loom of a class, or the turns on one warp.
func (d *desk) kits() {
	if d.r.Plan.Class.Looms == 0 {
		d.flow(titleKits, d.turns())
		return
	}
	blocks := d.figures(d.lines("class.looms", "warp.wound", "ends.wound", "sett.exact"))
	blocks = append(blocks, d.heading(wordTheKits))
	blocks = append(blocks, d.kitYarns()...)
	for i := range min(d.r.Plan.Class.Looms, mostKits) {
		blocks = append(blocks, d.slip(i+1)...)
	}
	if d.r.Plan.Class.Looms > mostKits {
		blocks = append(blocks, d.text(body, filled(wordMoreKits, "{n}", count(mostKits)))...)
	}
	d.flow(titleKits, blocks)
}

func (d *desk) kitYarns() []block {
	columns := []column{{"", 1, false}, {wordTheYarn, 4, false}, {wordOneLoom, 3, true}, {wordAll, 3, true}, {wordWeight, 3, true}, {wordPutUps, 2, true}}
	var rows [][]cell
	for _, name := range d.yarnNames() {
		id := "yarns[" + name + "]."
		rows = append(rows, []cell{tick, words(yarnName(name)), said(d.bench(id + "each-loom")), say(d.bench(id + "need")), say(d.bench(id + "weight")), say(d.bench(id + "put-ups"))})
	}
	return d.table(columns, rows)
}

// slip is one kit: whose it is, and its yarns to tick.
func (d *desk) slip(n int) []block {
	title := filled(wordKit, "{n}", count(n))
	out := []block{{high: 7.5, gap: 1, draw: func(x, y float64) []scene.Item {
		at := strong.base(y+2) + 0.8
		from := x + 30
		return []scene.Item{
			strong.at(x, y+2, title), body.at(from, y+2, wordName),
			scene.Line{X1: from + body.wide(wordName) + 2, Y1: at, X2: x + d.width(), Y2: at, Pen: rule},
		}
	}}}
	var texts []string
	for _, name := range d.yarnNames() {
		texts = append(texts, yarnName(name)+"  "+letter.FractionText(d.bench("yarns["+name+"].each-loom")))
	}
	return together(append(out, d.ticks(3, texts)...))
}

// turns has a row for each weaver of a class on one warp.
func (d *desk) turns() []block {
	var ids []string
	for i := range d.r.Plan.Pieces {
		ids = append(ids, pieceID(i)+"in-turn", pieceID(i)+"picks", pieceID(i)+"on-loom")
	}
	var rows [][]cell
	for i := range d.r.Plan.Class.InTurn {
		rows = append(rows, []cell{tick, said(count(i + 1)), blank, blank})
	}
	columns := []column{{"", 1, false}, {wordWeaver, 2, true}, {wordName, 8, false}, {wordWoven, 6, false}}
	blocks := append(d.figures(d.lines(ids...)), d.heading(wordTurns))
	return append(blocks, d.table(columns, rows)...)
}
