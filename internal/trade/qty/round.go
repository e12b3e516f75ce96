package qty

import (
	"math/big"
	"strings"
)

// Rounding names how a figure is made whole. It is always an argument: nothing
// rounds silently.
type Rounding int

// The roundings. Materials needed round Up, stock in hand rounds Down, Nearest
// takes halves away from zero.
const (
	Nearest Rounding = iota
	Up
	Down
)

// String gives the rounding's plain name.
func (r Rounding) String() string { return [...]string{"nearest", "up", "down"}[r] }

// ParseRounding reads nearest, up or down.
func ParseRounding(text string) (Rounding, error) {
	for _, r := range []Rounding{Nearest, Up, Down} {
		if strings.TrimSpace(strings.ToLower(text)) == r.String() {
			return r, nil
		}
	}
	return Nearest, &Fault{Code: "rounding.unknown", Read: text}
}

// Floor gives the largest whole number not above a.
func (a Rat) Floor() Rat {
	if a.b == nil {
		return Int(floorDiv(a.n, a.den()))
	}
	q := new(big.Int).Div(a.b.Num(), a.b.Denom()) // Euclidean: floor, as the denominator is positive
	return fromBig(new(big.Rat).SetInt(q))
}

func floorDiv(n, d int64) int64 {
	q := n / d
	if n%d < 0 {
		q--
	}
	return q
}

// Ceil gives the smallest whole number not below a.
func (a Rat) Ceil() Rat { return a.Neg().Floor().Neg() }

// Whole gives a made whole by r.
func (a Rat) Whole(r Rounding) Rat {
	switch {
	case r == Up:
		return a.Ceil()
	case r == Down:
		return a.Floor()
	case a.Sign() < 0:
		return a.Sub(Frac(1, 2)).Ceil()
	}
	return a.Add(Frac(1, 2)).Floor()
}

// To gives the multiple of step that r picks. A step of 0 leaves a as it is:
// rounding is off.
func (a Rat) To(step Rat, r Rounding) Rat {
	if step.IsZero() {
		return a
	}
	return a.Div(step).Whole(r).Mul(step)
}

// Int64 gives a as a machine integer, made whole by r, and false when it does
// not fit.
func (a Rat) Int64(r Rounding) (int64, bool) {
	w := a.Whole(r)
	if w.b == nil {
		return w.n, true
	}
	if !w.b.Num().IsInt64() { // the least integer is held big, and fits
		return 0, false
	}
	return w.b.Num().Int64(), true
}

// Count gives a made whole by r as an int. It panics when a is beyond
// ±2^53: the decoder bounds every input far below that.
func (a Rat) Count(r Rounding) int {
	n, ok := a.Int64(r)
	if !ok || n > 1<<53 || n < -1<<53 {
		panic("internal error: count out of range: " + a.String())
	}
	return int(n)
}

// String gives the exact value: a whole number, or numerator/denominator.
func (a Rat) String() string { return a.Big().RatString() }

// Decimal gives a with that many digits after the point, halves away from
// zero. What rounds to 0 has no sign.
func (a Rat) Decimal(places int) string {
	text := a.Big().FloatString(places)
	if strings.Trim(text, "-0.") == "" {
		return strings.TrimPrefix(text, "-")
	}
	return text
}

// Short gives a in at most that many digits after the point, without trailing
// zeros.
func (a Rat) Short(places int) string {
	text := a.Decimal(places)
	if !strings.Contains(text, ".") {
		return text
	}
	return strings.TrimRight(strings.TrimRight(text, "0"), ".")
}

// Places gives how many digits after the point a needs to be written exactly,
// and false when no number of digits up to limit is enough.
func (a Rat) Places(limit int) (int, bool) {
	ten, scaled := Int(10), a
	for places := 0; places <= limit; places++ {
		if scaled.IsInt() {
			return places, true
		}
		scaled = scaled.Mul(ten)
	}
	return 0, false
}

// Whole64 gives a as a machine integer. It panics when a is not whole or too
// large: only for figures that are whole by their making.
func (a Rat) Whole64() int64 {
	if a.b != nil || a.den() != 1 {
		panic("internal error: not a whole number: " + a.String())
	}
	return a.n
}
