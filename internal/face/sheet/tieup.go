package sheet

import (
	"strings"

	"sley/internal/engine/tieup"
	"sley/internal/face/present"
	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
)

// hasTieup reports whether the plan ties treadles.
func (d *desk) hasTieup() bool { return len(d.r.Plan.Drafting.Ups) > 0 }

// tieup is what to tie to each treadle, told by treadles and by shafts, for the
// shed of the plan's loom.
func (d *desk) tieup() {
	var blocks []block
	if d.r.Plan.Loom.Shed != loom.Table {
		blocks = d.care(careUnder)
	}
	blocks = append(blocks, d.text(body, d.tieWords())...)
	blocks = append(blocks, d.heading(wordByTreadle))
	blocks = append(blocks, d.byTreadle()...)
	blocks = append(blocks, d.pressedTogether()...)
	blocks = append(blocks, d.heading(wordByShaft))
	blocks = append(blocks, d.byShaft()...)
	blocks = append(blocks, d.feet()...)
	d.flow(titleTieup, append(blocks, d.ofDraft()...))
}

// tieWords says what the cords do on this kind of loom.
func (d *desk) tieWords() string {
	switch d.r.Plan.Loom.Shed {
	case loom.Sinking, loom.Counterbalance:
		return wordTieLower
	case loom.Countermarch:
		return wordTieBoth
	case loom.Table:
		return wordTieLevers
	}
	return wordTieRaise
}

// tied is the plan's tie-up on its loom, whatever is threaded.
func (d *desk) tied() *draft.Draft {
	p := d.r.Plan
	return &draft.Draft{Shafts: p.Shafts(), Treadles: len(p.Drafting.Ups), Shed: p.Loom.Shed, Ties: p.Ties()}
}

// byTreadle has a row for each treadle: what it puts up, the cords it wants, and how its
// shed opens where any opens badly.
func (d *desk) byTreadle() []block {
	var rows [][]cell
	poor := d.poor()
	columns := append([]column{{"", 1, false}, {wordTreadle, 2, true}, {wordPutsUp, 4, false}}, d.cordColumns()...)
	if len(poor) > 0 {
		columns = append(columns, column{wordShedOpens, 5, false})
	}
	for i, cords := range tieup.ByTreadle(d.tied()) {
		row := append([]cell{tick, said(count(i + 1)), words(present.SetText(d.r.Plan.Drafting.Ups[i]))}, d.cords(cords)...)
		if len(poor) > 0 {
			row = append(row, words(openingWords(poor[i+1])))
		}
		rows = append(rows, row)
	}
	return d.table(columns, rows)
}

// byShaft has a row for each shaft: the treadles it hangs from.
func (d *desk) byShaft() []block {
	var rows [][]cell
	for i, cords := range tieup.ByShaft(d.tied()) {
		rows = append(rows, append([]cell{tick, said(count(i + 1))}, d.cords(cords)...))
	}
	return d.table(append([]column{{"", 1, false}, {wordShaft, 2, true}}, d.cordColumns()...), rows)
}

// cordColumns are the kinds of cords of the loom: those that raise, those that
// lower, or both.
func (d *desk) cordColumns() []column {
	var out []column
	raise, lower := tieup.Kinds(d.r.Plan.Loom.Shed)
	if raise {
		out = append(out, column{wordRaises, 4, false})
	}
	if lower {
		out = append(out, column{wordLowers, 4, false})
	}
	return out
}

func (d *desk) cords(c tieup.Cords) []cell {
	var out []cell
	raise, lower := tieup.Kinds(d.r.Plan.Loom.Shed)
	if raise {
		out = append(out, cell{text: present.SetText(c.Raises), bold: true})
	}
	if lower {
		out = append(out, cell{text: present.SetText(c.Lowers), bold: true})
	}
	return out
}

// ofDraft is what the reckoning says of the draft and its sheds, with what to do.
func (d *desk) ofDraft() []block {
	var out []block
	for _, p := range d.r.Problems.All() {
		if strings.HasPrefix(p.Code, "draft.") || p.Code == "loom.two-footed" {
			out = append(out, d.problem(p)...)
		}
	}
	if len(out) == 0 {
		return nil
	}
	return append([]block{d.heading(wordLookAt)}, out...)
}
