package qty

import (
	"math/bits"
	"strconv"
	"strings"
)

// lengths are the units of length. Their sizes in metres are exact: the metre
// and its decimals by the SI, inch to mile by the international yard of 1959
// (NIST Special Publication 811, 2008 edition, appendix B.8).
var lengths = &scale{"length", []unit{
	{int64(Centimetre), metric, []string{"cm", "centimetre", "centimetres", "centimeter", "centimeters"}},
	{int64(Millimetre), metric, []string{"mm", "millimetre", "millimetres", "millimeter", "millimeters"}},
	{int64(Decimetre), metric, []string{"dm", "decimetre", "decimetres", "decimeter", "decimeters"}},
	{int64(Metre), metric, []string{"m", "metre", "metres", "meter", "meters"}},
	{int64(Kilometre), metric, []string{"km", "kilometre", "kilometres", "kilometer", "kilometers"}},
	{1000 * int64(Nanometre), metric, []string{
		"µm", "μm", "um", "micrometre", "micrometres", "micrometer", "micrometers",
	}}, // U+00B5, U+03BC
	{int64(Nanometre), metric, []string{"nm", "nanometre", "nanometres", "nanometer", "nanometers"}},
	{int64(Inch), imperial, []string{"in", "inch", "inches", `"`, "″", "”"}},
	{int64(Foot), imperial, []string{"ft", "foot", "feet", "'", "′", "’"}},
	{int64(Yard), imperial, []string{"yd", "yds", "yard", "yards"}},
	{int64(Mile), imperial, []string{"mi", "mile", "miles"}},
}}

// ParseLength reads a text that is one length: 38.1 cm, 4 1/2 yd, 15", or a
// sum in falling order of units of one system: 3 yd 4 1/2 in, 5'6", 1 m 20 cm.
// Units are read in any case. What is not a whole number of nanometres, such
// as 1/3 in, becomes the nearest whole number, once, after summing. The codes
// of its faults, beside those of ParseNumber:
//
//	length.no-unit       a bare number
//	length.unknown-unit  Args near: the nearest unit, when one is near
//	length.negative      gains are said in words, not by a sign
//	length.too-large     beyond 9.2 million kilometres
//	length.trailing      something stands after the length
func ParseLength(s string) (Length, error) { return parse(s, "length", (*reader).length) }

// ScanLength reads a leading length, as ParseLength does, and gives what
// follows it without leading space; after a fault, all of s.
func ScanLength(s string) (l Length, rest string, err error) {
	return scan(s, (*reader).length)
}

func (r *reader) length() (Length, *Fault) {
	r.space()
	from := r.pos
	nm, f := r.measure(lengths)
	if f != nil {
		return 0, f
	}
	l, ok := LengthOf(nm, Nearest)
	if !ok {
		return 0, r.fault("length.too-large", from, nil)
	}
	return l, nil
}

// String gives l exactly, in the first of these ways that can: a decimal of
// mm (below 1 cm), cm (below 1 m) or m, down to 1 µm; inches and 64ths; mm
// with six decimals; whole kilometres and nanometres. ParseLength reads it
// back to the same length, unless it is negative.
func (l Length) String() string {
	n := magnitude(int64(l))
	switch {
	case l < 0:
		return "-" + lengthText(n)
	case l == 0:
		return "0 cm"
	}
	return lengthText(n)
}

func lengthText(nm uint64) string {
	const sixtyFourth = uint64(Inch / 64)
	switch {
	case nm >= 1e18:
		return pair(nm, "km", "nm")
	case nm%1000 == 0 && nm < uint64(Centimetre):
		return decimalText(nm, uint64(Millimetre)) + " mm"
	case nm%1000 == 0 && nm < uint64(Metre):
		return decimalText(nm, uint64(Centimetre)) + " cm"
	case nm%1000 == 0:
		return decimalText(nm, uint64(Metre)) + " m"
	case nm%sixtyFourth == 0:
		return binaryText(nm/sixtyFourth, 64) + " in"
	case nm < 1e15:
		return decimalText(nm, uint64(Millimetre)) + " mm"
	}
	return pair(nm, "km", "nm")
}

// pair writes n as whole units of 10^12 and the small units left over.
func pair(n uint64, large, small string) string {
	text := strconv.FormatUint(n/1e12, 10) + " " + large
	if n%1e12 == 0 {
		return text
	}
	return text + " " + strconv.FormatUint(n%1e12, 10) + " " + small
}

// decimalText writes n/unit as a decimal; unit is a power of ten.
func decimalText(n, unit uint64) string {
	text := strconv.FormatUint(n/unit, 10)
	if n%unit == 0 {
		return text
	}
	part := strconv.FormatUint(unit+n%unit, 10)[1:] // the 1 of unit keeps the leading zeros
	return text + "." + strings.TrimRight(part, "0")
}

// binaryText writes n/parts as a whole number and a fraction in lowest terms;
// parts is a power of two.
func binaryText(n, parts uint64) string {
	whole, over := strconv.FormatUint(n/parts, 10), n%parts
	if over == 0 {
		return whole
	}
	twos := bits.TrailingZeros64(over)
	text := strconv.FormatUint(over>>twos, 10) + "/" + strconv.FormatUint(parts>>twos, 10)
	if n < parts {
		return text
	}
	return whole + " " + text
}
