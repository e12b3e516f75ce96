package yarn

import (
	"strings"

	"sley/internal/trade/near"
	"sley/internal/trade/qty"
)

// WrapKind is how a yarn was wrapped about the ruler. Each rule of wraps
// belongs to one kind, and the wrong one is out by a factor of up to 2.7.
type WrapKind int

// The kinds. Loose is the handknitter's way, with light between the wraps;
// Touching lays them side by side; Packed pushes them together until no more
// go in.
const (
	UnsaidWraps WrapKind = iota
	Loose
	Touching
	Packed
)

// WrapKindNames lists the names of the kinds.
func WrapKindNames() []string { return []string{"loose", "touching", "packed"} }

// String gives the kind's name, or nothing when unsaid.
func (k WrapKind) String() string { return append([]string{""}, WrapKindNames()...)[k] }

// ParseWrapKind reads loose, touching or packed. The fault is wraps.kind, with
// Args near and valid.
func ParseWrapKind(text string) (WrapKind, error) {
	for k := Loose; k <= Packed; k++ {
		if plain(text) == k.String() {
			return k, nil
		}
	}
	args := map[string]any{"valid": WrapKindNames()}
	if meant := near.To(text, WrapKindNames()); meant != "" {
		args["near"] = meant
	}
	return UnsaidWraps, &qty.Fault{Code: "wraps.kind", Read: strings.TrimSpace(text), Args: args}
}

// Wraps is a count of wraps about a ruler. The zero value means that none was
// taken.
type Wraps struct {
	Kind  WrapKind
	Wraps qty.Density
}

// ParseWraps reads wraps with their kind: 28 wpi touching, 22 wpi packed, 5
// wraps/cm loose. Faults, besides those of qty.ParseDensity: wraps.kind when
// the kind is missing or unknown, with Args valid and near.
func ParseWraps(text string) (Wraps, error) {
	d, rest, err := qty.ScanDensity(text)
	if err != nil {
		return Wraps{}, err
	}
	kind, err := ParseWrapKind(rest)
	if f, ok := err.(*qty.Fault); ok {
		if rest == "" {
			f.Read = strings.TrimSpace(text)
			return Wraps{}, f
		}
		f.At = len([]rune(strings.TrimSuffix(text, rest)))
		return Wraps{}, f
	}
	return Wraps{kind, d}, nil
}

// IsZero reports whether no wraps were taken.
func (w Wraps) IsZero() bool { return w.Wraps.IsZero() }

// Equal reports whether two counts of wraps are written alike.
func (w Wraps) Equal(v Wraps) bool {
	return w.Kind == v.Kind && w.Wraps.Over == v.Wraps.Over && w.Wraps.Threads.Equal(v.Wraps.Threads)
}

// String writes the wraps so that ParseWraps reads them back.
func (w Wraps) String() string {
	if w.IsZero() {
		return ""
	}
	return w.Wraps.String() + " " + w.Kind.String()
}

// GristRange is a grist as far as wraps can tell: somewhere from Light to
// Heavy, by the rule of that id. Where the rule gives one figure, both are it.
type GristRange struct {
	Light, Heavy qty.LinearDensity
	Rule         string
}

// Exact reports whether the rule gives one figure.
func (r GristRange) Exact() bool { return r.Light.NGPerNM().Equal(r.Heavy.NGPerNM()) }

// Grist gives what the wraps of a yarn of that class say of its grist; false
// when no rule fits. Rules:
//
//   - packed, "wraps.packed": yd/lb = (m × wraps per inch)², m as Packed gives.
//   - touching, "wraps.touching": the wraps are from 0.7 to 1 of the diameters
//     of Ashenhurst's rule with the class's default K (0.7: Osterkamp; 1: a
//     diameter is 1/wpi). A range.
//   - loose, "wraps.loose": the knitter's wraps are about half the packed ones
//     (gansey.blogspot.com, November 2011), or 0.29 × √(yd/lb) where a table of
//     loose wraps (bellaonline.com, art34962) has them fewest. A range, of
//     which those are the ends.
func (w Wraps) Grist(c Class, s Spinning) (GristRange, bool) {
	n := w.Wraps.Per(qty.Inch)
	m, known := packedFactor(c, s)
	switch {
	case n.Sign() <= 0:
		return GristRange{}, false
	case w.Kind == Packed && known:
		return gristRange("wraps.packed", n.Mul(m), n.Mul(m)), true
	case w.Kind == Touching:
		d := n.Div(DefaultK(c, s).K)
		return gristRange("wraps.touching", d, d.Div(rulerShare)), true
	case w.Kind == Loose && known:
		return gristRange("wraps.loose", n.Mul(m).Mul(qty.Int(2)), n.Div(fewestLoose)), true
	}
	return GristRange{}, false
}

