package sheet

import (
	"slices"
	"strings"

	"sley/internal/engine/tieup"
	"sley/internal/face/present"
)

// sheds are those of the plan's tie-up that its picks open, as far as it has a threading
// to judge them by.
func (d *desk) sheds() []tieup.Shed {
	drawn, ok := d.r.Drawn()
	if !ok {
		return nil
	}
	return tieup.Sheds(drawn)
}

// poor are the treadles whose own shed opens badly.
func (d *desk) poor() map[int]tieup.Shed {
	out := map[int]tieup.Shed{}
	drawn, ok := d.r.Drawn()
	if !ok {
		return out
	}
	for _, s := range tieup.Poor(drawn) {
		if s.Pressed.Len() == 1 {
			out[s.Pressed.Most()] = s
		}
	}
	return out
}

// openingWords say how a shed opens, and nothing of one that is none.
func openingWords(s tieup.Shed) string {
	switch s.Opens {
	case tieup.Unevenly:
		return filled(wordUneven, "{up}", count(s.Up.Len()), "{down}", count(s.Down.Len()))
	case tieup.Hanging:
		return filled(wordHangs, "{shafts}", present.SetText(s.Free))
	case tieup.Locked:
		return filled(wordLocks, "{shafts}", present.SetText(s.Locked))
	case tieup.NoneUp:
		return wordNoneUp
	case tieup.AllUp:
		return wordAllUp
	}
	return wordEven
}

// pressedTogether has a row for each set of treadles that picks press at once.
func (d *desk) pressedTogether() []block {
	var rows [][]cell
	all := d.sheds()
	for _, s := range all {
		if s.Pressed.Len() > 1 {
			rows = append(rows, []cell{tick, said(s.Pressed.String()), words(present.SetText(s.Up)), words(openingWords(s))})
		}
	}
	var out []block
	if len(rows) > 0 {
		columns := []column{{"", 1, false}, {wordTreadles, 3, true}, {wordPutUp2, 5, false}, {wordShedOpens, 8, false}}
		out = append([]block{d.heading(wordTogether)}, d.table(columns, rows)...)
	}
	if len(all) > 0 && !slices.ContainsFunc(all, func(s tieup.Shed) bool { return s.Opens != tieup.Evenly }) {
		out = append(out, d.text(body, wordAllEven)...)
	}
	return out
}

// feet says which foot has which treadles and how these lie best, or why the feet cannot
// take turns; and that it takes two feet where it does.
func (d *desk) feet() []block {
	walk := tieup.WalkOf(d.r.Plan.Drafting.Treadling)
	feet := tieup.FeetOf(walk)
	if feet.Why == tieup.Unpressed {
		return nil
	}
	out := []block{d.heading(wordFeet)}
	if feet.Why != tieup.Alternate {
		out = append(out, d.text(body, whyNot(feet))...)
	} else {
		out = append(out, d.takingTurns(walk, feet)...)
	}
	if slices.ContainsFunc(d.sheds(), func(s tieup.Shed) bool { return s.Woven && s.Pressed.Len() == 2 }) {
		out = append(out, d.text(body, wordBothFeet)...)
	}
	return out
}

// takingTurns is which foot has which treadles, and what numbers lie better.
func (d *desk) takingTurns(walk tieup.Walk, feet tieup.Feet) []block {
	rows := [][]cell{{words(wordLeftFoot), {text: present.SetText(feet.Left), bold: true}}, {words(wordRightFoot), {text: present.SetText(feet.Right), bold: true}}}
	g := newGrid(d.width(), []column{{"", 1, false}, {"", 3, false}})
	out := d.text(body, wordTurnsTaken)
	for _, row := range rows {
		out = append(out, g.row(row))
	}
	out = together(out)
	numbers, ok := tieup.Order(walk, len(d.r.Plan.Drafting.Ups))
	switch {
	case !ok:
		return out
	case slices.IsSorted(numbers):
		return append(out, d.text(body, wordLieWell)...)
	}
	return append(out, d.text(body, filled(wordLieBetter, "{treadles}", listed(across(numbers))))...)
}

// across gives the treadles from the left where each lies at its number.
func across(numbers []int) []int {
	out := make([]int, len(numbers))
	for i, n := range numbers {
		out[n-1] = i + 1
	}
	return out
}

func listed(list []int) string {
	texts := make([]string, len(list))
	for i, n := range list {
		texts[i] = count(n)
	}
	return strings.Join(texts, " ")
}

// whyNot says why feet cannot take turns.
func whyNot(feet tieup.Feet) string {
	switch treadles := listed(feet.Ring); feet.Why {
	case tieup.Twice:
		return filled(wordTwice, "{treadle}", treadles)
	case tieup.Many:
		return filled(wordMany, "{treadles}", treadles)
	default:
		return filled(wordRing, "{treadles}", treadles, "{n}", count(len(feet.Ring)))
	}
}
