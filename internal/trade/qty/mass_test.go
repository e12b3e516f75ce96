package qty

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

var massesRead = map[string]Mass{
	"250 g": 250 * Gram, "250g": 250 * Gram, "2,5 KG": 2500 * Gram, "7 mg": 7 * Milligram,
	"7 µg": 7000, "7 μg": 7000, "7 ug": 7000, "7 ng": 7, "0 g": 0,
	"1 lb": Pound, "2 lbs": 2 * Pound, "1 pound": Pound, "2 Pounds": 2 * Pound, "1/2 lb": 8 * Ounce, "½ lb": 8 * Ounce,
	"8 oz": 8 * Ounce, "1 ounce": Ounce, "2 ounces": 2 * Ounce, "1 lb 4 oz": 20 * Ounce, "1lb4oz": 20 * Ounce,
	"7000 grains": Pound, "1 grain": Grain, "437 1/2 gr": Ounce, "1 kg 200 g": 1200 * Gram,
	"3 grams": 3 * Gram, "1 gramme": Gram, "2 kilograms": 2 * Kilogram, "5 micrograms": 5000,
	"8.8 oz":     249_475_803_500,
	"1/4 oz":     7_087_380_781,  // 7,087,380,781.25
	"3/4 oz":     21_262_142_344, // 21,262,142,343.75
	"9223372 kg": 9_223_372 * Kilogram,
}

var massesRejected = []rejected{
	{"", "number.missing", "", 0, nil},
	{"250", "mass.no-unit", "250", 0, nil},
	{"1 lb 4", "mass.no-unit", "4", 5, nil},
	{"5 t", "mass.unknown-unit", "t", 2, nil},
	{"½ onces", "mass.unknown-unit", "onces", 2, map[string]any{"near": "ounces"}},
	{"½ lbz", "mass.unknown-unit", "lbz", 2, map[string]any{"near": "lb"}},
	{"5 cm", "mass.unknown-unit", "cm", 2, nil},
	{"-5 g", "mass.negative", "-5 g", 0, nil},
	{"9223373 kg", "mass.too-large", "9223373 kg", 0, nil},
	{"4 oz 1 lb", "mass.trailing", "1 lb", 5, nil},
	{"1 lb 40 g", "mass.trailing", "40 g", 5, nil},
	{"4½ oz each", "mass.trailing", "each", 6, nil},
	{"1,500 g", "number.grouped", "1,500", 0, map[string]any{"decimal": "1.500", "whole": "1500"}},
}

func TestParseMass(t *testing.T) {
	for text, want := range massesRead {
		if got, err := ParseMass(text); err != nil || got != want {
			t.Errorf("%q: got %d ng, %v; want %d ng", text, got, err, want)
		}
	}
	rejects(t, ParseMass, massesRejected)
}

func TestScanMass(t *testing.T) {
	m, rest, err := ScanMass("1 lb 4 oz of 8/2 cotton")
	if m != 20*Ounce || rest != "of 8/2 cotton" || err != nil {
		t.Errorf("got %v, %q, %v", m, rest, err)
	}
	if m, rest, err := ScanMass("4 yd"); m != 0 || rest != "4 yd" || err == nil {
		t.Errorf("got %v, %q, %v", m, rest, err)
	}
}

func TestMassString(t *testing.T) {
	for m, want := range map[Mass]string{
		0: "0 g", Nanogram: "0.000001 mg", 250 * Gram: "250 g", Milligram: "1 mg", 2500 * Gram: "2.5 kg",
		Pound: "1 lb", Ounce: "1 oz", 20 * Ounce: "1 1/4 lb", 40 * Ounce: "2 1/2 lb", 8 * Ounce: "8 oz",
		7_087_380_781: "1/4 oz", 442_961_299: "1/64 oz", 442_961_298: "442.961298 mg",
		Grain: "64.79891 mg", -Pound: "-1 lb", 1e15 + 1: "1000 kg 1 ng",
		math.MaxInt64: "9223372 kg 36854775807 ng", math.MinInt64: "-9223372 kg 36854775808 ng",
		1e18: "1000000 kg",
	} {
		if got := m.String(); got != want {
			t.Errorf("%d ng: got %q, want %q", int64(m), got, want)
		}
	}
}

func TestMassReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		unit := rapid.SampledFrom([]Mass{1, 1000, Milligram, Grain, Ounce / 4, Ounce, Pound, Kilogram}).Draw(t, "unit")
		m := unit * Mass(rapid.Int64Range(0, math.MaxInt64/int64(unit)).Draw(t, "number"))
		if back, err := ParseMass(m.String()); err != nil || back != m {
			t.Fatalf("%d ng -> %q: got %d, %v", int64(m), m, back, err)
		}
	})
}

func TestMassOfAnySpelling(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := spelled(t)
		u := rapid.SampledFrom(masses.units).Draw(t, "unit")
		text := number + " " + rapid.SampledFrom(u.names).Draw(t, "name")
		n, _ := ParseNumber(number)
		want, fits := MassOf(n.Mul(Int(u.size)), Nearest)
		got, err := ParseMass(text)
		if (err == nil) != fits || got != want {
			t.Fatalf("%q: got %d, %v; want %d, %v", text, got, err, want, fits)
		}
	})
}
