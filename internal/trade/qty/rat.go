package qty

import (
	"cmp"
	"math"
	"math/big"
	"math/bits"
)

// Rat is an exact rational number. The zero value is 0. Small numbers are held
// in two machine words; anything that would overflow them moves to math/big,
// so no sum or product is ever wrong or rounded. Values are immutable.
type Rat struct {
	n, d int64 // d == 0 stands for 1; lowest terms, d > 0
	b    *big.Rat
}

// Int gives n/1.
func Int(n int64) Rat {
	if n == math.MinInt64 { // its opposite does not fit in a word
		return Rat{b: big.NewRat(n, 1)}
	}
	return Rat{n: n}
}

// Frac gives n/d in lowest terms. It panics when d is 0: a programmer's
// mistake, never a person's.
func Frac(n, d int64) Rat {
	if d == 0 {
		panic("internal error: qty.Frac with denominator 0")
	}
	if n == math.MinInt64 || d == math.MinInt64 {
		return fromBig(big.NewRat(n, d))
	}
	if d < 0 {
		n, d = -n, -d
	}
	return small(n, d)
}

// FromBig gives b as a Rat; b is copied.
func FromBig(b *big.Rat) Rat { return fromBig(new(big.Rat).Set(b)) }

// FromFloat gives the exact value of f, or 0 when f is not finite. Floats come
// only from geometry, such as a square root.
func FromFloat(f float64) Rat {
	b := new(big.Rat).SetFloat64(f)
	if b == nil {
		return Rat{}
	}
	return fromBig(b)
}

func fromBig(b *big.Rat) Rat {
	if b.Num().IsInt64() && b.Denom().IsInt64() && b.Num().Int64() != math.MinInt64 {
		return Rat{n: b.Num().Int64(), d: b.Denom().Int64()}
	}
	return Rat{b: b}
}

func small(n, d int64) Rat {
	if g := gcd(n, d); g > 1 {
		n, d = n/g, d/g
	}
	return Rat{n: n, d: d}
}

func gcd(a, b int64) int64 {
	if a < 0 {
		a = -a
	}
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

func (a Rat) den() int64 {
	if a.d == 0 {
		return 1
	}
	return a.d
}

// Big gives a copy as a math/big rational.
func (a Rat) Big() *big.Rat {
	if a.b != nil {
		return new(big.Rat).Set(a.b)
	}
	return big.NewRat(a.n, a.den())
}

// mul multiplies two words and reports whether the product fits in one.
func mul(a, b int64) (int64, bool) {
	hi, lo := bits.Mul64(magnitude(a), magnitude(b))
	if hi != 0 || lo > math.MaxInt64 {
		return 0, false
	}
	if (a < 0) != (b < 0) {
		return -int64(lo), true
	}
	return int64(lo), true
}

func magnitude(a int64) uint64 {
	if a < 0 {
		return uint64(-a)
	}
	return uint64(a)
}

func sum(a, b int64) (int64, bool) {
	s := a + b
	ok := (s > a) == (b > 0) && s != math.MinInt64
	return s, ok
}

// Add gives a + b.
func (a Rat) Add(b Rat) Rat {
	if a.b == nil && b.b == nil {
		if r, ok := addSmall(a, b); ok {
			return r
		}
	}
	return fromBig(new(big.Rat).Add(a.Big(), b.Big()))
}

func addSmall(a, b Rat) (Rat, bool) {
	ad, bd := a.den(), b.den()
	if ad == 1 && bd == 1 {
		n, ok := sum(a.n, b.n)
		return Rat{n: n, d: 1}, ok
	}
	g := gcd(ad, bd)
	x, ok1 := mul(a.n, bd/g)
	y, ok2 := mul(b.n, ad/g)
	n, ok3 := sum(x, y)
	d, ok4 := mul(ad/g, bd)
	if !(ok1 && ok2 && ok3 && ok4) {
		return Rat{}, false
	}
	return small(n, d), true
}

// Sub gives a - b.
func (a Rat) Sub(b Rat) Rat { return a.Add(b.Neg()) }

// Neg gives -a.
func (a Rat) Neg() Rat {
	if a.b != nil {
		return fromBig(new(big.Rat).Neg(a.b))
	}
	return Rat{n: -a.n, d: a.d}
}

// Mul gives a × b.
func (a Rat) Mul(b Rat) Rat {
	if a.b == nil && b.b == nil {
		if r, ok := mulSmall(a, b); ok {
			return r
		}
	}
	return fromBig(new(big.Rat).Mul(a.Big(), b.Big()))
}

func mulSmall(a, b Rat) (Rat, bool) {
	ad, bd := a.den(), b.den()
	g, h := max(gcd(a.n, bd), 1), max(gcd(b.n, ad), 1)
	n, ok1 := mul(a.n/g, b.n/h)
	d, ok2 := mul(ad/h, bd/g)
	if !(ok1 && ok2) {
		return Rat{}, false
	}
	return small(n, d), true
}

// Inv gives 1/a. It panics when a is 0.
func (a Rat) Inv() Rat {
	if a.b != nil {
		return fromBig(new(big.Rat).Inv(a.b))
	}
	return Frac(a.den(), a.n)
}

// Div gives a ÷ b. It panics when b is 0.
func (a Rat) Div(b Rat) Rat { return a.Mul(b.Inv()) }

// Abs gives a without its sign.
func (a Rat) Abs() Rat {
	if a.Sign() < 0 {
		return a.Neg()
	}
	return a
}

// Sign gives -1, 0 or 1.
func (a Rat) Sign() int {
	if a.b != nil {
		return a.b.Sign()
	}
	return cmp.Compare(a.n, 0)
}

// Cmp gives -1, 0 or 1 as a is less than, equal to or more than b.
func (a Rat) Cmp(b Rat) int {
	if a.b == nil && b.b == nil && a.den() == b.den() {
		return cmp.Compare(a.n, b.n)
	}
	return a.Sub(b).Sign()
}

// Equal reports whether a and b are the same number.
func (a Rat) Equal(b Rat) bool { return a.Cmp(b) == 0 }

// Less reports whether a < b.
func (a Rat) Less(b Rat) bool { return a.Cmp(b) < 0 }

// IsZero reports whether a is 0.
func (a Rat) IsZero() bool { return a.Sign() == 0 }

// IsInt reports whether a is a whole number.
func (a Rat) IsInt() bool {
	if a.b != nil {
		return a.b.IsInt()
	}
	return a.den() == 1
}

// Float gives the nearest float64, for drawing and for square roots only.
func (a Rat) Float() float64 {
	f, _ := a.Big().Float64()
	return f
}

// Min gives the smaller of a and b.
func Min(a, b Rat) Rat {
	if b.Less(a) {
		return b
	}
	return a
}

// Max gives the larger of a and b.
func Max(a, b Rat) Rat {
	if a.Less(b) {
		return b
	}
	return a
}
