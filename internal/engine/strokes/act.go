// Package strokes changes a draft as a weaver draws it: cell by cell, stretch by stretch,
// by a rule, by what she types, or by the drawdown that she wants. It also says what one
// draft has that another had not, part by part.
//
// Acts are made in order, on a copy. All that is wrong with them is told at once.
package strokes

import (
	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
)

// MostThreads is how many ends, and how many picks, a draft may have.
const MostThreads = 20_000

// Part is a list that a draft is made of.
type Part string

// The parts. An end, a pick or a treadle is the place in its list, from 0.
const (
	Threading   Part = "threading"    // the shaft of each end, from 1; 0: in no heddle
	Ties        Part = "ties"         // draft.Tie.Tied of each treadle, a set of shafts
	Lowered     Part = "lowered"      // draft.Tie.Lowered of each treadle
	Treadling   Part = "treadling"    // the set of treadles of each pick; empty in a lift plan
	Lifts       Part = "lifts"        // the set of shafts up at each pick; empty where it is treadled
	WarpColours Part = "warp-colours" // the palette's index of each end
	WeftColours Part = "weft-colours" // the palette's index of each pick
	Palette     Part = "palette"      // colours, 0xrrggbb

	// Sizes go with their threads and are no part that acts change: nanometres of each
	// thread, 0 where it is unsaid, and empty where none is said.
	WarpThick Part = "warp-thick"
	WarpApart Part = "warp-apart"
	WeftThick Part = "weft-thick"
	WeftApart Part = "weft-apart"
)

// Value is an entry of a part. A number below 0 is its two's complement, so that what was
// read can be told.
type Value uint64

// Deed is what an act does.
type Deed string

// The deeds.
const (
	Put      Deed = "put"
	Reverse  Deed = "reverse"
	Mirror   Deed = "mirror"
	Delete   Deed = "delete"
	Repeat   Deed = "repeat"
	Shift    Deed = "shift"
	Rotate   Deed = "rotate"
	ByRule   Deed = "rule"
	Type     Deed = "type"
	Cells    Deed = "cells"
	Shafts   Deed = "shafts"
	Treadles Deed = "treadles"
	ForShed  Deed = "shed"
)

// Rule is how a stretch is threaded, or treadled, without a figure being typed.
type Rule string

// The rules.
const (
	Straight  Rule = "straight"  // one after another, and round again
	Point     Rule = "point"     // up and down, each turn once
	Advancing Rule = "advancing" // straight runs, each beginning further on
)

// Cell is a crossing of the drawdown, both from 0.
type Cell struct{ Pick, End int }

// Act is one change. Do says which of the others it needs:
//
//   - put lays Put in the place of Remove entries from At on. Of those the first are
//     exchanged; if Put is longer the others are new, if it is shorter the rest go. In
//     the threading that makes or removes ends, in treadling and lifts picks, in the ties
//     treadles, and picks keep the treadles they press. New threads have the colour and
//     the sizes of the thread to their left, of the one to the right at the edge.
//     Elsewhere Put is as long as Remove, but for the palette.
//   - reverse, mirror, delete, repeat, shift and rotate are of the stretch From to To, To
//     left out. Mirror puts its way back behind it, the turn once; repeat makes it Times
//     times over: what they add has the colours and sizes of what it repeats, and in the
//     colours it is laid over the threads that follow. Shift moves shafts, treadles or
//     colours round by By, rotate the places within the stretch.
//   - rule lays Length threads (0: as many as there are) in the place of the stretch: the
//     shafts, or treadles, First to Last (0: the first, the last) from Start on (0: First,
//     or Last where By is below 0), each By further (0: 1). Advancing has runs of Run
//     threads (0: 4), each run beginning By further.
//   - type lays the threads of Text there, in the shorthand of package order, in the ties
//     the shafts of each treadle. In the colours it calls those of the palette by Names,
//     or by Letters where there are none.
//   - cells puts the warp on top at Cells, or the weft where Up is false, and finds
//     threading and lifts: see cells.go.
//   - shafts and treadles say how many there are, Number; shed what loom it is for.
type Act struct {
	Do         Deed
	Part       Part
	At, Remove int
	Put        []Value
	From, To   int
	Times, By  int

	Rule               Rule
	Start, First, Last int
	Run, Length        int

	Text  string
	Names []string // of the palette's colours, the first first

	Cells  []Cell
	Up     bool
	Number int
	Shed   loom.Shed
}

// Numbers gives shafts, or indices of the palette, as values.
func Numbers(list ...int) []Value {
	out := make([]Value, len(list))
	for i, n := range list {
		out[i] = Value(n)
	}
	return out
}

// Sets gives sets of shafts, or of treadles, as values.
func Sets(list ...draft.Set) []Value {
	out := make([]Value, len(list))
	for i, s := range list {
		out[i] = Value(s)
	}
	return out
}
