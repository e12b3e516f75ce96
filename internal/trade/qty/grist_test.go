package qty

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"
)

var gristsRead = map[string]LinearDensity{
	"3360 yd/lb": ypp(3360), "3360 ypp": ypp(3360), "3360 YPP": ypp(3360), "3360 yards per pound": ypp(3360),
	"210 yd/oz": ypp(3360), "105 yd per 8 oz": ypp(210), "1 lb/3360 yd": ypp(3360), "1 lb 4 oz per 4200 yd": ypp(3360),
	"4200 yd per 1 lb 4 oz": ypp(3360), "3 yd 4 in/oz": perMass(112*Inch, Ounce),
	"120 m/50 g": perMass(2400*Metre, Kilogram), "2400 m/kg": perMass(2400*Metre, Kilogram),
	"120m/50g": perMass(2400*Metre, Kilogram), "2,4 m / g": perMass(2400*Metre, Kilogram),
	"400 yd per 100 g": perMass(400*Yard, 100*Gram), "tex 60": Tex(Int(60)), "60 tex": Tex(Int(60)),
	"59.05 TEX": Tex(Frac(5905, 100)), "Tex 7 1/2": Tex(Frac(15, 2)), "735 dtex": Tex(Frac(735, 10)),
	"dtex 735": Tex(Frac(735, 10)), "150 den": Tex(Frac(150, 9)), "150 denier": Tex(Frac(150, 9)),
	"denier 150": Tex(Frac(150, 9)), "5 g/10 m": Tex(Int(500)), "1 kg per 2000 m": Tex(Int(500)),
	"½ lb/½ mi": perMass(Mile, Pound), "1\u202fg/km": Tex(Int(1)),
	"1/3 yd/lb": NewLinearDensity(Pound.Rat(), Yard.Rat().Div(Int(3))), // exact, not to the nm
}

func ypp(yards int64) LinearDensity { return perMass(Length(yards)*Yard, Pound) }

func perMass(l Length, m Mass) LinearDensity { return NewLinearDensity(m.Rat(), l.Rat()) }

var gristsRejected = []rejected{
	{"", "number.missing", "", 0, nil},
	{"tex", "number.missing", "", 3, nil},
	{"cotton", "number.missing", "cotton", 0, nil},
	{"3360", "grist.no-unit", "3360", 0, nil},
	{"3360 yd", "grist.no-unit", "3360 yd", 0, nil},
	{"½ yd per", "grist.no-unit", "½ yd per", 0, nil},
	{"120 m/50", "grist.no-unit", "50", 6, nil},
	{"3360 yd/lbz", "grist.unknown-unit", "lbz", 8, map[string]any{"near": "lb"}},
	{"½ texx", "grist.unknown-unit", "texx", 2, map[string]any{"near": "tex"}},
	{"8 Ne", "grist.unknown-unit", "Ne", 2, nil},
	{"3360 yd/m", "grist.unknown-unit", "m", 8, nil},
	{"0 tex", "grist.zero", "0 tex", 0, nil},
	{"0 ypp", "grist.zero", "0 ypp", 0, nil},
	{"0 m/50 g", "grist.zero", "0 m/50 g", 0, nil},
	{"120 m/0 g", "grist.zero", "120 m/0 g", 0, nil},
	{"-60 tex", "grist.negative", "-60 tex", 0, nil},
	{"tex −60", "grist.negative", "tex −60", 0, nil},
	{"-120 m/50 g", "grist.negative", "-120 m", 0, nil},
	{"120 m/-50 g", "grist.negative", "-50 g", 6, nil},
	{"1,234 m/kg", "number.grouped", "1,234", 0, map[string]any{"decimal": "1.234", "whole": "1234"}},
	{"99999999999999 1/7 yd/123456789012347 g", "number.too-long", "99999999999999 1/7 yd/123456789012347 g", 0, limit},
	{"60 tex 2 ply", "grist.unknown-unit", "ply", 9, nil},
	{"½ ypp each", "grist.trailing", "each", 6, nil},
	{"60 tex 60 tex", "grist.trailing", "60 tex", 7, nil},
}

func (g LinearDensity) same(h LinearDensity) bool { return g.NGPerNM().Equal(h.NGPerNM()) }

