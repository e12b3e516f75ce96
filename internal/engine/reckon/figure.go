// Package reckon works out every number of a warp from its plan: pure
// functions, the same plan gives the same numbers on every machine. Every
// number is a node with its state, its formula with the figures in it, and
// where it comes from; words and units are the faces' business.
package reckon

import "sley/internal/trade/qty"

// Kind says what a figure counts or measures, and so its base unit.
type Kind int

// The kinds. Lengths are in nanometres, weights in nanograms, densities in
// threads per nanometre, times in seconds, money in hundredths.
const (
	Number Kind = iota
	Ends
	Picks
	Dents
	Heddles
	Pieces
	Repeats
	Bobbins
	PutUps
	Bundles
	Changes
	Widths
	Length
	YarnLength
	Weight
	Density
	Share
	Money
	Seconds
	Grist  // length per weight: nanometres per nanogram
	RateOf // things per second
)

// Dimension is what a kind is made of: powers of length, weight, money and
// time. Counts have none.
type Dimension struct{ Length, Weight, Money, Time int }

// Dimension gives the kind's dimension.
func (k Kind) Dimension() Dimension {
	switch k {
	case Length, YarnLength:
		return Dimension{Length: 1}
	case Weight:
		return Dimension{Weight: 1}
	case Density:
		return Dimension{Length: -1}
	case Money:
		return Dimension{Money: 1}
	case Seconds:
		return Dimension{Time: 1}
	case RateOf:
		return Dimension{Time: -1}
	case Grist:
		return Dimension{Length: 1, Weight: -1}
	}
	return Dimension{}
}

// IsCount reports whether the kind counts whole things.
func (k Kind) IsCount() bool { return k >= Ends && k <= Changes }

// Figure is a value with its kind.
type Figure struct {
	Is       qty.Rat
	Kind     Kind
	Currency string // of Money
}

func length(l qty.Length) Figure      { return Figure{Is: l.Rat(), Kind: Length} }
func number(n int64) Figure           { return Figure{Is: qty.Int(n)} }
func count(n int, kind Kind) Figure   { return Figure{Is: qty.Int(int64(n)), Kind: kind} }
func share(s qty.Rat) Figure          { return Figure{Is: s, Kind: Share} }
func density(perNM qty.Rat) Figure    { return Figure{Is: perNM, Kind: Density} }
func figure(r qty.Rat, k Kind) Figure { return Figure{Is: r, Kind: k} }
