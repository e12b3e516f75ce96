package qty

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"
)

var numbersRead = map[string]Rat{
	"0": Int(0), "12": Int(12), "0012": Int(12), " 12 ": Int(12), "-0": Int(0),
	"12.5": Frac(25, 2), "38,1": Frac(381, 10), "1,2345": Frac(12345, 10000), "1,23": Frac(123, 100),
	"1.234": Frac(1234, 1000), ".5": Frac(1, 2), "0.000000000000001": Frac(1, 1_000_000_000_000_000),
	"1/2": Frac(1, 2), "10/4": Frac(5, 2), "0/3": Int(0), "1⁄2": Frac(1, 2), "11⁄2": Frac(11, 2),
	"4 1/2": Frac(9, 2), "4 1⁄2": Frac(9, 2), "4\u20091/2": Frac(9, 2), "4  63/64": Frac(319, 64),
	"½": Frac(1, 2), "1½": Frac(3, 2), "1 ½": Frac(3, 2), "1\u202f½": Frac(3, 2), "1\u00a0⅜": Frac(11, 8),
	"-4 1/2": Frac(-9, 2), "−4½": Frac(-9, 2), "-1/3": Frac(-1, 3),
	"999999999999999":      Int(999_999_999_999_999),
	"1/999999999999999":    Frac(1, 999_999_999_999_999),
	"000000000000000001":   Int(1),
	"12345678.1234567":     Frac(123456781234567, 10_000_000),
	"7 00001/000000000002": Frac(15, 2),
	// Every vulgar fraction of Unicode 15.0, Number Forms and Latin-1.
	"¼": Frac(1, 4), "¾": Frac(3, 4), "⅐": Frac(1, 7), "⅑": Frac(1, 9), "⅒": Frac(1, 10),
	"⅓": Frac(1, 3), "⅔": Frac(2, 3), "⅕": Frac(1, 5), "⅖": Frac(2, 5), "⅗": Frac(3, 5),
	"⅘": Frac(4, 5), "⅙": Frac(1, 6), "⅚": Frac(5, 6), "⅛": Frac(1, 8), "⅜": Frac(3, 8),
	"⅝": Frac(5, 8), "⅞": Frac(7, 8), "↉": Int(0),
}

var (
	limit           = map[string]any{"limit": 15}
	numbersRejected = []rejected{
		{"", "number.missing", "", 0, nil},
		{"   ", "number.missing", "", 3, nil},
		{"twelve", "number.missing", "twelve", 0, nil},
		{" -", "number.missing", "-", 1, nil},
		{"- 5", "number.missing", "- 5", 0, nil},
		{"+5", "number.missing", "+5", 0, nil},
		{".", "number.missing", ".", 0, nil},
		{",5", "number.missing", ",5", 0, nil},
		{"١٢", "number.missing", "١٢", 0, nil},
		{"1,234", "number.grouped", "1,234", 0, map[string]any{"decimal": "1.234", "whole": "1234"}},
		{" −1,234", "number.grouped", "1,234", 2, map[string]any{"decimal": "1.234", "whole": "1234"}},
		{"0,125", "number.grouped", "0,125", 0, map[string]any{"decimal": "0.125", "whole": "0125"}},
		{"1,234.5", "number.two-marks", "1,234.5", 0, nil},
		{"1.234,5", "number.two-marks", "1.234,5", 0, nil},
		{"1,234,567", "number.two-marks", "1,234,567", 0, nil},
		{"4-1/2", "number.hyphen", "4-1/2", 0, map[string]any{"reading": "4 1/2"}},
		{"1/0", "number.zero-denominator", "1/0", 0, nil},
		{"½ 1", "number.trailing", "1", 2, nil},
		{"4 1/0", "number.zero-denominator", "1/0", 2, nil},
		{"1234567890123456", "number.too-long", "1234567890123456", 0, limit},
		{"12345678.12345678", "number.too-long", "12345678.12345678", 0, limit},
		{"0.0000000000000001", "number.too-long", "0.0000000000000001", 0, limit},
		{"1/1234567890123456", "number.too-long", "1/1234567890123456", 0, limit},
		{"4 1234567890123456/7", "number.too-long", "1234567890123456/7", 2, limit},
		{"4 1/1234567890123456", "number.too-long", "1/1234567890123456", 2, limit},
		{"1e3", "number.trailing", "e3", 1, nil},
		{"1_000", "number.trailing", "_000", 1, nil},
		{"1 234", "number.trailing", "234", 2, nil},
		{"4 3/2", "number.trailing", "3/2", 2, nil},
		{"1.5 1/2", "number.trailing", "1/2", 4, nil},
		{"1.5½", "number.trailing", "½", 3, nil},
		{"1/2/3", "number.trailing", "/3", 3, nil},
		{"½½", "number.trailing", "½", 1, nil},
		{"1 / 2", "number.trailing", "/ 2", 2, nil},
		{"4-2", "number.trailing", "-2", 1, nil},
		{"5.", "number.trailing", ".", 1, nil},
		{"½ in", "number.trailing", "in", 2, nil},
	}
)

