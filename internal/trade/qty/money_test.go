package qty

import (
	"testing"

	"pgregory.net/rapid"
)

var moneysRead = map[string]Money{
	"12.50 EUR": {Int(1250), "EUR"}, "12,50 EUR": {Int(1250), "EUR"}, "EUR 12.50": {Int(1250), "EUR"},
	"EUR12.50": {Int(1250), "EUR"}, "12.5EUR": {Int(1250), "EUR"}, "eur 3": {Int(300), "eur"},
	"€12.50": {Int(1250), "€"}, "€ 12.50": {Int(1250), "€"}, "12.50 €": {Int(1250), "€"}, "12.50\u00a0€": {Int(1250), "€"},
	"$8": {Int(800), "$"}, "£3.20": {Int(320), "£"}, "120 kr": {Int(12000), "kr"}, "US$ 8": {Int(800), "US$"},
	"5 zł": {Int(500), "zł"}, "0 EUR": {Int(0), "EUR"}, "0.045 EUR": {Frac(9, 2), "EUR"}, "1/3 EUR": {Frac(100, 3), "EUR"},
	"4½ kr": {Int(450), "kr"}, "$.50": {Int(50), "$"},
	"-8 EUR": {Int(-800), "EUR"}, "−8 EUR": {Int(-800), "EUR"}, "-$8": {Int(-800), "$"}, "$-8": {Int(-800), "$"},
	"-€ 4 1/2": {Int(-450), "€"},
}

var moneysRejected = []rejected{
	{"", "number.missing", "", 0, nil},
	{"EUR", "number.missing", "", 3, nil},
	{"€ twelve", "number.missing", "twelve", 2, nil},
	{"12.50", "money.no-currency", "12.50", 0, nil},
	{" 4½ ", "money.no-currency", "4½", 1, nil},
	{"12.50 %", "money.no-currency", "12.50", 0, nil},
	{"kr.120", "number.missing", ".120", 2, nil},
	{"-$-8", "number.missing", "-8", 2, nil},
	{"$1,234", "number.grouped", "1,234", 1, map[string]any{"decimal": "1.234", "whole": "1234"}},
	{"€1,234.50", "number.two-marks", "1,234.50", 1, nil},
	{"20 EUR/h", "money.trailing", "/h", 6, nil},
	{"€20 per skein", "money.trailing", "per skein", 4, nil},
	{"£3 4", "money.no-currency", "4", 3, nil},
}

func (m Money) same(n Money) bool { return m.Minor.Equal(n.Minor) && m.Currency == n.Currency }

func TestParseMoney(t *testing.T) {
	for text, want := range moneysRead {
		if got, err := ParseMoney(text); err != nil || !got.same(want) {
			t.Errorf("%q: got %v %q, %v; want %v %q", text, got.Minor, got.Currency, err, want.Minor, want.Currency)
		}
	}
	rejects(t, ParseMoney, moneysRejected)
}

func TestMoneyString(t *testing.T) {
	for want, m := range map[string]Money{
		"12.50 EUR": {Int(1250), "EUR"}, "€12.50": {Int(1250), "€"}, "$8": {Int(800), "$"}, "120 kr": {Int(12000), "kr"},
		"0.045 EUR": {Frac(9, 2), "EUR"}, "1/3 EUR": {Frac(100, 3), "EUR"}, "8 US$": {Int(800), "US$"},
		"-$8": {Int(-800), "$"}, "-0.05 EUR": {Int(-5), "EUR"}, "12.50": {Int(1250), ""}, "0 EUR": {Rat{}, "EUR"},
		"12345678901234.5 kr": {Int(1_234_567_890_123_450), "kr"}, // a second decimal would be a sixteenth digit
	} {
		if got := m.String(); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

func TestMoneyReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sign := rapid.SampledFrom([]string{"", "-"}).Draw(t, "sign")
		currency := rapid.SampledFrom([]string{"€", "EUR", "$", "US$", "kr"}).Draw(t, "currency")
		m, err := ParseMoney(sign + spelled(t) + currency)
		if err != nil {
			t.Fatal(err)
		}
		if back, err := ParseMoney(m.String()); err != nil || !back.same(m) {
			t.Fatalf("%q: got %v, %v", m, back, err)
		}
	})
}
