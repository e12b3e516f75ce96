package yarn

import (
	"errors"
	"slices"
	"testing"

	"sley/internal/trade/qty"
)

var countTests = []struct {
	text, canonical string
	ypp             string // what it must come to, where a figure in yards says it
	plies           int
	reading         Reading
	either          bool
}{
	{"30 Ne", "30 Ne", "25200", 1, Single, false},
	{"Ne 30", "30 Ne", "25200", 1, Single, false},
	{"NeC30", "30 Ne", "25200", 1, Single, false},
	{"20s cotton", "20 Ne", "16800", 1, Single, false},
	{"20's Cotton", "20 Ne", "16800", 1, Single, false},
	{"  20s   COTTON ", "20 Ne", "16800", 1, Single, false},
	{"5 1/2 run", "5.5 run", "8800", 1, Single, false},
	{"5½ run", "5.5 run", "8800", 1, Single, false},
	{"5,5 run", "5.5 run", "8800", 1, Single, false},
	{".5 run", "0.5 run", "800", 1, Single, false},
	{"21 9/11 Ne", "21 9/11 Ne", "", 1, Single, false},
	{"0 1/3 Ne", "0 1/3 Ne", "280", 1, Single, false},
	{"60 tex", "60 tex", "", 1, Single, false},
	{"tex 60", "60 tex", "", 1, Single, false},
	{"R 60 tex", "60 tex", "", 1, Single, false},
	{"60tex", "60 tex", "", 1, Single, false},
	{"735 dtex", "735 dtex", "", 1, Single, false},
	{"150 den", "150 den", "", 1, Single, false},
	{"30 lb/spyndle", "30 lb/spyndle", "480", 1, Single, false},
	{"20 drams per 1000 yd", "20 dram", "12800", 1, Single, false},
	{"3360 ypp", "3360 ypp", "3360", 1, Single, false},
	{"3360 yd/lb", "3360 yd/lb", "3360", 1, Single, false},
	{"120 m/50 g", "2400 m/kg", "", 1, Single, false},
	{"1/3 yd/lb", "45359237 g/30480 m", "1/3", 1, Single, false},
	{"2000000 m/kg", "2000000 m/kg", "", 1, Single, false},
	{"8/2 Ne", "8/2 Ne", "3360", 2, CountFirst, false},
	{"Ne 8/2", "8/2 Ne", "3360", 2, CountFirst, false},
	{"cotton 8 / 2 Ne", "8/2 Ne", "3360", 2, CountFirst, false},
	{"8/2 cotton", "8/2 Ne", "3360", 2, CountFirst, false},
	{"8 cotton / 2", "8/2 Ne", "3360", 2, CountFirst, false},
	{"2/2 cotton", "2/2 Ne", "840", 2, CountFirst, false},
	{"12/18 cotton", "12/18 Ne", "560", 18, CountFirst, false},
	{"2/40s cotton", "2/40s Ne", "16800", 2, PliesFirst, false},
	{"2s/20 cotton", "2s/20 Ne", "84", 20, CountFirst, false},
	{"16/2 lea", "16/2 lea", "2400", 2, CountFirst, false},
	{"16/2 linen", "16/2 lea", "2400", 2, CountFirst, false},
	{"2/16 linen", "2/16 lea", "2400", 2, PliesFirst, false},
	{"16/1 linen", "16/1 lea", "4800", 1, CountFirst, false},
	{"Nm 8/2", "8/2 Nm", "", 2, CountFirst, false},
	{"2/28 Nm", "2/28 Nm", "", 2, PliesFirst, false},
	{"3 1/2/2 Nm", "3.5/2 Nm", "", 2, CountFirst, false},
	{"2/5 1/3 worsted", "2/5 1/3 worsted", "1493 1/3", 2, PliesFirst, false},
	{"2/20 worsted", "2/20 worsted", "5600", 2, PliesFirst, false},
	{"2/2 Nm", "2/2 Nm", "", 2, CountFirst, true},
	{"6/8 worsted", "6/8 worsted", "746 2/3", 6, PliesFirst, true},
	{"8/6 worsted", "8/6 worsted", "746 2/3", 6, CountFirst, true},
	{"6s/8 worsted", "6s/8 worsted", "420", 8, CountFirst, false},
	{"6/8s worsted", "6/8s worsted", "746 2/3", 6, PliesFirst, false},
	{"1.5/2 worsted", "1.5/2 worsted", "420", 2, CountFirst, false},
	{"50s-2 spun silk", "50s-2 spun silk", "42000", 2, Resultant, false},
	{"R 50 spun silk / 2", "50s-2 spun silk", "42000", 2, Resultant, false},
	{"30 tex x 2", "30 tex x 2", "", 2, Times, false},
	{"30 tex × 2", "30 tex x 2", "", 2, Times, false},
	{"2 x 30 tex", "30 tex x 2", "", 2, Times, false},
	{"tex 30 x 2", "30 tex x 2", "", 2, Times, false},
	{"R 60 tex / 2", "R 60 tex / 2", "", 2, Resultant, false},
	{"R60/2 tex", "R 60 tex / 2", "", 2, Resultant, false},
	{"tex R 60/2", "R 60 tex / 2", "", 2, Resultant, false},
	{"30 Ne x 2", "30 Ne x 2", "12600", 2, Times, false},
	{"1/2s run", "1/2s run", "3200", 1, PliesFirst, false},
	{"60 Ne + 40 Ne", "60 Ne + 40 Ne", "20160", 2, Single, false},
	{"40s + 80s + 120s Ne", "40 Ne + 80 Ne + 120 Ne", "", 3, Single, false},
	{"24 Ne + 30 tex", "24 Ne + 30 tex", "", 2, Single, false},
	{"8/2 Ne + 3360 yd/lb", "8/2 Ne + 3360 yd/lb", "1680", 3, CountFirst, false},
}

