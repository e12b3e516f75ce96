package qty

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

var lengthsRead = map[string]Length{
	"38.1 cm": 381 * Millimetre, "38,1cm": 381 * Millimetre, "381 MM": 381 * Millimetre,
	"3 dm": 30 * Centimetre, "2 m": 2 * Metre, "2 M": 2 * Metre, "1.5 km": 1500 * Metre,
	"7 nm": 7, "7 µm": 7000, "7 μm": 7000, "7 um": 7000, "0 cm": 0, "-0 cm": 0,
	"2 metres": 2 * Metre, "1 meter": Metre, "3 centimetres": 3 * Centimetre, "4 millimeters": 4 * Millimetre,
	"15 in": 15 * Inch, "15 inches": 15 * Inch, "1 Inch": Inch, `15"`: 15 * Inch, "15″": 15 * Inch, "15”": 15 * Inch,
	"4 1/2 yd": 4*Yard + 18*Inch, "4½ yards": 4*Yard + 18*Inch, "½ yd": 18 * Inch, "2 yds": 2 * Yard,
	"1 mi": Mile, "2 miles": 2 * Mile, "1 foot": Foot, "3 feet": Yard, "3'": Yard, "3′": Yard, "3’": Yard,
	"1/64 in": 396_875, "63/64″": 63 * 396_875,
	"15\u2009in": 15 * Inch, "15\u202fin": 15 * Inch, "15\u00a0in": 15 * Inch, "  15 in\n": 15 * Inch,
	"3 yd 4 1/2 in": 3*Yard + 4*Inch + Inch/2, "5 ft 6 in": 66 * Inch, "5ft6in": 66 * Inch,
	"5'6\"": 66 * Inch, "5′ 6½″": 66*Inch + Inch/2, "1 mi 2 yd 1 ft 3 in": Mile + 2*Yard + 15*Inch,
	"1 m 20 cm": 120 * Centimetre, "1 m 2 dm 3 cm 4 mm": 1234 * Millimetre, "1 km 1 nm": Kilometre + 1,
	// Not whole nanometres: 8,466,666.67 and 16,933,333.33 and 0.5, which goes up.
	"1/3 in": 8_466_667, "2/3 in": 16_933_333, "0.5 nm": 1, "0.4 nm": 0,
	// 33,866,666.67 and 8,466,666.67, rounded once after summing.
	"1/9 ft 1/3 in":             42_333_333,
	"9223372 km":                9_223_372 * Kilometre,
	"9223372 km 36854775807 nm": math.MaxInt64,
}

var lengthsRejected = []rejected{
	{"", "number.missing", "", 0, nil},
	{"cm", "number.missing", "cm", 0, nil},
	{"12", "length.no-unit", "12", 0, nil},
	{"  4 1/2  ", "length.no-unit", "4 1/2", 2, nil},
	{"5 ft 6", "length.no-unit", "6", 5, nil},
	{"½′ 6", "length.no-unit", "6", 3, nil},
	{"1 234 yd", "length.no-unit", "1", 0, nil},
	{"12-inch", "length.no-unit", "12", 0, nil},
	{"12 ich", "length.unknown-unit", "ich", 3, map[string]any{"near": "inch"}},
	{"1½ yrd", "length.unknown-unit", "yrd", 3, map[string]any{"near": "yd"}},
	{"½\u202fcentimers", "length.unknown-unit", "centimers", 2, map[string]any{"near": "centimetre"}},
	{"12 x", "length.unknown-unit", "x", 3, nil},
	{"12 oz", "length.unknown-unit", "oz", 3, nil}, // a change of every letter is not a slip
	{"12 %", "length.unknown-unit", "%", 3, nil},
	{"12 furlongs", "length.unknown-unit", "furlongs", 3, nil},
	{"1e3 cm", "length.unknown-unit", "e", 1, nil},
	{"3 yd 4 foo", "length.unknown-unit", "foo", 7, map[string]any{"near": "foot"}},
	{"-5 cm", "length.negative", "-5 cm", 0, nil},
	{" −5 cm", "length.negative", "−5 cm", 1, nil},
	{"5 ft -6 in", "length.negative", "-6 in", 5, nil},
	{"1,234 m", "number.grouped", "1,234", 0, map[string]any{"decimal": "1.234", "whole": "1234"}},
	{"5′ 1,234″", "number.grouped", "1,234", 3, map[string]any{"decimal": "1.234", "whole": "1234"}},
	{"4-1/2 in", "number.hyphen", "4-1/2", 0, map[string]any{"reading": "4 1/2"}},
	{"9223373 km", "length.too-large", "9223373 km", 0, nil},
	{"9223372 km 36854775808 nm", "length.too-large", "9223372 km 36854775808 nm", 0, nil},
	{"6 in 3 ft", "length.trailing", "3 ft", 5, nil},
	{"6 in 3 in", "length.trailing", "3 in", 5, nil},
	{"5 ft 20 cm", "length.trailing", "20 cm", 5, nil},
	{"15″ wide", "length.trailing", "wide", 4, nil},
	{"12 in.", "length.trailing", ".", 5, nil},
}

