package yarn

import (
	"slices"
	"strings"
	"unicode/utf8"

	"sley/internal/trade/qty"
)

// ParsePrice reads what a yarn costs: 12.50 EUR per 100 g, 30 EUR/kg, 8.20 EUR
// each, 8.20 EUR per skein. The weight is 0 when the price is that of one
// put-up. Faults, besides those of qty.ParseMoney and qty.ParseMass: price.per
// when it is not said for what the money is, with Args valid; price.negative;
// price.zero-mass.
func ParsePrice(text string) (qty.Money, qty.Mass, error) {
	money, per := cutPer(text)
	m, err := qty.ParseMoney(money)
	switch {
	case err != nil:
		return qty.Money{}, 0, err
	case m.Minor.Sign() < 0:
		return qty.Money{}, 0, &qty.Fault{Code: "price.negative", Read: strings.TrimSpace(text)}
	case per == "":
		return qty.Money{}, 0, &qty.Fault{
			Code: "price.per", Read: strings.TrimSpace(text),
			Args: map[string]any{"valid": []string{"each", "per kg", "per lb", "per 100 g"}},
		}
	case per == "each", slices.Contains(PackageNames(), per):
		return m, 0, nil
	}
	mass, err := parsePer(text, per)
	if err != nil {
		return qty.Money{}, 0, err
	}
	return m, mass, nil
}

// cutPer splits a price into the money and what it is for, which is empty when
// it is not said.
func cutPer(text string) (money, per string) {
	text = strings.TrimSpace(text)
	if money, ok := strings.CutSuffix(text, " each"); ok {
		return money, "each"
	}
	if money, per, ok := strings.Cut(text, " per "); ok {
		return money, strings.TrimSpace(per)
	}
	i := strings.LastIndex(text, "/")
	if i < 0 {
		return text, ""
	}
	if _, err := qty.ParseMoney(text[:i]); err != nil { // the slash of a fraction
		return text, ""
	}
	return text[:i], strings.TrimSpace(text[i+1:])
}

// parsePer reads the weight that a price is for: kg, 100 g.
func parsePer(text, per string) (qty.Mass, error) {
	before := 0
	if numberStart(per) != 0 {
		per, before = "1 "+per, 2
	}
	mass, err := qty.ParseMass(per)
	if f, ok := err.(*qty.Fault); ok {
		out := *f
		out.At += utf8.RuneCountInString(text) - utf8.RuneCountInString(per[before:]) - before
		return 0, &out
	}
	if mass <= 0 {
		return 0, &qty.Fault{Code: "price.zero-mass", Read: per}
	}
	return mass, nil
}
