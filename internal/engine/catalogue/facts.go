package catalogue

import (
	"sley/internal/engine/structure"
	"sley/internal/trade/draft"
	"sley/internal/trade/qty"
)

// Facts are what is computed of a draft as a repeat.
type Facts struct {
	Shafts, Treadles        int
	Ends, Picks             int // of the draft, orders of colours and all
	RepeatEnds, RepeatPicks int // of the weave
	// The longest floats, by the thread that floats: on the front and on the back.
	WarpFront, WarpBack, WeftFront, WeftBack int
	Balance                                  structure.Balance
	Hangs                                    bool
	Woven                                    int // layers of cloth
	// Interlaces is how often a pick goes from one face to the other over so many ends.
	Interlaces, Over int
}

// FactsOf computes them.
func FactsOf(d *draft.Draft) Facts {
	a := structure.OfDraft(d)
	long := func(way structure.Way, face structure.Face) int { return a.Floats(way, face).Longest }
	return Facts{
		Shafts: d.Shafts, Treadles: d.Treadles,
		Ends: d.Ends(), Picks: d.Picks(),
		RepeatEnds: a.RepeatEnds, RepeatPicks: a.RepeatPicks,
		WarpFront: long(structure.Warp, structure.Front), WarpBack: long(structure.Warp, structure.Back),
		WeftFront: long(structure.Weft, structure.Front), WeftBack: long(structure.Weft, structure.Back),
		Balance: a.Balance(), Hangs: a.HangsTogether(), Woven: a.Woven(),
		Interlaces: a.Interlacing(structure.Weft).All, Over: a.Picks * a.Ends,
	}
}

// Basis says what the sett of a structure goes by.
type Basis int

// The bases. Each is a share of the closest sett of plain weave in the same yarn.
const (
	// ByInterlacings counts what takes room: ends, and passages of the weft between
	// them. T. R. Ashenhurst's rule, as J. T. Taylor gives it (Cotton Weaving and
	// Designing, 6th ed. 1909: 103 ends of plain weave are as firm as 137 1/3 of a 2/2
	// twill).
	ByInterlacings Basis = iota
	AsPlain              // as plain weave, since its ground is: common practice, no source
	Layer                // plain weave's for each layer: common practice, no source
	TwoLayers            // twice plain weave's, for two layers that are joined: common practice, no source
	WarpFaced            // twice plain weave's, so that the ends cover the weft: common practice, no source
	WeftFaced            // half of plain weave's, so that the weft covers the ends: common practice, no source
)

// String gives the basis's plain name.
func (b Basis) String() string {
	return [...]string{"by-interlacings", "as-plain", "layer", "two-layers", "warp-faced", "weft-faced"}[b]
}

// Source says where the rule of a basis is from.
func (b Basis) Source() string {
	if b == ByInterlacings {
		return "ends and interlacings: Ashenhurst, as in J. T. Taylor, Cotton Weaving and Designing, 6th ed. (1909)"
	}
	return "common practice, no source"
}

// SettFactor gives the closest sett of a draft of this entry as a share of the
// closest sett of plain weave, 1 for plain weave itself.
func (e *Entry) SettFactor(f Facts) qty.Rat {
	switch e.Sett {
	case AsPlain:
		return qty.Frac(1, 1)
	case Layer:
		return qty.Frac(int64(max(f.Woven, 1)), 1)
	case WarpFaced, TwoLayers:
		return qty.Frac(2, 1)
	case WeftFaced:
		return qty.Frac(1, 2)
	}
	// Ends over ends and interlacings, which is a half in plain weave.
	return qty.Frac(2*int64(f.Over), int64(f.Over+f.Interlaces))
}
