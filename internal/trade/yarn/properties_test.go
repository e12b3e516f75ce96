package yarn

import (
	"math/big"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/trade/qty"
)

// systems and numbers are drawn from everything that can be written.
var anySystem = rapid.SampledFrom(Systems())

func anyNumber(rt *rapid.T) qty.Rat {
	return qty.Frac(rapid.Int64Range(1, 99_999).Draw(rt, "n"), rapid.Int64Range(1, 99).Draw(rt, "d"))
}

func anyStrand(rt *rapid.T) Strand {
	sys := anySystem.Draw(rt, "system")
	return Strand{System: sys.ID, Number: anyNumber(rt), Plies: 1}
}

func TestConversionAndBackIsExact(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		c := Count{[]Strand{anyStrand(rt)}}
		for _, v := range Conversions(c) {
			back := Count{[]Strand{{System: v.System.ID, Number: v.Value, Plies: 1}}}
			if got := back.In(c.Strands[0].System.system()); !got.Equal(c.Strands[0].Number) {
				rt.Fatalf("%s by way of %s: got %s", c, v.System.ID, got)
			}
			tex := v.Constant.Mul(v.Value)
			if !v.Direct {
				tex = v.Constant.Div(v.Value)
			}
			if !tex.Equal(c.Grist().Tex()) {
				rt.Fatalf("%s in %s: the working gives %s tex, want %s", c, v.System.ID, tex, c.Grist().Tex())
			}
		}
	})
}

func TestFoldingOrderDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		strands := rapid.SliceOfN(rapid.Custom(anyStrand), 2, 6).Draw(rt, "strands")
		turned := rapid.Permutation(strands).Draw(rt, "turned")
		a, b := Count{strands}, Count{turned}
		if !a.Grist().NGPerNM().Equal(b.Grist().NGPerNM()) {
			rt.Fatalf("%s: %s tex, %s: %s tex", a, a.Grist().Tex(), b, b.Grist().Tex())
		}
	})
}

// slowTex gives tex by the definitions written out in grams and metres, apart
// from the table under test.
var slowTex = map[SystemID]func(n *big.Rat) *big.Rat{
	"tex":     func(n *big.Rat) *big.Rat { return n },
	"denier":  func(n *big.Rat) *big.Rat { return quo(n, "9") },
	"metric":  func(n *big.Rat) *big.Rat { return quo(ratOf("1000"), n.RatString()) },
	"cotton":  func(n *big.Rat) *big.Rat { return perPound(n, "840") },
	"worsted": func(n *big.Rat) *big.Rat { return perPound(n, "560") },
	"lea":     func(n *big.Rat) *big.Rat { return perPound(n, "300") },
	"run":     func(n *big.Rat) *big.Rat { return perPound(n, "1600") },
}

func ratOf(text string) *big.Rat {
	r, ok := new(big.Rat).SetString(text)
	if !ok {
		panic(text)
	}
	return r
}

func quo(a *big.Rat, b string) *big.Rat { return new(big.Rat).Quo(a, ratOf(b)) }

// perPound is 453,592.37 g/1000 over the metres in a pound.
func perPound(n *big.Rat, yards string) *big.Rat {
	metres := new(big.Rat).Mul(n, new(big.Rat).Mul(ratOf(yards), ratOf("0.9144")))
	return new(big.Rat).Quo(ratOf("453592.37"), metres)
}

func TestFoldedAgainstSlowTwin(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		strands := rapid.SliceOfN(rapid.Custom(anyStrand).Filter(func(s Strand) bool {
			return slowTex[s.System] != nil
		}), 1, 5).Draw(rt, "strands")
		want := new(big.Rat)
		for i, s := range strands {
			strands[i].Plies = rapid.IntRange(1, 9).Draw(rt, "plies")
			strands[i].Reading = Times
			one := slowTex[s.System](s.Number.Big())
			want.Add(want, new(big.Rat).Mul(one, big.NewRat(int64(strands[i].Plies), 1)))
		}
		if got := (Count{strands}).Grist().Tex(); got.Big().Cmp(want) != 0 {
			rt.Fatalf("%s: got %s tex, want %s", Count{strands}, got, want.RatString())
		}
	})
}

func TestEveryCountWrittenIsReadBack(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		a, b := rapid.IntRange(1, 130).Draw(rt, "a"), rapid.IntRange(1, 130).Draw(rt, "b")
		sys := anySystem.Draw(rt, "system")
		forms := []string{"%n/%m %s", "%ns/%m %s", "%n/%ms %s", "%n.5/%m %s", "%n %s x %m", "R %n %s / %m", "%n 1/3 %s", "%ns-%m %s"}
		text := fill(rapid.SampledFrom(forms).Draw(rt, "form"), a, b, sys.Symbol())
		c, err := ParseCount(text)
		if err != nil {
			rt.Skip(text)
		}
		if again, err := ParseCount(c.String()); err != nil || !again.Equal(c) {
			rt.Fatalf("%q is written %q, which reads as %q, %v", text, c, again, err)
		}
	})
}