func TestParseCount(t *testing.T) {
	for _, c := range countTests {
		got, err := ParseCount(c.text)
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		first := got.Strands[0]
		if got.String() != c.canonical || got.Plies() != c.plies || first.Reading != c.reading || first.Either != c.either {
			t.Errorf("%q: got %q, %d plies, %s, either %t; want %q, %d, %s, %t", c.text,
				got, got.Plies(), first.Reading, first.Either, c.canonical, c.plies, c.reading, c.either)
		}
		if c.ypp == "" {
			continue
		}
		want := must[qty.Rat](t)(qty.ParseNumber(c.ypp))
		if ypp := got.In(named(t, "ypp")); !ypp.Equal(want) {
			t.Errorf("%q: got %s yd/lb, want %s", c.text, ypp, c.ypp)
		}
	}
}

var countFaults = []struct {
	text, code, read string
	at               int
	readings         []string
	near             string
}{
	{"", "count.empty", "", 0, nil, ""},
	{" \t", "count.empty", "", 0, nil, ""},
	{"cotton", "count.number", "cotton", 0, nil, ""},
	{"-5 tex", "count.number", "-5 tex", 0, nil, ""},
	{"0 tex", "count.number", "0", 0, nil, ""},
	{"8 tex + 0 tex", "count.number", "0", 8, nil, ""},
	{"2000000 tex", "count.number", "2000000", 0, nil, ""},
	{"Ne 1,234", "number.grouped", "1,234", 3, nil, ""},
	{"5 1/0 run", "number.zero-denominator", "1/0", 2, nil, ""},
	{"8/2", "count.no-system", "8/2", 0, nil, ""},
	{"24 Ne + 30", "count.no-system", "30", 8, nil, ""},
	{"8/2 cottn", "count.system", "cottn", 4, nil, "cotton"},
	{"8/2 wursted", "count.system", "wursted", 4, nil, "worsted"},
	{"8/2 xyzzy", "count.system", "xyzzy", 4, nil, ""},
	{"8/2 Ne worsted", "count.system", "Ne worsted", 4, nil, ""},
	{"Ne 8/2 worsted", "count.two-systems", "Ne 8/2 worsted", 0, nil, ""},
	{"8/0 Ne", "count.number", "0", 2, nil, ""},
	{"8/2.5 Ne", "count.plies", "8/2.5 Ne", 0, nil, ""},
	{"8/100 Ne", "count.ambiguous", "8/100 Ne", 0, []string{"8/100s Ne"}, ""},
	{"120/100 Ne", "count.plies", "120/100 Ne", 0, nil, ""},
	{"40s/20s cotton", "count.plies", "40s/20s cotton", 0, nil, ""},
	{"20/40 worsted", "count.plies", "20/40 worsted", 0, nil, ""},
	{"30 tex x 0", "count.number", "0", 9, nil, ""},
	{"30 tex x 100", "count.plies", "30 tex x 100", 0, nil, ""},
	{"30/2 tex x 2", "count.plies", "30/2 tex x 2", 0, nil, ""},
	{"2/20 cotton", "count.ambiguous", "2/20 cotton", 0, []string{"2s/20 Ne", "2/20s Ne"}, ""},
	{"2/8 cotton", "count.ambiguous", "2/8 cotton", 0, []string{"2s/8 Ne", "2/8s Ne"}, ""},
	{"1/2 run", "count.ambiguous", "1/2 run", 0, []string{"0.5 run", "1s/2 run", "1/2s run"}, ""},
	{"60/2 tex", "count.ambiguous", "60/2 tex", 0, []string{"60 tex x 2", "R 60 tex / 2"}, ""},
	{"60 tex / 2", "count.ambiguous", "60 tex / 2", 0, []string{"60 tex x 2", "R 60 tex / 2"}, ""},
	{"R 60 tex x 2", "count.ambiguous", "R 60 tex x 2", 0, []string{"60 tex x 2", "R 60 tex / 2"}, ""},
	{"30 x 2 tex", "count.ambiguous", "30 x 2 tex", 0, []string{"30 tex x 2", "2 tex x 30"}, ""},
	{"20/22 den", "count.ambiguous", "20/22 den", 0, []string{"20 den x 22", "R 20 den / 22", "21 den"}, ""},
	{"20/2 spun silk", "count.ambiguous", "20/2 spun silk", 0, []string{"20s-2 spun silk", "20/2 Nm"}, ""},
	{"20/2 silk", "count.ambiguous", "20/2 silk", 0, []string{"20/2 Nm", "20s-2 spun silk"}, ""},
	{"40s-2 cotton", "count.ambiguous", "40s-2 cotton", 0, []string{"40 Ne x 2", "R 40 Ne / 2"}, ""},
	{"8/2 wool", "count.ambiguous", "8/2 wool", 0, []string{"8/2 worsted", "8/2 Nm"}, ""},
	{"22/2 cottolin", "count.ambiguous", "22/2 cottolin", 0, []string{"22/2 lea", "22/2 Ne"}, ""},
	{"3360 yd/stone", "grist.unknown-unit", "stone", 8, nil, ""},
	{"8/2 Ne + 3360 yd/stone", "grist.unknown-unit", "stone", 17, nil, ""},
}

