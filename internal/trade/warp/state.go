// Package warp holds the plan of one warp: what the weaver wrote down, exactly
// as she wrote it, with the state each size is in. It reckons nothing.
package warp

import "sley/internal/trade/qty"

// State is the state a length, a width or a density is in.
//
//	length: Finished <- Relaxed <- OnLoom <- Straight
//	width:  Finished <- Relaxed <- AtFell <- InReed
type State int

// The states. Finished is washed and dry; Relaxed is off the loom and rested;
// OnLoom is what the tape reads; Straight is the warp end itself; AtFell is the
// width where the cloth is beaten; InReed is the width in the reed.
const (
	Unsaid State = iota
	Finished
	Relaxed
	OnLoom
	Straight
	AtFell
	InReed
)

// StateWords are the words a size may carry in a plan file, by state; the
// first is the one we print.
func StateWords(s State) []string {
	return map[State][]string{
		Finished: {"finished", "washed"},
		Relaxed:  {"relaxed", "off the loom", "off loom"},
		OnLoom:   {"on the loom", "on loom"},
		Straight: {"of warp", "warp"},
		AtFell:   {"at the fell", "at fell"},
		InReed:   {"in the reed", "in reed"},
	}[s]
}

// String gives the state's printed word.
func (s State) String() string {
	if words := StateWords(s); len(words) > 0 {
		return words[0]
	}
	return ""
}

// IsLength reports whether a length can be in the state.
func (s State) IsLength() bool {
	return s == Finished || s == Relaxed || s == OnLoom || s == Straight
}

// IsWidth reports whether a width can be in the state.
func (s State) IsWidth() bool {
	return s == Finished || s == Relaxed || s == AtFell || s == InReed
}

// Size is a length or width in a state, with the text it was typed as.
type Size struct {
	Is    qty.Length
	State State
	Typed string
}

// Given reports whether the size was typed.
func (s Size) Given() bool { return s.Typed != "" }

// Sett is a density in a state, with the text it was typed as.
type Sett struct {
	Is    qty.Density
	State State
	Typed string
}

// Given reports whether the density was typed.
func (s Sett) Given() bool { return s.Typed != "" }
