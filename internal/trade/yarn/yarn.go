package yarn

import (
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
)

// Yarn is everything a weaver wrote down of one yarn. Zero fields were not
// said.
type Yarn struct {
	Name        string
	Count       qty.Typed[Count]
	Skein       Skein
	Wraps       qty.Typed[Wraps]
	Composition qty.Typed[Composition]
	PutUp       qty.Typed[PutUp]
	Price       qty.Typed[qty.Money] // for PriceMass of yarn, or for one put-up
	PriceMass   qty.Mass             // 0: the price is that of one put-up
	Colour      Colour
	Stock       qty.Typed[Amount] // in hand
	Handspun    bool
	Samples     []Sample
	DiameterK   qty.Rat // of Ashenhurst's rule; 0: the default of its class
}

// Basis says what a grist was taken from.
type Basis int

// The bases, in the order they are trusted: a skein of this very yarn before
// the count on its label, and packed wraps last.
const (
	NoBasis Basis = iota
	FromSkein
	FromCount
	FromWraps
)

// String gives the basis's name, or nothing when there is none.
func (b Basis) String() string { return [...]string{"", "skein", "count", "wraps"}[b] }

// Grist gives the yarn's grist, exactly; unknown when neither skein, count nor
// packed wraps say it. Basis tells which of them did.
func (y Yarn) Grist() qty.LinearDensity {
	g, _ := y.grist()
	return g
}

// Basis says what Grist is taken from.
func (y Yarn) Basis() Basis {
	_, b := y.grist()
	return b
}

func (y Yarn) grist() (qty.LinearDensity, Basis) {
	if g := y.Skein.Grist(); !g.IsZero() {
		return g, FromSkein
	}
	if g := y.Count.Is.Grist(); !g.IsZero() {
		return g, FromCount
	}
	r, ok := y.Wraps.Is.Grist(y.Class(), y.Spun())
	if ok && r.Exact() && !y.Handspun {
		return r.Heavy, FromWraps
	}
	return qty.LinearDensity{}, NoBasis
}

// Class gives the class of the yarn's main fibre, or UnsaidClass.
func (y Yarn) Class() Class {
	f, _ := y.Composition.Is.Main()
	return f.Class
}

// Spun says how the yarn's main fibre was spun, as far as known.
func (y Yarn) Spun() Spinning {
	f, _ := y.Composition.Is.Main()
	return f.Spun
}

// K gives the factor of Ashenhurst's rule for this yarn: its own, or the
// default of its class with the id of that default.
func (y Yarn) K() (k qty.Rat, id string) {
	if y.DiameterK.Sign() > 0 {
		return y.DiameterK, ""
	}
	d := DefaultK(y.Class(), y.Spun())
	return d.K, d.ID
}

// Diameters gives how many threads of the yarn lie side by side in an inch by
// Ashenhurst's rule; 0 when its grist is unknown.
func (y Yarn) Diameters() qty.Rat {
	k, _ := y.K()
	return Diameters(y.Grist(), k)
}

// Holds gives the length in nanometres in one put-up, exactly; 0 when it
// cannot be known.
func (y Yarn) Holds() qty.Rat { return y.PutUp.Is.Holds(y.Grist()) }

// InStock gives the length in nanometres in hand, exactly; 0 when it cannot be
// known.
func (y Yarn) InStock() qty.Rat { return y.Stock.Is.Holds(y.Grist()) }

// The factors K that a real yarn can have: from a loose lofty handspun to a
// thread pressed as hard as its own fibre (K² = 1.0215 × 1.5 g/cm³).
var (
	leastK = qty.Frac(1, 2)
	mostK  = qty.Frac(124, 100)
)

// tellApart is how far a measured skein may be from the label's count before
// the weaver is told: a tenth. Common practice, no source.
var tellApart = qty.Frac(1, 10)

// Validate adds what is wrong with the yarn and what makes it uncertain, at
// fields below path. Errors: those of Skein.Validate, yarn.diameter-k (least,
// most). Warnings: those of Skein.ValidateHandspun, yarn.handspun-unmeasured,
// yarn.grist-differs (measured, labelled), yarn.price-put-up. Note:
// count.either (taken, other).
func (y Yarn) Validate(path string, l *problem.List) {
	if !y.Skein.IsZero() {
		y.Skein.Validate(path+".skein", l)
	}
	if y.DiameterK.Sign() != 0 && (y.DiameterK.Less(leastK) || mostK.Less(y.DiameterK)) {
		l.Fail("yarn.diameter-k", path+".diameter-constant", y.DiameterK.String(),
			problem.Args{"least": leastK, "most": mostK})
	}
	if y.Price.Given() && y.PriceMass == 0 && !y.PutUp.Given() {
		l.Warn("yarn.price-put-up", path+".price", y.Price.Typed, nil)
	}
	y.validateHandspun(path, l)
	y.validateCount(path, l)
}

func (y Yarn) validateHandspun(path string, l *problem.List) {
	switch {
	case !y.Handspun:
	case y.Skein.IsZero():
		l.Warn("yarn.handspun-unmeasured", path+".skein", "", nil)
	default:
		y.Skein.ValidateHandspun(path+".skein", l)
	}
}

func (y Yarn) validateCount(path string, l *problem.List) {
	if other, ok := y.Count.Is.Other(); ok && !sameGrist(y.Count.Is.Grist(), other.Grist()) {
		l.Tell("count.either", path+".count", y.Count.Typed,
			problem.Args{"taken": y.Count.Is.Grist(), "other": other.String()})
	}
	measured, labelled := y.Skein.Grist(), y.Count.Is.Grist()
	if measured.IsZero() || labelled.IsZero() {
		return
	}
	apart := measured.NGPerNM().Div(labelled.NGPerNM()).Sub(qty.Int(1)).Abs()
	if tellApart.Less(apart) {
		l.Warn("yarn.grist-differs", path+".count", y.Count.Typed,
			problem.Args{"measured": measured, "labelled": labelled})
	}
}

func sameGrist(a, b qty.LinearDensity) bool { return a.NGPerNM().Equal(b.NGPerNM()) }