func TestParseCountFaults(t *testing.T) {
	for _, c := range countFaults {
		_, err := ParseCount(c.text)
		var f *qty.Fault
		if !errors.As(err, &f) {
			t.Errorf("%q: got %v, want %s", c.text, err, c.code)
			continue
		}
		readings, _ := f.Args["readings"].([]string)
		near, _ := f.Args["near"].(string)
		if f.Code != c.code || f.Read != c.read || f.At != c.at || near != c.near || !slices.Equal(readings, c.readings) {
			t.Errorf("%q: got %s %q at %d, near %q, readings %q; want %s %q at %d, near %q, readings %q", c.text,
				f.Code, f.Read, f.At, near, readings, c.code, c.read, c.at, c.near, c.readings)
		}
	}
}

func TestEveryReadingOfferedIsRead(t *testing.T) {
	for _, c := range countFaults {
		for _, r := range c.readings {
			if got, err := ParseCount(r); err != nil || got.String() != r {
				t.Errorf("%q offers %q, which reads as %q, %v", c.text, r, got, err)
			}
		}
	}
}

func TestCountIsTooLong(t *testing.T) {
	long := make([]byte, 250)
	for i := range long {
		long[i] = '8'
	}
	for text, code := range map[string]string{
		string(long):                            "count.long",
		"1+1+1+1+1+1+1+1+1+1+1+1+1 Ne":          "count.strands",
		"1234567890123456 tex":                  "number.too-long",
		"8/2 Ne + 1,234 Ne":                     "number.grouped",
		"1+1+1+1+1+1+1+1+1+1+1+1 Ne + + 5 tex ": "count.strands",
	} {
		var f *qty.Fault
		if _, err := ParseCount(text); !errors.As(err, &f) || f.Code != code {
			t.Errorf("%q: got %v, want %s", text, err, code)
		}
	}
}

func TestOtherReading(t *testing.T) {
	c := must[Count](t)(ParseCount("6/8 worsted"))
	other, ok := c.Other()
	if !ok || other.String() != "6s/8 worsted" {
		t.Errorf("6/8 worsted: got %q %t, want 6s/8 worsted", other, ok)
	}
	if !other.In(named(t, "worsted")).Equal(qty.Frac(6, 8)) {
		t.Errorf("6s/8 worsted: got %s, want 3/4", other.In(named(t, "worsted")))
	}
	if c := must[Count](t)(ParseCount("8/2 Nm")); c.Strands[0].Either {
		t.Error("8/2 Nm has no other reading")
	}
}

func TestUnknownCount(t *testing.T) {
	var c Count
	if !c.Grist().IsZero() || !c.In(named(t, "Ne")).IsZero() || c.Plies() != 0 || Conversions(c) != nil || c.String() != "" {
		t.Errorf("the zero count is not unknown: %+v", c)
	}
}
