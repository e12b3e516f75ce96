package sheet

import (
	"slices"
	"strings"

	"sley/internal/face/present"
	"sley/internal/trade/problem"
)

// glance is the sheet to pin above the loom: its figures are 14 pt and larger.
func (d *desk) glance() {
	blocks := append(d.text(body, d.r.Plan.Note), d.text(strong, d.cloth())...)
	blocks = append(blocks, d.figuresIn(large, key, body, present.Glance(d.r, d.u))...)
	blocks = append(blocks, d.pieces()...)
	blocks = append(blocks, d.warpAlong()...)
	blocks = append(blocks, d.warpAcross()...)
	d.flow(titleGlance, append(blocks, d.warnings()...))
}

// pieces lists the kinds of pieces with what they come out at.
func (d *desk) pieces() []block {
	columns := []column{{wordPiece, 4, false}, {wordHowMany, 2, true}, {wordLength, 3, true}, {wordWidth, 3, true}, {wordPicksOf, 2, true}}
	var rows [][]cell
	for i := range d.r.Plan.Pieces {
		id := pieceID(i)
		long := d.first(id+"comes-out", id+"finished", id+"length")
		wide := d.first(id+"seamed-width", "width.opened", "width.finished")
		rows = append(rows, []cell{words(d.pieceName(i)), say(d.bench(id + "count")), say(long), say(wide), say(d.bench(id + "picks"))})
	}
	if len(rows) == 0 {
		return nil
	}
	return append([]block{d.heading(wordPieces)}, d.table(columns, rows)...)
}

// first is the figure of the first node there is.
func (d *desk) first(ids ...string) string {
	for _, id := range ids {
		if d.has(id) {
			return d.bench(id)
		}
	}
	return ""
}

// cloth says the weave, the wash and the loom, as far as the plan does.
func (d *desk) cloth() string {
	return between(d.r.Plan.Weave, d.r.Plan.Wash, d.r.Plan.Loom.Name)
}

// between joins texts that are not empty.
func between(texts ...string) string {
	texts = slices.DeleteFunc(slices.Clone(texts), func(text string) bool { return text == "" })
	return strings.Join(texts, wordBetween)
}

// problem says one problem with what to do.
func (d *desk) problem(p problem.Problem) []block {
	p = d.u.Localise(p)
	return append(d.text(strong, present.Wrong(p)), d.text(body, present.Fix(p))...)
}

// warnings says what the reckoning warns of, with what to do.
func (d *desk) warnings() []block {
	out := []block{d.heading(wordLookAt)}
	for _, p := range d.r.Problems.All() {
		if p.Severity != problem.Warning {
			continue
		}
		out = append(out, d.problem(p)...)
	}
	if len(out) == 1 {
		return nil
	}
	return out
}
