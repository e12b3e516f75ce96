package qty

import (
	"errors"
	"fmt"
	"math/big"
	"testing"
)

// fuzzText tries any text: reading it never panics, a fault points at what it
// read, and what was read prints as a text that gives the same value.
func fuzzText[T fmt.Stringer](f *testing.F, seeds []string, parse func(string) (T, error), same func(a, b T) bool) {
	for _, seed := range seeds {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		v, err := parse(text)
		if err != nil {
			faulted(t, text, err)
			return
		}
		if back, err := parse(v.String()); err != nil || !same(v, back) {
			t.Fatalf("%q -> %q: got %v, %v", text, v, back, err)
		}
	})
}

func faulted(t *testing.T, text string, err error) {
	t.Helper()
	var f *Fault
	if !errors.As(err, &f) || f.Code == "" {
		t.Fatalf("%q: %v is no fault", text, err)
	}
	pointsAtRead(t, text, f)
}

func seeds(accepted []string, rejected []rejected) []string {
	return append(accepted, texts(numbersRejected, rejected)...)
}

func FuzzLength(f *testing.F) {
	fuzzText(f, seeds(keys(lengthsRead), lengthsRejected), ParseLength, func(a, b Length) bool { return a == b })
}

func FuzzMass(f *testing.F) {
	fuzzText(f, seeds(keys(massesRead), massesRejected), ParseMass, func(a, b Mass) bool { return a == b })
}

func FuzzDensity(f *testing.F) {
	fuzzText(f, seeds(keys(densitiesRead), densitiesRejected), ParseDensity, Density.same)
}

func FuzzGrist(f *testing.F) {
	fuzzText(f, seeds(keys(gristsRead), gristsRejected), ParseGrist, LinearDensity.same)
}

func FuzzShare(f *testing.F) {
	fuzzText(f, seeds(keys(sharesRead), sharesRejected), ParseShare, func(a, b Share) bool { return a.Of.Equal(b.Of) })
}

func FuzzMoney(f *testing.F) {
	fuzzText(f, seeds(keys(moneysRead), moneysRejected), ParseMoney, Money.same)
}

func FuzzRate(f *testing.F) {
	fuzzText(f, seeds(keys(ratesRead), ratesRejected), ParseRate, Rate.same)
}

// number is a Rat that prints as a person may write it.
type number struct{ Rat }

func (n number) String() string { return numeral(n.Rat) }

func FuzzNumber(f *testing.F) {
	parse := func(text string) (number, error) {
		n, err := ParseNumber(text)
		return number{n}, err
	}
	fuzzText(f, seeds(keys(numbersRead), nil), parse, func(a, b number) bool { return a.Equal(b.Rat) })
}

func FuzzRat(f *testing.F) {
	for i, n := range edges {
		f.Add(n, edges[(i+7)%len(edges)], edges[(i+11)%len(edges)], edges[(i+3)%len(edges)])
	}
	f.Fuzz(func(t *testing.T, n, d, m, e int64) {
		if d == 0 || e == 0 {
			return // no such number
		}
		a, slow := Frac(n, d), big.NewRat(n, d)
		againstBig(t, a, Frac(m, e), slow, big.NewRat(m, e))
		roundedAgainstBig(t, a, slow)
	})
}
