package qty

import (
	"testing"

	"pgregory.net/rapid"
)

var sharesRead = map[string]Rat{
	"8 %": Frac(8, 100), "8%": Frac(8, 100), "8 per cent": Frac(8, 100), "8 percent": Frac(8, 100),
	"8 Per Cent": Frac(8, 100), "8PERCENT": Frac(8, 100), "12.5 %": Frac(1, 8), "12,5%": Frac(1, 8),
	"12½ %": Frac(1, 8), "33 1/3 %": Frac(1, 3), "0 %": Int(0), "250 %": Frac(5, 2), "8\u202f%": Frac(8, 100),
	"1/3 %": Frac(1, 300),
}

var sharesRejected = []rejected{
	{"", "number.missing", "", 0, nil},
	{"%", "number.missing", "%", 0, nil},
	{"8", "share.no-percent", "8", 0, map[string]any{"percent": "8 %", "part": "800 %"}},
	{" 1/3", "share.no-percent", "1/3", 1, map[string]any{"percent": "1/3 %", "part": "33 1/3 %"}},
	{"0.08", "share.no-percent", "0.08", 0, map[string]any{"percent": "0.08 %", "part": "8 %"}},
	{"½ cm", "share.no-percent", "½", 0, map[string]any{"percent": "0.5 %", "part": "50 %"}},
	{"8 per mille", "share.no-percent", "8", 0, map[string]any{"percent": "8 %", "part": "800 %"}},
	{"-8 %", "share.negative", "-8 %", 0, nil},
	{"−8 per cent", "share.negative", "−8 per cent", 0, nil},
	{"8 % of it", "share.trailing", "of it", 4, nil},
	{"8 %%", "share.trailing", "%", 3, nil},
	{"1,125 %", "number.grouped", "1,125", 0, map[string]any{"decimal": "1.125", "whole": "1125"}},
}

func TestParseShare(t *testing.T) {
	for text, want := range sharesRead {
		if got, err := ParseShare(text); err != nil || !got.Of.Equal(want) {
			t.Errorf("%q: got %v, %v; want %v", text, got.Of, err, want)
		}
	}
	rejects(t, ParseShare, sharesRejected)
}

func TestShareString(t *testing.T) {
	for want, of := range map[string]Rat{
		"8 %": Frac(8, 100), "12.5 %": Frac(1, 8), "33 1/3 %": Frac(1, 3), "0 %": Int(0), "250 %": Frac(5, 2),
		"1/7 %": Frac(1, 700), "-5 %": Frac(-1, 20), "-33 1/3 %": Frac(-1, 3),
	} {
		if got := (Share{of}).String(); got != want {
			t.Errorf("%v: got %q, want %q", of, got, want)
		}
	}
}

func TestShareReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, err := ParseShare(spelled(t) + " %")
		if err != nil {
			t.Fatal(err)
		}
		if back, err := ParseShare(s.String()); err != nil || !back.Of.Equal(s.Of) {
			t.Fatalf("%q: got %v, %v", s, back, err)
		}
	})
}
