package sett

import (
	"fmt"
	"math/big"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/trade/qty"
)

func perInch(n, d int64) qty.Rat { return qty.Frac(n, d).Div(qty.Inch.Rat()) }

// bestPerReed gives the first choice of each reed, in the order ranked.
func bestPerReed(all []Choice) []string {
	var out []string
	seen := map[int]bool{}
	for _, c := range all {
		if !seen[c.Reed] {
			seen[c.Reed] = true
			out = append(out, fmt.Sprint(c.Reed, ": ", c.Order))
		}
	}
	return out
}

// A project of our own: 24 epi is exact in 12 dents (2), 8 dents (3), 10 dents
// (2-3-2-3-2), ranked in that order.
func TestRankingOfTheTowels(t *testing.T) {
	reeds := []qty.Rat{perInch(8, 1), perInch(10, 1), perInch(12, 1)}
	got := bestPerReed(Choose(reeds, Wanted{Density: perInch(24, 1)}))
	want := []string{"2: 2", "0: 3", "1: 2-3-2-3-2"}
	if !slices.Equal(got, want) {
		t.Errorf("24 epi in 8, 10, 12 dents: got %v, want %v", got, want)
	}
}

var dentsTests = []struct {
	order     Order
	ends      int
	dents     int
	odd       int
	what      string
	published string
}{
	{Order{2}, 505, 253, 1, "the towels: 252 full dents and 1 single", "a project of our own"},
	{Order{2}, 504, 252, 0, "all full", "arithmetic"},
	{Order{1, 2}, 270, 180, 0, "18 in of a 10-dent reed at 15 epi", "KB Knits Etc, On my loom (3/2 cotton towels), 2016: 270 ends, 18 in"},
	{Order{0, 1}, 3, 6, 0, "the empty dent before an end counts", "arithmetic"},
	{Order{2, 3}, 6, 3, 1, "into the second order", "arithmetic"},
	{Order{2, 3}, 4, 2, 2, "two of three", "arithmetic"},
	{Order{2, 3}, 0, 0, 0, "no ends", "arithmetic"},
}

func TestDents(t *testing.T) {
	for _, test := range dentsTests {
		dents, odd := test.order.Dents(test.ends)
		if dents != test.dents || odd != test.odd {
			t.Errorf("%s (%s): order %s, %d ends: got %d dents, %d odd, want %d, %d",
				test.what, test.published, test.order, test.ends, dents, odd, test.dents, test.odd)
		}
	}
}

// slowDents fills dent by dent.
func slowDents(o Order, n int) (dents, odd int) {
	for n > 0 {
		in := o[dents%len(o)]
		dents++
		if n < in {
			return dents, n
		}
		n -= in
	}
	return dents, 0
}

func TestDentsAgainstDentByDent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := Order(rapid.SliceOfN(rapid.IntRange(0, 4), 1, 8).Draw(t, "order"))
		n := rapid.IntRange(0, 400).Draw(t, "ends")
		if o.Ends() == 0 {
			return
		}
		dents, odd := o.Dents(n)
		if d, r := slowDents(o, n); d != dents || r != odd {
			t.Fatalf("order %v, %d ends: got %d, %d, want %d, %d", o, n, dents, odd, d, r)
		}
	})
}

// slowSplits walks many dents and looks at every one.
func slowSplits(o Order, unit int) bool {
	at := 0
	for i := range len(o) * unit * 2 {
		in := o[i%len(o)]
		whole := in%unit == 0 && at%unit == 0
		for k := 1; k < in && !whole; k++ {
			if (at+k)%unit == 0 {
				return true
			}
		}
		at += in
	}
	return false
}

func TestSplitsAgainstEndByEnd(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := Order(rapid.SliceOfN(rapid.IntRange(0, 5), 1, 8).Draw(t, "order"))
		unit := rapid.IntRange(2, 8).Draw(t, "unit")
		if o.Ends() == 0 {
			return
		}
		if got, want := o.Splits(unit), slowSplits(o, unit); got != want {
			t.Fatalf("order %v, units of %d: got %v, want %v", o, unit, got, want)
		}
	})
}

