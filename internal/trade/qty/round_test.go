package qty

import (
	"math"
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

// wholeOfBig makes a whole by r through big integers: the slow twin of Whole.
func wholeOfBig(a *big.Rat, r Rounding) *big.Int {
	floor := new(big.Int).Div(a.Num(), a.Denom()) // Euclidean, the denominator being above 0
	over := new(big.Rat).Sub(a, new(big.Rat).SetInt(floor))
	half := over.Cmp(big.NewRat(1, 2))
	up := r == Up && over.Sign() > 0 || r == Nearest && (half > 0 || half == 0 && a.Sign() > 0)
	if up {
		floor.Add(floor, big.NewInt(1))
	}
	return floor
}

func TestWholeAgainstBig(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, slow := rational(t, "a")
		roundedAgainstBig(t, a, slow)
	})
}

func roundedAgainstBig(t failer, a Rat, slow *big.Rat) {
	t.Helper()
	for _, r := range []Rounding{Nearest, Up, Down} {
		want := wholeOfBig(slow, r)
		held(t, r.String(), a.Whole(r), new(big.Rat).SetInt(want))
		n, ok := a.Int64(r)
		if ok != want.IsInt64() || ok && n != want.Int64() {
			t.Fatalf("%s %s as a machine integer: got %d, %v; want %s", a, r, n, ok, want)
		}
	}
	held(t, "floor", a.Floor(), new(big.Rat).SetInt(wholeOfBig(slow, Down)))
	held(t, "ceiling", a.Ceil(), new(big.Rat).SetInt(wholeOfBig(slow, Up)))
}

func TestToAgainstBig(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, slow := rational(t, "a")
		step := rapid.Int64Range(1, math.MaxInt64).Draw(t, "step above")
		under := rapid.Int64Range(1, 1000).Draw(t, "step below")
		r := rapid.SampledFrom([]Rounding{Nearest, Up, Down}).Draw(t, "rounding")
		slowStep := big.NewRat(step, under)
		steps := wholeOfBig(new(big.Rat).Quo(slow, slowStep), r)
		held(t, "to", a.To(Frac(step, under), r), new(big.Rat).Mul(new(big.Rat).SetInt(steps), slowStep))
	})
}

func TestRoundings(t *testing.T) {
	for _, c := range []struct {
		a                 Rat
		nearest, up, down int
	}{
		{Frac(5, 2), 3, 3, 2},
		{Frac(-5, 2), -3, -2, -3},
		{Frac(7, 3), 2, 3, 2},
		{Frac(-7, 3), -2, -2, -3},
		{Int(4), 4, 4, 4},
		{Rat{}, 0, 0, 0},
		{Frac(1, 2), 1, 1, 0},
		{Frac(-1, 2), -1, 0, -1},
	} {
		for r, want := range map[Rounding]int{Nearest: c.nearest, Up: c.up, Down: c.down} {
			if got := c.a.Count(r); got != want {
				t.Errorf("%s %s: got %d, want %d", c.a, r, got, want)
			}
		}
	}
	if got := Frac(7, 3).To(Rat{}, Up); !got.Equal(Frac(7, 3)) {
		t.Errorf("a step of 0 rounds 7/3 to %s", got)
	}
}

func TestCountRefusesBeyondExactFloats(t *testing.T) {
	if got := Int(1 << 53).Count(Up); got != 1<<53 {
		t.Errorf("got %d", got)
	}
	for _, a := range []Rat{Int(1<<53 + 1), Int(-1<<53 - 1), FromFloat(1e30)} {
		if !panics(func() { a.Count(Up) }) {
			t.Errorf("%s is counted", a)
		}
	}
}

func TestParseRounding(t *testing.T) {
	for text, want := range map[string]Rounding{"nearest": Nearest, " Up ": Up, "DOWN": Down} {
		if got, err := ParseRounding(text); got != want || err != nil {
			t.Errorf("%q: got %v, %v", text, got, err)
		}
	}
	rejects(t, ParseRounding, []rejected{{"off", "rounding.unknown", "off", 0, nil}})
}

func TestDecimals(t *testing.T) {
	for _, c := range []struct {
		a              Rat
		places         int
		decimal, short string
	}{
		{Frac(1, 3), 2, "0.33", "0.33"},
		{Frac(5, 2), 0, "3", "3"},
		{Frac(-5, 2), 0, "-3", "-3"},
		{Frac(5, 2), 3, "2.500", "2.5"},
		{Int(100), 2, "100.00", "100"},
		{Int(100), 0, "100", "100"},
		{Frac(-1, 1000), 1, "0.0", "0"},
		{Frac(-1, 1000), 0, "0", "0"},
		{Frac(-1, 1000), 3, "-0.001", "-0.001"},
		{Int(-10), 1, "-10.0", "-10"},
		{Frac(-1, 20), 1, "-0.1", "-0.1"},
	} {
		if got := c.a.Decimal(c.places); got != c.decimal {
			t.Errorf("%s to %d places: got %s, want %s", c.a, c.places, got, c.decimal)
		}
		if got := c.a.Short(c.places); got != c.short {
			t.Errorf("%s in at most %d places: got %s, want %s", c.a, c.places, got, c.short)
		}
	}
}

func TestPlaces(t *testing.T) {
	for _, c := range []struct {
		a      Rat
		limit  int
		places int
		ok     bool
	}{
		{Int(7), 0, 0, true},
		{Frac(1, 8), 3, 3, true},
		{Frac(1, 8), 2, 0, false},
		{Frac(1, 3), 30, 0, false},
		{Frac(-1, 1_000_000_000_000), 12, 12, true},
		{FromFloat(0.1), 60, 55, true},
	} {
		if places, ok := c.a.Places(c.limit); places != c.places || ok != c.ok {
			t.Errorf("%s: got %d, %v; want %d, %v", c.a, places, ok, c.places, c.ok)
		}
	}
}