func TestParseGrist(t *testing.T) {
	for text, want := range gristsRead {
		if got, err := ParseGrist(text); err != nil || !got.same(want) {
			t.Errorf("%q: got %v, %v; want %v", text, got, err, want)
		}
	}
	rejects(t, ParseGrist, gristsRejected)
}

// TestGristConversions holds conversions against published factors, each to
// the digits its source prints.
func TestGristConversions(t *testing.T) {
	for _, c := range []struct {
		text   string
		want   string
		places int
		source string
	}{
		{"1000 yd/lb", "496.055", 3, "ASTM D2260-03, table 1: tex = 496.055 x 10^3 / (yd/lb)"},
		{"840 yd/lb", "590.541", 3, "ASTM D2260-03, table 1: tex = 0.590541 x 10^3 / cotton count (840 yd per lb)"},
		{"560 yd/lb", "885.812", 3, "ASTM D2260-03, table 1: tex of worsted 1 (560 yd per lb)"},
		{"1600 yd/lb", "310.034", 3, "ASTM D2260-03, table 1: tex of run 1 (1600 yd per lb)"},
		{"300 yd/lb", "1653.52", 2, "ASTM D2260-03, table 1: tex of lea 1 (300 yd per lb)"},
		{"9 denier", "1.00", 2, "ASTM D2260-03, table 1: denier = 9 tex"},
		{"10 dtex", "1.00", 2, "definition: dtex is grams per 10,000 m, tex grams per 1,000 m"},
	} {
		g, err := ParseGrist(c.text)
		if err != nil || g.Tex().Decimal(c.places) != c.want {
			t.Errorf("%s: got %s tex, %v; want %s (%s)", c.text, g.Tex().Decimal(c.places), err, c.want, c.source)
		}
	}
	// Conneaut, Common measures and conversions: denier = 4,464,492 / (yd/lb).
	if denier := ypp(1).Tex().Mul(Int(9)).Decimal(0); denier != "4464492" {
		t.Errorf("1 yd/lb is %s denier", denier)
	}
}

func TestGristString(t *testing.T) {
	for text, want := range map[string]string{
		"60 tex": "60 tex", "735 dtex": "73.5 tex", "2400 m/kg": "2400 m/kg", "120 m/50 g": "2400 m/kg",
		"3360 ypp": "3360 yd/lb", "210 yd/oz": "3360 yd/lb", "150 den": "60000 m/kg", "5 g/10 m": "500 tex",
		"400 yd per 100 g": "3657.6 m/kg", "7 g/3 m": "7 g/3 m", "1/3 yd/lb": "45359237 g/30480 m",
		"0.00001 tex": "100000000000 m/kg", "1.00001 tex": "100001 g/100000000 m",
	} {
		g, err := ParseGrist(text)
		if err != nil || g.String() != want {
			t.Errorf("%q: got %q, %v; want %q", text, g, err, want)
		}
	}
	if text := (LinearDensity{}).String(); text != "" {
		t.Errorf("an unknown grist prints as %q", text)
	}
}

func TestGristReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g, err := ParseGrist(spelledGrist(t))
		if err != nil {
			t.Skip("too long to be kept")
		}
		if back, err := ParseGrist(g.String()); err != nil || !back.same(g) {
			t.Fatalf("%q: got %v, %v", g, back, err)
		}
	})
}

func spelledGrist(t *rapid.T) string {
	number := func(name string) string {
		places := rapid.IntRange(0, 4).Draw(t, name+" places")
		return Frac(rapid.Int64Range(1, 9_999_999).Draw(t, name), pow10(places)).Decimal(places)
	}
	name := func(s *scale) string { return rapid.SampledFrom(s.names()).Draw(t, s.kind) }
	switch rapid.IntRange(0, 3).Draw(t, "form") {
	case 0:
		return number("length") + " " + name(lengths) + "/" + number("mass") + " " + name(masses)
	case 1:
		return number("mass") + " " + name(masses) + " per " + number("length") + " " + name(lengths)
	case 2:
		return number("length") + " " + name(lengths) + "/" + name(masses)
	}
	return fmt.Sprintf("%s %s", number("count"), rapid.SampledFrom(gristUnits).Draw(t, "unit").name)
}
