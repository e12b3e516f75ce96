package sheet

import (
	"slices"

	"sley/internal/engine/dress"
	"sley/internal/face/present"
	"sley/internal/trade/draft"
	"sley/internal/trade/qty"
)

// hasTreadling reports whether the plan says how its picks are treadled or lifted.
func (d *desk) hasTreadling() bool { return !d.r.Plan.Drafting.Picked().IsZero() }

// treadling is the order of the treadles, or of the lifts, for each kind of piece,
// in groups to tick with the count of picks so far.
func (d *desk) treadling() {
	picked := d.r.Plan.Drafting.Picked()
	blocks := append([]block{d.heading(wordAsWritten)}, d.text(strong, picked.Text)...)
	if d.hasTieup() {
		blocks = append(blocks, d.heading(wordLifts))
		blocks = append(blocks, d.lifts()...)
	}
	blocks = append(blocks, d.text(body, wordTreadlings)...)
	for i := range d.r.Plan.Pieces {
		blocks = append(blocks, d.treadlingOf(i)...)
	}
	title := titleTreadling
	if !d.hasTieup() {
		title = titleLifts
	}
	d.flow(title, blocks)
}

// lifts says which shafts each treadle puts up.
func (d *desk) lifts() []block {
	var texts []string
	for i, up := range d.r.Plan.Drafting.Ups {
		texts = append(texts, filled(wordLiftOf, "{treadle}", count(i+1), "{shafts}", present.SetText(up)))
	}
	return d.lines3(texts)
}

// lines3 sets short texts in rows of three.
func (d *desk) lines3(texts []string) []block {
	var rows [][]cell
	for row := range slices.Chunk(texts, 3) {
		cells := make([]cell, 3)
		for i, text := range row {
			cells[i] = words(text)
		}
		rows = append(rows, cells)
	}
	g := newGrid(d.width(), []column{{"", 1, false}, {"", 1, false}, {"", 1, false}})
	var out []block
	for _, row := range rows {
		out = append(out, g.row(row))
	}
	return bound(out)
}

// picksInGroup is about how many picks make a group.
const picksInGroup = 24

// treadlingOf is the groups of one kind of piece.
func (d *desk) treadlingOf(i int) []block {
	n, ok := d.r.Node(pieceID(i) + "picks")
	if !ok || !n.Is.IsInt() {
		return nil
	}
	name := filled(wordEachOf, "{piece}", d.pieceName(i), "{picks}", d.u.Bench(n))
	out := []block{d.heading(name)}
	sets, rows := d.grouped(n.Is.Count(qty.Nearest))
	for _, row := range rows {
		head := d.text(strong, pressed(sets, row))
		head[0].gap = 3
		var texts []string
		for _, after := range row.After {
			texts = append(texts, filled(wordToPick, "{picks}", count(after)))
		}
		head = append(head, block{})
		out = append(out, together(head)[:len(head)-1]...)
		out = append(out, d.ticks(5, texts)...)
	}
	return out
}

// grouped puts the picks of a piece into groups as its treadling suits: the group
// that fills, or the whole order, again and again, cut off at the last pick. Rows
// name sets by their number from 0.
func (d *desk) grouped(picks int) ([]draft.Set, []dress.Threaded) {
	o := d.r.Plan.Drafting.Picked()
	parts := [][]draft.Set{draft.SetsOf(o.Before()), draft.SetsOf(o.FillRuns()), draft.SetsOf(o.After())}
	numbers, sets := draft.Classes(slices.Concat(parts...))
	before, numbers := numbers[:len(parts[0])], numbers[len(parts[0]):]
	fill, after := numbers[:len(parts[1])], numbers[len(parts[1]):]
	if len(fill) == 0 {
		before, fill = nil, before
	}
	room := picks - len(before) - len(after)
	times, rest := 0, 0
	if len(fill) > 0 && room > 0 {
		times, rest = room/len(fill), room%len(fill)
	}
	most := picksInGroup
	for picks/most > mostThreadings {
		most *= 2
	}
	return sets, dress.Threading(before, fill, append(slices.Clone(fill[:min(rest, len(fill))]), after...), times, most)
}

// pressed says the treadles, or the shafts, of a group of picks.
func pressed(sets []draft.Set, row dress.Threaded) string {
	text := ""
	for i, at := range row.Shafts {
		if i > 0 {
			text += " "
		}
		text += sets[at].String()
	}
	if row.Times > 1 {
		text = filled(wordRepeated, "{shafts}", text, "{times}", count(row.Times))
	}
	return text
}
