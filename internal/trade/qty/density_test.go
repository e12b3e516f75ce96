package qty

import (
	"testing"

	"pgregory.net/rapid"
)

var densitiesRead = map[string]Density{
	"24 epi": {Int(24), Inch}, "22 ppi": {Int(22), Inch}, "12 DPI": {Int(12), Inch}, "28wpi": {Int(28), Inch},
	"7 1/2 epi": {Frac(15, 2), Inch}, "7½ epi": {Frac(15, 2), Inch}, "15/2 epi": {Frac(15, 2), Inch},
	"24/in": {Int(24), Inch}, "24 / in": {Int(24), Inch}, "24 per inch": {Int(24), Inch}, `24/"`: {Int(24), Inch},
	"24 ends per inch": {Int(24), Inch}, "24 ends/in": {Int(24), Inch}, "22 picks/in": {Int(22), Inch},
	"12 dents/in": {Int(12), Inch}, "28 wraps/in": {Int(28), Inch}, "1 End per Inch": {Int(1), Inch},
	"6/cm": {Int(6), Centimetre}, "6 ends/cm": {Int(6), Centimetre}, "7.5/cm": {Frac(15, 2), Centimetre},
	"7,5/cm": {Frac(15, 2), Centimetre}, "½/cm": {Frac(1, 2), Centimetre}, "1 1/2 ends/cm": {Frac(3, 2), Centimetre},
	"60/10 cm": {Int(60), 10 * Centimetre}, "60/10cm": {Int(60), 10 * Centimetre}, "60 / 10 cm": {Int(60), 10 * Centimetre},
	"60 threads per 10 cm": {Int(60), 10 * Centimetre}, "40 dents/10 cm": {Int(40), 10 * Centimetre},
	"15/2 cm": {Int(15), 2 * Centimetre}, "15/2cm": {Int(15), 2 * Centimetre}, "15 per 2 cm": {Int(15), 2 * Centimetre},
	"15/2 ends per cm": {Frac(15, 2), Centimetre}, "1/2 in": {Int(1), 2 * Inch},
	"24/½ in": {Int(24), Inch / 2}, "24/2 1/2 in": {Int(24), 5 * Inch / 2}, "24 per 1/2 in": {Int(24), Inch / 2},
	"1/3/in": {Frac(1, 3), Inch}, "7 1/3/2 cm": {Frac(22, 3), 2 * Centimetre}, "1/3 per 4 in": {Frac(1, 3), 4 * Inch},
	"1⁄3/4 in": {Frac(1, 3), 4 * Inch}, "2000/km": {Int(2000), Kilometre}, "24/m": {Int(24), Metre},
	"24\u202fepi": {Int(24), Inch}, "60/10\u2009cm": {Int(60), 10 * Centimetre}, " 24 epi ": {Int(24), Inch},
}

var densitiesRejected = []rejected{
	{"", "number.missing", "", 0, nil},
	{"epi 24", "number.missing", "epi 24", 0, nil},
	{"24", "density.no-unit", "24", 0, nil},
	{"15/2", "density.no-unit", "15/2", 0, nil},
	{"24/", "density.no-unit", "24/", 0, nil},
	{" 24 per 10", "density.no-unit", "24 per 10", 1, nil},
	{"24 ends", "density.no-unit", "24 ends", 0, nil},
	{"24 in", "density.unknown-unit", "in", 3, map[string]any{"near": "/in"}},
	{"7½ cm", "density.unknown-unit", "cm", 3, map[string]any{"near": "/cm"}},
	{"7½ epe", "density.unknown-unit", "epe", 3, map[string]any{"near": "epi"}},
	{"24 endz/in", "density.unknown-unit", "endz", 3, map[string]any{"near": "ends"}},
	{"24/ich", "density.unknown-unit", "ich", 3, map[string]any{"near": "inch"}},
	{"24 per furlong", "density.unknown-unit", "furlong", 7, nil},
	{"60/10 cmm", "density.unknown-unit", "cmm", 6, map[string]any{"near": "cm"}},
	{"3 ends/min", "density.unknown-unit", "min", 7, map[string]any{"near": "in"}},
	{"24 €/in", "density.unknown-unit", "€", 3, nil},
	{"1/3/4 in", "density.ambiguous", "1/3/4", 0, nil},
	{"0 epi", "density.zero", "0 epi", 0, nil},
	{"24/0 cm", "density.zero", "24/0 cm", 0, nil},
	{"24/0.4 nm", "density.zero", "24/0.4 nm", 0, nil},
	{"-24 epi", "density.negative", "-24 epi", 0, nil},
	{"−15/2 cm", "density.negative", "−15/2 cm", 0, nil},
	{"24/-2 cm", "density.negative", "24/-2 cm", 0, nil},
	{"24/2 km", "length.too-large", "24/2 km", 0, map[string]any{"limit": Kilometre}},
	{"24/9999999999 km", "length.too-large", "24/9999999999 km", 0, map[string]any{"limit": Kilometre}},
	{"1,234 epi", "number.grouped", "1,234", 0, map[string]any{"decimal": "1.234", "whole": "1234"}},
	{"24/1,234 cm", "number.grouped", "1,234", 3, map[string]any{"decimal": "1.234", "whole": "1234"}},
	{"½/0/in", "density.no-unit", "½/0", 0, nil},
	{"1/0 epi", "number.zero-denominator", "1/0", 0, nil},
	{"24 epi sett", "density.trailing", "sett", 7, nil},
	{"7½ epi 30", "density.no-unit", "30", 7, nil},
}