// An order spreads its ends as evenly as whole ends allow: any run of dents, cut
// anywhere, differs by at most one end from any other run as long (Handwoven,
// Sleying the reed for specific setts: spread extra ends as evenly as possible).
func TestSpreadIsEven(t *testing.T) {
	for dents := 1; dents <= 8; dents++ {
		for ends := 1; ends <= 4*dents; ends++ {
			o := spread(ends, dents)
			if len(o) != dents || o.Ends() != ends {
				t.Fatalf("%d ends in %d dents: got %v", ends, dents, o)
			}
			for long := 1; long < dents; long++ {
				least, most := runs(o, long)
				if most-least > 1 {
					t.Errorf("%v: runs of %d dents hold %d to %d ends", o, long, least, most)
				}
			}
		}
	}
}

func runs(o Order, long int) (least, most int) {
	least = 1 << 30
	for start := range o {
		n := 0
		for k := range long {
			n += o[(start+k)%len(o)]
		}
		least, most = min(least, n), max(most, n)
	}
	return least, most
}

// The first choice against a search of every number of ends in every length of
// order, with math/big.
func TestChooseAgainstEveryOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var reeds []qty.Rat
		for range rapid.IntRange(1, 4).Draw(t, "reeds") {
			reeds = append(reeds, perInch(rapid.Int64Range(20, 200).Draw(t, "dents"), 10))
		}
		wanted := perInch(rapid.Int64Range(10, 600).Draw(t, "sett"), 10)
		unit := rapid.IntRange(0, 4).Draw(t, "unit")
		got := Choose(reeds, Wanted{Density: wanted, Unit: unit})
		if want := slowBest(reeds, wanted, unit); key(got[0], wanted, unit) != want {
			t.Fatalf("sett %s in %v: got %s (%v), want %s", wanted, reeds, got[0].Order, key(got[0], wanted, unit), want)
		}
	})
}

// slowBest tries every number of ends, every length of order and every place to
// begin it, and gives the best key.
func slowBest(reeds []qty.Rat, wanted qty.Rat, unit int) string {
	best := ""
	for i, dents := range reeds {
		for n := 1; n <= 8; n++ {
			for ends := 1; ends <= 16*n; ends++ {
				for _, o := range turns(spread(ends, n)) {
					c := Choice{Reed: i, Dents: dents, Order: o, Density: o.Density(dents)}
					if k := key(c, wanted, unit); best == "" || k < best {
						best = k
					}
				}
			}
		}
	}
	return best
}

// key writes the ranking of design as a text that sorts: difference beyond one
// per cent, then constant, few to a dent, short, even, whole units, then the
// difference itself.
func key(c Choice, wanted qty.Rat, unit int) string {
	off := new(big.Rat).Sub(c.Density.Big(), wanted.Big())
	off.Quo(off, wanted.Big()).Abs(off)
	beyond := new(big.Rat)
	if off.Cmp(big.NewRat(1, 100)) > 0 {
		beyond = off
	}
	split := unit > 1 && slowSplits(c.Order, unit)
	return fmt.Sprint(beyond.FloatString(15), !c.Order.IsConstant(), c.Order.Most() > 2, len(c.Order),
		slices.Max(c.Order)-slices.Min(c.Order), split, off.FloatString(15))
}

func TestClosestOfAll(t *testing.T) {
	got := Choose([]qty.Rat{perInch(4, 1)}, Wanted{Density: perInch(400, 1)})
	if len(got) != 1 || got[0].Order.String() != "16" {
		t.Errorf("400 epi in a 4-dent reed: got %v, want 16 to a dent", got)
	}
}

func BenchmarkChoose(b *testing.B) {
	reeds := []qty.Rat{perInch(8, 1), perInch(10, 1), perInch(12, 1), perInch(1016, 100), perInch(127, 10)}
	b.ReportAllocs()
	for b.Loop() {
		Choose(reeds, Wanted{Density: perInch(24, 1)})
	}
}
