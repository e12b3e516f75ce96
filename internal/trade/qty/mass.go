package qty

// masses are the units of weight. Their sizes are exact: the gram and its
// decimals by the SI, the pound of 1959 with its 16 ounces and 7,000 grains
// (NIST Special Publication 811, 2008 edition, appendix B.8).
var masses = &scale{"mass", []unit{
	{int64(Gram), metric, []string{"g", "gram", "grams", "gramme", "grammes"}},
	{int64(Kilogram), metric, []string{"kg", "kilogram", "kilograms", "kilogramme", "kilogrammes"}},
	{int64(Milligram), metric, []string{"mg", "milligram", "milligrams"}},
	{1000 * int64(Nanogram), metric, []string{"µg", "μg", "ug", "microgram", "micrograms"}}, // U+00B5, U+03BC
	{int64(Nanogram), metric, []string{"ng", "nanogram", "nanograms"}},
	{int64(Pound), imperial, []string{"lb", "lbs", "pound", "pounds"}},
	{int64(Ounce), imperial, []string{"oz", "ounce", "ounces"}},
	{int64(Grain), imperial, []string{"gr", "grain", "grains"}},
}}

// ParseMass reads a text that is one weight: 250 g, 8.8 oz, 1/2 lb, or a sum
// in falling order of units of one system: 1 lb 4 oz. Units are read in any
// case; gr is grains, never grams. What is not a whole number of nanograms,
// such as 1/4 oz, becomes the nearest whole number, once, after summing. The
// codes of its faults, beside those of ParseNumber:
//
//	mass.no-unit       a bare number
//	mass.unknown-unit  Args near: the nearest unit, when one is near
//	mass.negative      a weight has no sign
//	mass.too-large     beyond 9,200 tonnes
//	mass.trailing      something stands after the weight
func ParseMass(s string) (Mass, error) { return parse(s, "mass", (*reader).mass) }

// ScanMass reads a leading weight, as ParseMass does, and gives what follows
// it without leading space; after a fault, all of s.
func ScanMass(s string) (m Mass, rest string, err error) {
	return scan(s, (*reader).mass)
}

func (r *reader) mass() (Mass, *Fault) {
	r.space()
	from := r.pos
	ng, f := r.measure(masses)
	if f != nil {
		return 0, f
	}
	m, ok := MassOf(ng, Nearest)
	if !ok {
		return 0, r.fault("mass.too-large", from, nil)
	}
	return m, nil
}

// String gives m exactly, in the first of these ways that can: a decimal of
// mg (below 1 g), g (below 1 kg) or kg, down to 0.1 mg; pounds and 16ths;
// ounces and 64ths, to the nanogram they are read as; mg with six decimals;
// whole kilograms and nanograms. ParseMass reads it back to the same weight,
// unless it is negative.
func (m Mass) String() string {
	n := magnitude(int64(m))
	switch {
	case m < 0:
		return "-" + massText(n)
	case m == 0:
		return "0 g"
	}
	return massText(n)
}

func massText(ng uint64) string {
	const tenthMilligram = uint64(Milligram / 10)
	switch {
	case ng >= 1e18:
		return pair(ng, "kg", "ng")
	case ng%tenthMilligram == 0 && ng < uint64(Gram):
		return decimalText(ng, uint64(Milligram)) + " mg"
	case ng%tenthMilligram == 0 && ng < uint64(Kilogram):
		return decimalText(ng, uint64(Gram)) + " g"
	case ng%tenthMilligram == 0:
		return decimalText(ng, uint64(Kilogram)) + " kg"
	case ng%uint64(Ounce) == 0 && ng >= uint64(Pound):
		return binaryText(ng/uint64(Ounce), 16) + " lb"
	}
	return smallMassText(ng)
}

func smallMassText(ng uint64) string {
	parts, ok := ounceParts(ng)
	switch {
	case ok:
		return binaryText(parts, 64) + " oz"
	case ng < 1e15:
		return decimalText(ng, uint64(Milligram)) + " mg"
	}
	return pair(ng, "kg", "ng")
}

// ounceParts gives the 64ths of an ounce that are read as ng nanograms, and
// false when no whole number of them is.
func ounceParts(ng uint64) (parts uint64, ok bool) {
	part := Ounce.Rat().Div(Int(64))
	n, _ := Int(int64(ng)).Div(part).Int64(Nearest)
	back, _ := MassOf(part.Mul(Int(n)), Nearest)
	return uint64(n), back == Mass(ng)
}
