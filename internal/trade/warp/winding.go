package warp

import "sley/internal/trade/qty"

// Winding is how the warp is wound, spread and beamed. A zero field was not said
// and is not reckoned; of a board and a mill at most one is given.
type Winding struct {
	UsualBoard bool // the board that many weavers have
	Pegs       []Peg
	Mill       qty.Typed[qty.Length]  // its girth
	Together   qty.Typed[int]         // ends wound at once
	Bout       qty.Typed[int]         // most ends in a bout that the hand holds
	Peg        qty.Typed[qty.Length]  // usable length of a peg
	Tie        qty.Typed[int]         // a counting tie every so many ends
	Raddle     qty.Typed[qty.Density] // its spaces
	Section    qty.Typed[qty.Length]  // width of a section of the beam
	BeamGirth  qty.Typed[qty.Length]  // of the bare beam
}

// Peg is a peg of a warping board, measured to the right and down from any
// corner. The first is the start; the cross is made between the second and the
// third.
type Peg struct {
	Name string
	X, Y qty.Length
}

// HasBoard reports whether the warp is wound on a board.
func (w *Winding) HasBoard() bool { return w.UsualBoard || len(w.Pegs) > 0 }

// IsWound reports whether anything of the winding itself is said, beside the
// raddle and the beam.
func (w *Winding) IsWound() bool {
	return w.HasBoard() || w.Mill.Given() || w.Together.Given() || w.Bout.Given() || w.Peg.Given() || w.Tie.Given()
}
