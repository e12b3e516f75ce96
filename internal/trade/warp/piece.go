package warp

import (
	"sley/internal/trade/order"
	"sley/internal/trade/qty"
)

// Finish is how one end of a piece is finished.
type Finish int

// The finishes. NoFinish is a plain cut edge.
const (
	NoFinish Finish = iota
	Hem
	Fringe
)

// End is one end of a piece.
type End struct {
	Finish Finish
	// Depth is the depth of the hem, or the finished length of the fringe.
	Depth qty.Typed[qty.Length]
	// TurnIn is the cloth folded inside the hem, in finished measure.
	TurnIn qty.Typed[qty.Length]
	// TurnedBefore says that the hem is turned before washing, so that what is
	// folded is read on the unwashed cloth.
	TurnedBefore bool
	// Twist and YarnShrinkage are shares lost by a fringe; Knot is what its
	// knot takes. Cut = finished / (1 - twist) / (1 - yarn shrinkage) + knot.
	Twist, YarnShrinkage qty.Typed[qty.Share]
	Knot                 qty.Typed[qty.Length]
	// Outside says of a hem that it is added after the length allowances, as
	// plain warp; Inside says of a fringe that it takes part in them as cloth
	// does. Both are the other way round unless said.
	Outside, Inside bool
}

// FarBorder is what the border at the far end of a piece is.
type FarBorder int

// The far borders.
const (
	Mirrored FarBorder = iota
	Repeated
	NoFarBorder
)

// Piece is one kind of piece on the warp.
type Piece struct {
	Name       string
	Count      int // how many, at least 1
	CountTyped string
	Length     Size // bare: finished, between hems and without fringe
	Width      Size // bare: finished
	First      End  // the end woven first
	Last       End
	// Motif is the picks of one treadling motif and Balance the picks that
	// balance it: the body has Motif k + Balance picks. A Motif of 0 or 1
	// leaves the picks free.
	Motif, Balance int
	MotifTyped     string
	// Border stands at the near end, before the body; its picks by yarn.
	Border      order.Order
	BorderPicks int // when only a number was written
	Far         FarBorder
	// Order is the order of picks of the body by yarn; it starts anew in each
	// piece. None given: the order of the weft.
	Order order.Order
	// Trim is warp allowed at each end of each piece for cutting and finishing.
	Trim qty.Typed[qty.Length]
	// CutOff says that the cloth is cut off and tied on again after the pieces
	// of this kind.
	CutOff bool
	// Panels are woven one after another and seamed side by side with Seam of
	// cloth taken by each edge of a seam, in finished measure. 0 or 1: none.
	Panels int
	Seam   qty.Typed[qty.Length]
	// Allowances of this kind alone, over those of the warp; lengths only.
	Allowances Allowances
}

// Borders gives the picks of the near border and of the far one.
func (p *Piece) Borders() (near, far int) {
	near = p.BorderPicks
	if !p.Border.IsZero() {
		near = p.Border.Total(1)
	}
	if p.Far == NoFarBorder {
		return near, 0
	}
	return near, near
}