func (d Density) same(e Density) bool { return d.Threads.Equal(e.Threads) && d.Over == e.Over }

func TestParseDensity(t *testing.T) {
	for text, want := range densitiesRead {
		if got, err := ParseDensity(text); err != nil || !got.same(want) {
			t.Errorf("%q: got %v over %v, %v; want %v over %v", text, got.Threads, got.Over, err, want.Threads, want.Over)
		}
	}
	rejects(t, ParseDensity, densitiesRejected)
}

func TestScanDensity(t *testing.T) {
	for text, want := range map[string]struct {
		d    Density
		rest string
	}{
		"24 epi in the reed":      {Density{Int(24), Inch}, "in the reed"},
		"24/in 3 in wide":         {Density{Int(24), Inch}, "3 in wide"},
		"60/10 cm, relaxed":       {Density{Int(60), 10 * Centimetre}, ", relaxed"},
		"22 picks/in on the loom": {Density{Int(22), Inch}, "on the loom"},
	} {
		d, rest, err := ScanDensity(text)
		if err != nil || !d.same(want.d) || rest != want.rest {
			t.Errorf("%q: got %v, %q, %v; want %v, %q", text, d, rest, err, want.d, want.rest)
		}
	}
	if d, rest, err := ScanDensity("24 in"); err == nil || !d.IsZero() || rest != "24 in" {
		t.Errorf("24 in: got %v, %q, %v", d, rest, err)
	}
}

func TestDensityString(t *testing.T) {
	for want, d := range map[string]Density{
		"24/in":               {Int(24), Inch},
		"7.5/in":              {Frac(15, 2), Inch},
		"15/2 cm":             {Int(15), 2 * Centimetre},
		"60/10 cm":            {Int(60), 10 * Centimetre},
		"24/m":                {Int(24), Metre},
		"24/4 in":             {Int(24), 4 * Inch},
		"7 1/3 per in":        {Frac(22, 3), Inch},
		"1/3 per 4 in":        {Frac(1, 3), 4 * Inch},
		"24 per 1/64 in":      {Int(24), Inch / 64},
		"24/2.5 mm":           {Int(24), 2_500_000},
		"":                    {Int(24), 0},
		"24/8.466667 mm":      {Int(24), 8_466_667},
		"0.000000000000001/m": {Frac(1, pow10(15)), Metre},
	} {
		if got := d.String(); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

func TestDensityReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		threads, err := ParseNumber(spelled(t))
		if err != nil {
			t.Fatal(err)
		}
		over := rapid.OneOf(
			rapid.SampledFrom([]Length{Inch, Centimetre, 2 * Centimetre, 10 * Centimetre, Yard, Inch / 64, Kilometre}),
			rapid.Map(rapid.Int64Range(1, int64(maxOver)), func(nm int64) Length { return Length(nm) }),
		).Draw(t, "over")
		d := Density{threads, over}
		if back, err := ParseDensity(d.String()); err != nil || !back.same(d) {
			t.Fatalf("%q: got %v over %v, %v", d, back.Threads, back.Over, err)
		}
	})
}
