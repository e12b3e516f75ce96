package sheet

// mostTicked is how many pieces have boxes and lines of their own.
const mostTicked = 12

// weaving is a sheet for each kind of piece.
func (d *desk) weaving() {
	for i := range d.r.Plan.Pieces {
		d.weavingOf(i)
	}
}

func (d *desk) weavingOf(i int) {
	name, id := d.pieceName(i), pieceID(i)
	blocks := d.keyed(d.linesIn(name+", ", id+"picks", id+"on-loom", "picks.wanted", id+"picks.on-loom"), d.linesIn(name+", ",
		id+"count", id+"panels", id+"in-turn", id+"relaxed", id+"comes-out", id+"first.fringe-cut", id+"last.fringe-cut", "gap",
	))
	n := d.made(i)
	blocks = append(blocks, d.marks(id, name, n)...)
	if n > mostTicked {
		blocks = append(blocks, d.text(body, filled(wordMore, "{n}", count(mostTicked)))...)
	}
	if i == 0 {
		blocks = append(blocks, d.care(careTask)...)
	}
	blocks = append(blocks, d.pickOrder(i)...)
	blocks = append(blocks, d.measured(id, min(n, mostTicked))...)
	d.flow(titleWeaving+name, blocks)
}

// made is how many of a kind are woven, panels counted.
func (d *desk) made(i int) int {
	p := d.r.Plan.Pieces[i]
	return max(p.Count, 1) * max(p.Panels, 1)
}

// pickOrder is the picks by yarn as they were written.
func (d *desk) pickOrder(i int) []block {
	p := d.r.Plan.Pieces[i]
	order := p.Order
	if order.IsZero() {
		order = d.r.Plan.Weft.Order
	}
	far := ""
	if !p.Border.IsZero() {
		far = [...]string{wordMirrored, wordAgain, wordNoBorder}[p.Far]
	}
	var rows [][]cell
	for _, part := range [][2]string{{wordBorderPicks, p.Border.Text}, {wordBodyPicks, order.Text}, {wordFarPicks, far}} {
		if part[1] != "" {
			rows = append(rows, []cell{words(part[0]), words(part[1])})
		}
	}
	return d.facts(wordOrderOfPicks, rows)
}

// facts is a few rows of words under a heading, on one page; none without rows.
func (d *desk) facts(title string, rows [][]cell) []block {
	if len(rows) == 0 {
		return nil
	}
	out := []block{d.heading(title)}
	g := newGrid(d.width(), []column{{"", 1, false}, {"", 4, false}})
	for _, row := range rows {
		out = append(out, g.row(row))
	}
	return together(out)
}

// marks is the tape's marks with the picks woven by then, and a box for each piece.
func (d *desk) marks(id, name string, pieces int) []block {
	var rows [][]cell
	for _, l := range d.linesIn(name+", ", id+"marks[") {
		rows = append(rows, []cell{words(l.Label), say(d.bench(l.ID + ".picks")), said(l.Value), {ticks: min(pieces, mostTicked)}})
	}
	if len(rows) == 0 {
		return nil
	}
	columns := []column{{wordMark, 4.4, false}, {wordAfter, 2.2, true}, {wordReads, 2.4, true}, {wordEachOne, 7, false}}
	return append([]block{d.heading(wordTape)}, d.table(columns, rows)...)
}

// measured has lines to write what each piece came to.
func (d *desk) measured(id string, pieces int) []block {
	var rows [][]cell
	for i := range pieces {
		rows = append(rows, []cell{tick, said(count(i + 1)), say(d.bench(id + "on-loom")), blank, blank, blank})
	}
	columns := []column{{"", 1, false}, {wordNumber, 1.4, true}, {wordPlanned, 3, true}, {wordTapeRead, 4, false}, {wordCounted, 3, false}, {wordRemark, 5, false}}
	return append([]block{d.heading(wordMeasured)}, d.table(columns, rows)...)
}
