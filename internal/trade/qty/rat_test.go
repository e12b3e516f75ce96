package qty

import (
	"cmp"
	"math"
	"math/big"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// edges are the words at which a sum or product leaves its word.
var edges = []int64{
	0, 1, -1, 2, -2, 3, 10, math.MaxInt64, math.MinInt64, math.MaxInt64 - 1, math.MinInt64 + 1,
	math.MaxInt32, math.MinInt32, 1 << 32, 1<<32 + 1, -(1 << 32), 3037000499, 3037000500, 1 << 62, -(1 << 62),
	int64(Inch), int64(Yard), int64(Pound),
}

func word() *rapid.Generator[int64] {
	return rapid.OneOf(rapid.SampledFrom(edges), rapid.Int64(), rapid.Int64Range(-1000, 1000))
}

// rational draws a number and its slow twin, small or far beyond two words.
func rational(t *rapid.T, name string) (Rat, *big.Rat) {
	n, d := word().Draw(t, name+" above"), word().Draw(t, name+" below")
	if d == 0 {
		return Int(n), big.NewRat(n, 1)
	}
	a, slow := Frac(n, d), big.NewRat(n, d)
	if rapid.IntRange(0, 3).Draw(t, name+" wide") == 0 {
		a, slow = a.Mul(Frac(d, 7)), slow.Mul(slow, big.NewRat(d, 7))
	}
	return a, slow
}

// failer is what a test and a fuzz target have in common.
type failer interface {
	Helper()
	Fatalf(format string, args ...any)
}

// held checks a against its twin, and that its form is the one form of the
// number: lowest terms, two words whenever they are enough.
func held(t failer, what string, a Rat, slow *big.Rat) {
	t.Helper()
	if a.Big().Cmp(slow) != 0 {
		t.Fatalf("%s: got %s, want %s", what, a, slow.RatString())
	}
	small := slow.Num().IsInt64() && slow.Denom().IsInt64() && slow.Num().Int64() != math.MinInt64
	if small != (a.b == nil) {
		t.Fatalf("%s = %s: held small is %v, want %v", what, a, a.b == nil, small)
	}
	if small && (a.n != slow.Num().Int64() || a.den() != slow.Denom().Int64()) {
		t.Fatalf("%s: held as %d/%d, want %s", what, a.n, a.den(), slow)
	}
}

func TestRatAgainstBig(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, slowA := rational(t, "a")
		b, slowB := rational(t, "b")
		againstBig(t, a, b, slowA, slowB)
	})
}

// TestRatAtTheEdges tries every pair of fractions of the edges' own numbers.
func TestRatAtTheEdges(t *testing.T) {
	for _, n := range edges {
		for _, d := range edges {
			for _, m := range edges {
				if d != 0 {
					againstBig(t, Frac(n, d), Int(m), big.NewRat(n, d), big.NewRat(m, 1))
				}
			}
		}
	}
}

func againstBig(t failer, a, b Rat, slowA, slowB *big.Rat) {
	t.Helper()
	held(t, "a", a, slowA)
	held(t, "b", b, slowB)
	held(t, "a + b", a.Add(b), new(big.Rat).Add(slowA, slowB))
	held(t, "a - b", a.Sub(b), new(big.Rat).Sub(slowA, slowB))
	held(t, "a × b", a.Mul(b), new(big.Rat).Mul(slowA, slowB))
	held(t, "-a", a.Neg(), new(big.Rat).Neg(slowA))
	held(t, "|a|", a.Abs(), new(big.Rat).Abs(slowA))
	if slowB.Sign() != 0 {
		held(t, "a ÷ b", a.Div(b), new(big.Rat).Quo(slowA, slowB))
		held(t, "1/b", b.Inv(), new(big.Rat).Inv(slowB))
	}
	compared(t, a, b, slowA.Cmp(slowB))
	if a.Sign() != slowA.Sign() || a.IsZero() != (slowA.Sign() == 0) || a.IsInt() != slowA.IsInt() {
		t.Fatalf("%s: sign %d, zero %v, whole %v", a, a.Sign(), a.IsZero(), a.IsInt())
	}
	if f, _ := slowA.Float64(); a.Float() != f {
		t.Fatalf("%s: float %v, want %v", a, a.Float(), f)
	}
}

func compared(t failer, a, b Rat, want int) {
	t.Helper()
	if a.Cmp(b) != want || a.Equal(b) != (want == 0) || a.Less(b) != (want < 0) {
		t.Fatalf("%s to %s: got %d, want %d", a, b, a.Cmp(b), want)
	}
	low, high := a, b
	if want > 0 {
		low, high = b, a
	}
	if !Min(a, b).Equal(low) || !Max(a, b).Equal(high) {
		t.Fatalf("of %s and %s: least %s, most %s", a, b, Min(a, b), Max(a, b))
	}
}

// TestRatIsImmutable sums big numbers and looks whether the terms are as they
// were, and whether what Big gives is a copy.
func TestRatIsImmutable(t *testing.T) {
	slow := big.NewRat(math.MaxInt64, 3)
	slow.Mul(slow, slow)
	a := FromBig(slow)
	want := a.String()
	slow.SetInt64(1)
	a.Big().SetInt64(2)
	for _, f := range []func(Rat) Rat{Rat.Neg, Rat.Abs, Rat.Inv, Rat.Floor, Rat.Ceil, a.Add, a.Mul} {
		f(a)
	}
	if a.String() != want {
		t.Errorf("got %s, want %s", a, want)
	}
}

func TestFromFloat(t *testing.T) {
	for f, want := range map[float64]string{
		0.5: "1/2", 0.1: "3602879701896397/36028797018963968", -3: "-3", 1e20: "100000000000000000000",
		math.Inf(1): "0", math.Inf(-1): "0",
	} {
		if got := FromFloat(f).String(); got != want {
			t.Errorf("%v: got %s, want %s", f, got, want)
		}
	}
	if !FromFloat(math.NaN()).IsZero() {
		t.Error("not a number is not 0")
	}
}

func TestRatSorts(t *testing.T) {
	numbers := []Rat{Int(3), Frac(-1, 2), FromFloat(1e300), Frac(1, 3), {}, FromFloat(-1e300)}
	slices.SortFunc(numbers, Rat.Cmp)
	if !slices.IsSortedFunc(numbers, func(a, b Rat) int { return cmp.Compare(a.Float(), b.Float()) }) {
		t.Errorf("got %v", numbers)
	}
}

func TestDenominatorZeroPanics(t *testing.T) {
	for what, f := range map[string]func(){
		"1/0": func() { Frac(1, 0) }, "0 inverted": func() { Int(0).Inv() }, "÷ 0": func() { Int(1).Div(Rat{}) },
	} {
		if !panics(f) {
			t.Errorf("%s gives a number", what)
		}
	}
}

func panics(f func()) (did bool) {
	defer func() { did = recover() != nil }()
	f()
	return false
}
