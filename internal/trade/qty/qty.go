// Package qty holds the quantities of the loom: lengths, weights, densities,
// grists, shares and money. Lengths and weights that are entered, stored or
// counted are integers of a small unit; densities, shares and everything
// computed are exact rationals. The type carries the unit, and nothing rounds
// unless the rounding is named.
package qty

import "fmt"

// Fault says why a text could not be read as a quantity. It is an error for
// Go's sake; faces turn its code into words.
type Fault struct {
	Code string // "length.no-unit"
	Read string // the part that could not be read
	At   int    // characters into the text where Read begins
	Args map[string]any
}

// Error gives the code and the text; people see the words kept for the code.
func (f *Fault) Error() string { return fmt.Sprintf("%s: %q", f.Code, f.Read) }

// Length is a distance in whole nanometres: exact for millimetre decimals,
// 1/64 inch and yards, to ±9.2 million kilometres.
type Length int64

// Units of length. An inch is 25.4 mm and a yard 0.9144 m exactly
// (international yard and pound agreement, 1959).
const (
	Nanometre  Length = 1
	Millimetre        = 1_000_000 * Nanometre
	Centimetre        = 10 * Millimetre
	Decimetre         = 10 * Centimetre
	Metre             = 100 * Centimetre
	Kilometre         = 1000 * Metre
	Inch              = 25_400_000 * Nanometre
	Foot              = 12 * Inch
	Yard              = 3 * Foot
	Mile              = 1760 * Yard
)

// Rat gives l in nanometres, exactly.
func (l Length) Rat() Rat { return Int(int64(l)) }

// In gives how many units fit into l, exactly.
func (l Length) In(unit Length) Rat { return Frac(int64(l), int64(unit)) }

// LengthOf gives nm nanometres made whole by r, and false beyond the range.
func LengthOf(nm Rat, r Rounding) (Length, bool) {
	n, ok := nm.Int64(r)
	return Length(n), ok
}

// Mass is a weight in whole nanograms, to ±9,200 tonnes.
type Mass int64

// Units of weight. A pound is 453.59237 g exactly (1959), 16 ounces, 7,000
// grains.
const (
	Nanogram  Mass = 1
	Milligram      = 1_000_000 * Nanogram
	Gram           = 1000 * Milligram
	Kilogram       = 1000 * Gram
	Pound          = 453_592_370_000 * Nanogram
	Ounce          = 28_349_523_125 * Nanogram
	Grain          = 64_798_910 * Nanogram
)

// Rat gives m in nanograms, exactly.
func (m Mass) Rat() Rat { return Int(int64(m)) }

// In gives how many units fit into m, exactly.
func (m Mass) In(unit Mass) Rat { return Frac(int64(m), int64(unit)) }

// MassOf gives ng nanograms made whole by r, and false beyond the range.
func MassOf(ng Rat, r Rounding) (Mass, bool) {
	n, ok := ng.Int64(r)
	return Mass(n), ok
}

// Density is a number of threads (or dents, or wraps) over a length, kept as
// typed: 24 over 1 in and 15 over 2 cm both stay what they are.
type Density struct {
	Threads Rat
	Over    Length
}

// IsZero reports whether no density was given.
func (d Density) IsZero() bool { return d.Over == 0 || d.Threads.IsZero() }

// PerNM gives threads per nanometre, exactly; 0 when none was given.
func (d Density) PerNM() Rat {
	if d.Over == 0 {
		return Rat{}
	}
	return d.Threads.Div(d.Over.Rat())
}

// Per gives threads per unit, exactly.
func (d Density) Per(unit Length) Rat { return d.PerNM().Mul(unit.Rat()) }

// In gives the threads in a width, made whole by r.
func (d Density) In(width Length, r Rounding) int {
	return d.PerNM().Mul(width.Rat()).Count(r)
}

// Cmp compares two densities by cross-multiplying.
func (d Density) Cmp(e Density) int { return d.PerNM().Cmp(e.PerNM()) }

// LinearDensity is a weight over a length of yarn, held exactly: its grist.
// The zero value means unknown.
type LinearDensity struct{ ngPerNM Rat }

// NewLinearDensity gives the grist of a yarn of which a length of nm
// nanometres weighs ng nanograms. It panics when nm is 0.
func NewLinearDensity(ng, nm Rat) LinearDensity { return LinearDensity{ng.Div(nm)} }

// Tex gives the grist of a yarn of that many grams per 1,000 metres.
func Tex(tex Rat) LinearDensity { return LinearDensity{tex.Div(Int(1000))} }

// IsZero reports whether the grist is unknown.
func (g LinearDensity) IsZero() bool { return g.ngPerNM.IsZero() }

// Tex gives grams per 1,000 metres, exactly.
func (g LinearDensity) Tex() Rat { return g.ngPerNM.Mul(Int(1000)) }

// NGPerNM gives nanograms per nanometre, which is grams per metre.
func (g LinearDensity) NGPerNM() Rat { return g.ngPerNM }

// Per gives how many units of length weigh one unit of mass: yards per pound,
// metres per kilogram. It panics when the grist is unknown.
func (g LinearDensity) Per(unit Length, mass Mass) Rat {
	return mass.Rat().Div(g.ngPerNM).Div(unit.Rat())
}

// Weigh gives the nanograms that nm nanometres of the yarn weigh.
func (g LinearDensity) Weigh(nm Rat) Rat { return g.ngPerNM.Mul(nm) }

// Measure gives the nanometres of yarn that weigh ng nanograms. It panics when
// the grist is unknown.
func (g LinearDensity) Measure(ng Rat) Rat { return ng.Div(g.ngPerNM) }

// Share is a part of a whole: 8 % is 8/100. Of what it is a share, the field
// that holds it says.
type Share struct{ Of Rat }

// Percent gives p hundredths.
func Percent(p Rat) Share { return Share{p.Div(Int(100))} }

// Percent gives the share in hundredths.
func (s Share) Percent() Rat { return s.Of.Mul(Int(100)) }

// Money is an amount in hundredths of a currency. Amounts of different
// currencies are never added.
type Money struct {
	Minor    Rat    // hundredths, exact
	Currency string // as written: EUR, USD, kr
}

// Rate is a number of things done in a stretch of time, as seconds each.
type Rate struct {
	Things Rat
	Over   int64 // seconds
}

// IsZero reports whether no rate was given.
func (r Rate) IsZero() bool { return r.Over == 0 || r.Things.IsZero() }

// Seconds gives the time that n things take.
func (r Rate) Seconds(n Rat) Rat { return n.Mul(Int(r.Over)).Div(r.Things) }

// Typed is a value beside the text it was typed as. An empty text means that
// nobody typed it.
type Typed[T any] struct {
	Is    T
	Typed string
}

// Given reports whether a person typed the value.
func (t Typed[T]) Given() bool { return t.Typed != "" }
