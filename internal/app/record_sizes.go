package app

import (
	"strconv"
	"strings"

	"sley/internal/engine/learn"
	"sley/internal/engine/reckon"
	"sley/internal/trade/qty"
	"sley/internal/trade/record"
	"sley/internal/trade/warp"
)

// sizesOf finds the sizes of a warp's pieces.
type sizesOf struct {
	*reckoned
	events  []record.Event // what was measured
	started bool
}

func pathOf(piece int, width bool) string {
	if width {
		return "pieces[" + strconv.Itoa(piece) + "].width"
	}
	return "pieces[" + strconv.Itoa(piece) + "].length"
}

// lengthStates and widthStates are the states from the warp to the cloth.
var (
	lengthStates = []warp.State{warp.Straight, warp.OnLoom, warp.Relaxed, warp.Finished}
	widthStates  = []warp.State{warp.InReed, warp.AtFell, warp.Relaxed, warp.Finished}
)

func (f sizesOf) size(piece int, width bool) RecordSize {
	out := RecordSize{Path: pathOf(piece, width), Piece: f.plan.Pieces[piece].Name, Index: piece, Width: width}
	states := lengthStates
	if width {
		states = widthStates
	}
	for _, state := range states {
		at := RecordState{State: state, Planned: f.planned(piece, width, state)}
		f.measured(&at, piece, width)
		if at.Planned != nil || at.Measured.Given() {
			out.States = append(out.States, at)
		}
	}
	return out
}

// planned is the size of a piece that the plan comes to in a state.
func (f sizesOf) planned(piece int, width bool, state warp.State) *reckon.Node {
	at := "pieces[" + strconv.Itoa(piece) + "]."
	if !width {
		ids := map[warp.State]string{warp.Finished: "comes-out", warp.Relaxed: "relaxed", warp.OnLoom: "on-loom", warp.Straight: "warp"}
		return nodeOf(f.result, at+ids[state])
	}
	ids := map[warp.State]string{warp.Finished: "width.finished", warp.Relaxed: "width.relaxed", warp.AtFell: "width.fell", warp.InReed: "width.in-reed"}
	if !f.whole(piece) { // its own way from the width that was asked for
		ids = map[warp.State]string{
			warp.Finished: at + "width-finished", warp.Relaxed: at + "width-relaxed",
			warp.AtFell: at + "width-fell", warp.InReed: at + "width-reed",
		}
		if f.plan.Pieces[piece].Width.State == state {
			ids[state] = at + "width"
		}
	}
	return nodeOf(f.result, ids[state])
}

// whole reports whether a piece is one cloth as wide as the warp: no panels, not woven
// double, and no other piece is wider.
func (f sizesOf) whole(piece int) bool {
	p := &f.plan.Pieces[piece]
	if p.Panels > 1 || f.plan.Warp.Layers > 1 {
		return false
	}
	own := nodeOf(f.result, pathOf(piece, true)+"-reed")
	if p.Width.State == warp.InReed {
		own = nodeOf(f.result, pathOf(piece, true))
	}
	wanted := nodeOf(f.result, "width.wanted")
	return own == nil || wanted == nil || own.Is.Equal(wanted.Is)
}

// measured fills in what was measured in the state: by an entry, else as the plan's
// [built] says of cloth on the loom, else by the dents that were sleyed.
func (f sizesOf) measured(at *RecordState, piece int, width bool) {
	path := pathOf(piece, width)
	for _, e := range f.events {
		if e.Path == path && e.State == at.State.String() {
			at.Measured, at.Event = warp.Size{Is: e.Amount.Length, State: at.State, Typed: e.Typed}, e.ID
		}
	}
	switch {
	case at.Measured.Given():
	case at.State == warp.OnLoom:
		for _, w := range f.plan.Built.Woven {
			if w.Piece == piece && w.OnLoom.Given() {
				at.Measured = warp.Size{Is: w.OnLoom.Is, State: at.State, Typed: w.OnLoom.Typed}
			}
		}
	case at.State == warp.InReed && f.started && at.Planned != nil && f.whole(piece):
		at.Measured, at.Counted = f.counted(at.Planned.Is), true
	}
}

// counted is the width that the ends take in the reed: to a millimetre, or to a 32nd of
// an inch.
func (f sizesOf) counted(nm qty.Rat) warp.Size {
	step, like := qty.Inch/32, "1 in"
	if reckon.MetricPlan(f.plan) {
		step, like = qty.Millimetre, "1 cm"
	}
	is, _ := qty.LengthOf(nm.To(step.Rat(), qty.Nearest), qty.Nearest)
	return warp.Size{Is: is, State: warp.InReed, Typed: learn.Text(is, like)}
}

// learnt is what the measured sizes say, beside what the planned ones do. Of a piece in
// panels or woven double the widths say nothing: they are of several cloths. A tape read
// slackened says nothing of relaxation.
func (f sizesOf) learnt(size RecordSize) []RecordLearnt {
	if size.Width && !f.whole(size.Index) {
		return nil
	}
	measured, planned, counted := size.known()
	p := &f.plan.Pieces[size.Index]
	var hems qty.Length
	if !size.Width {
		measured, hems = learn.Lengths(p, measured)
		planned, _ = learn.Lengths(p, planned)
	}
	was := map[string]qty.Rat{}
	for _, l := range learn.Of(planned, size.Width) {
		was[l.Key] = l.Lost()
	}
	var out []RecordLearnt
	for _, l := range learn.Of(measured, size.Width) {
		if l.Key == "relaxation" && f.plan.Tape == warp.Slackened {
			continue
		}
		one := RecordLearnt{Learnt: l, Path: size.Path, Piece: strings.TrimSpace(p.Name), Index: size.Index}
		one.Counted = counted && l.From.State == warp.InReed
		if lost, ok := was[l.Key]; ok {
			one.Planned = &lost
		}
		if l.To.State == warp.Finished {
			one.Hems = hems
		}
		out = append(out, one)
	}
	return out
}

// known are the sizes that were measured, and those that were planned.
func (s RecordSize) known() (measured, planned []warp.Size, counted bool) {
	for _, at := range s.States {
		if at.Measured.Given() {
			measured = append(measured, at.Measured)
			counted = counted || at.Counted
		}
		if at.Planned != nil {
			is, _ := qty.LengthOf(at.Planned.Is, qty.Nearest)
			planned = append(planned, warp.Size{Is: is, State: at.State})
		}
	}
	return measured, planned, counted
}
