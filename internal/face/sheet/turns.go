package sheet

import (
	"slices"

	"sley/internal/engine/reckon"
	"sley/internal/trade/qty"
)

// mostTicks is how many boxes a weaver has for pieces of one kind.
const mostTicks = 12

// turns says who weaves what on one warp: for each weaver her pieces, their picks,
// and what the tape reads where a piece begins and ends.
func (d *desk) turns() []block {
	var ids []string
	for i := range d.r.Plan.Pieces {
		ids = append(ids, pieceID(i)+"in-turn", pieceID(i)+"count")
	}
	blocks := append([]block{d.heading(wordTurns)}, d.figures(d.lines(append(ids, "warp.wound")...))...)
	blocks = append(blocks, d.text(body, wordTurnTape)...)
	columns := []column{
		{wordWeaver, 1.9, true},
		{wordName, 4, false},
		{wordPiece, 3, false},
		{wordTickEach, 2.5, false},
		{wordPicksOf, 1.6, true},
		{wordBegins, 2, true},
		{wordFinishes, 2.7, true},
		{wordWoven, 1.8, false},
	}
	var rows [][]cell
	for weaver := range d.r.Plan.Class.InTurn {
		for i := range d.r.Plan.Pieces {
			rows = append(rows, d.turn(weaver, i))
		}
	}
	return append(blocks, d.oneWeaver(d.table(columns, rows))...)
}

// mostKept is how many rows of one weaver stay on one page.
const mostKept = 8

// oneWeaver keeps the rows of a weaver together; the first block is the head.
func (d *desk) oneWeaver(table []block) []block {
	kinds := len(d.r.Plan.Pieces)
	if kinds > mostKept {
		return table
	}
	for i := range table[1:] {
		if (i+1)%kinds != 0 {
			table[i+1].keep = true
		}
	}
	return table
}

// turn is the row of one weaver and one kind of piece; her number and her name stand
// on the first.
func (d *desk) turn(weaver, piece int) []cell {
	who, name := said(count(weaver+1)), blank
	if piece > 0 {
		who, name = cell{}, cell{}
	}
	begins, ends := d.tapeReads(piece)
	return []cell{
		who, name, words(d.pieceName(piece)),
		{ticks: d.piecesOf(piece)},
		said(d.bench(pieceID(piece) + "picks")), say(begins), said(ends), blank,
	}
}

// piecesOf is how many boxes one weaver has for a kind of piece.
func (d *desk) piecesOf(piece int) int {
	n, ok := d.r.Node(pieceID(piece) + "count")
	if !ok {
		return 1
	}
	return min(n.Is.Count(qty.Up), mostTicks)
}

// tapeReads is what the tape reads at the first pick and at the last.
func (d *desk) tapeReads(piece int) (begins, ends string) {
	marks := d.listed(pieceID(piece) + "marks[")
	if len(marks) == 0 {
		return "", d.bench(pieceID(piece) + "on-loom")
	}
	byPlace := func(a, b reckon.Node) int { return a.Is.Cmp(b.Is) }
	return d.u.Bench(slices.MinFunc(marks, byPlace)), d.u.Bench(slices.MaxFunc(marks, byPlace))
}
