package sheet

import (
	"strings"

	"sley/internal/face/present"
	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
)

// hasTieup reports whether the plan ties treadles.
func (d *desk) hasTieup() bool { return len(d.r.Plan.Drafting.Ups) > 0 }

// tieup is what to tie to each treadle, told by treadles and by shafts, for the
// shed of the plan's loom.
func (d *desk) tieup() {
	blocks := d.text(body, d.tieWords())
	blocks = append(blocks, d.heading(wordByTreadle))
	blocks = append(blocks, d.byTreadle()...)
	blocks = append(blocks, d.heading(wordByShaft))
	blocks = append(blocks, d.byShaft()...)
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

// byTreadle has a row for each treadle: what it puts up, and the cords it wants.
func (d *desk) byTreadle() []block {
	var rows [][]cell
	for i, tie := range d.r.Plan.Ties() {
		rows = append(rows, append([]cell{tick, said(count(i + 1)), words(present.SetText(d.r.Plan.Drafting.Ups[i]))}, d.cords(tie)...))
	}
	columns := append([]column{{"", 1, false}, {wordTreadle, 2, true}, {wordPutsUp, 4, false}}, d.cordColumns()...)
	return d.table(columns, rows)
}

// byShaft has a row for each shaft: the treadles it hangs from.
func (d *desk) byShaft() []block {
	var rows [][]cell
	ties := d.r.Plan.Ties()
	for shaft := 1; shaft <= d.r.Plan.Shafts(); shaft++ {
		var on draft.Tie
		for i, tie := range ties {
			if tie.Tied.Has(shaft) {
				on.Tied = on.Tied.With(i + 1)
			}
			if tie.Lowered.Has(shaft) {
				on.Lowered = on.Lowered.With(i + 1)
			}
		}
		rows = append(rows, append([]cell{tick, said(count(shaft))}, d.cords(on)...))
	}
	return d.table(append([]column{{"", 1, false}, {wordShaft, 2, true}}, d.cordColumns()...), rows)
}

// cordColumns are the kinds of cords of the loom: those that raise, those that
// lower, or both.
func (d *desk) cordColumns() []column {
	switch d.r.Plan.Loom.Shed {
	case loom.Sinking, loom.Counterbalance:
		return []column{{wordLowers, 4, false}}
	case loom.Countermarch:
		return []column{{wordRaises, 4, false}, {wordLowers, 4, false}}
	}
	return []column{{wordRaises, 4, false}}
}

func (d *desk) cords(tie draft.Tie) []cell {
	first := cell{text: present.SetText(tie.Tied), bold: true}
	if d.r.Plan.Loom.Shed == loom.Countermarch {
		return []cell{first, {text: present.SetText(tie.Lowered), bold: true}}
	}
	return []cell{first}
}

// ofDraft is what the reckoning says of the draft and its sheds, with what to do.
func (d *desk) ofDraft() []block {
	var out []block
	for _, p := range d.r.Problems.All() {
		if strings.HasPrefix(p.Code, "draft.") {
			out = append(out, d.problem(p)...)
		}
	}
	if len(out) == 0 {
		return nil
	}
	return append([]block{d.heading(wordLookAt)}, out...)
}