var (
	// rulerShare is how much of Ashenhurst's diameters a weaver's ruler shows
	// (Peggy Osterkamp, weaving.cc, January 2004).
	rulerShare = qty.Frac(7, 10)
	// fewestLoose is wraps ÷ √(yd/lb) where the loose-wrap table of
	// bellaonline.com, art34962, has the fewest.
	fewestLoose = qty.Frac(29, 100)
)

// RulerShare gives rulerShare to those who go from diameters to wraps.
func RulerShare() qty.Rat { return rulerShare }

// packedFactor gives m of packed wraps (gansey.blogspot.com, November 2011):
// 1.07 cotton and silk, 1.10 worsted, 1.16 woollen. Linen is taken as cotton,
// with which the tables of K put it; wool not said to be woollen-spun as
// worsted. Other fibres have no published factor.
func packedFactor(c Class, s Spinning) (qty.Rat, bool) {
	switch {
	case c == Cotton || c == Silk || c == Linen:
		return qty.Frac(107, 100), true
	case c == Wool && s == WoollenSpun:
		return qty.Frac(116, 100), true
	case c == Wool:
		return qty.Frac(110, 100), true
	}
	return qty.Rat{}, false
}

// gristRange makes a range of the square roots of yards per pound.
func gristRange(rule string, heavy, light qty.Rat) GristRange {
	of := func(root qty.Rat) qty.LinearDensity {
		return SystemID("ypp").system().Grist(root.Mul(root))
	}
	return GristRange{Light: of(light), Heavy: of(heavy), Rule: rule}
}

// Diameters gives how many threads lie side by side in an inch, exactly, and
// the rule: "wraps.diameter", a diameter is 1/wpi (Gist Yarn, how-to article
// on wraps). Only touching wraps show it.
func (w Wraps) Diameters() (perInch qty.Rat, rule string, ok bool) {
	if w.Kind != Touching || w.IsZero() {
		return qty.Rat{}, "", false
	}
	return w.Wraps.Per(qty.Inch), "wraps.diameter", true
}

// PlainSett gives half the touching wraps, the sett of a balanced plain weave,
// by the rule "wraps.plain" (Gist Yarn, how-to article on wraps).
func (w Wraps) PlainSett() (sett qty.Density, rule string, ok bool) {
	return w.sett(qty.Frac(1, 2)), "wraps.plain", w.Kind == Touching && !w.IsZero()
}

// TwillSett gives two thirds of the touching wraps, the sett of a balanced 2/2
// twill, by the rule "wraps.twill" (Gist Yarn, how-to article on wraps).
func (w Wraps) TwillSett() (sett qty.Density, rule string, ok bool) {
	return w.sett(qty.Frac(2, 3)), "wraps.twill", w.Kind == Touching && !w.IsZero()
}

// ClosestPlain gives the sett at which plain weave is as close as it can be,
// from touching wraps: half of them ÷ 0.7, by the rule "wraps.closest" (Peggy
// Osterkamp, weaving.cc, January 2004).
func (w Wraps) ClosestPlain() (sett qty.Density, rule string, ok bool) {
	return w.sett(qty.Frac(1, 2).Div(rulerShare)), "wraps.closest", w.Kind == Touching && !w.IsZero()
}

func (w Wraps) sett(share qty.Rat) qty.Density {
	return qty.Density{Threads: w.Wraps.Threads.Mul(share), Over: w.Wraps.Over}
}
