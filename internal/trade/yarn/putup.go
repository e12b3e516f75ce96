package yarn

import (
	"strings"

	"sley/internal/trade/near"
	"sley/internal/trade/qty"
)

// Amount is yarn by its length or by its weight, whichever was measured; the
// other is 0.
type Amount struct {
	Length qty.Length `json:"length_nm,omitempty"`
	Mass   qty.Mass   `json:"mass_ng,omitempty"`
}

// ParseAmount reads a length or a weight of yarn: 1450 m, 8 oz. Faults: those
// of qty.ParseLength and qty.ParseMass, and amount.unit when the unit is of
// neither.
func ParseAmount(text string) (Amount, error) {
	a, rest, err := scanAmount(text)
	if err == nil && rest != "" {
		at := len([]rune(strings.TrimSuffix(text, rest)))
		err = &qty.Fault{Code: "amount.trailing", Read: rest, At: at}
	}
	if err != nil {
		return Amount{}, err
	}
	return a, nil
}

// scanAmount reads a leading length or weight and gives what follows it.
func scanAmount(text string) (a Amount, rest string, err error) {
	if mass, rest, err := qty.ScanMass(text); err == nil {
		return Amount{Mass: mass}, rest, nil
	}
	length, rest, err := qty.ScanLength(text)
	f, ok := err.(*qty.Fault)
	if ok && strings.HasSuffix(f.Code, "-unit") {
		return Amount{}, text, &qty.Fault{
			Code: "amount.unit", Read: f.Read, At: f.At,
			Args: map[string]any{"valid": []string{"m", "yd", "g", "kg", "oz", "lb"}},
		}
	}
	return Amount{Length: length}, rest, err
}

// IsZero reports whether there is no yarn.
func (a Amount) IsZero() bool { return a.Length == 0 && a.Mass == 0 }

// String writes the amount so that ParseAmount reads it back.
func (a Amount) String() string {
	if a.Mass != 0 {
		return a.Mass.String()
	}
	return a.Length.String()
}

// Holds gives the yarn's length in nanometres, exactly; 0 when it was weighed
// and the grist is unknown.
func (a Amount) Holds(g qty.LinearDensity) qty.Rat {
	if a.Length != 0 || g.IsZero() {
		return a.Length.Rat()
	}
	return g.Measure(a.Mass.Rat())
}

// Weighs gives the yarn's weight in nanograms, exactly; 0 when it was measured
// by length and the grist is unknown.
func (a Amount) Weighs(g qty.LinearDensity) qty.Rat {
	if a.Mass != 0 || g.IsZero() {
		return a.Mass.Rat()
	}
	return g.Weigh(a.Length.Rat())
}

// PutUp is how a yarn is sold: an amount in one package.
type PutUp struct {
	Amount
	Package string // one of PackageNames, or empty when not said
}

// PackageNames lists the packages that yarn is put up in.
func PackageNames() []string {
	return []string{"skein", "hank", "ball", "cone", "tube", "spool", "bobbin", "cake"}
}

// ParsePutUp reads an amount and the package it comes in: 8 oz, 100 g skein,
// 1344 yd cone, 1/2 lb cone. Faults, besides those of ParseAmount: putup.empty,
// putup.zero, and putup.package for an unknown package, with Args valid and
// near.
func ParsePutUp(text string) (PutUp, error) {
	if strings.TrimSpace(text) == "" {
		return PutUp{}, &qty.Fault{Code: "putup.empty"}
	}
	a, rest, err := scanAmount(text)
	if err != nil {
		return PutUp{}, err
	}
	if a.IsZero() {
		return PutUp{}, &qty.Fault{Code: "putup.zero", Read: text}
	}
	name := plain(rest)
	for _, p := range append(PackageNames(), "") {
		if name == p || name == p+"s" && p != "" {
			return PutUp{a, p}, nil
		}
	}
	return PutUp{}, unknownPackage(text, rest)
}

func unknownPackage(text, rest string) *qty.Fault {
	args := map[string]any{"valid": PackageNames()}
	if meant := near.To(rest, PackageNames()); meant != "" {
		args["near"] = meant
	}
	at := len([]rune(strings.TrimSuffix(text, rest)))
	return &qty.Fault{Code: "putup.package", Read: strings.TrimSpace(rest), At: at, Args: args}
}

// String writes the put-up so that ParsePutUp reads it back.
func (p PutUp) String() string { return strings.TrimSpace(p.Amount.String() + " " + p.Package) }