func TestParseNumber(t *testing.T) {
	for text, want := range numbersRead {
		if got, err := ParseNumber(text); err != nil || !got.Equal(want) {
			t.Errorf("%q: got %v, %v; want %v", text, got, err, want)
		}
	}
	rejects(t, ParseNumber, numbersRejected)
}

func TestScanNumberGivesTheRestUntouched(t *testing.T) {
	for text, want := range map[string]struct {
		n    Rat
		rest string
	}{
		"12 cm":        {Int(12), " cm"},
		"12cm":         {Int(12), "cm"},
		"1½\u202fin":   {Frac(3, 2), "\u202fin"},
		"1 ½ in":       {Frac(3, 2), " in"},
		"24 60/10 cm":  {Int(24), " 60/10 cm"},
		"3-5":          {Int(3), "-5"},
		"3, 4":         {Int(3), ", 4"},
		"5.":           {Int(5), "."},
		"4 1/2 1/2":    {Frac(9, 2), " 1/2"},
		"1/2/3":        {Frac(1, 2), "/3"},
		"-7 below":     {Int(-7), " below"},
		"4 1234 1/2 x": {Int(4), " 1234 1/2 x"},
	} {
		n, rest, ok := ScanNumber(text)
		if !ok || !n.Equal(want.n) || rest != want.rest {
			t.Errorf("%q: got %v, %q, %v; want %v, %q", text, n, rest, ok, want.n, want.rest)
		}
	}
}

func TestScanNumberRefuses(t *testing.T) {
	for _, text := range []string{"", "cm 12", "1,234 cm", "1.2.3", "4-1/2 in", "1/0"} {
		if n, rest, ok := ScanNumber(text); ok || rest != text {
			t.Errorf("%q: got %v, %q, %v", text, n, rest, ok)
		}
	}
}

// TestNumeralReadsBack spells every number that a person can write and reads
// what numeral makes of it.
func TestNumeralReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := spelled(t)
		n, err := ParseNumber(text)
		if err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		if back, err := ParseNumber(numeral(n)); err != nil || !back.Equal(n) {
			t.Fatalf("%q -> %q: got %v, %v", text, numeral(n), back, err)
		}
	})
}

// spelled draws a number above 0 as a person may write it.
func spelled(t *rapid.T) string {
	part := rapid.Int64Range(1, 999_999_999_999_999)
	switch rapid.IntRange(0, 4).Draw(t, "form") {
	case 0:
		return fmt.Sprint(part.Draw(t, "whole"))
	case 1:
		places := rapid.IntRange(0, 15).Draw(t, "places")
		return Frac(part.Draw(t, "digits"), pow10(places)).Decimal(places)
	case 2:
		return fmt.Sprintf("%d/%d", part.Draw(t, "above"), part.Draw(t, "below"))
	case 3:
		below := rapid.Int64Range(2, 999_999_999_999_999).Draw(t, "below")
		above := rapid.Int64Range(1, below-1).Draw(t, "above")
		return fmt.Sprintf("%d %d/%d", part.Draw(t, "whole"), above, below)
	}
	return fmt.Sprint(part.Draw(t, "whole")) + rapid.SampledFrom([]string{"½", " ⅓", "⅞"}).Draw(t, "vulgar")
}