func TestParseLength(t *testing.T) {
	for text, want := range lengthsRead {
		if got, err := ParseLength(text); err != nil || got != want {
			t.Errorf("%q: got %d nm, %v; want %d nm", text, got, err, want)
		}
	}
	rejects(t, ParseLength, lengthsRejected)
}

func TestScanLength(t *testing.T) {
	for text, want := range map[string]struct {
		l    Length
		rest string
	}{
		"3 yd of cotton":      {3 * Yard, "of cotton"},
		"3 yd 4 in   wide, ½": {3*Yard + 4*Inch, "wide, ½"},
		"5 in 3 in per yd":    {5 * Inch, "3 in per yd"},
		"30 in 5 ends":        {30 * Inch, "5 ends"},
		"30 in 5":             {30 * Inch, "5"},
		"3 in/yd":             {3 * Inch, "/yd"},
		"10 in -> 8 1/2 in":   {10 * Inch, "-> 8 1/2 in"},
		"2 m":                 {2 * Metre, ""},
	} {
		l, rest, err := ScanLength(text)
		if err != nil || l != want.l || rest != want.rest {
			t.Errorf("%q: got %v, %q, %v; want %v, %q", text, l, rest, err, want.l, want.rest)
		}
	}
	if l, rest, err := ScanLength("12 ends"); err == nil || l != 0 || rest != "12 ends" {
		t.Errorf("12 ends: got %v, %q, %v", l, rest, err)
	}
}

func TestLengthString(t *testing.T) {
	for l, want := range map[Length]string{
		0: "0 cm", Nanometre: "0.000001 mm", 1000: "0.001 mm", 5 * Millimetre: "5 mm", Centimetre: "1 cm",
		381 * Millimetre: "38.1 cm", 120 * Centimetre: "1.2 m", Inch: "2.54 cm", Yard: "91.44 cm",
		Inch / 8: "3.175 mm", 3 * Inch / 8: "9.525 mm", Inch / 16: "1/16 in", 9 * Inch / 16: "9/16 in",
		396_875: "1/64 in", 4*Inch + 3*396_875: "4 3/64 in", Mile: "1609.344 m",
		8_466_667:             "8.466667 mm",
		-Centimetre:           "-1 cm",
		-(Inch / 64):          "-1/64 in",
		Kilometre:             "1000 m",
		1e15 + 1:              "1000 km 1 nm",
		9e18:                  "9000000 km",
		math.MaxInt64:         "9223372 km 36854775807 nm",
		math.MinInt64:         "-9223372 km 36854775808 nm",
		1e18 - 1:              "999999 km 999999999999 nm",
		1e18 + 1000:           "1000000 km 1000 nm", // 16 digits in metres
		1e18 - 1000:           "999999999.999999 m",
		1_000_000 * Inch / 64: "396.875 m",
	} {
		if got := l.String(); got != want {
			t.Errorf("%d nm: got %q, want %q", int64(l), got, want)
		}
	}
}

func TestLengthReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		unit := rapid.SampledFrom([]Length{1, 1000, Millimetre, Inch / 64, Inch, Metre}).Draw(t, "unit")
		l := unit * Length(rapid.Int64Range(0, math.MaxInt64/int64(unit)).Draw(t, "number"))
		if back, err := ParseLength(l.String()); err != nil || back != l {
			t.Fatalf("%d nm -> %q: got %d, %v", int64(l), l, back, err)
		}
	})
}

// TestLengthOfAnySpelling reads number and unit together against the exact
// product, rounded once.
func TestLengthOfAnySpelling(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := spelled(t)
		u := rapid.SampledFrom(lengths.units).Draw(t, "unit")
		space := rapid.SampledFrom([]string{"", " ", "\u2009", "\u202f", "\u00a0"}).Draw(t, "space")
		text := number + space + rapid.SampledFrom(u.names).Draw(t, "name")
		n, _ := ParseNumber(number)
		want, fits := LengthOf(n.Mul(Int(u.size)), Nearest)
		got, err := ParseLength(text)
		if (err == nil) != fits || got != want {
			t.Fatalf("%q: got %d, %v; want %d, %v", text, got, err, want, fits)
		}
	})
}
