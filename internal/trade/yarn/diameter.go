package yarn

import (
	"math"

	"sley/internal/trade/qty"
)

// KValue is a published factor of Ashenhurst's rule for one class of yarn.
type KValue struct {
	ID     string
	K      qty.Rat
	Class  Class
	Spun   Spinning
	Source string
	// Default says that the value is the one taken for its class.
	Default bool
}

// Sources of the factors.
const (
	srcFaena = "Ashenhurst's formula, Complex Weavers Medieval Textiles study group, 1999"
	srcSGEO  = "School of SweetGeorgia, Avoid the wrap"
	srcK458  = "John T. Taylor, Cotton Weaving and Designing, 6th ed., web page 458"
)

// kTable is the published factors. They differ by 5 % for the same cotton (0.90
// to 0.95) and by 1 % for the same woollen, so K is each yarn's own figure to
// mend. The default for cotton, linen and silk lies within that spread; wool
// not said to be woollen-spun is taken as worsted, on whose 0.90 both sources
// agree, and of the two figures for woollen the closer one to 1/1.16, the
// factor of packed wraps, is taken. Fibres of no class here are taken as that
// article's firm yarns (k.firm.faena).
var kTable = []KValue{
	{ID: "k.cotton.taylor", K: qty.Frac(95, 100), Class: Cotton, Source: srcK458},
	{ID: "k.cotton.faena", K: qty.Frac(90, 100), Class: Cotton, Source: srcFaena},
	{ID: "k.cotton.sgeo", K: qty.Frac(91, 100), Class: Cotton, Source: srcSGEO, Default: true},
	{ID: "k.linen.sgeo", K: qty.Frac(91, 100), Class: Linen, Source: srcSGEO, Default: true},
	{ID: "k.silk.sgeo", K: qty.Frac(91, 100), Class: Silk, Source: srcSGEO, Default: true},
	{ID: "k.worsted.faena", K: qty.Frac(90, 100), Class: Wool, Spun: WorstedSpun, Source: srcFaena, Default: true},
	{ID: "k.worsted.sgeo", K: qty.Frac(90, 100), Class: Wool, Spun: WorstedSpun, Source: srcSGEO},
	{ID: "k.woollen.faena", K: qty.Frac(84, 100), Class: Wool, Spun: WoollenSpun, Source: srcFaena},
	{ID: "k.woollen.sgeo", K: qty.Frac(85, 100), Class: Wool, Spun: WoollenSpun, Source: srcSGEO, Default: true},
	{ID: "k.firm.faena", K: qty.Frac(90, 100), Class: Other, Source: srcFaena, Default: true},
}

// KValues lists the published factors, in a fixed order.
func KValues() []KValue { return append([]KValue(nil), kTable...) }

// DefaultK gives the factor taken for a class of yarn when the weaver gives
// none of her own.
func DefaultK(c Class, s Spinning) KValue {
	if c != Wool {
		s = UnsaidSpinning
	} else if s == UnsaidSpinning {
		s = WorstedSpun
	}
	for _, k := range kTable {
		if k.Default && k.Class == c && k.Spun == s {
			return k
		}
	}
	return kTable[len(kTable)-1]
}

// perInch is the step that a number of diameters is made whole to, so that
// every machine goes on with the same figure.
var perInch = qty.Frac(1, 1_000_000_000)

// Diameters gives how many threads of a grist lie side by side in an inch by
// Ashenhurst's rule, K × √(yd/lb), to the nearest 1e-9; 0 when the grist is
// unknown.
func Diameters(g qty.LinearDensity, k qty.Rat) qty.Rat {
	if g.IsZero() {
		return qty.Rat{}
	}
	return root(g.Per(qty.Yard, qty.Pound)).Mul(k).To(perInch, qty.Nearest)
}

// PeirceDiameters gives how many threads of a grist lie side by side in an
// inch by Peirce's rule, 28 × √Ne (specific volume 1.1 cm³/g), to the nearest
// 1e-9; 0 when the grist is unknown. Source: GATE Textile Engineering 2007,
// question 85; the rule is stated there for cotton.
func PeirceDiameters(g qty.LinearDensity) qty.Rat {
	if g.IsZero() {
		return qty.Rat{}
	}
	ne := SystemID("cotton").system().Number(g)
	return root(ne).Mul(qty.Int(28)).To(perInch, qty.Nearest)
}

// root gives the square root of n, exactly as every machine has it: both the
// nearest float64 and its root are correctly rounded by IEEE 754.
func root(n qty.Rat) qty.Rat { return qty.FromFloat(math.Sqrt(n.Float())) }

// kSquaredVolume is K² × v for v in cm³/g. A round yarn of T tex is
// √(4vT/1000π) millimetres thick and has 496,055/T yards in a pound, so
// K²v = 25.4² × 1000π / (4 × 496,055) = 1.0215.
var kSquaredVolume = qty.Frac(10215, 10000)

// SpecificVolume gives the volume in cm³ of one gram of yarn, air included,
// that a factor K of Ashenhurst's rule implies; exact, and 0 for K = 0.
func SpecificVolume(k qty.Rat) qty.Rat {
	if k.IsZero() {
		return qty.Rat{}
	}
	return kSquaredVolume.Div(k.Mul(k))
}

// KOfVolume gives the factor K of Ashenhurst's rule that a specific volume in
// cm³/g implies, to the nearest 1e-9; 0 unless it is above 0.
func KOfVolume(v qty.Rat) qty.Rat {
	if v.Sign() <= 0 {
		return qty.Rat{}
	}
	return root(kSquaredVolume.Div(v)).To(perInch, qty.Nearest)
}
