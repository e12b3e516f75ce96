package loomside

import (
	"slices"
	"strconv"

	"sley/internal/engine/reckon"
	"sley/internal/trade/draft"
	"sley/internal/trade/order"
	"sley/internal/trade/qty"
)

func itoa(n int) string { return strconv.Itoa(n) }

// presses is what is pressed for each pick of a piece: the treadling with the group that
// fills as often as there is room for, the last time cut short; an order in which nothing
// fills again and again. As the sheet of the treadling has it.
func (w *weaver) presses(picks int) ([]int, Motif) {
	o := w.r.Plan.Drafting.Picked()
	if o.IsZero() {
		return nil, Motif{}
	}
	before, fill, after := w.pressed(o.Before()), w.pressed(o.FillRuns()), w.pressed(o.After())
	if len(fill) == 0 {
		before, fill = nil, before
	}
	motif := Motif{Before: len(before), Picks: len(fill)}
	out := slices.Clone(before)
	for len(fill) > 0 && len(out)+len(after) < picks {
		out = append(out, fill[:min(len(fill), picks-len(out)-len(after))]...)
		motif.Times++
	}
	out = append(out, after...)
	if len(out) == 0 {
		return nil, Motif{}
	}
	if len(out) < picks { // an order that is shorter than its own fixed parts
		out = append(out, slices.Repeat([]int{out[len(out)-1]}, picks-len(out))...)
	}
	return out[:picks], motif
}

// pressed gives the presses of runs, noting those that are new.
func (w *weaver) pressed(runs []order.Run) []int {
	var out []int
	for _, set := range draft.SetsOf(runs) {
		at := slices.IndexFunc(w.Presses, func(p Press) bool { return p.Treadles == set })
		if at < 0 {
			at = len(w.Presses)
			w.Presses = append(w.Presses, Press{Treadles: set, Up: w.up(set)})
		}
		out = append(out, at)
	}
	return out
}

// up is what is on top when that is pressed.
func (w *weaver) up(set draft.Set) draft.Set {
	if !w.Treadled {
		return set
	}
	plan := w.r.Plan
	d := draft.Draft{Shafts: plan.Shafts(), Treadles: len(plan.Drafting.Ups), Shed: plan.Loom.Shed, Ties: plan.Ties()}
	return d.Open(set).Up
}

// partOf is the part of a piece that begins at a mark of its tape.
var partOf = map[string]string{
	reckon.MarkStart: PartTurnIn, reckon.MarkTurnIn: PartHem, reckon.MarkFold: "",
	reckon.MarkFarFold: PartHem, reckon.MarkFarTurnIn: PartTurnIn,
}

// stretches cuts a piece at its hems and its borders. Of one that has other picks than
// planned the far ones keep their distance from its end.
func (w *weaver) stretches(i, picks int) []Stretch {
	near, far := w.r.Plan.Pieces[i].Borders()
	marks := w.hems(i, picks)
	at := []int{0, near, picks - far, picks}
	for _, m := range marks {
		at = append(at, m.at)
	}
	slices.Sort(at)
	var out []Stretch
	for k := 1; k < len(at); k++ {
		from, to := max(at[k-1], 0), min(at[k], picks)
		if from >= to {
			continue
		}
		s := Stretch{From: from, To: to, Parts: partsAt(from, near, picks-far, marks)}
		if n := len(out); n > 0 && slices.Equal(out[n-1].Parts, s.Parts) {
			out[n-1].To = to
			continue
		}
		out = append(out, s)
	}
	return out
}

// mark is where a hem's part begins.
type mark struct {
	at   int
	part string
}

// hems are the marks of a piece's hems, by picks.
func (w *weaver) hems(i, picks int) []mark {
	var out []mark
	planned := w.laid[i].Picks
	kinds := []string{}
	for k := 0; ; k++ {
		id := pieceID(i) + "marks[" + itoa(k) + "]"
		n, ok := w.r.Node(id)
		if !ok {
			break
		}
		part, hem := partOf[n.About.Mark]
		woven, counted := w.r.Node(id + ".picks")
		if !hem || !counted {
			continue
		}
		at := woven.Is.Count(qty.Nearest)
		if n.About.Mark == reckon.MarkFarFold || n.About.Mark == reckon.MarkFarTurnIn {
			at += picks - planned
		}
		out, kinds = append(out, mark{at, part}), append(kinds, n.About.Mark)
	}
	return begins(out, kinds)
}

// begins says what the first and the last part of a piece are: a hem without a turn-in
// begins at once, and without hems there is neither.
func begins(marks []mark, kinds []string) []mark {
	if len(marks) > 0 && kinds[0] == reckon.MarkStart {
		switch {
		case !slices.Contains(kinds, reckon.MarkFold):
			marks[0].part = ""
		case !slices.Contains(kinds, reckon.MarkTurnIn):
			marks[0].part = PartHem
		}
	}
	return marks
}

// partsAt is what is woven after so many picks.
func partsAt(pick, near, far int, marks []mark) []string {
	var out []string
	hem := ""
	for _, m := range marks {
		if m.at <= pick {
			hem = m.part
		}
	}
	if hem != "" {
		out = append(out, hem)
	}
	if pick < near || pick >= far {
		out = append(out, PartBorder)
	}
	if len(out) == 0 {
		out = append(out, PartBody)
	}
	return out
}
