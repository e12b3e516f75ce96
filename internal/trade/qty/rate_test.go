package qty

import (
	"testing"

	"pgregory.net/rapid"
)

var ratesRead = map[string]Rate{
	"3 ends/min": {Int(3), 60}, "12 per minute": {Int(12), 60}, "20 picks/min": {Int(20), 60},
	"600/h": {Int(600), 3600}, "600 per hour": {Int(600), 3600}, "600 heddles/hr": {Int(600), 3600},
	"2/s": {Int(2), 1}, "1 End per Second": {Int(1), 1}, "7½ ends/min": {Frac(15, 2), 60}, "7,5/min": {Frac(15, 2), 60},
	"20/10 min": {Int(20), 600}, "20 picks per 10 min": {Int(20), 600}, "15/2 min": {Int(15), 120},
	"15/2 ends per min": {Frac(15, 2), 60}, "3 per 1/2 min": {Int(3), 30}, "3/0.1 h": {Int(3), 360},
	"40 knots/h": {Int(40), 3600}, "4\u202fturns / minute": {Int(4), 60},
}

var ratesRejected = []rejected{
	{"", "number.missing", "", 0, nil},
	{"600", "rate.no-unit", "600", 0, nil},
	{"½ ends", "rate.no-unit", "½ ends", 0, nil},
	{"600/", "rate.no-unit", "600/", 0, nil},
	{"20 EUR/h", "rate.unknown-unit", "EUR", 3, nil},
	{"€20/h", "number.missing", "€20/h", 0, nil},
	{"½ pick/mim", "rate.unknown-unit", "mim", 7, map[string]any{"near": "min"}},
	{"3 min", "rate.unknown-unit", "min", 2, map[string]any{"near": "/min"}},
	{"1/3/4 min", "rate.ambiguous", "1/3/4", 0, nil},
	{"1 per 0.5 s", "rate.part-second", "1 per 0.5 s", 0, nil},
	{"0/h", "rate.zero", "0/h", 0, nil},
	{"5 per 0 min", "rate.zero", "5 per 0 min", 0, nil},
	{"-5/h", "rate.negative", "-5/h", 0, nil},
	{"1/999999999999999 h", "number.too-long", "1/999999999999999 h", 0, limit},
	{"3/min and more", "rate.trailing", "and more", 6, nil},
}

func (r Rate) same(s Rate) bool { return r.Things.Equal(s.Things) && r.Over == s.Over }

func TestParseRate(t *testing.T) {
	for text, want := range ratesRead {
		if got, err := ParseRate(text); err != nil || !got.same(want) {
			t.Errorf("%q: got %v over %d s, %v; want %v over %d s", text, got.Things, got.Over, err, want.Things, want.Over)
		}
	}
	rejects(t, ParseRate, ratesRejected)
}

func TestRateString(t *testing.T) {
	for want, r := range map[string]Rate{
		"12/min": {Int(12), 60}, "600/h": {Int(600), 3600}, "20/10 min": {Int(20), 600}, "7.5/90 s": {Frac(15, 2), 90},
		"2/s": {Int(2), 1}, "1/3 per 2 h": {Frac(1, 3), 7200}, "": {Int(3), 0},
	} {
		if got := r.String(); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

func TestRateReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		things, err := ParseNumber(spelled(t))
		if err != nil {
			t.Fatal(err)
		}
		r := Rate{things, rapid.Int64Range(1, 999_999_999_999_999).Draw(t, "seconds")}
		if back, err := ParseRate(r.String()); err != nil || !back.same(r) {
			t.Fatalf("%q: got %v over %d s, %v", r, back.Things, back.Over, err)
		}
	})
}
