package defaults

import (
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// Piece is a kind of piece that weavers make again and again, with the finished sizes it
// usually has. Metric and Imperial are each round in their own units and no conversions
// of one another.
type Piece struct {
	ID               string
	Count            int    // how many are usually woven together
	Weave            string // one of the names of warp.Weaves, where the kind says it; else empty
	Metric, Imperial PieceSize
	Source           string // id of a Source
}

// PieceSize is the finished size of a kind of piece in one kind of units.
type PieceSize struct {
	Length, Width SizeRange
	End           warp.Finish
	Depth         qty.Typed[qty.Length] // of the hem or the fringe; none: a plain cut edge
	TurnIn        qty.Typed[qty.Length] // of a hem
}

// SizeRange is a usual finished size, and from what to what such pieces are woven.
type SizeRange struct{ Usual, Low, High qty.Typed[qty.Length] }

// Pieces lists the kinds of pieces, in the order they are offered.
func Pieces() []Piece { return pieces }

// PieceNamed gives the kind of piece of that id.
func PieceNamed(id string) (Piece, bool) {
	for _, p := range pieces {
		if p.ID == id {
			return p, true
		}
	}
	return Piece{}, false
}

// Size gives the finished size in metric or in imperial units.
func (p Piece) Size(metric bool) PieceSize {
	if metric {
		return p.Metric
	}
	return p.Imperial
}
