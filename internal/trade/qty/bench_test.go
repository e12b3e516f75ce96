package qty

import (
	"math/big"
	"testing"
)

// The sinks keep the work of a benchmark from being left out.
var (
	sinkRat Rat
	sinkInt int
)

func BenchmarkRat(b *testing.B) {
	x, y := Frac(360, 25_400_000), (30 * Inch).Rat()
	slowX, slowY := x.Big(), y.Big()
	for _, op := range []struct {
		name string
		fast func(a, b Rat) Rat
		slow func(z, a, b *big.Rat) *big.Rat
	}{
		{"Add", Rat.Add, (*big.Rat).Add},
		{"Mul", Rat.Mul, (*big.Rat).Mul},
		{"Div", Rat.Div, (*big.Rat).Quo},
	} {
		b.Run(op.name+"/qty", func(b *testing.B) {
			for b.Loop() {
				sinkRat = op.fast(x, y)
			}
		})
		b.Run(op.name+"/big", func(b *testing.B) {
			for b.Loop() {
				op.slow(new(big.Rat), slowX, slowY)
			}
		})
	}
	b.Run("Cmp/qty", func(b *testing.B) {
		for b.Loop() {
			sinkInt = x.Cmp(y)
		}
	})
	b.Run("Cmp/big", func(b *testing.B) {
		for b.Loop() {
			sinkInt = slowX.Cmp(slowY)
		}
	})
}

func BenchmarkEnds(b *testing.B) {
	d := Density{Int(24), Inch}
	for b.Loop() {
		sinkInt = d.In(30*Inch, Up)
	}
}

func BenchmarkParse(b *testing.B) {
	b.Run("length", func(b *testing.B) {
		for b.Loop() {
			if l, err := ParseLength("3 yd 4 1/2 in"); err != nil || l == 0 {
				b.Fatal(err)
			}
		}
	})
	b.Run("density", func(b *testing.B) {
		for b.Loop() {
			if d, err := ParseDensity("60/10 cm"); err != nil || d.IsZero() {
				b.Fatal(err)
			}
		}
	})
	b.Run("grist", func(b *testing.B) {
		for b.Loop() {
			if g, err := ParseGrist("3360 yd/lb"); err != nil || g.IsZero() {
				b.Fatal(err)
			}
		}
	})
}
