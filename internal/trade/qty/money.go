package qty

import (
	"strings"
	"unicode"
)

// ParseMoney reads a text that is an amount with its currency: 12.50 EUR, EUR
// 12.50, €12.50, $8, 120 kr. The currency is kept as typed, letters or sign;
// which currencies there are is not known here. A minus stands before the
// amount or before all: -8 EUR, -$8, $-8. The codes of its faults, beside
// those of ParseNumber:
//
//	money.no-currency  a bare number
//	money.trailing     something stands after the amount
func ParseMoney(s string) (Money, error) { return parse(s, "money", (*reader).money) }

func (r *reader) money() (Money, *Fault) {
	r.space()
	from := r.pos
	minus := r.take("-") || r.take("−")
	currency := r.currency()
	if currency == "" {
		r.pos = from
		return r.amountFirst()
	}
	n, f := r.amountAfter(currency, minus)
	return Money{Minor: n.Mul(Int(100)), Currency: currency}, f
}

// amountAfter reads the amount that follows a currency. The dot of an
// abbreviation is not a decimal mark: kr.120 is not twelve hundredths.
func (r *reader) amountAfter(currency string, minus bool) (Rat, *Fault) {
	if !isSign(currency) && strings.HasPrefix(r.rest(), ".") {
		return Rat{}, r.missing()
	}
	if !minus {
		return r.number()
	}
	r.space()
	n, f := r.magnitude()
	return n.Neg(), f
}

// amountFirst reads an amount with its currency after it.
func (r *reader) amountFirst() (Money, *Fault) {
	from := r.pos
	n, f := r.number()
	if f != nil {
		return Money{}, f
	}
	r.space()
	currency := r.currency()
	if currency == "" {
		return Money{}, r.fault("money.no-currency", from, nil)
	}
	return Money{Minor: n.Mul(Int(100)), Currency: currency}, nil
}

func (r *reader) currency() string {
	return r.while(func(c rune) bool { return unicode.IsLetter(c) || unicode.Is(unicode.Sc, c) })
}

// String gives m exactly: a sign before the amount, letters after it, and two
// decimals where there are hundredths: €12.50, $8, 120 kr. ParseMoney reads it
// back to the same amount when it has a currency, unless it was computed and
// needs more than 15 digits.
func (m Money) String() string {
	amount := amountText(m.Minor.Abs())
	minus := ""
	if m.Minor.Sign() < 0 {
		minus = "-"
	}
	switch {
	case m.Currency == "":
		return minus + amount
	case isSign(m.Currency):
		return minus + m.Currency + amount
	}
	return minus + amount + " " + m.Currency
}

// isSign reports whether a currency is written without letters: €, $.
func isSign(currency string) bool { return !strings.ContainsFunc(currency, unicode.IsLetter) }

func amountText(minor Rat) string {
	amount := minor.Div(Int(100))
	if text := amount.Decimal(2); minor.IsInt() && !amount.IsInt() && readable(text) {
		return text
	}
	return numeral(amount)
}
